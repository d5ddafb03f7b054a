#include "ui/piece/piece_words.h"

#include "ui/text/words.h"

#include <QCoreApplication>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

QString tr(const char *text) { return QCoreApplication::translate("PieceWords", text); }

QString nameOfPanel(const Panel &panel) {
    return fromCore(!panel.name.empty() ? panel.name : !panel.mark.empty() ? panel.mark : panel.id);
}

/// A name within a sentence: "the inside back"; a mark or a name of its own keeps its capitals.
QString withinSentence(const QString &name) {
    const bool plain = name.size() > 1 && name[0].isUpper() && name.mid(1) == name.mid(1).toLower();
    return tr("the %1").arg(plain ? name[0].toLower() + name.mid(1) : name);
}

/// Whether the cloth that the panel is cut from has stripes alone.
bool isStriped(const Job &job, const CoveredPanel &panel) {
    const Cloth *cloth = panel.parts.empty() ? nullptr : job.cloth(panel.parts.front().sheet.cloth);
    return cloth && cloth->pattern && !(cloth->pattern->across && cloth->pattern->along);
}

} // namespace

QString nameOfCopy(const Job &job, const CopyOf &copy) {
    const Panel *panel = job.panel(copy.panel);
    if (!panel) return fromCore(copy.panel);
    return panel->count > 1 ? u"%1 %2"_s.arg(nameOfPanel(*panel)).arg(copy.copy) : nameOfPanel(*panel);
}

QString missWords(const Job &job, const CoveredPiece &piece, const CoveredJoin &join) {
    if (!join.miss) return {};
    const CoveredPanel &subject = piece.panels[std::size_t(join.b)], &object = piece.panels[std::size_t(join.a)];
    const QString who = nameOfCopy(job, subject.copy), other = withinSentence(nameOfCopy(job, object.copy));
    const QString by = shownLengthWithUnit(join.miss->by, job.unit);
    if (join.a == join.b) {
        if (join.miss->why == PatternMiss::Why::OffPattern)
            return isStriped(job, subject) ? tr("%1: stripes miss by %2 at the join of its pieces").arg(who, by)
                                           : tr("%1: pattern misses by %2 at the join of its pieces").arg(who, by);
        return tr("%1: its pieces are not cut alike").arg(who);
    }
    switch (join.miss->why) {
    case PatternMiss::Why::OffPattern:
        return isStriped(job, subject) ? tr("%1: stripes miss %2 by %3").arg(who, other, by)
                                       : tr("%1: pattern misses %2 by %3").arg(who, other, by);
    case PatternMiss::Why::Turned:
        return tr("%1: lies turned from %2").arg(who, other);
    case PatternMiss::Why::OtherCloth:
        return tr("%1: other cloth than %2").arg(who, other);
    }
    return {};
}

QStringList missWords(const Job &job, const CoveredPiece &piece) {
    QStringList words;
    for (const CoveredJoin &join : piece.joins)
        if (const QString said = missWords(job, piece, join); !said.isEmpty() && !words.contains(said)) words << said;
    return words;
}

QString outOfSightWords(const Job &job, const CoveredPiece &piece) {
    QStringList names;
    for (const std::string &id : piece.outOfSight)
        if (const Panel *panel = job.panel(id)) names << nameOfPanel(*panel);
    return names.isEmpty() ? QString() : tr("Out of sight: %1").arg(names.join(u", "_s));
}

QStringList panelWords(const Job &job, const CoveredPiece &piece, const CoveredPanel &panel) {
    const PieceBox box = boxOf(panel.outline);
    const QString size =
        tr("%1, seen %2").arg(nameOfCopy(job, panel.copy), shownSize(box.width(), box.height(), job.unit));
    QStringList words{size};
    if (panel.parts.empty()) words << tr("put aside");
    for (const CoveredJoin &join : piece.joins)
        if (&piece.panels[std::size_t(join.a)] == &panel || &piece.panels[std::size_t(join.b)] == &panel)
            if (const QString said = missWords(job, piece, join); !said.isEmpty()) words << said;
    return words;
}

} // namespace boltwright::ui
