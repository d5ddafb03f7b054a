#include "core/planner/polygon_search.h"

#include "core/planner/polygon/exact_fit.h"
#include "core/planner/polygon/pairing.h"
#include "core/planner/polygon/profile_frontier.h"
#include "core/planner/polygon/profile_walk.h"
#include "core/planner/polygon/walker.h"
#include "core/planner/rectangle_search.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <functional>
#include <memory>
#include <thread>

namespace boltwright::planner {
namespace {

using Time = std::chrono::steady_clock;

/// A fixed number, so that with a count of steps the outcome does not hang on how many threads there are.
constexpr int slotsBySteps = 4;

/// So many places tried in fitting a jigsaw take about as long as one relocation.
constexpr std::int64_t placesToAStep = 16;

std::vector<Placement> placementsOf(const std::vector<Where> &layout) {
    std::vector<Placement> out;
    for (std::size_t i = 0; i < layout.size(); ++i)
        out.push_back({int(i),
                       layout[i].option,
                       {Length::ticks(std::int64_t(layout[i].x)), Length::ticks(std::int64_t(layout[i].y))}});
    return out;
}

std::vector<Where> layoutOf(const std::vector<Placement> &placements, std::size_t items) {
    std::vector<Where> out(items);
    for (const Placement &p : placements)
        out[std::size_t(p.item)] = {p.option, double(p.corner.x.ticks()), double(p.corner.y.ticks())};
    return out;
}

/// An item that lies nowhere even alone: its box is larger than that of every room, by more than rounding.
bool anyFitsNowhere(const Instance &instance) {
    constexpr Length rounding = Length::ticks(8);
    return std::any_of(instance.items.begin(), instance.items.end(), [&](const Item &item) {
        return std::all_of(item.options.begin(), item.options.end(), [&](const Option &option) {
            const ClothBox room = boxOf(instance.sheets[std::size_t(option.sheet)].room);
            const Outline &o = instance.outlines[std::size_t(option.outline)];
            return o.width > room.width() + rounding || o.height > room.height() + rounding;
        });
    });
}

class Search {
public:
    Search(const Instance &instance, const Limits &limits, Length bound, const std::function<double()> &clock)
        : m_instance(instance), m_limits(limits), m_clock(clock), m_model(instance), m_bound(bound),
          m_begin(Time::now()) {
        m_convex = std::all_of(instance.outlines.begin(), instance.outlines.end(),
                               [](const Outline &o) { return o.parts.size() == 1; });
        if (!limits.start.empty() && holds(instance, limits.start)) m_best = limits.start;
    }

    Outcome run();

private:
    enum class Way { Frontier, Profile, Walker };
    /// What one slot of the search does, by turns: squeezing and, on a bolt, laying from the bottom up; where the
    /// frontier applies, also squeezing what that lays.
    struct Slot {
        std::unique_ptr<Walker> walker;
        std::unique_ptr<ProfileWalk> profile;
        std::unique_ptr<ProfileFrontier> frontier;
        int grown = 0, other = 0; ///< turns of the frontier, and all others
        int fruitless = 0;        ///< turns of laying from the bottom up, one after the other, that brought nothing
        bool squeezes = false;    ///< the walker is at a layout of the frontier's
    };
    Way wayOf(const Slot &slot) const;

    double seconds() const {
        return m_clock ? m_clock() : std::chrono::duration<double>(Time::now() - m_begin).count();
    }
    bool over() const;
    bool goodEnough() const;
    void tryExactly(std::int64_t most, double share);
    void tryPairs();
    void begin();
    void round();
    void growAndSqueeze(Slot &slot, std::int64_t moves);
    void eachSlot(const std::function<void(Slot &, int)> &task);
    void keep(const std::vector<Placement> &placements);
    void merge();
    void tell();
    std::int64_t steps() const;

    const Instance &m_instance;
    const Limits &m_limits;
    const std::function<double()> &m_clock;
    Model m_model;
    Length m_bound;
    Time::time_point m_begin;
    std::vector<Slot> m_slots;
    std::vector<Placement> m_best;
    bool m_news = false;       ///< a better one since the last was told
    std::int64_t m_before = 0; ///< steps taken before there were slots
    bool m_convex = true;      ///< all outlines are
    bool m_looksExact = true;  ///< as far as was seen, the items might fill the cloth without waste
};

/// Time or patience is over. Steps are counted between rounds, never here.
bool Search::over() const {
    if (m_limits.stop && m_limits.stop()) return true;
    return !m_limits.steps && m_limits.seconds && seconds() >= *m_limits.seconds;
}

bool Search::goodEnough() const {
    return !m_best.empty() && (!m_model.open || lengthUsed(m_instance, m_best, 0) <= m_bound);
}

void Search::eachSlot(const std::function<void(Slot &, int)> &task) {
    std::atomic<int> next = 0;
    auto work = [&] {
        for (int k = next++; k < int(m_slots.size()); k = next++) task(m_slots[std::size_t(k)], k);
    };
    std::vector<std::thread> others;
    for (int t = 1; t < std::min(m_limits.threads, int(m_slots.size())); ++t) others.emplace_back(work);
    work();
    for (std::thread &t : others) t.join();
}

/// Items that leave no waste are a jigsaw, and told by their corners which goes where. Where a first look did not lay
/// most of them they are none.
void Search::tryExactly(std::int64_t most, double share) {
    if (!m_model.open || goodEnough() || !m_looksExact || !couldFillExactly(m_instance, m_bound)) return;
    if (m_limits.steps) most = std::min(most, std::int64_t(double(*m_limits.steps) * share) * placesToAStep);
    const double begun = seconds(), end = begun + m_limits.seconds.value_or(1e9) * share;
    const ExactFit fit = fitExactly(m_instance, m_model.noFits, m_bound, most,
                                    [&] { return over() || (!m_limits.steps && seconds() > end); });
    m_before += fit.tried / placesToAStep;
    m_looksExact = fit.most * 3 >= m_instance.items.size() * 2;
    if (!fit.placements.empty()) keep(fit.placements);
}

/// Head to tail, slanted items often make rectangles, and those are laid better by a search that knows nothing else.
void Search::tryPairs() {
    const auto pairing = pairUp(m_instance);
    if (!pairing) return;
    Limits limits = m_limits;
    limits.start.clear();
    if (limits.steps)
        limits.steps = *limits.steps * 2 / 5;
    else if (limits.seconds)
        limits.seconds = *limits.seconds * 2 / 5;
    limits.report = [&](const Progress &p) {
        if (!m_limits.report || !m_best.empty()) return;
        Progress scaled = p;
        scaled.share = p.share * 2 / 5;
        // Of pairs, and told of the items only where the exact rules agree.
        std::vector<Placement> apart;
        if (p.best) apart = pairing->apart(*p.best);
        scaled.best = !apart.empty() && holds(m_instance, apart) ? &apart : nullptr;
        if (scaled.best && m_model.open) scaled.length = lengthUsed(m_instance, apart, 0);
        m_limits.report(scaled);
    };
    const bool upright = pairing->joined.rectilinear();
    const Outcome out =
        upright ? searchRectangles(pairing->joined, limits, m_bound) : searchPolygons(pairing->joined, limits, m_bound);
    m_before += out.steps;
    if (out.kind == Outcome::Kind::Fits) keep(pairing->apart(out.placements));
}

void Search::begin() {
    const int count = m_limits.steps ? slotsBySteps : std::max(1, m_limits.threads);
    Random seeds(m_limits.seed);
    for (int k = 0; k < count; ++k) {
        Slot slot;
        slot.walker = std::make_unique<Walker>(m_model, seeds.next(), [this] { return over(); });
        slot.walker->rememberBound(double(m_bound.ticks()));
        if (m_model.open) {
            slot.profile = std::make_unique<ProfileWalk>(m_model, seeds.next());
            slot.profile->rememberBound(double(m_bound.ticks()));
            slot.other = k % 2;
            if (ProfileFrontier::applies(m_model))
                slot.frontier = std::make_unique<ProfileFrontier>(m_model, seeds.next(), k);
        }
        m_slots.push_back(std::move(slot));
    }
    // Something to show comes first; squeezing it takes longer.
    if (m_model.open && m_best.empty()) eachSlot([](Slot &slot, int k) { slot.profile->lay(k); });
    merge();
    tell();
    if (m_best.empty()) eachSlot([](Slot &slot, int k) { slot.walker->lay(k); });
}

/// The frontier has three turns of four, or one where there are concave items, of which it knows the hulls only.
Search::Way Search::wayOf(const Slot &slot) const {
    const int growing = m_convex ? 3 : 1, others = 4 - growing;
    if (slot.frontier && slot.walker->found() && (slot.squeezes || slot.grown * others <= slot.other * growing))
        return Way::Frontier;
    return slot.profile && slot.other % (slot.fruitless < 3 ? 2 : 16) == 0 ? Way::Profile : Way::Walker;
}

void Search::round() {
    const auto n = std::int64_t(m_instance.items.size());
    const std::int64_t relocations = std::max<std::int64_t>(100, 20'000 / n),
                       layings = std::max<std::int64_t>(10, 8'000 / n);
    auto stop = [&] { return over(); };
    eachSlot([&](Slot &slot, int) {
        const Way way = wayOf(slot);
        switch (way) {
        case Way::Frontier:
            growAndSqueeze(slot, relocations);
            break;
        case Way::Profile: {
            const double before = slot.profile->found() ? slot.profile->length() : 0;
            slot.profile->run(layings, stop);
            slot.fruitless = slot.profile->found() && slot.profile->length() != before ? 0 : slot.fruitless + 1;
            break;
        }
        case Way::Walker:
            slot.walker->run(relocations);
            break;
        }
        ++(way == Way::Frontier ? slot.grown : slot.other);
    });
}

/// Laying stops at the places where corners meet, squeezing only ever changes a layout here and there: each does what
/// the other can't.
void Search::growAndSqueeze(Slot &slot, std::int64_t moves) {
    ProfileFrontier &frontier = *slot.frontier;
    Walker &walker = *slot.walker;
    const std::int64_t end = frontier.moves() + walker.moves() + moves;
    while (frontier.moves() + walker.moves() < end && !over() && !walker.done()) {
        if (slot.squeezes) {
            slot.squeezes = walker.squeeze(end - frontier.moves());
        } else if (frontier.step(walker.length(), double(m_bound.ticks()))) {
            walker.take(frontier.layout());
            slot.squeezes = true;
        }
    }
}

/// A layout counts only once the exact rules agree.
void Search::keep(const std::vector<Placement> &placements) {
    const bool better =
        m_best.empty() || (m_model.open && lengthUsed(m_instance, placements, 0) < lengthUsed(m_instance, m_best, 0));
    if (!better || !holds(m_instance, placements)) return;
    m_best = placements;
    m_news = true;
}

/// Everybody goes on from the best layout.
void Search::merge() {
    for (const Slot &slot : m_slots) {
        if (slot.walker && slot.walker->found()) keep(placementsOf(slot.walker->best()));
        if (slot.profile && slot.profile->found()) keep(placementsOf(slot.profile->best()));
    }
    if (m_best.empty()) return;
    const auto layout = layoutOf(m_best, m_instance.items.size());
    const double length = m_model.open ? double(lengthUsed(m_instance, m_best, 0).ticks()) : 0;
    for (Slot &slot : m_slots) {
        slot.walker->adopt(layout, length);
        if (slot.profile) slot.profile->mustBeat(length);
    }
}

void Search::tell() {
    if (!m_limits.report) return;
    Progress p;
    p.found = !m_best.empty();
    if (p.found && m_model.open) p.length = lengthUsed(m_instance, m_best, 0);
    p.bound = m_bound;
    p.laid = p.found ? int(m_instance.items.size()) : 0;
    if (m_news) p.best = &m_best;
    m_news = false;
    if (m_limits.steps)
        p.share = std::min(1., double(steps()) / double(std::max<std::int64_t>(1, *m_limits.steps)));
    else if (m_limits.seconds)
        p.share = std::min(1., seconds() / std::max(1e-3, *m_limits.seconds));
    m_limits.report(p);
}

/// One relocation of one item counts one; laying everything anew counts what takes about as long.
std::int64_t Search::steps() const {
    std::int64_t sum = m_before;
    for (const Slot &slot : m_slots) {
        sum += slot.walker->moves();
        if (slot.profile) sum += slot.profile->moves() * 2;
        if (slot.frontier) sum += slot.frontier->moves();
    }
    return sum;
}

Outcome Search::run() {
    Outcome out;
    if (anyFitsNowhere(m_instance)) {
        out.kind = Outcome::Kind::CannotFit;
        out.proved = true;
        return out;
    }
    tryExactly(20'000, 0.05);
    if (!goodEnough()) tryPairs();
    begin();
    merge();
    tell();
    tryExactly(100'000'000, 0.2);
    merge();
    tell();
    while (!over() && !goodEnough() && (!m_limits.steps || steps() < *m_limits.steps)) {
        round();
        merge();
        tell();
    }
    out.steps = steps();
    if (m_best.empty()) return out;
    out.kind = Outcome::Kind::Fits;
    out.placements = m_best;
    out.length = m_model.open ? lengthUsed(m_instance, m_best, 0) : Length{};
    return out;
}

} // namespace

Outcome searchPolygons(const Instance &instance, const Limits &limits, Length bound,
                       const std::function<double()> &clock) {
    if (instance.items.empty()) {
        Outcome out;
        out.kind = Outcome::Kind::Fits;
        if (!instance.sheets.empty()) out.length = lengthUsed(instance, {}, 0);
        return out;
    }
    return Search(instance, limits, bound, clock).run();
}

} // namespace boltwright::planner
