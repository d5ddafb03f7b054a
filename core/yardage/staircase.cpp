#include "core/yardage/staircase.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"
#include "core/rules/cut_shape.h"
#include "core/yardage/relax.h"

#include <algorithm>
#include <array>

namespace boltwright {
namespace {

/// Area ÷ width, rounded up to a tick so that no planned length is ever below it by rounding.
Length lengthFor(Area area, Length width) { return Length::ticks((area + width.ticks() - 1) / width.ticks()); }

Area measuredArea(const Job &job) {
    Area sum = 0;
    for (const Panel &p : job.panels) sum += twiceArea(measuredOutline(p.shape)) / 2 * p.count;
    return sum;
}

Area cutArea(const Job &job) {
    Area sum = 0;
    for (const Panel &p : job.panels) sum += twiceArea(cutOutline(p.shape, preferredAllowances(p))) / 2 * p.count;
    return sum;
}

/// A planned step on the way down: its job, and what came of it.
struct Landing {
    StairKind kind;
    Job job;
    Layout layout;
    Length length, bound;
};

const ClothUse &useOf(const Layout &layout, const std::string &cloth) {
    return *std::find_if(layout.cloths.begin(), layout.cloths.end(), [&](const ClothUse &u) { return u.id == cloth; });
}

std::string adviceFor(StairKind kind, const Job &job, Length step) {
    if (step == Length{}) return {};
    const std::string less = localised(spokenAlongRoll(step, job.unit));
    switch (kind) {
    case StairKind::Allowances:
        return phrase("narrower seams and pulls save at most %1", {less});
    case StairKind::Width:
        return phrase("another width of cloth, or one more join in a long part, may hold the parts better");
    case StairKind::Direction:
        return phrase("cloth that may be turned either way, without nap or a print with a top: %1 less", {less});
    case StairKind::Motif:
        return phrase("plain cloth of the same width, or motifs not centred: %1 less", {less});
    case StairKind::Flow:
        return phrase("letting the pattern miss where parts meet: %1 less", {less});
    case StairKind::SelvageGaps:
        return phrase("cutting closer, or cloth with narrower selvages and no flaws: at most %1 less", {less});
    case StairKind::Rounding:
        return phrase("%1 is left for repairs", {less});
    case StairKind::BareArea:
        return phrase("only fewer or smaller parts make this less");
    }
    return {};
}

/// Plans one landing from the layout of the tighter one above it; never longer than that.
void descend(Landing &landing, const Landing *above, PlanOptions options, const std::string &cloth) {
    if (above) options.from = &above->layout;
    const Plan p = plan(landing.job, options);
    if (p.kind == planner::Outcome::Kind::Fits) {
        landing.layout = p.layout;
        landing.length = useOf(p.layout, cloth).length.value_or(Length{});
        landing.bound = useOf(p.layout, cloth).bound.value_or(Length{});
    }
    if (above && (p.kind != planner::Outcome::Kind::Fits || landing.length > above->length)) {
        // The tighter layout is right here too, whatever the search made of the time it had.
        landing.layout = above->layout;
        landing.length = above->length;
    }
    if (above) landing.bound = std::min(landing.bound, landing.length);
}

} // namespace

std::string nameOf(StairKind kind) {
    switch (kind) {
    case StairKind::BareArea:
        return "bare measured area";
    case StairKind::Allowances:
        return "seams, pulls and tucks";
    case StairKind::Width:
        return "what the width cannot hold";
    case StairKind::Direction:
        return "nap or direction";
    case StairKind::Motif:
        return "motifs in the middle";
    case StairKind::Flow:
        return "pattern match";
    case StairKind::SelvageGaps:
        return "selvages, squared end and gaps";
    case StairKind::Rounding:
        return "rounding up to what is sold";
    }
    return {};
}

Result<Staircase> staircaseOf(const Job &whole, const std::string &clothId, const StaircaseOptions &options) {
    const Cloth *cloth = whole.cloth(clothId);
    if (!cloth || !cloth->bolt) return fault("only cloth off a bolt has a length to explain");
    Job job = onlyCloth(whole, clothId);
    if (job.panels.empty()) return fault("nothing is cut from this cloth");
    job.cloths.front().bolt->length.reset(); // the question is what it needs, not what there is

    // From the tightest down, each starting from the layout above it.
    std::vector<Landing> landings;
    const auto add = [&](StairKind kind, Job relaxed) { landings.push_back({kind, std::move(relaxed), {}, {}, {}}); };
    add(StairKind::SelvageGaps, job);
    add(StairKind::Flow, withoutSelvageAndGaps(landings.back().job));
    add(StairKind::Motif, withoutFlow(landings.back().job));
    add(StairKind::Direction, withoutMotif(landings.back().job));
    add(StairKind::Width, withoutDirection(landings.back().job));
    for (std::size_t i = 0; i < landings.size(); ++i) {
        PlanOptions share = options.plan;
        if (share.steps)
            *share.steps = std::max<std::int64_t>(1, *share.steps / std::int64_t(landings.size()));
        else
            share.seconds = share.seconds.value_or(5) / double(landings.size());
        if (options.progress) options.progress(double(i) / double(landings.size()));
        const bool same = i > 0 && landings[i].job == landings[i - 1].job;
        if (same) {
            landings[i].layout = landings[i - 1].layout;
            landings[i].length = landings[i - 1].length;
            landings[i].bound = landings[i - 1].bound;
            continue;
        }
        descend(landings[i], i > 0 ? &landings[i - 1] : nullptr, share, clothId);
        if (i == 0 && landings[0].layout.cuts.empty())
            return fault(options.plan.stop && options.plan.stop() ? "it was stopped before a first layout was found"
                                                                  : "the panels cannot be laid on this cloth at all");
    }

    const Length width = cloth->bolt->width;
    Staircase stairs;
    stairs.cloth = clothId;
    stairs.onHand = cloth->bolt->length.has_value();
    stairs.needed = landings.front().length;
    stairs.buy = purchaseLength(stairs.needed, job.unit, options.eighths);
    Length reached;
    Length excessBelow;
    const auto step = [&](StairKind kind, Length length, Length excess, Layout layout) {
        Stair s;
        s.kind = kind;
        s.step = length - reached;
        s.length = length;
        s.upTo = s.step > Length{} && s.step < excess + excessBelow;
        s.layout = std::move(layout);
        s.advice = adviceFor(kind, job, s.step);
        stairs.stairs.push_back(std::move(s));
        reached = length;
        excessBelow = excess;
    };
    step(StairKind::BareArea, std::min(lengthFor(measuredArea(job), width), landings.back().length), {}, {});
    step(StairKind::Allowances, std::clamp(lengthFor(cutArea(job), width), reached, landings.back().length), {}, {});
    for (auto it = landings.rbegin(); it != landings.rend(); ++it)
        step(it->kind, it->length, it->length - it->bound, std::move(it->layout));
    step(StairKind::Rounding, stairs.buy, {}, {});
    stairs.stairs.back().upTo = false;
    return stairs;
}

} // namespace boltwright
