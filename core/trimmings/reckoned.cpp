#include "core/trimmings/reckoned.h"

#include "core/measure/length_text.h"
#include "core/trimmings/nails.h"
#include "core/trimmings/welt.h"

#include <fmt/format.h>

#include <algorithm>

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
/// long as the cloth is wide leaves the planner free.
Length longestStrip(const Trimming &trimming, Length usable) {
    return trimming.run == StripRun::Bias ? longestSquareEndedBias(usable, trimming.strip) : usable;
}

Length withReserve(Length length, int reserve) { return timesUp(length, {100 + reserve, 100}); }

/// Where a run begins and ends, the strip laps itself.
Length stripNeed(const Trimming &trimming) {
    return withReserve(weltNeeded(trimming.edges, trimming.runs, trimming.strip), trimming.reserve);
}

void reckonStrips(const Job &job, const Layout &layout, const Trimming &trimming, Reckoned &out) {
    out.need = stripNeed(trimming);
    if (trimming.from == StripsFrom::Scraps) {
        const Cloth *cloth = clothOf(job, trimming);
        out.found = cloth ? stripsFromScraps(job, layout, {cloth->id, trimming.strip, trimming.shortest, trimming.run})
                          : StripsLeft{};
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
    out.pieceLength = std::min(out.need, longestStrip(trimming, *usable));
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

std::string runWords(StripRun run) {
    switch (run) {
    case StripRun::UpRoll:
        return "along the roll";
    case StripRun::Across:
        return "across the cloth";
    case StripRun::Bias:
        return "on the bias";
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
        return "welt";
    case Trimming::Kind::DoubleWelt:
        return "double welt";
    case Trimming::Kind::Gimp:
        return "gimp";
    case Trimming::Kind::Cord:
        return "cord";
    case Trimming::Kind::Nails:
        return "nails";
    }
    return {};
}

Reckoned reckoned(const Job &job, const Layout &layout, const Trimming &trimming) {
    Reckoned out;
    if (trimming.isStrip())
        reckonStrips(job, layout, trimming, out);
    else if (trimming.kind == Trimming::Kind::Nails)
        reckonNails(trimming, out);
    else
        out.need = withReserve(trimming.edges, trimming.reserve);
    return out;
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
    panel.name = capital(nameOf(trimming.kind)) + " strips";
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
    std::string title = capital(nameOf(trimming.kind));
    if (!trimming.name.empty()) title += " (" + trimming.name + ")";
    // Told to the half inch or half centimetre: what is needed up, what there is down.
    const Length step = unit == Unit::Inch ? Length::ticks(8128 / 2) : Length::ticks(1600);
    const Length needed = roundedUp(figures.need, step), there = step * wholeTimes(figures.made, step);
    const std::string need = spokenAlongRoll(needed, unit);
    const std::string reserve =
        trimming.reserve > 0 ? fmt::format(", {} in the hundred of reserve", trimming.reserve) : std::string();
    if (trimming.kind == Trimming::Kind::Nails) {
        const std::string how = trimming.pitch > Length{}
                                    ? fmt::format("{} apart", spokenWithUnit(trimming.pitch, unit))
                                    : std::string("head to head");
        return fmt::format("{}: {} with heads of {}, {} along {}{}.", title, figures.pieces,
                           spokenWithUnit(trimming.head, unit), how, spokenAlongRoll(trimming.edges, unit), reserve);
    }
    if (!trimming.isStrip())
        return fmt::format("{}: order {} for {} of edge{}.", title, need, spokenAlongRoll(trimming.edges, unit),
                           reserve);
    const std::string strips =
        fmt::format("strips {} wide {}", spokenWithUnit(trimming.strip, unit), runWords(trimming.run));
    if (trimming.from == StripsFrom::Cloth) {
        if (figures.pieces == 0) return fmt::format("{}, {}: the cloth is too narrow for such strips.", title, need);
        return fmt::format("{}, {} with its joins{}: {} {}, each {}, about {} of the cloth.", title, need, reserve,
                           figures.pieces, strips, spokenWithUnit(figures.pieceLength, unit),
                           spokenAlongRoll(figures.cloth, unit));
    }
    if (figures.pieces == 0)
        return fmt::format("{}, {} with its joins{}: {} from what is left over, but nothing there is long enough yet.",
                           title, need, reserve, strips);
    const std::string made = fmt::format("{} of at least {} make {}",
                                         figures.pieces == 1 ? "1 piece" : fmt::format("{} pieces", figures.pieces),
                                         spokenWithUnit(trimming.shortest, unit), spokenAlongRoll(there, unit));
    if (figures.enough)
        return fmt::format("{}, {} with its joins{}: {} from what is left over. Enough: {}.", title, need, reserve,
                           strips, made);
    return fmt::format("{}, {} with its joins{}: {} from what is left over. Not enough: {}, {} are missing.", title,
                       need, reserve, strips, made, spokenAlongRoll(needed - there, unit));
}

std::string trimmingWords(const Job &job, const Layout &layout, const Trimming &trimming) {
    return trimmingWords(job, trimming, reckoned(job, layout, trimming));
}

} // namespace boltwright
