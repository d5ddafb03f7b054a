#include "ui/forms/cloth_form.h"

#include "core/edit/job_edit.h"
#include "core/rules/photo_scale.h"
#include "core/trimmings/bow_and_skew.h"
#include "core/trimmings/repeat.h"
#include "ui/drawing/colours.h"
#include "ui/forms/cloth_look_rows.h"
#include "ui/forms/sheet_form.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"
#include "ui/widgets/wrapping_row.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QLocale>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QSpinBox>
#include <QTimer>

#include <algorithm>
#include <cmath>
#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QString nameOfCloth(const Cloth &cloth) { return fromCore(cloth.name.empty() ? cloth.id : cloth.name); }

/// A thread from selvage to selvage as it lies, against the straight line; what is off is drawn larger than it is.
class ShiftPicture : public QWidget {
public:
    ShiftPicture(Length bow, Length skew) : m_bow(bow), m_skew(skew) {
        setFixedSize(190, 56);
        setAccessibleName(QObject::tr("How a thread lies across the width"));
    }

protected:
    void paintEvent(QPaintEvent *) override {
        const Colours c = coloursOf(palette());
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const QRectF cloth = QRectF(rect()).adjusted(4, 4, -4, -4);
        painter.setPen(QPen(c.hairline, 1));
        painter.setBrush(c.tape);
        painter.drawRect(cloth);
        const double middle = cloth.center().y(), most = cloth.height() / 2 - 6;
        const double off = std::max({m_bow.toMillimetres(), std::abs(m_skew.toMillimetres()), 1.0});
        const double scale = most / off;
        painter.setPen(QPen(c.quiet, 1, Qt::DashLine));
        painter.drawLine(QPointF(cloth.left(), middle), QPointF(cloth.right(), middle));
        QPolygonF thread;
        for (int i = 0; i <= 40; ++i) {
            const double t = i / 40.0;
            const double up = m_skew.toMillimetres() * (t - 0.5) + m_bow.toMillimetres() * 4 * t * (1 - t) * 0.9;
            thread << QPointF(cloth.left() + t * cloth.width(), middle - up * scale);
        }
        painter.setPen(QPen(c.broken, 2));
        painter.drawPolyline(thread);
    }

private:
    Length m_bow, m_skew;
};

} // namespace

ClothForm::ClothForm(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_which(new QComboBox(this)),
      m_main(new QPushButton(tr("Make it the main one"), this)), m_refusal(new QLabel(this)), m_told(new QLabel(this)),
      m_scroll(new QScrollArea(this)) {
    m_refusal->setObjectName(u"refusal"_s);
    m_refusal->setWordWrap(true);
    m_refusal->hide();
    m_told->setObjectName(u"told"_s);
    m_told->setWordWrap(true);
    m_told->setTextFormat(Qt::PlainText);
    m_told->setAccessibleName(tr("What became of it"));
    m_told->hide();
    m_which->setMinimumWidth(scaled(220));
    m_which->setAccessibleName(tr("Which cloth"));
    m_which->setToolTip(tr("The cloth that is described below; a job may have several."));
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    auto *add = new QPushButton(tr("Add a cloth"), this);
    auto *remove = new QPushButton(tr("Remove"), this);
    add->setToolTip(tr("Another cloth for this job, such as one for the outside back or the borders."));
    remove->setToolTip(tr("Takes this cloth out of the job, as long as nothing is cut from it."));
    m_main->setToolTip(
        tr("The main cloth comes first, is asked about by \"How much to ask for\", and new panels are cut "
           "from it. Those there are stay with their cloths."));
    auto *head = new WrappingRow(8);
    head->addWidget(m_which);
    head->addWidget(m_main);
    head->addWidget(add);
    head->addWidget(remove);
    auto *draw = new QPushButton(tr("Draw on the table"), this);
    draw->setToolTip(tr("Remnants and flaws, drawn and changed by hand."));
    head->addWidget(draw);
    connect(draw, &QPushButton::clicked, this, &ClothForm::drawingWanted);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(head);
    column->addWidget(m_refusal);
    column->addWidget(m_told);
    column->addWidget(m_scroll, 1);
    connect(m_which, &QComboBox::activated, this, [this](int index) {
        m_index = index;
        m_lengthAsked = false;
        m_told->hide();
        refill();
    });
    connect(m_main, &QPushButton::clicked, this, [this] {
        Job job = withMainCloth(m_document.job(), cloth().id);
        m_index = 0;
        m_document.changeJob(std::move(job), tr("Main cloth"));
    });
    connect(add, &QPushButton::clicked, this, [this] {
        Job job = m_document.job();
        job.cloths.push_back(newCloth(job));
        m_index = int(job.cloths.size()) - 1;
        m_document.changeJob(std::move(job), tr("Add a cloth"));
    });
    connect(remove, &QPushButton::clicked, this, [this] {
        if (m_document.job().cloths.size() < 2) {
            refuse(Fault{toCore(tr("A job needs at least one cloth."))});
            return;
        }
        Job job = m_document.job();
        job.cloths.erase(job.cloths.begin() + m_index);
        const auto done = m_document.changeJob(std::move(job), tr("Remove a cloth"));
        if (done)
            m_index = 0;
        else
            refuse(done.error());
    });
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        // Built anew once the field that caused it has finished with its event.
        if (changes & (Change::Cloths | Change::NewJob | Change::Card)) QTimer::singleShot(0, this, &ClothForm::refill);
    });
    setFocusProxy(m_which);
    refill();
}

void ClothForm::refuse(const Fault &fault) {
    m_refusal->setText(withFractions(fromCore(fault.text)));
    m_refusal->show();
}

void ClothForm::change(const QString &text, const std::function<void(Cloth &)> &how, bool merge) {
    Job job = m_document.job();
    how(job.cloths[std::size_t(m_index)]);
    m_refusal->hide();
    m_told->hide();
    const auto done =
        m_document.changeJob(std::move(job), text, merge ? u"cloth %1 %2"_s.arg(m_index).arg(text) : QString());
    if (done) return;
    refuse(done.error());
    QTimer::singleShot(0, this, &ClothForm::refill);
}

void ClothForm::refill() {
    m_index = std::clamp(m_index, 0, int(m_document.job().cloths.size()) - 1);
    m_which->clear();
    for (const Cloth &c : m_document.job().cloths) m_which->addItem(nameOfCloth(c));
    m_which->setCurrentIndex(m_index);
    m_main->setVisible(m_document.job().cloths.size() > 1);
    m_main->setEnabled(m_index > 0);
    // The field with the focus keeps it, by name, when the form is built anew.
    const QString focused = focusWidget() ? focusWidget()->objectName() : QString();
    auto *page = new QWidget;
    auto *form = new QFormLayout(page);
    form->setContentsMargins(0, 8, 12, 8);
    fill(form);
    m_scroll->setWidget(page);
    if (!focused.isEmpty())
        if (auto *again = page->findChild<QWidget *>(focused)) again->setFocus();
}

void ClothForm::lengthRow(QFormLayout *form, const QString &label, const QString &sentence, std::optional<Length> value,
                          bool optional, bool aboveZero,
                          const std::function<void(Cloth &, std::optional<Length>)> &set) {
    auto *edit = new LengthEdit(m_document.job().unit, aboveZero ? LengthRange::AboveZero : LengthRange::ZeroOrMore);
    if (optional) edit->setOptional(sentence);
    edit->setMaximumWidth(scaled(170));
    edit->setToolTip(sentence);
    edit->setObjectName(u"field "_s + label);
    edit->setLength(value);
    connect(edit, &LengthEdit::lengthChanged, this,
            [this, label, set](std::optional<Length> length) { change(label, [&](Cloth &c) { set(c, length); }); });
    form->addRow(label, edit);
}

void ClothForm::fill(QFormLayout *form) {
    auto *name = new QLineEdit(fromCore(cloth().name));
    name->setMaximumWidth(scaled(320));
    name->setObjectName(u"field name"_s);
    name->setToolTip(tr("What the cloth is called on the table, on the sheet and on the client's page."));
    connect(name, &QLineEdit::editingFinished, this, [this, name] {
        if (toCore(name->text()) != cloth().name) change(tr("Name"), [&](Cloth &c) { c.name = toCore(name->text()); });
    });
    form->addRow(tr("Name"), name);
    auto *kind = new QComboBox;
    kind->addItems({tr("a bolt"), tr("remnants")});
    kind->setCurrentIndex(cloth().bolt && !m_lengthAsked ? 0 : 1);
    kind->setMaximumWidth(scaled(170));
    kind->setObjectName(u"field kind"_s);
    kind->setToolTip(tr("A bolt is unrolled as far as the job takes; remnants are pieces with outlines of their own."));
    connect(kind, &QComboBox::activated, this, [this](int index) { comeAs(index == 0); });
    form->addRow(tr("It comes as"), kind);
    if (m_lengthAsked && cloth().bolt) {
        auto *length = new LengthEdit(m_document.job().unit, LengthRange::AboveZero);
        length->setOptional(tr("how long is the piece?"));
        length->setMaximumWidth(scaled(220));
        length->setObjectName(u"field remnant length"_s);
        length->setToolTip(
            tr("From its cut end to its other end. The bolt has no length written down, and a remnant has "
               "one; as wide as the bolt it is already."));
        connect(length, &LengthEdit::lengthChanged, this, [this](std::optional<Length> l) {
            if (l) becomeRemnant(*l);
        });
        form->addRow(tr("Length of the remnant"), length);
    }
    if (cloth().bolt)
        fillBolt(form);
    else
        fillRemnants(form);
    auto *way = new QComboBox;
    way->addItems({tr("one way: pile or print has a top"), tr("either way: a panel may be turned about")});
    way->setCurrentIndex(cloth().way == Way::One ? 0 : 1);
    way->setMaximumWidth(scaled(320));
    way->setObjectName(u"field way"_s);
    connect(way, &QComboBox::activated, this, [this](int index) {
        change(
            tr("Nap"), [&](Cloth &c) { c.way = index == 0 ? Way::One : Way::Two; }, false);
    });
    way->setToolTip(
        tr("Stroke the pile: the way in which it lies smooth goes down the piece, and on seats from back to front."));
    form->addRow(tr("Pile or direction"), way);
    auto *up = new QComboBox;
    up->addItems({tr("up the roll"), tr("across, to the left selvage")});
    up->setCurrentIndex(cloth().up == PatternUp::Roll ? 0 : 1);
    up->setMaximumWidth(scaled(320));
    up->setObjectName(u"field up"_s);
    connect(up, &QComboBox::activated, this, [this](int index) {
        change(
            tr("Pattern's top"), [&](Cloth &c) { c.up = index == 0 ? PatternUp::Roll : PatternUp::Across; }, false);
    });
    up->setToolTip(tr("For pile, the end from which the hand strokes it smooth."));
    form->addRow(tr("Its top points"), up);
    fillPattern(form);
    if (cloth().bolt) fillSquareness(form);
    fillLook(form);
    fillPrice(form);
    if (!cloth().bolt) return;
    form->addRow(sheetForm({cloth().id, {}}));
}

void ClothForm::comeAs(bool bolt) {
    m_refusal->hide();
    m_told->hide();
    const bool asked = std::exchange(m_lengthAsked, false);
    if (bolt == cloth().bolt.has_value()) {
        if (asked) QTimer::singleShot(0, this, &ClothForm::refill);
        return;
    }
    if (bolt) return take(remnantAsBolt(m_document.job(), cloth().id), tr("Bolt or remnants"));
    if (cloth().bolt->length) return becomeRemnant(*cloth().bolt->length);
    m_lengthAsked = true;
    QTimer::singleShot(0, this, [this] { // once the choice has finished with its event
        refill();
        if (auto *field = findChild<LengthEdit *>(u"field remnant length"_s)) field->setFocus();
    });
}

void ClothForm::becomeRemnant(Length length) {
    m_lengthAsked = false;
    take(boltAsRemnant(m_document.job(), cloth().id, length), tr("Bolt or remnants"));
}

void ClothForm::take(JobAndWords changed, const QString &text) {
    if (const auto done = m_document.changeJob(std::move(changed.job), text); !done) {
        refuse(done.error());
        QTimer::singleShot(0, this, &ClothForm::refill);
        return;
    }
    QStringList lines;
    for (const std::string &line : changed.told) lines << withFractions(fromCore(line));
    m_told->setText(lines.join(u'\n'));
    m_told->setVisible(!lines.isEmpty());
}

void ClothForm::showCloth(int index) {
    m_index = index;
    refill();
}

void ClothForm::fillLook(QFormLayout *form) {
    const auto changeLook = [this](const QString &step, const std::function<void(ClothLook &)> &how) {
        change(
            step,
            [&](Cloth &c) {
                if (!c.look) c.look = ClothLook{};
                how(*c.look);
            },
            false);
    };
    addLookRows(form, cloth(), m_index, m_document.job().unit, changeLook, [this] { Q_EMIT swatchWanted(m_index); });
}

void ClothForm::fillBolt(QFormLayout *form) {
    lengthRow(form, tr("Width"), tr("Edge to edge, selvages included."), cloth().bolt->width, false, true,
              [](Cloth &c, auto l) { c.bolt->width = l.value_or(Length{}); });
    // Tickets tell one or the other; asked for, never assumed. What is written here says how wide the selvages are.
    const Length usable = cloth().bolt->width - cloth().selvage * 2;
    lengthRow(form, tr("Width between the selvages"),
              tr("What may be cut from. Measure it: tickets count the selvages in, or not."),
              usable > Length{} ? std::optional(usable) : std::nullopt, false, true, [](Cloth &c, auto l) {
                  const Length both = c.bolt->width - l.value_or(Length{});
                  if (both < Length{}) c.bolt->width = *l; // wider than was said edge to edge
                  c.selvage = both < Length{} ? Length{} : Length::ticks(both.ticks() / 2);
              });
    lengthRow(form, tr("Length"), tr("as much as it takes"), cloth().bolt->length, true, true,
              [](Cloth &c, auto l) { c.bolt->length = l; });
    lengthRow(form, tr("Selvage"), tr("The strip along both edges that is not cut from."), cloth().selvage, false,
              false, [](Cloth &c, auto l) { c.selvage = l.value_or(Length{}); });
    lengthRow(form, tr("Lost to square the end"), tr("Cut off at the cut end to square it."), cloth().bolt->square,
              false, false, [](Cloth &c, auto l) { c.bolt->square = l.value_or(Length{}); });
}

void ClothForm::fillRemnants(QFormLayout *form) {
    lengthRow(form, tr("Kept from the edge"), tr("Distance that panels keep from a remnant's outline."), cloth().edge,
              false, false, [](Cloth &c, auto l) { c.edge = l.value_or(Length{}); });
    for (const Remnant &remnant : cloth().remnants) {
        auto *title = new QLabel(tr("Remnant %1").arg(fromCore(remnant.id)));
        title->setObjectName(u"paneTitle"_s);
        form->addRow(title);
        form->addRow(sheetForm({cloth().id, remnant.id}));
        if (remnant.photo) {
            const bool done = isScaleTaped(remnant);
            auto *tape = new QPushButton(done ? tr("Tape it again…") : tr("Tape two lengths…"));
            tape->setMaximumWidth(scaled(170));
            tape->setToolTip(done
                                 ? tr("Its scale was confirmed by two taped lengths.")
                                 : tr("It was measured in a photograph only: nothing is printed for cutting before two "
                                      "lengths are taped on the cloth itself."));
            connect(tape, &QPushButton::clicked, this,
                    [this, id = remnant.id] { Q_EMIT tapeWanted(fromCore(cloth().id), fromCore(id)); });
            form->addRow(tr("Photographed"), tape);
        }
    }
    auto *add = new QPushButton(tr("Add a remnant"));
    add->setMaximumWidth(scaled(170));
    connect(add, &QPushButton::clicked, this, [this] {
        change(
            tr("Add a remnant"),
            [](Cloth &c) {
                Remnant remnant = c.remnants.back();
                remnant.kept = Kept{};
                remnant.flaws.clear();
                remnant.photo.reset();
                char letter = 'A';
                while (letter < 'Z' && c.remnant(std::string(1, letter))) ++letter;
                remnant.id = std::string(1, letter);
                c.remnants.push_back(remnant);
            },
            false);
    });
    auto *photograph = new QPushButton(tr("From a photograph…"));
    add->setToolTip(tr("Another piece of this cloth, with the outline of the last one to begin with."));
    photograph->setMaximumWidth(scaled(170));
    photograph->setToolTip(tr("Trace a remnant in a photograph that shows something of known size."));
    connect(photograph, &QPushButton::clicked, this, &ClothForm::photographWanted);
    auto *adding = new QHBoxLayout;
    adding->addWidget(add);
    adding->addWidget(photograph);
    adding->addStretch();
    form->addRow(QString(), adding);
}

SheetForm *ClothForm::sheetForm(const SheetOf &sheet) {
    auto *form = new SheetForm(m_document, sheet);
    connect(form, &SheetForm::refused, this, [this](const QString &sentence) {
        m_refusal->setText(sentence);
        m_refusal->setVisible(!sentence.isEmpty());
    });
    return form;
}

void ClothForm::fillPrice(QFormLayout *form) {
    const Price price = cloth().price.value_or(Price{m_document.job().unit == Unit::Inch ? "yd" : "m", 0, "", {}});
    auto *amount = new QDoubleSpinBox;
    amount->setRange(0, 100000);
    amount->setDecimals(2);
    amount->setSpecialValueText(tr("not told"));
    amount->setValue(price.amount);
    amount->setObjectName(u"field price"_s);
    amount->setAccessibleName(tr("Price"));
    amount->setToolTip(tr("What the cloth costs by length; the client's page reckons with it."));
    auto *currency = new QLineEdit(fromCore(price.currency));
    currency->setMaximumWidth(scaled(70));
    currency->setPlaceholderText(tr("USD"));
    currency->setObjectName(u"field currency"_s);
    currency->setAccessibleName(tr("Currency"));
    currency->setToolTip(tr("The money it is priced in, as it is to stand beside the figure."));
    auto *per = new QComboBox;
    per->addItems({tr("a yard"), tr("a metre")});
    per->setCurrentIndex(price.per == "m" ? 1 : 0);
    per->setObjectName(u"field per"_s);
    per->setAccessibleName(tr("Price for"));
    per->setToolTip(tr("Whether the price is for a yard or for a metre of the bolt."));
    const auto take = [this, price, amount, currency, per] {
        std::optional<Price> told = cloth().price.value_or(price);
        // The field shows two decimals; a finer price stays as the file has it until it is typed over.
        if (QString::number(told->amount, 'f', 2) != QString::number(amount->value(), 'f', 2)) {
            told->amount = amount->value();
            if (told->amount <= 0) told.reset();
        }
        if (told) {
            told->currency = toCore(currency->text().trimmed());
            told->per = per->currentIndex() == 1 ? "m" : "yd";
            if (told->amount <= 0 && !cloth().price) told.reset();
        }
        if (told != cloth().price) change(tr("Price"), [&](Cloth &c) { c.price = told; });
    };
    connect(amount, &QDoubleSpinBox::editingFinished, this, take);
    connect(currency, &QLineEdit::editingFinished, this, take);
    connect(per, &QComboBox::activated, this, take);
    auto *row = new QHBoxLayout;
    row->addWidget(amount);
    row->addWidget(currency);
    row->addWidget(per);
    row->addStretch();
    form->addRow(tr("Price"), row);
}

void ClothForm::fillPattern(QFormLayout *form) {
    const auto &pattern = cloth().pattern;
    const auto withPattern = [](Cloth &c, auto set) {
        Pattern p = c.pattern.value_or(Pattern{});
        set(p);
        if (p.across || p.along)
            c.pattern = p;
        else
            c.pattern.reset();
    };
    repeatRow(form, tr("Horizontal repeat"),
              tr("From a place in the pattern to the same place in the next, straight across the width."),
              pattern ? pattern->across : std::nullopt,
              [withPattern](Cloth &c, auto l) { withPattern(c, [&](Pattern &p) { p.across = l; }); });
    repeatRow(form, tr("Vertical repeat"),
              tr("From a place in the pattern to the same place in the next, straight up the roll."),
              pattern ? pattern->along : std::nullopt,
              [withPattern](Cloth &c, auto l) { withPattern(c, [&](Pattern &p) { p.along = l; }); });
    if (!pattern) return;
    lengthRow(form, tr("Drop"), tr("How far the next column is moved up: half the vertical repeat for a half-drop."),
              pattern->drop, false, false, [](Cloth &c, auto l) { c.pattern->drop = l.value_or(Length{}); });
    lengthRow(form, tr("A motif sits, from the left selvage"), tr("Measure to the middle of one motif or stripe."),
              pattern->motif.x, false, false, [](Cloth &c, auto l) { c.pattern->motif.x = l.value_or(Length{}); });
    lengthRow(form, tr("… and up from the cut end"), tr("Measure to the middle of the same motif."), pattern->motif.y,
              false, false, [](Cloth &c, auto l) { c.pattern->motif.y = l.value_or(Length{}); });
}

void ClothForm::repeatRow(QFormLayout *form, const QString &label, const QString &sentence, std::optional<Length> value,
                          const std::function<void(Cloth &, std::optional<Length>)> &set) {
    const Unit unit = m_document.job().unit;
    auto *one = new LengthEdit(unit, LengthRange::AboveZero);
    one->setOptional(tr("none"));
    one->setToolTip(sentence);
    one->setAccessibleName(label);
    one->setMaximumWidth(scaled(170));
    one->setObjectName(u"field "_s + label);
    one->setLength(value);
    auto *many = new QSpinBox;
    many->setRange(1, 99);
    many->setValue(m_repeats.value(label, 1));
    many->setObjectName(u"repeats "_s + label);
    many->setAccessibleName(tr("%1: how many repeats were measured").arg(label));
    many->setToolTip(tr("Measure over several repeats and write how many: what a tape misses is shared among them."));
    auto *measure = new LengthEdit(unit, LengthRange::AboveZero);
    measure->setOptional(tr("together"));
    measure->setMaximumWidth(scaled(130));
    measure->setObjectName(u"measured "_s + label);
    measure->setAccessibleName(tr("%1: what they measure together").arg(label));
    measure->setToolTip(tr("What so many repeats measure together; one repeat is worked out from it."));
    if (value) measure->setLength(*value * many->value());
    connect(one, &LengthEdit::lengthChanged, this,
            [this, label, set](std::optional<Length> length) { change(label, [&](Cloth &c) { set(c, length); }); });
    connect(many, &QSpinBox::valueChanged, this, [this, label, measure](int count) {
        m_repeats[label] = count;
        measure->setLength(std::nullopt); // another number of them measures something else
    });
    connect(measure, &LengthEdit::lengthChanged, this, [this, label, set, many](std::optional<Length> length) {
        if (length) change(label, [&](Cloth &c) { set(c, repeatOf(many->value(), *length)); });
    });
    auto *row = new WrappingRow(8);
    row->addWidget(one);
    row->addWidget(new QLabel(tr("measured over")));
    row->addWidget(many);
    row->addWidget(new QLabel(tr("of them:")));
    row->addWidget(measure);
    form->addRow(label, row);
}

void ClothForm::fillSquareness(QFormLayout *form) {
    const Unit unit = m_document.job().unit;
    const auto row = [&](const QString &label, const QString &sentence, Length value, LengthRange range,
                         Length Cloth::*member) {
        auto *edit = new LengthEdit(unit, range);
        edit->setMaximumWidth(scaled(170));
        edit->setAccessibleName(label);
        edit->setToolTip(sentence);
        edit->setObjectName(u"field "_s + label);
        edit->setLength(value);
        connect(edit, &LengthEdit::lengthChanged, this, [this, label, member](std::optional<Length> length) {
            change(label, [=](Cloth &c) { c.*member = length.value_or(Length{}); });
        });
        auto *line = new QHBoxLayout;
        line->addWidget(edit);
        auto *words = new QLabel(sentence);
        words->setObjectName(u"quiet"_s);
        words->setWordWrap(true);
        line->addWidget(words, 1);
        form->addRow(label, line);
    };
    row(tr("Bow"), tr("how far a thread curves from the straight line between its ends"), cloth().bow,
        LengthRange::ZeroOrMore, &Cloth::bow);
    row(tr("Skew"), tr("how far its right end lies further up the roll; less than 0: further down"), cloth().skew,
        LengthRange::Any, &Cloth::skew);
    if (cloth().bow == Length{} && cloth().skew == Length{}) return;
    const Length width = cloth().bolt->width;
    QStringList words;
    const auto share = [&](Length off) { return QLocale().toString(double(offSquare(off, width)) / 100, 'f', 2); };
    if (cloth().skew != Length{})
        words
            << tr("Skew: the pattern shifts by %1 from selvage to selvage, %2 % of the width; on a part 24 in wide by "
                  "%3.")
                   .arg(shownLengthWithUnit(abs(cloth().skew), unit), share(abs(cloth().skew)),
                        shownLengthWithUnit(leanOf(Length::ticks(24 * 8128), abs(cloth().skew), width), unit));
    if (cloth().bow != Length{})
        words << tr("Bow: the middle lies %1 off its ends, %2 % of the width.")
                     .arg(shownLengthWithUnit(cloth().bow, unit), share(cloth().bow));
    words << tr("Cuts are laid as if it were square; straighten it, or have it looked at, before cutting.");
    auto *shift = new QLabel(words.join(u' '));
    shift->setWordWrap(true);
    shift->setObjectName(u"quiet"_s);
    auto *picture = new ShiftPicture(cloth().bow, cloth().skew);
    auto *line = new QHBoxLayout;
    line->addWidget(picture);
    line->addWidget(shift, 1);
    form->addRow(tr("Off square"), line);
}

} // namespace boltwright::ui
