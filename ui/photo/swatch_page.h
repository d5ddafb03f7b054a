#pragma once

#include "ui/document/job_document.h"
#include "ui/drawing/cloth_drawing.h"
#include "ui/photo/marked_picture.h"

#include <QLabel>
#include <QPushButton>
#include <QRadioButton>

namespace boltwright::ui {

class LengthEdit;

/// A piece of cloth as it would lie on the table, two repeats and more: to try a look on.
class ClothSample : public QWidget {
    Q_OBJECT
public:
    explicit ClothSample(QWidget *parent = nullptr);
    void show(const Cloth &cloth, int clothIndex, std::shared_ptr<const SwatchPicture> swatch);

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    std::optional<SheetPicture> m_sheet;
    double m_side = 600; ///< millimetres shown from left to right
};

/// The user's own picture of one repeat: its four corners and the middle of the motif are placed on it, and it is
/// scaled to the cloth's repeat.
class SwatchPage : public QWidget {
    Q_OBJECT
public:
    SwatchPage(JobDocument &document, int cloth, QWidget *parent = nullptr);
    bool openPicture(const QString &file); ///< false: it cannot be read, and the page says why
    MarkedPicture &picture() { return *m_picture; }
    QString said() const { return m_said->text(); }

Q_SIGNALS:
    void taken();

private:
    const Cloth *cloth() const; ///< null: it is gone
    void askForPicture();
    void begin(const QImage &image, const Swatch &swatch);
    void follow();
    void say(const QString &text, bool wrong);
    std::optional<Swatch> swatch() const; ///< as it stands; none: its corners cannot be what is meant
    Cloth clothWith(const Swatch &swatch) const;
    void take();
    void remove();

    JobDocument &m_document;
    std::string m_clothId;
    int m_index;
    MarkedPicture *m_picture;
    ClothSample *m_sample;
    QLabel *m_said;
    LengthEdit *m_across, *m_along;
    QRadioButton *m_within;
    QPushButton *m_take, *m_remove;
    QString m_file; ///< empty: the picture is the one that the job has already
};

} // namespace boltwright::ui
