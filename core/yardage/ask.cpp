#include "core/yardage/ask.h"

#include "core/geometry/laying.h"
#include "core/geometry/outside.h"
#include "core/geometry/shape_ops.h"
#include "core/measure/length_text.h"
#include "core/rules/cut_shape.h"
#include "core/rules/rules.h"
#include "core/yardage/relax.h"

#include <algorithm>
#include <atomic>
#include <mutex>
#include <thread>

namespace boltwright {
namespace {

/// What lies bare between the squared end and the first cut. The whole layout may be moved up and down with the motifs,
/// so that where the first of them may lie anywhere, one repeat covers this too.
Length beforeFirstCut(const Job &job, const Layout &layout) {
    const Cloth &cloth = job.cloths.front();
    std::optional<Length> first;
    for (const Cut &cut : layout.cuts)
        if (&job.clothOf(cut) == &cloth) first = first ? std::min(*first, cut.y) : cut.y;
    return std::max(Length{}, first.value_or(Length{}) - (cloth.bolt ? cloth.bolt->square : Length{}));
}

AskAnswer answerFor(const Job &job, const AskCloth &cloth, const AskOptions &options) {
    AskAnswer a;
    a.cloth = cloth;
    JobOnCloth on = onCloth(job, cloth);
    a.job = std::move(on.job);
    a.otherwise = std::move(on.otherwise);
    PlanOptions one = options.plan;
    one.threads = 1;
    one.report = nullptr;
    one.from = nullptr;
    one.given = &on.given;
    a.plan = plan(a.job, one);
    a.reserve = options.reserve;
    if (a.plan.kind != planner::Outcome::Kind::Fits) return a;
    for (const ClothUse &use : a.plan.layout.cloths)
        if (use.id == a.job.cloths.front().id) a.planned = use.length.value_or(Length{});
    if (cloth.along && anyMotif(a.job)) {
        a.firstMotif = *cloth.along;
        a.planned -= beforeFirstCut(a.job, a.plan.layout);
    }
    a.buy = purchaseLength(a.planned + a.firstMotif + a.reserve, job.unit, options.eighths);
    return a;
}

/// What a remnant's outline lacks of its box, and the distance to keep from it, as flaws of a bolt that goes on beyond.
std::vector<Flaw> missingCorners(const Remnant &remnant, const ClothBox &box, Length edge) {
    std::vector<Flaw> missing;
    for (const ClothRing &ring : outside(box, counterClockwise(remnant.outline)))
        for (const ClothRing &part : convexParts(ring)) missing.push_back({grown(part, edge), "not there", {}});
    return missing;
}

} // namespace

std::vector<AskAnswer> askFor(const Job &job, const std::vector<AskCloth> &cloths, const AskOptions &options) {
    std::vector<std::optional<AskAnswer>> answers(cloths.size());
    std::atomic<std::size_t> next{0};
    std::mutex telling;
    int done = 0;
    const auto work = [&] {
        for (std::size_t i = next++; i < cloths.size(); i = next++) {
            if (options.plan.stop && options.plan.stop()) return;
            AskAnswer answer = answerFor(job, cloths[i], options);
            const bool cutShort = options.plan.stop && options.plan.stop();
            if (cutShort && answer.plan.kind == planner::Outcome::Kind::NotFound) return;
            const std::scoped_lock lock(telling);
            ++done;
            if (options.found) options.found(i, answer);
            answers[i] = std::move(answer);
            if (options.progress) options.progress(done, int(cloths.size()));
        }
    };
    {
        std::vector<std::jthread> threads;
        for (int t = 1; t < std::min<int>(options.plan.threads, int(cloths.size())); ++t) threads.emplace_back(work);
        work();
    }
    std::vector<AskAnswer> all;
    for (auto &a : answers)
        if (a) all.push_back(std::move(*a));
    return all;
}

std::vector<std::string> widerAsOnePiece(const AskAnswer &answer) {
    std::vector<std::string> ids;
    const Cloth &cloth = answer.job.cloths.front();
    if (!cloth.bolt) return ids;
    const Length room = boxOf(roomOf(cloth, std::nullopt)).width();
    for (const Panel &panel : answer.job.panels) {
        if (std::holds_alternative<Rectangle>(panel.shape) || &answer.job.clothOf(panel) != &cloth) continue;
        const PanelRing outline = cutOutline(panel.shape, preferredAllowances(panel));
        const auto turns = turnsOf(panel, cloth, cloth);
        const bool wide = !turns.empty() && std::all_of(turns.begin(), turns.end(), [&](Turn turn) {
            return boxOf(laid(outline, turn, false)).width() > room;
        });
        if (wide) ids.push_back(panel.id);
    }
    return ids;
}

std::vector<ExtraLength> extraLengths(const Job &whole, const std::string &clothId, const PlanOptions &options) {
    std::vector<ExtraLength> all;
    const Job job = onlyCloth(whole, clothId);
    const Cloth &cloth = job.cloths.front();
    for (const Remnant &remnant : cloth.remnants) {
        ExtraLength e;
        e.remnant = remnant.id;
        e.job = job;
        Cloth &longer = e.job.cloths.front();
        const ClothBox box = boxOf(remnant.outline);
        // In the frame of a bolt that begins at the remnant's lower left corner.
        const Vector home = ClothPoint{} - box.low;
        longer.bolt = Bolt{};
        longer.bolt->width = box.width();
        longer.bolt->square = cloth.edge;
        longer.selvage = cloth.edge;
        for (Flaw flaw : remnant.flaws) {
            flaw.outline = moved(flaw.outline, home);
            longer.bolt->flaws.push_back(std::move(flaw));
        }
        for (Flaw flaw : missingCorners(remnant, box, cloth.edge)) {
            flaw.outline = moved(flaw.outline, home);
            longer.bolt->flaws.push_back(std::move(flaw));
        }
        if (longer.pattern) longer.pattern->motif = remnant.motif.value_or(longer.pattern->motif) + home;
        longer.remnants.clear();
        longer.edge = {};
        // Cloth that is not there cannot be crossed by what is out of sight either.
        for (Panel &panel : e.job.panels) panel.hidden = false;
        PlanOptions share = options;
        share.from = nullptr;
        if (share.steps)
            *share.steps = std::max<std::int64_t>(1, *share.steps / std::int64_t(cloth.remnants.size()));
        else
            share.seconds = share.seconds.value_or(5) / double(cloth.remnants.size());
        e.plan = plan(e.job, share);
        if (e.plan.kind != planner::Outcome::Kind::Fits || e.plan.layout.cloths.empty()) continue;
        const ClothUse &use = e.plan.layout.cloths.front();
        const auto beyond = [&](Length length) { return std::max(Length{}, length + cloth.edge - box.height()); };
        e.extra = beyond(use.length.value_or(Length{}));
        e.atLeast = cloth.remnants.size() == 1 ? beyond(use.bound.value_or(Length{})) : Length{};
        all.push_back(std::move(e));
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const ExtraLength &a, const ExtraLength &b) { return a.extra < b.extra; });
    return all;
}

} // namespace boltwright
