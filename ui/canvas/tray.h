#pragma once

#include "core/edit/layout_edit.h"
#include "ui/drawing/panel_drawing.h"

#include <QList>
#include <QPainter>
#include <QRectF>

namespace boltwright::ui {

/// What is put aside: small pictures of the panels along the lower edge of the table, one a panel with how many of it.
class Tray {
public:
    struct Item {
        CopyOf next; ///< the copy that is taken when this is picked up
        int count = 0;
        PanelPicture picture; ///< as it lies for itself
        QRectF rect;          ///< viewport pixels; empty: not in sight
    };

    void take(const Job &job, const Layout &layout);
    bool isEmpty() const { return m_items.isEmpty(); }
    const QList<Item> &items() const { return m_items; }
    double height(const SlipFonts &fonts) const;
    void arrange(const QRectF &strip, const SlipFonts &fonts);
    std::optional<CopyOf> copyAt(QPointF viewport) const;
    void paint(QPainter &painter, bool welcoming, const std::string &selected, const Colours &colours,
               const SlipFonts &fonts) const;

private:
    QList<Item> m_items;
    QRectF m_strip;
    int m_hidden = 0; ///< panels that the strip has no room for
};

} // namespace boltwright::ui
