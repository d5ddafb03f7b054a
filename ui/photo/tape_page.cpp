#include "ui/photo/tape_page.h"

#include "core/rules/photo_scale.h"
#include "ui/drawing/cloth_pictures.h"
#include "ui/drawing/colours.h"
#include "ui/drawing/table_frame.h"
#include "ui/photo/photo_words.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QFormLayout>
#include <QHBoxLayout>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

/// Where the photograph cannot be shown, the outline alone: its corners can be taped between as well.
PhotoPicture blank(const Remnant &remnant) {
    PhotoPicture blank;
    blank.box = onTable(remnant.outline).boundingRect().adjusted(-20, -20, 20, 20);
    const double scale = 1600 / std::max(blank.box.width(), blank.box.height());
    blank.picture = QImage((blank.box.size() * scale).toSize().expandedTo(QSize(2, 2)), QImage::Format_RGB32);
    blank.picture.fill(QColor(0xD8, 0xD2, 0xC6));
    return blank;
}

} // namespace

TapePage::TapePage(JobDocument &document, const QString &cloth, const QString &remnant, QWidget *parent)
    : QWidget(parent), m_document(document), m_clothId(toCore(cloth)), m_remnantId(toCore(remnant)),
      m_picture(new MarkedPicture(this)), m_said(paragraphOf({})), m_confirm(new QPushButton(tr("Confirm the scale"))) {
    m_said->setAccessibleName(tr("What the tape says"));
    m_said->setMinimumHeight(4 * m_said->fontMetrics().lineSpacing());
    m_said->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_confirm->setObjectName(u"mainButton"_s);
    m_confirm->setToolTip(tr("The remnant is scaled to what the tape says, and may be printed for cutting."));
    connect(m_confirm, &QPushButton::clicked, this, &TapePage::confirm);
    auto *form = new QFormLayout;
    for (int i : {0, 1}) {
        m_lengths[i] = new LengthEdit(document.job().unit, LengthRange::AboveZero);
        m_lengths[i]->setObjectName(i == 0 ? u"first length"_s : u"second length"_s);
        m_lengths[i]->setMaximumWidth(scaled(130));
        m_lengths[i]->setToolTip(
            tr("What the tape says between these two places on the cloth, lying flat and not pulled."));
        connect(m_lengths[i], &LengthEdit::lengthChanged, this, &TapePage::followMarks);
        form->addRow(i == 0 ? tr("From 1 to 2") : tr("From 3 to 4"), m_lengths[i]);
    }
    auto *side = new QVBoxLayout;
    side->setContentsMargins(0, 0, 0, 0);
    side->addWidget(
        paragraphOf(tr("A photograph alone is not to be cut by: half a percent of two yards is more than a "
                       "quarter of an inch. Tape two lengths on the cloth itself, one along it and one across, "
                       "between places that can be found in the picture.")));
    side->addSpacing(6);
    side->addWidget(
        paragraphOf(tr("Click both ends of the first, then both ends of the second, and write down what the "
                       "tape says.")));
    side->addLayout(form);
    side->addWidget(m_confirm, 0, Qt::AlignLeft);
    side->addWidget(m_said);
    side->addStretch();
    auto *beside = new QWidget(this);
    beside->setFixedWidth(scaled(330));
    beside->setLayout(side);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(20);
    row->addWidget(m_picture, 1);
    row->addWidget(beside);
    setFocusProxy(m_picture);
    if (const Remnant *own = this->remnant()) {
        const auto shown = photoPicture(*own);
        const PhotoPicture photo = shown ? *shown : blank(*own);
        m_fromTable = QTransform::fromTranslate(-photo.box.left(), -photo.box.top()) *
                      QTransform::fromScale(photo.picture.width() / photo.box.width(),
                                            photo.picture.height() / photo.box.height());
        m_picture->setPicture(photo.picture);
        m_picture->setShapes({{m_fromTable.map(onTable(own->outline)), true, false, {}}});
    }
    m_picture->setMarks({}, 4, MarkedPicture::Drawn::Pairs);
    connect(m_picture, &MarkedPicture::marksChanged, this, &TapePage::followMarks);
    followMarks();
}

const Remnant *TapePage::remnant() const {
    const Cloth *cloth = m_document.job().cloth(m_clothId);
    return cloth ? cloth->remnant(m_remnantId) : nullptr;
}

void TapePage::say(const QString &text, bool wrong) {
    const Colours colours = coloursOf(palette());
    QPalette ink = m_said->palette();
    ink.setColor(QPalette::WindowText, wrong ? colours.broken : colours.ink);
    m_said->setPalette(ink);
    m_said->setText(text);
}

void TapePage::followMarks() {
    const auto marks = m_picture->marks();
    m_confirm->setEnabled(marks.size() == 4 && m_lengths[0]->length() && m_lengths[1]->length());
    QStringList lines;
    for (int i = 0; i + 1 < marks.size(); i += 2) {
        const QLineF line(m_fromTable.inverted().map(marks[i]), m_fromTable.inverted().map(marks[i + 1]));
        lines << tr("From %1 to %2 the photograph says about %3.")
                     .arg(i + 1)
                     .arg(i + 2)
                     .arg(shownLengthWithUnit(Length::ticks(qRound64(line.length() * 10) * 32), m_document.job().unit));
    }
    if (marks.size() < 4) lines << tr("Place %1 of 4 is next.").arg(marks.size() + 1);
    say(lines.join(u'\n'), false);
}

void TapePage::confirm() {
    const Remnant *own = remnant();
    if (!own) return;
    std::array<TapedLength, 2> taped;
    for (std::size_t i : {0U, 1U}) {
        const auto at = [&](std::size_t mark) {
            return onCloth(m_fromTable.inverted().map(m_picture->marks()[qsizetype(mark)]));
        };
        taped[i].from = at(2 * i);
        taped[i].to = at(2 * i + 1);
        taped[i].taped = m_lengths[i]->length().value_or(Length{});
    }
    const auto right = scaledByTape(*own, taped);
    if (!right) {
        say(withFractions(fromCore(right.error().text)), true);
        return;
    }
    Job job = m_document.job();
    for (Cloth &cloth : job.cloths)
        for (Remnant &remnant : cloth.remnants)
            if (cloth.id == m_clothId && remnant.id == m_remnantId) remnant = *right;
    if (const auto faults = faultsOfJob(job); !faults.empty()) {
        say(withFractions(fromCore(faults.front())), true);
        return;
    }
    m_document.changeJob(std::move(job), tr("Scale by the tape"));
    Q_EMIT taken();
}

std::pair<QString, QString> firstUntaped(const Job &job) {
    for (const Cloth &cloth : job.cloths)
        for (const Remnant &remnant : cloth.remnants)
            if (!isScaleTaped(remnant)) return {fromCore(cloth.id), fromCore(remnant.id)};
    return {};
}

} // namespace boltwright::ui
