#include "ui/panes/standing_pane.h"

#include "core/figures/figures.h"
#include "core/measure/length_text.h"
#include "core/rules/rules.h"
#include "ui/drawing/colours.h"
#include "ui/text/words.h"

#include <QEvent>
#include <QGuiApplication>
#include <QLocale>
#include <QScrollArea>

#include <algorithm>
#include <map>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

/// Over all remnants of the cloth, those not cut into as well.
std::optional<ClothBox> largestLeft(const Job &job, const Layout &layout, const Cloth &cloth) {
    std::optional<ClothBox> largest;
    for (const Remnant &remnant : cloth.remnants) {
        const auto piece = largestOffcut(job, layout, cloth.id, remnant.id);
        if (piece && (!largest || piece->width() * piece->height() > largest->width() * largest->height()))
            largest = piece;
    }
    return largest;
}

} // namespace

StandingPane::StandingPane(JobDocument &document, Standing &standing, QWidget *parent)
    : QWidget(parent), m_document(document), m_standing(standing), m_figures(new QLabel(this)),
      m_reasonsTitle(new QLabel(tr("What holds it back"), this)) {
    auto *figuresTitle = new QLabel(tr("This layout"), this);
    figuresTitle->setObjectName(u"paneTitle"_s);
    m_reasonsTitle->setObjectName(u"paneTitle"_s);
    m_figures->setWordWrap(true);
    m_figures->setTextFormat(Qt::RichText);
    m_figures->setAccessibleName(tr("Figures of this layout"));
    // Figures and reasons are scrolled as one, so that large letters and small windows have room for the rest.
    auto *list = new QWidget(this);
    m_reasons = new QVBoxLayout;
    m_reasons->setContentsMargins(0, 0, 0, 0);
    m_reasons->setSpacing(8);
    m_reasons->addStretch();
    auto *scroll = new QScrollArea(this);
    scroll->setWidget(list);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->viewport()->setAutoFillBackground(false);
    list->setAutoFillBackground(false);
    auto *column = new QVBoxLayout(list);
    column->setContentsMargins(18, 14, 10, 12);
    column->setSpacing(8);
    column->addWidget(figuresTitle);
    column->addWidget(m_figures);
    column->addSpacing(14);
    column->addWidget(m_reasonsTitle);
    column->addLayout(m_reasons, 1);
    auto *whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(scroll);
    fitWords();
    connect(&standing, &Standing::changed, this, &StandingPane::refresh);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        if (changes & (Change::Card | Change::NewJob | Change::Cloths)) refresh();
    });
    refresh();
}

/// The figures of one cloth are seen without scrolling.
void StandingPane::fitWords() { setMinimumHeight(7 * fontMetrics().lineSpacing()); }

void StandingPane::changeEvent(QEvent *event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) fitWords();
}

QString StandingPane::figuresText() const {
    const Job &job = m_document.job();
    const auto row = [](const QString &what, const QString &figure) {
        return u"<tr><td style='padding-right:12px'>%1</td><td align='right' style='white-space:nowrap'><b>%2</b></td></tr>"_s
            .arg(what.toHtmlEscaped(), figure.toHtmlEscaped());
    };
    QString text;
    for (const ClothFigures &f : m_standing.figures()) {
        const Cloth *cloth = job.cloth(f.cloth);
        if (!cloth || !f.laid) continue;
        if (job.cloths.size() > 1)
            text += u"<tr><td colspan='2' style='padding-top:6px'><b>%1</b></td></tr>"_s.arg(
                fromCore(cloth->name.empty() ? cloth->id : cloth->name).toHtmlEscaped());
        if (cloth->bolt) {
            text += row(tr("length"), shownAlongRoll(f.length, job.unit));
            if (const auto left = leftOver(*cloth, f.length)) {
                text += row(tr("on hand"), shownAlongRoll(*cloth->bolt->length, job.unit));
                text += *left < Length{}    ? row(tr("short by"), shownAlongRoll(Length{} - *left, job.unit))
                        : *left == Length{} ? row(tr("left over"), tr("nothing"))
                                            : row(tr("left over"), shownAlongRoll(*left, job.unit));
            } else {
                text += row(tr("buy"), shownPurchase(f.length, job.unit));
            }
            if (f.bound) text += row(tr("least it can take"), shownAlongRoll(*f.bound, job.unit));
        }
        if (!cloth->bolt && !m_document.preview() && m_standing.broken().empty() &&
            everythingLies(job, m_document.layout())) {
            text += row(tr("cloth there"), tr("enough"));
            if (const auto piece = largestLeft(job, m_document.layout(), *cloth))
                text += row(tr("largest piece left"), shownSize(piece->width(), piece->height(), job.unit));
        }
        text += row(tr("panels laid"), QLocale().toString(f.laid));
        text += row(tr("waste"), shownPercent(f.waste()));
    }
    if (text.isEmpty()) return tr("Nothing lies on the cloth yet.");
    return u"<table width='100%' cellspacing='2'>%1</table>"_s.arg(text);
}

std::vector<StandingPane::Sentence> StandingPane::whatHoldsItBack() const {
    const Job &job = m_document.job();
    const Layout &layout = m_document.layout();
    std::vector<Sentence> out;
    std::map<std::string, int> aside;
    for (const LeftOut &copy : m_standing.aside()) ++aside[copy.panel];
    for (const Panel &panel : job.panels)
        if (const auto found = aside.find(panel.id); found != aside.end()) {
            const QString name = fromCore(panel.name.empty() ? panel.mark : panel.name);
            out.push_back({Sentence::Kind::Wrong,
                           panel.count == 1
                               ? tr("%1 is put aside.").arg(name)
                               : tr("%1: %2 of %3 put aside.").arg(name).arg(found->second).arg(panel.count),
                           panel.id});
        }
    for (const Breach &breach : m_standing.broken()) {
        if (breach.cut < 0 || breach.cut >= int(layout.cuts.size())) continue;
        const Panel *panel = job.panel(layout.cuts[std::size_t(breach.cut)].panel);
        if (!panel) continue;
        out.push_back({Sentence::Kind::Wrong,
                       tr("%1: %2.").arg(fromCore(panel->name.empty() ? panel->mark : panel->name),
                                         withFractions(fromCore(breach.text))),
                       panel->id});
    }
    if (m_document.preview() || layout.cuts.empty()) return out;
    // The judge's own findings are told where the rules above found nothing to say about that panel.
    for (const Finding &finding : m_standing.findings()) {
        if (finding.kind == Finding::Kind::Missing) continue;
        const bool told = std::any_of(out.begin(), out.end(),
                                      [&](const Sentence &s) { return s.panel == finding.panel && !s.panel.empty(); });
        if (!told) out.push_back({Sentence::Kind::Wrong, withFractions(fromCore(finding.text)), finding.panel});
    }
    if (m_standing.verdict() == Standing::Verdict::Waiting)
        out.push_back({Sentence::Kind::Waiting, tr("Checking…"), {}});
    if (m_standing.verdict() == Standing::Verdict::Right && out.empty())
        out.push_back({Sentence::Kind::Right, tr("Checked: every rule holds."), {}});
    return out;
}

void StandingPane::refresh() {
    m_figures->setText(figuresText());
    const auto sentences = whatHoldsItBack();
    m_reasonsTitle->setVisible(!sentences.empty()); // a heading over nothing only asks what is missing
    constexpr std::size_t most = 24;                // more are counted, not listed
    const std::size_t shown = std::min(most, sentences.size());
    while (m_lines.size() < shown + 1) {
        auto *label = new QLabel(this);
        label->setWordWrap(true);
        label->setTextFormat(Qt::RichText);
        label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
        connect(label, &QLabel::linkActivated, this, &StandingPane::panelWanted);
        m_reasons->insertWidget(int(m_lines.size()), label);
        m_lines.push_back(label);
    }
    const Colours colours = coloursOf(QGuiApplication::palette());
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        QLabel *label = m_lines[i];
        if (i > shown || (i == shown && sentences.size() <= most)) {
            label->clear();
            label->hide();
            continue;
        }
        if (i == shown) {
            label->setText(tr("and %n more", nullptr, int(sentences.size() - most)));
        } else {
            const Sentence &s = sentences[i];
            const QString sign = s.kind == Sentence::Kind::Right     ? u"✓"_s
                                 : s.kind == Sentence::Kind::Waiting ? u"…"_s
                                                                     : u"•"_s;
            const QColor colour = s.kind == Sentence::Kind::Right     ? colours.good
                                  : s.kind == Sentence::Kind::Waiting ? colours.quiet
                                                                      : colours.broken;
            const QString words = s.text.toHtmlEscaped();
            const QString body = s.panel.empty() ? words
                                                 : u"<a href='%1' style='color:%2;text-decoration:none'>%3</a>"_s.arg(
                                                       fromCore(s.panel).toHtmlEscaped(), colour.name(), words);
            label->setText(u"<span style='color:%1'>%2 %3</span>"_s.arg(colour.name(), sign, body));
            label->setAccessibleName(s.text);
        }
        label->show();
    }
}

QStringList StandingPane::sentences() const {
    QStringList texts;
    for (const Sentence &s : whatHoldsItBack()) texts << s.text;
    return texts;
}

} // namespace boltwright::ui
