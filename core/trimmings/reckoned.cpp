#include "core/trimmings/reckoned.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"
#include "core/trimmings/nails.h"
#include "core/trimmings/welt.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace boltwright {
namespace {

const Cloth *clothOf(const Job &job, const Trimming &trimming) {
    if (trimming.cloth) return job.cloth(*trimming.cloth);
    return job.cloths.empty() ? nullptr : &job.cloths.front();
}

/// What is cut from between the selvages; none where there is no bolt.
std::optional<Length> usableWidth(const Job &job, const Trimming &trimming) {
    const Cloth *cloth = clothOf(job, trimming);
    if (!cloth || !cloth->bolt) return std::nullopt;
    const Length width = cloth->bolt->width - cloth->selvage * 2;
    return width > Length{} ? std::optional(width) : std::nullopt;
}

/// The longest strip that is cut in one piece from cloth so wide. Along the roll it could be longer, but a strip as
/// long as the cloth is wide leaves the planner free; where there is less cloth than that, it is no longer than the
/// cloth. A strip on the bias reaches as far along the roll as across it.
Length longestStrip(const Job &job, const Trimming &trimming, Length usable) {
    const Bolt &bolt = *clothOf(job, trimming)->bolt;
    const Length along = bolt.length ? std::min(usable, *bolt.length - bolt.square) : usable;
    switch (trimming.run) {
    case StripRun::Across:
        return usable;
    case StripRun::UpRoll:
        return std::max(along, Length{});
    case StripRun::Bias:
        return longestSquareEndedBias(std::max(along, Length{}), trimming.strip);
    }
    return {};
}

Length withReserve(Length length, int reserve) { return timesUp(length, {100 + reserve, 100}); }

/// Where a run begins and ends, the strip laps itself.
Length stripNeed(const Trimming &trimming) {
    return withReserve(weltNeeded(trimming.edges, trimming.runs, trimming.strip), trimming.reserve);
}

/// Strips that serve already, by cloth.
using Taken = std::map<std::string, std::vector<Strip>>;

void reckonStrips(const Job &job, const Layout &layout, const Trimming &trimming, Taken &taken, Reckoned &out) {
    out.need = stripNeed(trimming);
    if (trimming.from == StripsFrom::Scraps) {
        const Cloth *cloth = clothOf(job, trimming);
        const std::string id = cloth ? cloth->id : std::string();
        std::vector<Strip> &gone = taken[id];
        out.found = stripsFromScraps(job, layout, {id, trimming.strip, trimming.shortest, trimming.run}, gone);
        const auto enough = enoughFor(*out.found, out.need, trimming.strip);
        out.used = (enough ? *enough : *out.found).strips;
        gone.insert(gone.end(), out.used.begin(), out.used.end());
        out.pieces = std::int64_t(out.found->strips.size());
        out.made = joinedLength(*out.found, trimming.strip);
        out.enough = out.made >= out.need;
        return;
    }
    const auto usable = usableWidth(job, trimming);
    if (!usable) {
        out.enough = false;
        return;
    }
    out.pieceLength = std::min(out.need, longestStrip(job, trimming, *usable));
    const auto strips = out.pieceLength > Length{}
                            ? stripsFor(out.need, trimming.strip, out.pieceLength, trimming.strip)
                            : std::nullopt;
    if (!strips) {
        out.enough = false;
        return;
    }
    out.pieces = strips->strips;
    out.cloth = trimming.run == StripRun::Across ? strips->cloth : biasCloth(out.need, trimming.strip, *usable);
}

void reckonNails(const Trimming &trimming, Reckoned &out) {
    out.need = trimming.edges;
    if (trimming.pitch > Length{}) {
        // A row of nails has one more than it has spaces.
        for (int run = 0; run < trimming.runs; ++run)
            out.pieces += spacedNails(Length::ticks(trimming.edges.ticks() / trimming.runs), trimming.pitch);
    } else if (trimming.head > Length{}) {
        out.pieces = closeNails(trimming.edges, trimming.head);
    }
    out.pieces = (out.pieces * (100 + trimming.reserve) + 99) / 100;
}

Reckoned reckonedBeside(const Job &job, const Layout &layout, const Trimming &trimming, Taken &taken) {
    Reckoned out;
    if (trimming.isStrip())
        reckonStrips(job, layout, trimming, taken, out);
    else if (trimming.kind == Trimming::Kind::Nails)
        reckonNails(trimming, out);
    else
        out.need = withReserve(trimming.edges, trimming.reserve);
    return out;
}

std::string runWords(StripRun run) {
    switch (run) {
    case StripRun::UpRoll:
        return phrase("along the roll");
    case StripRun::Across:
        return phrase("across the cloth");
    case StripRun::Bias:
        return phrase("on the bias");
    }
    return {};
}

std::string capital(std::string_view word) {
    std::string out(word);
    if (!out.empty() && out[0] >= 'a' && out[0] <= 'z') out[0] = char(out[0] - 'a' + 'A');
    return out;
}

} // namespace

std::string_view nameOf(Trimming::Kind kind) {
    switch (kind) {
    case Trimming::Kind::Welt:
        return marked("welt");
    case Trimming::Kind::DoubleWelt:
        return marked("double welt");
    case Trimming::Kind::Gimp:
        return marked("gimp");
    case Trimming::Kind::Cord:
        return marked("cord");
    case Trimming::Kind::Nails:
        return marked("nails");
    }
    return {};
}

std::vector<Reckoned> reckonedAll(const Job &job, const Layout &layout) {
    Taken taken;
    std::vector<Reckoned> all;
    for (const Trimming &trimming : job.trimmings) all.push_back(reckonedBeside(job, layout, trimming, taken));
    return all;
}

Reckoned reckoned(const Job &job, const Layout &layout, const Trimming &trimming) {
    Taken taken;
    const auto &all = job.trimmings;
    if (const auto own = std::find(all.begin(), all.end(), trimming); own != all.end())
        for (auto before = all.begin(); before != own; ++before)
            if (before->isStrip() && before->from == StripsFrom::Scraps) reckonedBeside(job, layout, *before, taken);
    return reckonedBeside(job, layout, trimming, taken);
}

std::optional<Panel> stripPanel(const Job &job, const Trimming &trimming) {
    if (!trimming.isStrip() || trimming.from != StripsFrom::Cloth) return std::nullopt;
    const Reckoned figures = reckoned(job, {}, trimming);
    if (figures.pieces < 1) return std::nullopt;
    Panel panel;
    const std::string stem = trimming.kind == Trimming::Kind::Welt ? "welt" : "double-welt";
    panel.id = stem;
    for (int n = 2; job.panel(panel.id); ++n) panel.id = fmt::format("{}-{}", stem, n);
    panel.mark = trimming.kind == Trimming::Kind::Welt ? "W" : "DW";
    panel.name = phrase("%1 strips", {capital(phrase(nameOf(trimming.kind)))});
    panel.count = int(std::min<std::int64_t>(figures.pieces, 999));
    panel.cloth = trimming.cloth;
    panel.shape = trimming.run == StripRun::UpRoll ? Rectangle{trimming.strip, figures.pieceLength}
                                                   : Rectangle{figures.pieceLength, trimming.strip};
    panel.allow.assign(4, Length{});
    panel.allowMin.assign(4, std::nullopt);
    panel.run = trimming.run == StripRun::Bias ? Run::Bias : Run::UpRoll;
    return panel;
}

std::string trimmingWords(const Job &job, const Trimming &trimming, const Reckoned &figures) {
    const Unit unit = job.unit;
    const auto said = [&](Length length) { return localised(spokenWithUnit(length, unit)); };
    const auto along = [&](Length length) { return localised(spokenAlongRoll(length, unit)); };
    std::string title = capital(phrase(nameOf(trimming.kind)));
    if (!trimming.name.empty()) title += " (" + trimming.name + ")";
    // Told to the half inch or half centimetre: what is needed up, what there is down.
    const Length step = unit == Unit::Inch ? Length::ticks(8128 / 2) : Length::ticks(1600);
    const Length needed = roundedUp(figures.need, step), there = step * wholeTimes(figures.made, step);
    const std::string need = along(needed), pieces = std::to_string(figures.pieces);
    const std::string reserve =
        trimming.reserve > 0 ? phrase(", %1 in the hundred of reserve", {std::to_string(trimming.reserve)}) : "";
    if (trimming.kind == Trimming::Kind::Nails) {
        const std::string how =
            trimming.pitch > Length{} ? phrase("%1 apart", {said(trimming.pitch)}) : phrase("head to head");
        return phrase("%1: %2 with heads of %3, %4 along %5%6.",
                      {title, pieces, said(trimming.head), how, along(trimming.edges), reserve});
    }
    if (!trimming.isStrip())
        return phrase("%1: order %2 for %3 of edge%4.", {title, need, along(trimming.edges), reserve});
    const std::string strips = phrase("strips %1 wide %2", {said(trimming.strip), runWords(trimming.run)});
    if (trimming.from == StripsFrom::Cloth) {
        const Cloth *cloth = clothOf(job, trimming);
        if (figures.pieces == 0 && cloth && !cloth->bolt)
            return phrase("%1, %2: there is no bolt to cut such strips from, but what is left over of the remnants may "
                          "serve.",
                          {title, need});
        if (figures.pieces == 0) return phrase("%1, %2: the cloth is too small for such strips.", {title, need});
        return phrase(
            "%1, %2 with its joins%3: %4 %5, each %6, about %7 of the cloth.",
            {title, need, reserve, pieces, strips, said(figures.pieceLength), along(roundedUp(figures.cloth, step))});
    }
    const std::string from =
        phrase("%1, %2 with its joins%3: %4 from what is left over", {title, need, reserve, strips});
    if (figures.pieces == 0) return phrase("%1, but nothing there is long enough yet.", {from});
    const std::string counted = figures.pieces == 1 ? phrase("1 piece") : phrase("%1 pieces", {pieces});
    const std::string made = phrase("%1 of at least %2 make %3", {counted, said(trimming.shortest), along(there)});
    if (figures.enough) return phrase("%1. Enough: %2.", {from, made});
    return phrase("%1. Not enough: %2, %3 are missing.", {from, made, along(needed - there)});
}

std::string trimmingWords(const Job &job, const Layout &layout, const Trimming &trimming) {
    return trimmingWords(job, trimming, reckoned(job, layout, trimming));
}

} // namespace boltwright
