#include "core/yardage/ask.h"

#include "core/base/language.h"
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

bool isLimited(const Cloth &cloth) { return !cloth.bolt || cloth.bolt->length; }

namespace {

/// A bolt as long as it takes in place of the remnant: it begins at the remnant's lower left corner and goes on beyond
/// its far end; what the outline lacks is not there.
void asLongerBolt(Job &job, const Remnant &remnant) {
    Cloth &longer = job.cloths.front();
    const Length edge = longer.edge;
    const ClothBox box = boxOf(remnant.outline);
    const Vector home = ClothPoint{} - box.low;
    longer.bolt = Bolt{};
    longer.bolt->width = box.width();
    longer.bolt->square = edge;
    longer.selvage = edge;
    for (Flaw flaw : remnant.flaws) {
        flaw.outline = moved(flaw.outline, home);
        longer.bolt->flaws.push_back(std::move(flaw));
    }
    for (Flaw flaw : missingCorners(remnant, box, edge)) {
        flaw.outline = moved(flaw.outline, home);
        longer.bolt->flaws.push_back(std::move(flaw));
    }
    if (longer.pattern) longer.pattern->motif = remnant.motif.value_or(longer.pattern->motif) + home;
    longer.remnants.clear();
    longer.edge = {};
    // Cloth that is not there cannot be crossed by what is out of sight either.
    for (Panel &panel : job.panels) panel.hidden = false;
}

/// The remnant longer by `extra` at its far end, beside the others as they are.
Job withLongerRemnant(Job job, std::size_t index, Length extra) {
    Cloth &cloth = job.cloths.front();
    Remnant &remnant = cloth.remnants[index];
    ClothBox box = boxOf(remnant.outline);
    for (Flaw &flaw : missingCorners(remnant, box, cloth.edge)) remnant.flaws.push_back(std::move(flaw));
    box.high.y += extra;
    remnant.outline = ringOf(box);
    for (Panel &panel : job.panels) panel.hidden = false;
    return job;
}

PlanOptions shared(PlanOptions options, std::size_t among) {
    options.from = nullptr;
    options.given = nullptr;
    if (options.steps)
        *options.steps = std::max<std::int64_t>(1, *options.steps / std::int64_t(among));
    else
        options.seconds = options.seconds.value_or(5) / double(among);
    return options;
}

/// Narrows down how much longer the one remnant has to be where the others help: half way between what was refused and
/// what did, again and again. `e` comes with what it takes alone.
void beside(ExtraLength &e, const Job &job, std::size_t index, const PlanOptions &options) {
    const Length edge = job.cloths.front().edge, there = boxOf(job.cloths.front().remnants[index].outline).high.y;
    constexpr std::int64_t fine = 508; // 1/16 in
    constexpr std::size_t tries = 12;
    const PlanOptions one = shared(options, tries);
    Length refused;
    e.atLeast = {};
    for (std::size_t i = 0; i < tries && (e.extra - refused).ticks() > fine; ++i) {
        if (options.stop && options.stop()) return;
        const Length middle = refused + Length::ticks((e.extra - refused).ticks() / 2);
        Job longer = withLongerRemnant(job, index, middle);
        Plan p = plan(longer, one);
        if (p.kind != planner::Outcome::Kind::Fits) {
            refused = middle;
            if (p.proved) e.atLeast = middle;
            continue;
        }
        Length top = there; // what of it is used beyond its old end
        const std::vector<LaidCut> laid = layAll(longer, p.layout);
        for (std::size_t c = 0; c < laid.size(); ++c)
            if (p.layout.cuts[c].on == e.remnant) top = std::max(top, laid[c].box.high.y + edge);
        e.extra = std::min(middle, top - there);
        e.plan = std::move(p);
        e.job = std::move(longer);
    }
}

/// The cuts that stay where they are on that cloth: locked, or off it already.
Layout stayingOn(const Job &whole, const Job &job, const Layout *layout) {
    Layout staying;
    if (!layout) return staying;
    for (const Cut &cut : layout->cuts)
        if (cut.state != CutState::Planned && job.panel(cut.panel) && whole.clothOf(cut).id == job.cloths.front().id)
            staying.cuts.push_back(cut);
    return staying;
}

} // namespace

std::vector<ExtraLength> extraLengths(const Job &whole, const std::string &clothId, const PlanOptions &options) {
    std::vector<ExtraLength> all;
    const Job job = onlyCloth(whole, clothId);
    const Cloth &cloth = job.cloths.front();
    if (!isLimited(cloth)) return all;
    const Layout staying = stayingOn(whole, job, options.from);
    if (!cloth.bolt && !staying.cuts.empty()) return all;
    const auto look = [&](ExtraLength e, Length there, Length edge, const PlanOptions &one) {
        e.cloth = clothId;
        e.plan = plan(e.job, one);
        if (e.plan.kind != planner::Outcome::Kind::Fits || e.plan.layout.cloths.empty()) return;
        const ClothUse &use = e.plan.layout.cloths.front();
        const auto beyond = [&](Length length) { return std::max(Length{}, length + edge - there); };
        e.extra = beyond(use.length.value_or(Length{}));
        e.atLeast = cloth.remnants.size() <= 1 ? beyond(use.bound.value_or(Length{})) : Length{};
        all.push_back(std::move(e));
    };
    if (cloth.bolt) {
        ExtraLength e;
        e.job = job;
        e.job.cloths.front().bolt->length.reset();
        PlanOptions one = shared(options, 1);
        if (!staying.cuts.empty()) one.from = &staying;
        look(std::move(e), *cloth.bolt->length, {}, one);
    }
    const bool several = cloth.remnants.size() > 1;
    const PlanOptions alone = shared(options, several ? 4 * cloth.remnants.size() : 1);
    for (const Remnant &remnant : cloth.remnants) {
        ExtraLength e;
        e.remnant = remnant.id;
        e.job = job;
        asLongerBolt(e.job, remnant);
        look(std::move(e), boxOf(remnant.outline).height(), cloth.edge, alone);
    }
    for (ExtraLength &e : all)
        if (several)
            for (std::size_t i = 0; i < cloth.remnants.size(); ++i)
                if (cloth.remnants[i].id == e.remnant) beside(e, job, i, shared(options, 2 * all.size()));
    std::stable_sort(all.begin(), all.end(),
                     [](const ExtraLength &a, const ExtraLength &b) { return a.extra < b.extra; });
    return all;
}

std::vector<ExtraLength> extraLengths(const Job &job, const PlanOptions &options) {
    std::vector<std::string> limited;
    for (const Cloth &cloth : job.cloths)
        if (isLimited(cloth) && std::any_of(job.panels.begin(), job.panels.end(),
                                            [&](const Panel &p) { return &job.clothOf(p) == &cloth; }))
            limited.push_back(cloth.id);
    std::vector<ExtraLength> all;
    for (const std::string &cloth : limited) {
        PlanOptions one = shared(options, limited.size());
        one.from = options.from;
        for (ExtraLength &e : extraLengths(job, cloth, one)) all.push_back(std::move(e));
    }
    return all;
}

std::string extraInWords(const Job &job, const ExtraLength &e, int eighths) {
    const Cloth *cloth = job.cloth(e.cloth);
    const std::string name = cloth && !cloth->name.empty() ? cloth->name : e.cloth;
    const std::string what = e.remnant               ? phrase("Remnant %1", {*e.remnant})
                             : job.cloths.size() > 1 ? phrase("The bolt of %1", {name})
                                                     : phrase("The bolt");
    if (e.extra == Length{}) return phrase("%1 does as it is.", {what});
    // To what a tape shows, and never to the wrong side of it.
    const std::int64_t fine = job.unit == Unit::Inch ? 8128 / 16 : e.extra >= Length::ticks(320000) ? 3200 : 320;
    const auto said = [&](std::int64_t count) {
        return localised(spokenAlongRoll(Length::ticks(count * fine), job.unit));
    };
    const std::string longer = said((e.extra.ticks() + fine - 1) / fine), least = said(e.atLeast.ticks() / fine);
    const std::string ask =
        phrase("Ask for %1 more, in one length with it.", {localised(spokenPurchase(e.extra, job.unit, eighths))});
    if (e.atLeast == e.extra)
        return phrase("%1 would do if it were %2 longer, and with less it will not: this is proved.", {what, longer}) +
               " " + ask;
    if (e.atLeast.ticks() >= fine)
        return phrase("%1 would do if it were %2 longer; at least %3 more is needed, and this is proved.",
                      {what, longer, least}) +
               " " + ask;
    return phrase("%1 would do if it were %2 longer.", {what, longer}) + " " + ask;
}

} // namespace boltwright
