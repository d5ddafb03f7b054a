#include "ui/trimmings/trimmings_page.h"

#include "core/base/language.h"
#include "core/trimmings/reckoned.h"
#include "core/trimmings/welt.h"
#include "ui/text/words.h"
#include "ui/trimmings/trimming_watch.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QString kindWords(Trimming::Kind kind) {
    const QString word = fromCore(phrase(nameOf(kind)));
    return word.left(1).toUpper() + word.mid(1);
}

} // namespace

TrimmingsPage::TrimmingsPage(JobDocument &document, TrimmingWatch &watch, Shop &shop, QWidget *parent)
    : QWidget(parent), m_document(document), m_watch(watch), m_rules(shop.rules(document.job().unit)),
      m_refusal(new QLabel(this)), m_cards(new QVBoxLayout) {
    m_refusal->setObjectName(u"refusal"_s);
    m_refusal->setWordWrap(true);
    m_refusal->hide();
    auto *head = new QHBoxLayout;
    head->addWidget(new QLabel(tr("Add"), this));
    using Kind = Trimming::Kind;
    QWidget *first = nullptr;
    struct Addable {
        Kind kind;
        QString text, sentence;
    };
    for (const auto &[kind, text, sentence] : std::initializer_list<Addable>{
             {Kind::Welt, tr("&Welt"), tr("A strip sewn round a cord and set into a seam.")},
             {Kind::DoubleWelt, tr("&Double welt"), tr("A strip round two cords, glued over an edge of wood.")},
             {Kind::Gimp, tr("&Gimp"), tr("A woven band over the tacks along an edge; bought by length.")},
             {Kind::Cord, tr("C&ord"), tr("A twisted cord along an edge or in a seam; bought by length.")},
             {Kind::Nails, tr("&Nails"), tr("A row of headed nails along an edge, counted by head and distance.")}}) {
        auto *button = new QPushButton(text, this);
        button->setToolTip(sentence);
        connect(button, &QPushButton::clicked, this, [this, kind = kind] { add(kind); });
        head->addWidget(button);
        if (!first) first = button;
    }
    auto *hint = new QLabel(tr("Forms fill this in from the edges they mark."), this);
    hint->setObjectName(u"quiet"_s);
    hint->setWordWrap(true);
    hint->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    head->addWidget(hint, 1);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(head);
    column->addWidget(m_refusal);
    column->addLayout(m_cards, 1); // what has no room is scrolled with the page
    setFocusProxy(first);
    connect(&watch, &TrimmingWatch::changed, this, &TrimmingsPage::say);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        // Built anew once the field that caused it has finished with its event.
        if (changes & (Change::Trimmings | Change::NewJob | Change::Cloths | Change::Panels))
            QTimer::singleShot(0, this, &TrimmingsPage::fill);
    });
    fill();
}

void TrimmingsPage::add(Trimming::Kind kind) {
    Trimming t;
    t.kind = kind;
    t.edges = m_rules.stretcher * 10;
    const bool strips = kind == Trimming::Kind::Welt || kind == Trimming::Kind::DoubleWelt;
    t.from = strips ? StripsFrom::Scraps : StripsFrom::Bought;
    t.run = StripRun::Bias;
    t.strip = kind == Trimming::Kind::DoubleWelt ? m_rules.doubleWeltStrip : weltStripWidth(m_rules.cord, m_rules);
    t.shortest = m_rules.shortestBias;
    t.head = m_rules.nailHead;
    if (!strips && kind != Trimming::Kind::Nails) t.reserve = m_rules.edgingReservePercent;
    Job job = m_document.job();
    job.trimmings.push_back(t);
    m_document.changeJob(std::move(job), tr("Add %1").arg(fromCore(phrase(nameOf(kind)))));
}

void TrimmingsPage::remove(int index) {
    Job job = m_document.job();
    const Trimming gone = job.trimmings[std::size_t(index)];
    job.trimmings.erase(job.trimmings.begin() + index);
    std::erase_if(job.panels, [&](const Panel &p) { return !gone.panel.empty() && p.id == gone.panel; });
    m_document.changeJob(std::move(job), tr("Remove %1").arg(fromCore(phrase(nameOf(gone.kind)))));
}

void TrimmingsPage::change(int index, const QString &text, const std::function<void(Trimming &)> &how) {
    Job job = m_document.job();
    if (index >= int(job.trimmings.size())) return;
    Trimming &trimming = job.trimmings[std::size_t(index)];
    how(trimming);
    // Strips that are cut from the cloth are panels; they follow.
    if (const Panel *old = trimming.panel.empty() ? nullptr : job.panel(trimming.panel)) {
        const std::string id = old->id;
        const auto place =
            std::find_if(job.panels.begin(), job.panels.end(), [&](const Panel &p) { return p.id == id; });
        auto strips = stripPanel(job, trimming);
        if (strips) {
            strips->id = id;
            strips->kept = place->kept;
            strips->name = place->name;
            strips->mark = place->mark;
            *place = *strips;
        } else {
            job.panels.erase(place);
            trimming.panel.clear();
        }
    }
    const auto done = m_document.changeJob(std::move(job), text, u"trimming %1 %2"_s.arg(index).arg(text));
    if (!done) {
        m_refusal->setText(withFractions(fromCore(done.error().text)));
        m_refusal->show();
        m_filled.clear();
        QTimer::singleShot(0, this, &TrimmingsPage::fill);
        return;
    }
    m_refusal->hide();
}

void TrimmingsPage::changeStrips(int index) {
    Job job = m_document.job();
    Trimming &trimming = job.trimmings[std::size_t(index)];
    if (job.panel(trimming.panel)) {
        std::erase_if(job.panels, [&](const Panel &p) { return p.id == trimming.panel; });
        trimming.panel.clear();
        m_document.changeJob(std::move(job), tr("Take the strips out of the list"));
        return;
    }
    const auto strips = stripPanel(job, trimming);
    if (!strips) {
        m_refusal->setText(tr("The cloth is too narrow for such strips, or it is no bolt."));
        m_refusal->show();
        return;
    }
    trimming.panel = strips->id;
    job.panels.push_back(*strips);
    m_document.changeJob(std::move(job), tr("Put the strips into the list"));
}

/// As many as the page has room for at this size of text.
int TrimmingsPage::fieldsBeside() const {
    const int field = fontMetrics().horizontalAdvance(tr("No piece shorter than")) + fontMetrics().height() * 2;
    return std::clamp((width() - 60) / field, 2, 5);
}

void TrimmingsPage::resizeEvent(QResizeEvent *event) {
    QWidget::resizeEvent(event);
    if (m_filled.empty() || fieldsBeside() == m_fieldsBeside) return;
    m_filled.clear();
    QTimer::singleShot(0, this, &TrimmingsPage::fill);
}

QWidget *TrimmingsPage::card(int index) {
    const Job &job = m_document.job();
    const Trimming &t = job.trimmings[std::size_t(index)];
    auto *frame = new QFrame;
    frame->setObjectName(u"sheet"_s);
    auto *column = new QVBoxLayout(frame);
    column->setContentsMargins(14, 10, 14, 10);
    auto *head = new QHBoxLayout;
    auto *title = new QLabel(u"<b>%1</b>"_s.arg(kindWords(t.kind)), frame);
    auto *name = new QLineEdit(fromCore(t.name), frame);
    name->setPlaceholderText(tr("what it is for"));
    name->setAccessibleName(tr("What it is for"));
    name->setToolTip(tr("Where it goes, such as the cushions; it stands on the sheet."));
    name->setMaximumWidth(scaled(260));
    name->setObjectName(u"name %1"_s.arg(index));
    connect(name, &QLineEdit::textEdited, this, [this, index](const QString &text) {
        change(index, tr("What a trimming is for"), [&](Trimming &x) { x.name = toCore(text); });
    });
    auto *drop = new QPushButton(tr("Remove"), frame);
    drop->setToolTip(tr("Takes this trimming out of the job, and its strips out of the list."));
    connect(drop, &QPushButton::clicked, this, [this, index] { remove(index); });
    head->addWidget(title);
    head->addWidget(name);
    head->addStretch();
    head->addWidget(drop);
    column->addLayout(head);

    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(10);
    grid->setVerticalSpacing(4);
    int place = 0;
    const int fieldsInARow = fieldsBeside();
    const auto field = [&](const QString &text, const QString &sentence, QWidget *widget) {
        auto *label = new QLabel(text, frame);
        label->setObjectName(u"quiet"_s);
        label->setBuddy(widget);
        widget->setAccessibleName(text);
        widget->setToolTip(sentence);
        widget->setObjectName(u"%1 %2"_s.arg(text).arg(index));
        const int row = place / fieldsInARow * 2, c = place % fieldsInARow;
        grid->addWidget(label, row, c);
        grid->addWidget(widget, row + 1, c);
        ++place;
    };
    const auto length = [&](const QString &text, const QString &sentence, Length value, LengthRange range,
                            Length Trimming::*member) {
        auto *edit = new LengthEdit(job.unit, range, frame);
        edit->setLength(value);
        connect(edit, &LengthEdit::lengthChanged, this, [this, index, text, member](std::optional<Length> l) {
            change(index, text, [=](Trimming &x) { x.*member = l.value_or(Length{}); });
        });
        field(text, sentence, edit);
    };
    const auto whole = [&](const QString &text, const QString &sentence, int value, int least, int most,
                           int Trimming::*member, const QString &suffix = {}) {
        auto *box = new QSpinBox(frame);
        box->setRange(least, most);
        box->setValue(value);
        box->setSuffix(suffix);
        connect(box, &QSpinBox::valueChanged, this,
                [this, index, text, member](int n) { change(index, text, [=](Trimming &x) { x.*member = n; }); });
        field(text, sentence, box);
    };
    const auto choice = [&](const QString &text, const QString &sentence, const QStringList &items, int now,
                            const std::function<void(Trimming &, int)> &set) {
        auto *box = new QComboBox(frame);
        box->addItems(items);
        box->setCurrentIndex(now);
        connect(box, &QComboBox::activated, this,
                [this, index, text, set](int chosen) { change(index, text, [&](Trimming &x) { set(x, chosen); }); });
        field(text, sentence, box);
    };

    length(tr("Edges, together"), tr("All edges that it runs along, added up."), t.edges, LengthRange::AboveZero,
           &Trimming::edges);
    whole(tr("In how many runs"),
          tr("How often it begins anew: each run needs its own ends, and strips are joined within it."), t.runs, 1, 999,
          &Trimming::runs);
    whole(tr("Reserve"), tr("What is added for corners, joins and waste, in the hundred."), t.reserve, 0, 100,
          &Trimming::reserve, tr(" in 100"));
    const bool canBeStrip = t.kind == Trimming::Kind::Welt || t.kind == Trimming::Kind::DoubleWelt;
    if (canBeStrip)
        choice(tr("It comes from"),
               tr("Strips from the cloth are laid with the panels; those from what is left over take none, "
                  "where there is enough."),
               {tr("the cloth"), tr("what is left over"), tr("ready made")}, int(t.from),
               [](Trimming &x, int chosen) { x.from = StripsFrom(chosen); });
    if (t.isStrip()) {
        if (job.cloths.size() > 1) {
            QStringList names;
            int now = 0;
            for (int i = 0; i < int(job.cloths.size()); ++i) {
                const Cloth &c = job.cloths[std::size_t(i)];
                names << fromCore(c.name.empty() ? c.id : c.name);
                if (t.cloth == c.id) now = i;
            }
            choice(tr("Cloth"), tr("Which cloth of the job the strips are cut from."), names, now,
                   [this](Trimming &x, int chosen) {
                       if (chosen == 0)
                           x.cloth.reset();
                       else
                           x.cloth = m_document.job().cloths[std::size_t(chosen)].id;
                   });
        }
        choice(tr("It runs"),
               tr("On the bias a strip bends round curves and corners; along or across it takes less cloth."),
               {tr("along the roll"), tr("across the cloth"), tr("on the bias")}, int(t.run),
               [](Trimming &x, int chosen) { x.run = StripRun(chosen); });
        length(tr("Strip width"), tr("Round the cord and twice the seam allowance."), t.strip, LengthRange::AboveZero,
               &Trimming::strip);
        auto *cord = new LengthEdit(job.unit, LengthRange::AboveZero, frame);
        cord->setOptional(tr("gives the width"));
        connect(cord, &LengthEdit::lengthChanged, this, [this, index](std::optional<Length> l) {
            if (l)
                change(index, tr("Strip width from the cord"),
                       [&](Trimming &x) { x.strip = weltStripWidth(*l, m_rules); });
        });
        field(tr("For a cord of"),
              tr("The cord's thickness: the strip's width is worked out from it by the shop's rules."), cord);
        if (t.from == StripsFrom::Scraps)
            length(tr("No piece shorter than"),
                   tr("Shorter pieces from what is left over are not used: each one is another join."), t.shortest,
                   LengthRange::AboveZero, &Trimming::shortest);
    }
    if (t.kind == Trimming::Kind::Nails) {
        length(tr("Head"), tr("How wide a nail's head is."), t.head, LengthRange::AboveZero, &Trimming::head);
        length(tr("Apart, centre to centre"), tr("From the middle of one head to the next. 0 sets them head to head."),
               t.pitch, LengthRange::ZeroOrMore, &Trimming::pitch);
    }
    for (int c = 0; c < fieldsInARow; ++c) grid->setColumnStretch(c, 1);
    column->addLayout(grid);

    auto *foot = new QHBoxLayout;
    auto *sentence = new QLabel(frame);
    sentence->setWordWrap(true);
    m_sentences << sentence;
    foot->addWidget(sentence, 1);
    if (t.isStrip() && t.from == StripsFrom::Cloth) {
        auto *strips = new QPushButton(
            job.panel(t.panel) ? tr("Take the strips out of the list") : tr("Put the strips into the list"), frame);
        strips->setToolTip(tr("As panels of the job, to be laid with the others."));
        connect(strips, &QPushButton::clicked, this, [this, index] { changeStrips(index); });
        foot->addWidget(strips, 0, Qt::AlignBottom);
    }
    column->addLayout(foot);
    return frame;
}

void TrimmingsPage::fill() {
    const auto &trimmings = m_document.job().trimmings;
    // A name that is being typed keeps its field.
    const auto shape = [](std::vector<Trimming> all) {
        for (Trimming &t : all) t.name.clear();
        return all;
    };
    if (!m_filled.empty() && shape(m_filled) == shape(trimmings)) {
        m_filled = trimmings;
        return say();
    }
    m_filled = trimmings;
    m_fieldsBeside = fieldsBeside();
    m_sentences.clear();
    const QString focused = focusWidget() ? focusWidget()->objectName() : QString();
    auto *page = new QWidget;
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(0, 4, 12, 8);
    column->setSpacing(12);
    for (int i = 0; i < int(trimmings.size()); ++i) column->addWidget(card(i));
    if (trimmings.empty()) {
        auto *none =
            new QLabel(tr("None yet. Welt can be cut from what a layout leaves over: the strips are then shown on the "
                          "table, and whether they are enough is said here."),
                       page);
        none->setObjectName(u"quiet"_s);
        none->setWordWrap(true);
        column->addWidget(none);
    }
    column->addStretch();
    while (QLayoutItem *before = m_cards->takeAt(0)) {
        if (QWidget *gone = before->widget()) { // it may be one of its fields that asked
            gone->hide();
            gone->deleteLater();
        }
        delete before;
    }
    m_cards->addWidget(page, 1);
    page->show();
    if (!focused.isEmpty())
        if (auto *again = page->findChild<QWidget *>(focused)) again->setFocus();
    say();
}

QString TrimmingsPage::sentence(int index) const { return m_sentences.value(index)->text(); }

void TrimmingsPage::say() {
    const Job &job = m_document.job();
    if (m_sentences.size() != qsizetype(job.trimmings.size())) return;
    const auto &figures = m_watch.figures();
    for (int i = 0; i < int(m_sentences.size()); ++i) {
        const Trimming &t = job.trimmings[std::size_t(i)];
        // What needs no layout is told at once.
        const bool known = figures.size() == job.trimmings.size();
        const bool scraps = t.isStrip() && t.from == StripsFrom::Scraps;
        if (!known && scraps) {
            m_sentences[i]->setText(tr("Looking through what is left over…"));
            continue;
        }
        const Reckoned f = known ? figures[std::size_t(i)] : reckoned(job, m_document.laidLayout(), t);
        QString text = withFractions(fromCore(trimmingWords(job, t, f)));
        if (job.panel(t.panel)) text += u' ' + tr("They are in the list.");
        m_sentences[i]->setText(text);
    }
}

} // namespace boltwright::ui
