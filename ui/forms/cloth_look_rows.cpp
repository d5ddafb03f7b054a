#include "ui/forms/cloth_look_rows.h"

#include "core/measure/length_text.h"
#include "ui/drawing/colours.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QColorDialog>
#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QObject>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QRegularExpression>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QIcon patch(const QColor &colour) {
    QPixmap pixmap(28, 16);
    pixmap.fill(colour);
    QPainter painter(&pixmap);
    painter.setPen(lightColours().ink);
    painter.drawRect(0, 0, 27, 15);
    return pixmap;
}

/// A button that shows a colour and asks for another; a second one takes the program's own again.
QWidget *colourRow(const QString &name, const std::string &told, const QColor &shown,
                   const std::function<void(const std::string &)> &set) {
    auto *row = new QWidget;
    auto *button =
        new QPushButton(patch(shown), u" "_s + (told.empty() ? QObject::tr("usual colour") : fromCore(told)));
    button->setIconSize({28, 16});
    button->setObjectName(u"field "_s + name);
    button->setAccessibleName(name);
    button->setToolTip(QObject::tr("Choose another colour."));
    QObject::connect(button, &QPushButton::clicked, row, [row, shown, name, set] {
        const QColor chosen = QColorDialog::getColor(shown, row->window(), name, QColorDialog::DontUseNativeDialog);
        if (chosen.isValid()) set(toCore(chosen.name()));
    });
    auto *layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(button);
    if (!told.empty()) {
        auto *back = new QPushButton(QObject::tr("Our own again"));
        back->setToolTip(QObject::tr("Draws it in the colour that Boltwright gives such a cloth."));
        QObject::connect(back, &QPushButton::clicked, row, [set] { set({}); });
        layout->addWidget(back);
    }
    layout->addStretch();
    return row;
}

QWidget *bandsRow(const Cloth &cloth, Unit unit, const ChangeLook &change) {
    auto *row = new QWidget;
    auto *text = new QPlainTextEdit(bandsText(cloth.look ? cloth.look->bands : std::vector<Band>(), unit));
    text->setMaximumSize(320, 84);
    text->setTabChangesFocus(true);
    text->setObjectName(u"field bands"_s);
    text->setAccessibleName(QObject::tr("Stripes of the repeat"));
    text->setPlaceholderText(QObject::tr("the three usual ones"));
    text->setToolTip(QObject::tr("One stripe a line: from the motif's middle to the stripe's nearer edge, how wide it "
                                 "is, its colour. For example: -1, 2, #4a5a66"));
    auto *take = new QPushButton(QObject::tr("Take these stripes"));
    take->setToolTip(QObject::tr("Draws the cloth with the stripes that are written here."));
    auto *refusal = new QLabel;
    refusal->setObjectName(u"refusal"_s);
    refusal->setWordWrap(true);
    refusal->hide();
    QObject::connect(take, &QPushButton::clicked, row, [text, unit, change, refusal] {
        const auto read = readBands(text->toPlainText(), unit);
        if (!read) {
            refusal->setText(withFractions(fromCore(read.error().text)));
            refusal->show();
            return;
        }
        change(QObject::tr("Stripes"), [bands = *read](ClothLook &look) { look.bands = bands; });
    });
    auto *layout = new QHBoxLayout;
    layout->addWidget(text);
    layout->addWidget(take, 0, Qt::AlignTop);
    layout->addStretch();
    auto *column = new QVBoxLayout(row);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(layout);
    column->addWidget(refusal);
    return row;
}

} // namespace

QString bandsText(const std::vector<Band> &bands, Unit unit) {
    QStringList lines;
    for (const Band &band : bands)
        lines << u"%1, %2, %3"_s.arg(fromCore(writeDecimal(band.from, unit)), fromCore(writeDecimal(band.width, unit)),
                                     fromCore(band.colour));
    return lines.join(u'\n');
}

Result<std::vector<Band>> readBands(const QString &text, Unit unit) {
    std::vector<Band> bands;
    int number = 0;
    for (const QString &line : text.split(u'\n')) {
        ++number;
        if (line.trimmed().isEmpty()) continue;
        const auto refuse = [&](const QString &why) {
            return fault(toCore(QObject::tr("Line %1: %2").arg(number).arg(why)));
        };
        // A comma may be a decimal mark as well, so only one before a space parts two fields.
        const QStringList parts = line.trimmed().split(QRegularExpression(u"(?:,\\s+|;\\s*|\\t\\s*)"_s));
        if (parts.size() != 3)
            return refuse(QObject::tr("write from where, how wide and what colour, such as -1, 2, #4a5a66"));
        const auto from = typedLength(parts[0], unit, LengthRange::Any),
                   width = typedLength(parts[1], unit, LengthRange::AboveZero);
        if (!from) return refuse(fromCore(from.error().text));
        if (!width) return refuse(fromCore(width.error().text));
        const QColor colour(parts[2].trimmed());
        if (!colour.isValid())
            return refuse(QObject::tr("%1 is no colour; write one such as #4a5a66").arg(parts[2].trimmed()));
        bands.push_back({*from, *width, toCore(colour.name()), {}});
    }
    return bands;
}

void addLookRows(QFormLayout *form, const Cloth &cloth, int clothIndex, Unit unit, const ChangeLook &change,
                 const std::function<void()> &swatchWanted) {
    const ClothLook look = cloth.look.value_or(ClothLook{});
    const ClothColours shown = clothColours(cloth.look, clothIndex, false);
    auto *swatch = new QPushButton(look.swatch ? QObject::tr("Your picture of it…")
                                               : QObject::tr("From a picture of one repeat…"));
    swatch->setMaximumWidth(scaled(260));
    swatch->setObjectName(u"swatch"_s);
    swatch->setToolTip(QObject::tr("Draw the cloth from your own picture of one repeat."));
    QObject::connect(swatch, &QPushButton::clicked, form->parentWidget(), [swatchWanted] { swatchWanted(); });
    form->addRow(QObject::tr("How it looks"), swatch);
    if (look.swatch) return; // which is drawn in place of what could be told here
    form->addRow(QObject::tr("Its ground"),
                 colourRow(QObject::tr("Its ground"), look.ground, shown.ground, [change](const std::string &colour) {
                     change(QObject::tr("Ground"), [colour](ClothLook &l) { l.ground = colour; });
                 }));
    if (!cloth.pattern) return;
    form->addRow(QObject::tr("What is on it"),
                 colourRow(QObject::tr("What is on it"), look.colour, shown.figure, [change](const std::string &c) {
                     change(QObject::tr("Colour"), [c](ClothLook &l) { l.colour = c; });
                 }));
    const bool both = cloth.pattern->across && cloth.pattern->along;
    if (both) {
        auto *figure = new QComboBox;
        figure->addItems({QObject::tr("a sprig"), QObject::tr("spots"), QObject::tr("stripes")});
        const Figure drawn = look.figure.value_or(Figure::Sprig);
        figure->setCurrentIndex(drawn == Figure::Sprig ? 0 : drawn == Figure::Spots ? 1 : 2);
        figure->setMaximumWidth(scaled(170));
        figure->setToolTip(
            QObject::tr("What stands for the motif on screen and paper. It changes nothing about the cut."));
        figure->setObjectName(u"field figure"_s);
        QObject::connect(figure, &QComboBox::activated, form->parentWidget(), [change](int index) {
            change(QObject::tr("Figure"), [index](ClothLook &l) {
                l.figure = index == 0 ? Figure::Sprig : index == 1 ? Figure::Spots : Figure::Stripes;
            });
        });
        form->addRow(QObject::tr("Drawn as"), figure);
        if (drawn != Figure::Stripes) {
            auto *size = new LengthEdit(unit, LengthRange::AboveZero);
            size->setOptional(QObject::tr("as there is room"));
            size->setMaximumWidth(scaled(170));
            size->setToolTip(QObject::tr("How wide the motif is drawn. It changes nothing about the cut."));
            size->setObjectName(u"field size"_s);
            size->setLength(look.size);
            QObject::connect(size, &LengthEdit::lengthChanged, form->parentWidget(),
                             [change](std::optional<Length> length) {
                                 change(QObject::tr("Size of the figure"), [length](ClothLook &l) { l.size = length; });
                             });
            form->addRow(QObject::tr("How wide"), size);
            return;
        }
    }
    form->addRow(QObject::tr("Stripes"), bandsRow(cloth, unit, change));
}

} // namespace boltwright::ui
