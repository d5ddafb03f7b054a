#include "ui/photo/remnant_page.h"

#include "core/edit/job_edit.h"
#include "core/geometry/shape_ops.h"
#include "core/job/pictures.h"
#include "ui/drawing/colours.h"
#include "ui/photo/corner_fit.h"
#include "ui/photo/photo_words.h"
#include "ui/photo/read_picture.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr int mostCorners = 200;

std::string freeRemnantId(const Cloth &cloth) {
    for (char letter = 'A'; letter <= 'Z'; ++letter)
        if (!cloth.remnant(std::string(1, letter))) return std::string(1, letter);
    int number = 1;
    while (cloth.remnant("R" + std::to_string(number))) ++number;
    return "R" + std::to_string(number);
}

QString nameOfCloth(const Cloth &cloth) { return fromCore(cloth.name.empty() ? cloth.id : cloth.name); }

/// The first cloth is a bolt that nobody has laid anything on yet: the remnant may well be the cloth that is meant.
bool boltIsUnused(const Job &job) {
    return !job.cloths.empty() && job.cloths.front().bolt &&
           std::all_of(job.layouts.begin(), job.layouts.end(), [](const Layout &l) { return l.cuts.empty(); });
}

} // namespace

RemnantPage::RemnantPage(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_picture(new MarkedPicture(this)), m_steps(new QStackedWidget(this)),
      m_said(new QLabel(this)) {
    m_said->setWordWrap(true);
    m_said->setAccessibleName(tr("What is found so far"));
    m_said->setMinimumHeight(4 * m_said->fontMetrics().lineSpacing());
    m_said->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_steps->addWidget(cornersStep());
    m_steps->addWidget(outlineStep());
    auto *side = new QVBoxLayout;
    side->addWidget(m_steps, 1);
    side->addWidget(m_said);
    auto *beside = new QWidget(this);
    beside->setFixedWidth(scaled(330));
    beside->setLayout(side);
    side->setContentsMargins(0, 0, 0, 0);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(20);
    row->addWidget(m_picture, 1);
    row->addWidget(beside);
    connect(m_picture, &MarkedPicture::marksChanged, this, &RemnantPage::followMarks);
    connect(m_picture, &MarkedPicture::markPlaced, this, &RemnantPage::settleCorners);
    connect(m_picture, &MarkedPicture::outlineClosed, this, &RemnantPage::closeOutline);
    connect(m_picture, &MarkedPicture::refused, this, [this](const QString &sentence) { say(sentence, false); });
    setFocusProxy(m_steps->widget(0)->findChild<QPushButton *>(u"open picture"_s));
    m_known->setCurrentIndex(document.job().unit == Unit::Inch ? Letter : A4);
    knownChanged();
    goTo(Corners);
}

QWidget *RemnantPage::cornersStep() {
    const Unit unit = m_document.job().unit;
    auto *page = new QWidget;
    auto *open = new QPushButton(tr("Open a photograph…"));
    open->setObjectName(u"open picture"_s);
    open->setToolTip(tr("A picture of the remnant lying flat, with something of known size beside or on it."));
    connect(open, &QPushButton::clicked, this, &RemnantPage::askForPicture);
    m_fileName = paragraphOf(tr("Lay the remnant flat, with a sheet of paper on it, and photograph it from above."));
    m_fileName->setObjectName(u"quiet"_s);
    m_known = new QComboBox;
    m_known->setObjectName(u"known"_s);
    m_known->addItems(
        {tr("a sheet of A4 paper"), tr("a sheet of Letter paper"), tr("a yardstick laid twice"), tr("something else")});
    m_known->setToolTip(tr("What of known size lies flat on the cloth. The larger it is, the smaller is the error."));
    connect(m_known, &QComboBox::activated, this, &RemnantPage::knownChanged);
    m_firstWord = new QLabel;
    m_secondWord = new QLabel;
    m_first = new LengthEdit(unit, LengthRange::AboveZero);
    m_second = new LengthEdit(unit, LengthRange::AboveZero);
    m_first->setObjectName(u"first side"_s);
    m_second->setObjectName(u"second side"_s);
    for (LengthEdit *edit : {m_first, m_second}) {
        edit->setMaximumWidth(scaled(130));
        edit->setToolTip(tr("Measure it on the thing itself: every length of the remnant is scaled by it."));
        connect(edit, &LengthEdit::lengthChanged, this, &RemnantPage::takeKnown);
    }
    m_longFirst = new QCheckBox(tr("From corner 1 to 2 is its longer side"));
    m_longFirst->setChecked(true);
    m_longFirst->setToolTip(tr("Guessed from how it looks. Change it where the photograph was taken at a slant and the "
                               "guess is wrong: else all comes out too long one way and too short the other."));
    connect(m_longFirst, &QCheckBox::clicked, this, [this](bool on) {
        m_sideChosen = true;
        m_find.longFirst = on;
        sayCorners();
    });
    m_next = new QPushButton(tr("Trace the outline"));
    m_next->setObjectName(u"mainButton"_s);
    m_next->setToolTip(tr("Straightens the picture by these corners, and goes on to the remnant's own edge."));
    connect(m_next, &QPushButton::clicked, this, [this] { goTo(Outline); });
    auto *form = new QFormLayout;
    form->addRow(tr("Known in it"), m_known);
    form->addRow(m_firstWord, m_first);
    form->addRow(m_secondWord, m_second);
    m_firstWord->setBuddy(m_first);
    m_secondWord->setBuddy(m_second);
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(open, 0, Qt::AlignLeft);
    column->addWidget(m_fileName);
    column->addSpacing(8);
    column->addLayout(form);
    column->addWidget(
        paragraphOf(tr("Click its four corners in the picture, one way round. The wheel goes nearer, which a "
                       "small sheet needs; a corner can be dragged, or moved with the arrow keys. It "
                       "comes to rest where the edges meet; with Alt held it stays where it is put.")));
    column->addWidget(m_longFirst);
    column->addWidget(m_next, 0, Qt::AlignLeft);
    column->addStretch();
    return page;
}

QWidget *RemnantPage::outlineStep() {
    auto *page = new QWidget;
    auto *back = new QPushButton(tr("Back to the corners"));
    back->setToolTip(tr("To put a corner right. What is traced already moves with it."));
    connect(back, &QPushButton::clicked, this, [this] { goTo(Corners); });
    m_again = new QPushButton(tr("Trace again"));
    m_again->setToolTip(tr("Forget the outline and begin anew."));
    connect(m_again, &QPushButton::clicked, this, [this] {
        m_find.outline.clear();
        m_find.flaws.clear();
        m_traced = false;
        beginFlaw(false);
    });
    m_flawButton = new QPushButton(tr("Mark a flaw"));
    m_flawButton->setToolTip(tr("Trace a stain, hole or pulled thread: no panel will lie on it."));
    connect(m_flawButton, &QPushButton::clicked, this, [this] { beginFlaw(true); });
    m_top = new QComboBox;
    m_top->setObjectName(u"top"_s);
    m_top->addItems({tr("at the picture's top"), tr("at its right"), tr("at its bottom"), tr("at its left")});
    m_top->setToolTip(tr("Where nap or print points to, up the roll. It cannot be seen in a picture of plain cloth."));
    connect(m_top, &QComboBox::activated, this, [this](int index) {
        m_find.top = PhotoTop(index);
        sayOutline();
    });
    m_where = new QComboBox;
    m_where->setObjectName(u"where"_s);
    m_where->setToolTip(tr("Panels of the job's first cloth are laid on it when it takes the bolt's place."));
    const Job &job = m_document.job();
    if (boltIsUnused(job)) m_where->addItem(tr("in place of the bolt"), 0);
    m_where->addItem(tr("as a cloth of its own"), -1);
    for (std::size_t i = 0; i < job.cloths.size(); ++i)
        if (!job.cloths[i].bolt) m_where->addItem(tr("with %1").arg(nameOfCloth(job.cloths[i])), int(i));
    m_within = new QRadioButton(tr("within the job's file"));
    m_within->setChecked(true);
    auto *beside = new QRadioButton(tr("where it is; the job remembers where"));
    beside->setObjectName(u"beside"_s);
    m_within->setToolTip(tr("The picture travels with the job; the file grows by as much."));
    beside->setToolTip(tr("The file stays small. If the picture is moved or lost, the cloth is drawn without it."));
    m_take = new QPushButton(tr("Put it on the table"));
    m_take->setObjectName(u"mainButton"_s);
    m_take->setToolTip(tr("The remnant lies on the table then, with its flaws; next, two lengths of it are taped."));
    connect(m_take, &QPushButton::clicked, this, &RemnantPage::putOnTable);
    auto *form = new QFormLayout;
    form->setRowWrapPolicy(QFormLayout::WrapAllRows);
    form->addRow(tr("The cloth's top (up the roll) is"), m_top);
    form->addRow(tr("It joins the job"), m_where);
    auto *keep = new QVBoxLayout;
    keep->addWidget(m_within);
    keep->addWidget(beside);
    form->addRow(tr("The picture is kept"), keep);
    auto *buttons = new QHBoxLayout;
    buttons->addWidget(m_flawButton);
    buttons->addWidget(m_again);
    buttons->addStretch();
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(back, 0, Qt::AlignLeft);
    column->addWidget(
        paragraphOf(tr("Click along the remnant's edge from corner to corner, a little inside where it frays. "
                       "Click the first corner again, or press Ctrl+Enter, to close it. Then its corners can still be "
                       "dragged; the middle of a side pulls out another, and Delete takes one away.")));
    column->addLayout(buttons);
    column->addSpacing(8);
    column->addLayout(form);
    column->addWidget(m_take, 0, Qt::AlignLeft);
    column->addStretch();
    return page;
}

void RemnantPage::say(const QString &text, bool wrong) {
    const Colours colours = coloursOf(palette());
    QPalette ink = m_said->palette();
    ink.setColor(QPalette::WindowText, wrong ? colours.broken : colours.ink);
    m_said->setPalette(ink);
    m_said->setText(text);
    m_picture->setWrong(wrong);
}

void RemnantPage::askForPicture() {
    const QString file = QFileDialog::getOpenFileName(this, tr("Open a photograph"), {},
                                                      tr("Pictures (*.png *.jpg *.jpeg *.svg);;All files (*)"));
    if (!file.isEmpty()) openPicture(file);
}

bool RemnantPage::openPicture(const QString &file) {
    const auto read = readPicture(file, photoSide);
    if (!read) {
        say(fromCore(read.error().text), true);
        return false;
    }
    m_file = QFileInfo(file).absoluteFilePath();
    m_find = PhotoFind{};
    m_find.photo = read->image;
    m_traced = false;
    m_sideChosen = false;
    m_fileName->setText(
        tr("%1, %2 × %3").arg(QFileInfo(file).fileName()).arg(read->full.width()).arg(read->full.height()));
    goTo(Corners);
    takeKnown();
    m_picture->setFocus();
    return true;
}

void RemnantPage::knownChanged() {
    const int known = m_known->currentIndex();
    m_firstWord->setText(known == Yardstick ? tr("Its length") : tr("One side"));
    m_secondWord->setText(known == Yardstick ? tr("Laid apart by") : tr("The other"));
    const bool inches = m_document.job().unit == Unit::Inch;
    using namespace boltwright::literals;
    const std::pair<Length, Length> sides[] = {{210_mm, 297_mm},
                                               {8.5_in, 11_in},
                                               {inches ? 36_in : 100_cm, inches ? 24_in : 60_cm},
                                               {inches ? 20_in : 50_cm, inches ? 30_in : 70_cm}};
    m_first->setLength(sides[known].first);
    m_second->setLength(sides[known].second);
    const bool paper = known == A4 || known == Letter;
    m_first->setEnabled(!paper);
    m_second->setEnabled(!paper);
    m_known->setToolTip(known == Yardstick
                            ? tr("Lay it once, and again beside it with the ends level: its four ends are the corners.")
                            : tr("What of known size lies flat on the cloth."));
    takeKnown();
}

void RemnantPage::takeKnown() {
    m_find.known = {m_first->length().value_or(Length{}).toMillimetres(),
                    m_second->length().value_or(Length{}).toMillimetres()};
    if (m_step == Corners) sayCorners();
}

void RemnantPage::goTo(Step step) {
    if (step == Outline && !m_find.isStraight()) return;
    m_step = step;
    m_steps->setCurrentIndex(step);
    if (step == Corners) {
        m_picture->setPicture(m_find.photo);
        m_picture->setShapes({});
        m_picture->setMarks(m_find.corners, 4, MarkedPicture::Drawn::Outline);
        sayCorners();
        return;
    }
    m_straight = straightened(m_find);
    m_picture->setPicture(m_straight.image);
    beginFlaw(false);
    m_picture->setFocus();
}

void RemnantPage::beginFlaw(bool flaw) {
    m_flaw = flaw;
    QPolygonF marks;
    if (!flaw) marks = m_straight.fromPhoto.map(m_find.outline);
    m_picture->setMarks(marks, mostCorners,
                        !flaw && m_traced ? MarkedPicture::Drawn::Ring : MarkedPicture::Drawn::Outline);
    showShapes();
    sayOutline();
    m_picture->setFocus();
}

void RemnantPage::showShapes() {
    QList<MarkedPicture::Shape> shapes;
    if (m_traced && m_flaw) shapes.append({m_straight.fromPhoto.map(m_find.outline), true, false, {}});
    for (const QPolygonF &flaw : m_find.flaws) shapes.append({m_straight.fromPhoto.map(flaw), true, true, {}});
    m_picture->setShapes(shapes);
}

void RemnantPage::followMarks() {
    if (m_step == Corners) {
        const QPolygonF &marks = m_picture->marks();
        for (int i = 0; i < 4; ++i)
            if (marks.size() != m_find.corners.size())
                m_cornerIs[std::size_t(i)] = CornerIs::Clicked;
            else if (i < marks.size() && marks[i] != m_find.corners[i])
                m_cornerIs[std::size_t(i)] = CornerIs::Set; // by hand or key; a click is told of by itself
        m_find.corners = marks;
        m_find.fitted = false;
        if (m_find.corners.size() == 4 && !m_sideChosen) {
            m_find.longFirst = looksLongFirst(m_find.corners);
            m_longFirst->setChecked(m_find.longFirst);
        }
        sayCorners();
        return;
    }
    if (!m_flaw) m_find.outline = m_straight.fromPhoto.inverted().map(m_picture->marks());
    sayOutline();
}

void RemnantPage::settleCorners(int placed) {
    if (m_step != Corners || placed > 3) return;
    m_cornerIs[std::size_t(placed)] = CornerIs::Clicked;
    // Between two yardsticks lies cloth, and whatever line is in it is no edge of what is known.
    if (!m_find.isStraight() || m_known->currentIndex() == Yardstick) return;
    // A hand misses by a pixel or two of the screen, which are more of a photograph that is shown small; but what is
    // looked for farther off is as likely a stripe of the cloth.
    const auto found = cornersOnEdges(m_find.photo, m_find.corners, std::clamp(2 / m_picture->pixelsShown(), 5.0, 7.0),
                                      m_known->currentIndex() == Own ? SheetShade::Any : SheetShade::Lighter);
    for (int i = 0; i < 4; ++i)
        if (const auto &corner = found[std::size_t(i)]; corner && m_cornerIs[std::size_t(i)] == CornerIs::Clicked) {
            m_picture->settle(i, *corner);
            m_cornerIs[std::size_t(i)] = CornerIs::Found;
        }
    m_find.corners = m_picture->marks();
    m_find.fitted =
        std::all_of(m_cornerIs.begin(), m_cornerIs.end(), [](CornerIs is) { return is == CornerIs::Found; });
    sayCorners();
}

QString RemnantPage::aboutCorners() const {
    if (m_known->currentIndex() == Yardstick) return {};
    if (m_find.fitted) return tr("All four corners came to rest where the edges meet, finer than a click.");
    QStringList clicked;
    for (int i = 0; i < 4; ++i)
        if (m_cornerIs[std::size_t(i)] == CornerIs::Clicked) clicked << QString::number(i + 1);
    if (clicked.isEmpty()) return {};
    return tr("No clear edges were found beside corner %1: go nearer with the wheel, and move it by the arrow keys.")
        .arg(clicked.join(tr(" and ")));
}

void RemnantPage::closeOutline() {
    const QPolygonF traced = m_straight.fromPhoto.inverted().map(m_picture->marks());
    PhotoFind closed = m_find;
    if (m_flaw)
        closed.flaws.append(traced);
    else
        closed.outline = traced;
    const auto remnant = remnantOf(closed, {});
    if (!remnant) {
        say(fromCore(remnant.error().text), true);
        return;
    }
    m_find = closed;
    m_traced = true;
    beginFlaw(false);
}

void RemnantPage::sayCorners() {
    m_longFirst->setEnabled(m_find.corners.size() == 4 && m_find.known.across != m_find.known.down);
    m_next->setEnabled(m_find.isStraight());
    if (m_find.photo.isNull()) {
        say(tr("No photograph is open yet."), false);
    } else if (m_find.corners.size() < 4) {
        say(tr("Corner %1 of 4 is next.").arg(m_find.corners.size() + 1), false);
    } else if (const auto right = cornersOfRectangle(m_find.corners, m_find.photo.size()); !right) {
        say(withFractions(fromCore(right.error().text)), true);
    } else if (!m_find.isStraight()) {
        say(tr("Write down how large it is."), true);
    } else {
        say(QStringList{tr("✓ The picture can be straightened."), aboutCorners()}.join(u' '), false);
    }
}

void RemnantPage::sayOutline() {
    const Unit unit = m_document.job().unit;
    m_take->setEnabled(m_traced && !m_flaw);
    m_flawButton->setEnabled(m_traced && !m_flaw);
    m_again->setEnabled(!m_find.outline.isEmpty());
    if (m_flaw) {
        say(tr("Click round the flaw, and close it by clicking its first corner again."), false);
        return;
    }
    if (!m_traced) {
        say(m_find.outline.size() < 3 ? tr("Corner %1 is next.").arg(m_find.outline.size() + 1)
                                      : tr("%n corners so far.", nullptr, int(m_find.outline.size())),
            false);
        return;
    }
    const auto remnant = remnantOf(m_find, {});
    if (!remnant) { // a corner was dragged to where it cannot be meant
        m_take->setEnabled(false);
        m_flawButton->setEnabled(false);
        say(fromCore(remnant.error().text), true);
        return;
    }
    const ClothBox box = boxOf(remnant->outline);
    // In eighths or whole millimetres: a photograph tells no more.
    const auto about = [&](Length length) {
        const Length step = marginFor(0, unit);
        return Length::ticks((length.ticks() + step.ticks() / 2) / step.ticks() * step.ticks());
    };
    say(tr("About %1 across and %2 up the roll. A click may be off by %3: so much is kept from the edge.")
            .arg(shownLengthWithUnit(about(box.width()), unit), shownLengthWithUnit(about(box.height()), unit),
                 shownLengthWithUnit(marginFor(errorOf(m_find), unit), unit)),
        false);
}

PictureSource RemnantPage::pictureToKeep() const {
    if (m_within->isChecked()) {
        PictureSource picture;
        picture.data = bytesToKeep(m_find.photo);
        return picture;
    }
    const QString job = m_document.fileName();
    return pictureInFile(QFileInfo(m_file).filesystemFilePath(),
                         job.isEmpty() ? std::filesystem::path() : QFileInfo(job).filesystemAbsolutePath());
}

void RemnantPage::putOnTable() {
    auto remnant = remnantOf(m_find, pictureToKeep());
    if (!remnant) {
        say(fromCore(remnant.error().text), true);
        return;
    }
    Job job = m_document.job();
    const int where = m_where->currentData().toInt();
    int index = where;
    if (where < 0) {
        job.cloths.push_back(newCloth(job));
        index = int(job.cloths.size()) - 1;
    }
    Cloth &cloth = job.cloths[std::size_t(index)];
    if (cloth.bolt) {
        cloth.bolt.reset();
        cloth.selvage = Length{};
    }
    remnant->id = freeRemnantId(cloth);
    cloth.edge = std::max(cloth.edge, marginFor(errorOf(m_find), job.unit));
    cloth.remnants.push_back(*remnant);
    if (const auto faults = faultsOfJob(job); !faults.empty()) {
        say(withFractions(fromCore(faults.front())), true);
        return;
    }
    const QString clothId = fromCore(cloth.id), id = fromCore(remnant->id);
    m_document.changeJob(std::move(job), tr("Remnant from a photograph"));
    Q_EMIT taken(clothId, id);
}

} // namespace boltwright::ui
