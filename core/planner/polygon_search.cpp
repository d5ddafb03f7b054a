#include "core/planner/polygon_search.h"

#include "core/planner/polygon/walker.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <memory>
#include <mutex>
#include <thread>

namespace boltwright::planner {
namespace {

using Time = std::chrono::steady_clock;

/// A fixed number, so that with a count of steps the outcome does not hang on how many threads there are.
constexpr int walkersBySteps = 4;

std::vector<Placement> placementsOf(const std::vector<Where> &layout) {
    std::vector<Placement> out;
    for (std::size_t i = 0; i < layout.size(); ++i)
        out.push_back({int(i), layout[i].option, {Length::ticks(std::int64_t(layout[i].x)), Length::ticks(std::int64_t(layout[i].y))}});
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
    Search(const Instance &instance, const Limits &limits, Length bound)
        : m_instance(instance), m_limits(limits), m_model(instance), m_bound(bound), m_begin(Time::now()) {
        if (!limits.start.empty() && holds(instance, limits.start)) m_best = limits.start;
    }

    Outcome run();

private:
    double seconds() const { return std::chrono::duration<double>(Time::now() - m_begin).count(); }
    bool over() const;
    bool goodEnough() const;
    void eachWalker(const std::function<void(Walker &, int)> &task);
    void keep(const Walker &walker);
    void merge();
    void tell();

    const Instance &m_instance;
    const Limits &m_limits;
    Model m_model;
    Length m_bound;
    Time::time_point m_begin;
    std::vector<std::unique_ptr<Walker>> m_walkers;
    std::vector<Placement> m_best;
    std::mutex m_telling;
};

/// Time or patience is over. Steps are counted between rounds, never here.
bool Search::over() const {
    if (m_limits.stop && m_limits.stop()) return true;
    return !m_limits.steps && m_limits.seconds && seconds() >= *m_limits.seconds;
}

bool Search::goodEnough() const {
    return !m_best.empty() && (!m_model.open || lengthUsed(m_instance, m_best, 0) <= m_bound);
}

void Search::eachWalker(const std::function<void(Walker &, int)> &task) {
    std::atomic<int> next = 0;
    auto work = [&] {
        for (int k = next++; k < int(m_walkers.size()); k = next++) task(*m_walkers[std::size_t(k)], k);
    };
    std::vector<std::thread> others;
    for (int t = 1; t < std::min(m_limits.threads, int(m_walkers.size())); ++t) others.emplace_back(work);
    work();
    for (std::thread &t : others) t.join();
}

/// A layout counts only once the exact rules agree.
void Search::keep(const Walker &walker) {
    if (!walker.found()) return;
    const auto placements = placementsOf(walker.best());
    const bool better = m_best.empty() || (m_model.open && lengthUsed(m_instance, placements, 0) < lengthUsed(m_instance, m_best, 0));
    if (better && holds(m_instance, placements)) m_best = placements;
}

void Search::merge() {
    const Walker *leader = nullptr;
    for (const auto &w : m_walkers) {
        keep(*w);
        if (w->found() && (!leader || w->length() < leader->length())) leader = w.get();
    }
    if (!leader) return;
    for (const auto &w : m_walkers)
        if (w.get() != leader) w->adopt(*leader);
}

void Search::tell() {
    if (!m_limits.report) return;
    Progress p;
    p.found = !m_best.empty();
    if (p.found && m_model.open) p.length = lengthUsed(m_instance, m_best, 0);
    p.bound = m_bound;
    p.laid = p.found ? int(m_instance.items.size()) : 0;
    std::int64_t moves = 0;
    for (const auto &w : m_walkers) moves += w->moves();
    if (m_limits.steps) p.share = std::min(1., double(moves) / double(std::max<std::int64_t>(1, *m_limits.steps)));
    else if (m_limits.seconds) p.share = std::min(1., seconds() / std::max(1e-3, *m_limits.seconds));
    m_limits.report(p);
}

Outcome Search::run() {
    Outcome out;
    if (anyFitsNowhere(m_instance)) {
        out.kind = Outcome::Kind::CannotFit;
        out.proved = true;
        return out;
    }
    const int count = m_limits.steps ? walkersBySteps : std::max(1, m_limits.threads);
    Random seeds(m_limits.seed);
    for (int k = 0; k < count; ++k) {
        m_walkers.push_back(std::make_unique<Walker>(m_model, seeds.next()));
        m_walkers.back()->rememberBound(double(m_bound.ticks()));
    }
    const auto layout = m_best.empty() ? std::vector<Where>{} : layoutOf(m_best, m_instance.items.size());
    eachWalker([&](Walker &w, int k) { layout.empty() ? w.lay(k) : w.start(layout); });
    const std::int64_t round = std::max<std::int64_t>(100, 20'000 / std::max<std::int64_t>(1, std::int64_t(m_instance.items.size())));
    auto moves = [&] {
        std::int64_t sum = 0;
        for (const auto &w : m_walkers) sum += w->moves();
        return sum;
    };
    merge();
    tell();
    while (!over() && !goodEnough() && (!m_limits.steps || moves() < *m_limits.steps)) {
        eachWalker([&](Walker &w, int) { w.run(round, [&] { return over(); }); });
        merge();
        tell();
    }
    out.steps = moves();
    if (m_best.empty()) return out;
    out.kind = Outcome::Kind::Fits;
    out.placements = m_best;
    out.length = m_model.open ? lengthUsed(m_instance, m_best, 0) : Length{};
    return out;
}

} // namespace

Outcome searchPolygons(const Instance &instance, const Limits &limits, Length bound) {
    if (instance.items.empty()) {
        Outcome out;
        out.kind = Outcome::Kind::Fits;
        if (!instance.sheets.empty()) out.length = lengthUsed(instance, {}, 0);
        return out;
    }
    return Search(instance, limits, bound).run();
}

} // namespace boltwright::planner
