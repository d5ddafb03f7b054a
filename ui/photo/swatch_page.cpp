#include "ui/photo/swatch_page.h"

#include "core/job/pictures.h"
#include "ui/photo/photo_words.h"
#include "ui/photo/read_picture.h"
#include "ui/photo/straightening.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QPainter>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

ClothSample::ClothSample(QWidget *parent) : QWidget(parent) {
    setMinimumHeight(170);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("How the cloth will look"));
}

void ClothSample::show(const Cloth &cloth, int clothIndex, std::shared_ptr<const SwatchPicture> swatch) {
    Cloth plain = cloth;
    if (plain.look) plain.look->swatch.reset(); // the one that is being tried stands in its place
    plain.remnants.clear();
    plain.selvage = Length{};
    plain.bolt = Bolt{};
    plain.bolt->width = Length::ticks(320 * 5000);
    m_sheet = pictureOfBolt(plain, clothIndex, plain.bolt->width);
    m_sheet->endless = false;
    m_sheet->swatch = std::move(swatch);
    double repeat = 150;
    if (cloth.pattern)
        for (const auto &length : {cloth.pattern->across, cloth.pattern->along})
            if (length) repeat = std::max(repeat, length->toMillimetres());
    m_side = repeat * 3;
    update();
}

void ClothSample::paintEvent(QPaintEvent *) {
    QPainter painter(this);
    const Colours colours = coloursOf(palette());
    if (m_sheet) {
        const double scale = width() / m_side;
        // From a place on the cloth where nothing but cloth is to be seen.
        const QTransform toScreen = QTransform::fromTranslate(-1000, -1000) * QTransform::fromScale(scale, scale);
        painter.setClipRect(rect());
        drawSheet(painter, *m_sheet, toScreen, rect(), false, colours);
        painter.setClipping(false);
    }
    painter.setPen(colours.hairline);
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

SwatchPage::SwatchPage(JobDocument &document, int cloth, QWidget *parent)
    : QWidget(parent), m_document(document), m_clothId(document.job().cloths[std::size_t(cloth)].id), m_index(cloth),
      m_picture(new MarkedPicture(this)), m_sample(new ClothSample(this)), m_said(paragraphOf({})),
      m_across(new LengthEdit(document.job().unit, LengthRange::AboveZero)),
      m_along(new LengthEdit(document.job().unit, LengthRange::AboveZero)),
      m_within(new QRadioButton(tr("within the job's file"))), m_take(new QPushButton(tr("Take this picture"))),
      m_remove(new QPushButton(tr("Without a picture"))) {
    auto *open = new QPushButton(tr("Open a picture…"));
    open->setObjectName(u"open picture"_s);
    open->setToolTip(tr("A picture that shows one whole repeat of the cloth."));
    connect(open, &QPushButton::clicked, this, &SwatchPage::askForPicture);
    m_across->setObjectName(u"horizontal repeat"_s);
    m_along->setObjectName(u"vertical repeat"_s);
    m_across->setToolTip(tr("What the picture shows from its left corners to its right ones, measured on the cloth."));
    m_along->setToolTip(tr("What the picture shows from its lower corners to its upper ones, measured on the cloth."));
    for (LengthEdit *edit : {m_across, m_along}) {
        edit->setOptional(tr("none"));
        edit->setMaximumWidth(scaled(130));
        connect(edit, &LengthEdit::lengthChanged, this, &SwatchPage::follow);
    }
    const Cloth &own = *this->cloth();
    if (own.pattern) {
        m_across->setLength(own.pattern->across);
        m_along->setLength(own.pattern->along);
    }
    auto *form = new QFormLayout;
    form->addRow(tr("Horizontal repeat"), m_across);
    form->addRow(tr("Vertical repeat"), m_along);
    auto *beside = new QRadioButton(tr("where it is; the job remembers where"));
    beside->setObjectName(u"beside"_s);
    m_within->setChecked(true);
    m_within->setToolTip(tr("The picture travels with the job; the file grows by as much."));
    beside->setToolTip(tr("The file stays small. If the picture is moved or lost, the cloth is drawn without it."));
    m_take->setToolTip(tr("Draws the cloth with this picture, repeat by repeat."));
    m_remove->setToolTip(tr("Draws the cloth from its description again."));
    m_take->setObjectName(u"mainButton"_s);
    connect(m_take, &QPushButton::clicked, this, &SwatchPage::take);
    connect(m_remove, &QPushButton::clicked, this, &SwatchPage::remove);
    m_said->setMinimumHeight(2 * m_said->fontMetrics().lineSpacing());
    auto *buttons = new QHBoxLayout;
    buttons->addWidget(m_take);
    buttons->addWidget(m_remove);
    buttons->addStretch();
    auto *side = new QVBoxLayout;
    side->setContentsMargins(0, 0, 0, 0);
    side->addWidget(open, 0, Qt::AlignLeft);
    side->addWidget(
        paragraphOf(tr("Drag the four corners to where one repeat begins and ends, its top up, and M to the middle "
                       "of the motif that measures are taken from.")));
    side->addLayout(form);
    side->addWidget(m_sample, 1);
    side->addWidget(new QLabel(tr("The picture is kept")));
    side->addWidget(m_within);
    side->addWidget(beside);
    side->addLayout(buttons);
    side->addWidget(m_said);
    auto *besidePicture = new QWidget(this);
    besidePicture->setFixedWidth(scaled(340));
    besidePicture->setLayout(side);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(20);
    row->addWidget(m_picture, 1);
    row->addWidget(besidePicture);
    m_picture->setMarkNames({u"1"_s, u"2"_s, u"3"_s, u"4"_s, u"M"_s});
    setFocusProxy(open);
    connect(m_picture, &MarkedPicture::marksChanged, this, &SwatchPage::follow);
    if (own.look && own.look->swatch && !own.look->swatch->picture.isEmpty()) {
        const auto read = readPicture(own.look->swatch->picture, swatchSide);
        if (read)
            begin(read->image, *own.look->swatch);
        else
            say(fromCore(read.error().text), true);
    }
    m_remove->setEnabled(own.look && own.look->swatch);
    if (m_picture->picture().isNull() && m_said->text().isEmpty()) follow();
}

const Cloth *SwatchPage::cloth() const { return m_document.job().cloth(m_clothId); }

void SwatchPage::say(const QString &text, bool wrong) {
    const Colours colours = coloursOf(palette());
    QPalette ink = m_said->palette();
    ink.setColor(QPalette::WindowText, wrong ? colours.broken : colours.ink);
    m_said->setPalette(ink);
    m_said->setText(text);
    m_picture->setWrong(wrong);
}

void SwatchPage::askForPicture() {
    const QString file = QFileDialog::getOpenFileName(this, tr("Open a picture"), {},
                                                      tr("Pictures (*.png *.jpg *.jpeg *.svg);;All files (*)"));
    if (!file.isEmpty()) openPicture(file);
}

bool SwatchPage::openPicture(const QString &file) {
    const auto read = readPicture(file, swatchSide);
    if (!read) {
        say(fromCore(read.error().text), true);
        return false;
    }
    m_file = QFileInfo(file).absoluteFilePath();
    begin(read->image, Swatch{});
    m_picture->setFocus();
    return true;
}

void SwatchPage::begin(const QImage &image, const Swatch &swatch) {
    m_picture->setPicture(image);
    QPolygonF marks;
    for (const PicturePoint &p : swatch.corners) marks << QPointF(p.right * image.width(), p.down * image.height());
    QTransform fromShares;
    const QPolygonF unit({{0, 0}, {1, 0}, {1, 1}, {0, 1}});
    if (QTransform::quadToQuad(unit, marks, fromShares))
        marks << fromShares.map(QPointF(swatch.motif.right, swatch.motif.down));
    m_picture->setMarks(marks, 5, MarkedPicture::Drawn::OutlineAndMiddle);
    follow();
}

std::optional<Swatch> SwatchPage::swatch() const {
    const QPolygonF marks = m_picture->marks();
    if (marks.size() != 5 || !cornersOfRectangle(marks.first(4), m_picture->picture().size())) return std::nullopt;
    QTransform toShares;
    if (!QTransform::quadToQuad(marks.first(4), QPolygonF({{0, 0}, {1, 0}, {1, 1}, {0, 1}}), toShares))
        return std::nullopt;
    Swatch swatch;
    swatch.corners.clear();
    const QSizeF size = m_picture->picture().size();
    for (const QPointF &p : marks.first(4)) swatch.corners.push_back({p.x() / size.width(), p.y() / size.height()});
    const QPointF motif = toShares.map(marks[4]);
    swatch.motif = {motif.x(), motif.y()};
    return swatch;
}

Cloth SwatchPage::clothWith(const Swatch &swatch) const {
    Cloth cloth = *this->cloth();
    if (!cloth.look) cloth.look = ClothLook{};
    cloth.look->swatch = swatch;
    if (m_across->length() || m_along->length()) {
        if (!cloth.pattern) cloth.pattern = Pattern{};
        cloth.pattern->across = m_across->length();
        cloth.pattern->along = m_along->length();
    } else {
        cloth.pattern.reset();
    }
    return cloth;
}

void SwatchPage::follow() {
    const auto tried = swatch();
    m_take->setEnabled(false);
    if (!cloth()) return;
    if (m_picture->picture().isNull()) {
        m_sample->show(*cloth(), m_index, nullptr);
        say(tr("No picture is open yet."), false);
        return;
    }
    if (m_picture->marks().size() < 5) {
        say(m_picture->marks().size() < 4 ? tr("Corner %1 of 4 is next.").arg(m_picture->marks().size() + 1)
                                          : tr("The middle of the motif is next."),
            false);
        return;
    }
    if (!tried) {
        const auto why = cornersOfRectangle(m_picture->marks().first(4), m_picture->picture().size());
        say(why ? QString() : fromCore(why.error().text), true);
        return;
    }
    // What is tried is drawn from the picture at hand, long before anything is kept.
    auto picture = std::make_shared<SwatchPicture>(straightenedSwatch(m_picture->picture(), *tried));
    m_sample->show(clothWith(*tried), m_index, picture);
    const bool repeats = m_across->length() || m_along->length();
    m_take->setEnabled(repeats);
    say(repeats ? tr("✓ This is how the cloth will look.") : tr("Write down how far it is from motif to motif."),
        !repeats);
}

void SwatchPage::take() {
    auto kept = swatch();
    if (!kept || !cloth()) return;
    if (m_file.isEmpty())
        kept->picture = cloth()->look->swatch->picture;
    else if (m_within->isChecked())
        kept->picture.data = bytesToKeep(m_picture->picture());
    else
        kept->picture =
            pictureInFile(QFileInfo(m_file).filesystemFilePath(),
                          m_document.fileName().isEmpty() ? std::filesystem::path()
                                                          : QFileInfo(m_document.fileName()).filesystemAbsolutePath());
    Job job = m_document.job();
    for (Cloth &own : job.cloths)
        if (own.id == m_clothId) own = clothWith(*kept);
    if (const auto faults = faultsOfJob(job); !faults.empty()) {
        say(withFractions(fromCore(faults.front())), true);
        return;
    }
    m_document.changeJob(std::move(job), tr("Picture of the cloth"));
    Q_EMIT taken();
}

void SwatchPage::remove() {
    Job job = m_document.job();
    for (Cloth &own : job.cloths)
        if (own.id == m_clothId && own.look) own.look->swatch.reset();
    m_document.changeJob(std::move(job), tr("Cloth without a picture"));
    Q_EMIT taken();
}

} // namespace boltwright::ui
