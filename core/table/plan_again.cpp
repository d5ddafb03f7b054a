#include "core/table/plan_again.h"

#include "core/measure/length_text.h"
#include "core/table/at_table.h"

#include <algorithm>
#include <functional>
#include <optional>

namespace boltwright {
namespace {

bool fits(const Plan &plan) { return plan.kind == planner::Outcome::Kind::Fits; }

bool isSame(const Cut &a, const Cut &b) { return a.panel == b.panel && a.copy == b.copy && a.piece == b.piece; }

/// Everything stays but what has to move.
Layout held(const Job &job, Layout layout) {
    const auto moving = cutsOnFlaws(job, layout);
    for (int i = 0; i < int(layout.cuts.size()); ++i) {
        Cut &cut = layout.cuts[std::size_t(i)];
        if (cut.state == CutState::Planned && std::find(moving.begin(), moving.end(), i) == moving.end())
            cut.state = CutState::Locked;
    }
    return layout;
}

/// What was held for the while is planned again.
Layout released(Layout layout, const Layout &before) {
    for (Cut &cut : layout.cuts) {
        const auto was =
            std::find_if(before.cuts.begin(), before.cuts.end(), [&](const Cut &c) { return isSame(c, cut); });
        if (was != before.cuts.end() && cut.state == CutState::Locked) cut.state = was->state;
    }
    return layout;
}

Length bought(const Job &job, const Layout &layout) {
    Length sum;
    for (const ClothUse &use : layout.cloths)
        if (use.length) sum += purchaseLength(*use.length, job.unit);
    return sum;
}

/// A bound found while pieces were held says nothing of layouts that move them.
void dropBounds(Layout &layout) {
    for (ClothUse &use : layout.cloths) {
        use.bound.reset();
        use.proved = false;
    }
}

/// One found without does.
void takeBounds(Layout &layout, const Plan &from) {
    dropBounds(layout);
    if (!fits(from)) return;
    for (ClothUse &use : layout.cloths) {
        for (const ClothUse &other : from.layout.cloths)
            if (other.id == use.id) use.bound = other.bound;
        use.proved = use.bound && use.length && *use.bound == *use.length;
    }
}

/// Half of the time or steps. `shown` makes of a better layout what whoever waits is to see, or nothing.
PlanOptions half(PlanOptions options, double begin, std::function<std::optional<Layout>(const Layout &)> shown) {
    if (options.seconds) *options.seconds /= 2;
    if (options.steps) options.steps = std::max<std::int64_t>(1, *options.steps / 2);
    if (auto report = options.report)
        options.report = [report, begin, shown = std::move(shown)](const PlanProgress &progress) {
            PlanProgress told = progress;
            told.share = begin + progress.share / 2;
            const std::optional<Layout> better = progress.better ? shown(*progress.better) : std::nullopt;
            told.better = better ? &*better : nullptr;
            report(told);
        };
    return options;
}

/// What came of the first half, before the second begins: whoever stops now keeps it.
void tellFirst(const PlanOptions &options, Layout layout) {
    if (!options.report) return;
    dropBounds(layout);
    PlanProgress told;
    told.share = 0.5;
    told.found = true;
    told.better = &layout;
    options.report(told);
}

} // namespace

Plan planAgain(const Job &job, const PlanOptions &options) {
    if (!options.from || options.from->cuts.empty()) return plan(job, options);
    const Layout &before = *options.from;
    const Layout staying = held(job, before);
    PlanOptions first = half(options, 0, [&before](const Layout &better) {
        Layout layout = released(better, before);
        dropBounds(layout);
        return std::optional(std::move(layout));
    });
    first.from = &staying;
    Plan near = plan(job, first);
    if (fits(near)) {
        near.layout = released(std::move(near.layout), before);
        tellFirst(options, near.layout);
    }

    const PlanOptions second = half(options, 0.5, [&job, &near](const Layout &better) {
        const bool worthIt = !fits(near) || bought(job, better) < bought(job, near.layout);
        return worthIt ? std::optional(better) : std::nullopt;
    });
    Plan anew = plan(job, second);
    if (!fits(near) || (fits(anew) && bought(job, anew.layout) < bought(job, near.layout))) return anew;
    takeBounds(near.layout, anew);
    near.proved = false;
    return near;
}

} // namespace boltwright
