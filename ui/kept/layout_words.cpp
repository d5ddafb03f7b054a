#include "ui/kept/layout_words.h"

#include "core/concede/concede.h"
#include "core/figures/figures.h"
#include "core/rules/cut_already.h"
#include "core/rules/rules.h"
#include "ui/text/words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <map>
#include <set>

namespace boltwright::ui {
namespace {

QString tr(const char *text, const char *note = nullptr, int n = -1) {
    return QCoreApplication::translate("LayoutWords", text, note, n);
}

/// How many copies each kind of concession was made for.
QStringList countedWords(const Job &job, const Layout &layout) {
    std::map<Concession::Kind, std::set<std::pair<std::string, int>>> copies;
    for (const Concession &c : layout.conceded) copies[c.kind].insert({c.panel, c.copy});
    for (const LeftOut &l : layout.leftOut) copies[Concession::Kind::OtherCloth].insert({l.panel, l.copy});
    const auto aside = putAside(job, layout);
    const auto count = std::count_if(aside.begin(), aside.end(), [&](const LeftOut &copy) {
        return !copies[Concession::Kind::OtherCloth].contains({copy.panel, copy.copy});
    });
    QStringList words;
    const auto say = [&](Concession::Kind kind, const QString &text) {
        if (const auto n = copies[kind].size(); n > 0) words << text.arg(n);
    };
    if (count > 0) words << tr("%1 put aside").arg(count);
    say(Concession::Kind::OtherCloth, tr("%1 in other cloth"));
    say(Concession::Kind::Seam, tr("%1 from pieces"));
    say(Concession::Kind::Uncentre, tr("%1 off centre"));
    say(Concession::Kind::Turn, tr("%1 turned"));
    say(Concession::Kind::Trim, tr("%1 trimmed"));
    say(Concession::Kind::Stretcher, tr("%1 with a strip sewn on"));
    return words;
}

} // namespace

QString nameOfLayout(const Job &job, int index) {
    const std::string &name = job.layouts[std::size_t(index)].name;
    return name.empty() ? tr("Layout %1").arg(index + 1) : fromCore(name);
}

LayoutWords wordsOf(const Job &job, const Layout &layout) {
    LayoutWords words;
    for (const ClothFigures &f : figuresOf(job, layout)) {
        const Cloth *cloth = job.cloth(f.cloth);
        if (!cloth || !f.laid) continue;
        const QString waste = tr("waste %1").arg(shownPercent(f.waste()));
        words.figure = cloth->bolt ? shownAlongRoll(f.length, job.unit) : waste;
        if (cloth->bolt) words.beside = waste;
        break; // the main cloth, or the first that anything is cut from
    }
    const QStringList counted = countedWords(job, layout);
    words.givenUp = layout.cuts.empty() ? tr("nothing laid yet")
                    : counted.isEmpty() ? tr("nothing given up")
                                        : counted.join(QLatin1String(", "));
    QStringList full;
    for (const std::string &line : concededInWords(job, layout)) full << withFractions(fromCore(line));
    words.inFull = full.join(QLatin1Char('\n'));
    if (const auto broken = breaches(job, layout); !broken.empty()) {
        const Breach &first = broken.front();
        const Panel *panel = first.cut >= 0 ? job.panel(layout.cuts[std::size_t(first.cut)].panel) : nullptr;
        const QString text = withFractions(fromCore(first.text));
        words.wrong = panel ? tr("%1 %2").arg(fromCore(panel->mark.empty() ? panel->name : panel->mark), text) : text;
        if (broken.size() > 1) words.wrong = tr("%1, and %n more", nullptr, int(broken.size()) - 1).arg(words.wrong);
    }
    if (const auto why = noLongerPossible(job, layout)) words.gone = fromCore(*why);
    return words;
}

} // namespace boltwright::ui
