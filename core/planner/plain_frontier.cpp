#include "core/planner/plain_frontier.h"

#include "core/planner/plain_walk.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <tuple>
#include <utility>

namespace boltwright::planner {
namespace {

constexpr Tick wall = std::numeric_limits<Tick>::max() / 2;
constexpr std::size_t firstWidth = 48, mostWidth = 32768;
/// Widths double up to a peak and start over; after so many climbs the peak is twice as high.
constexpr std::size_t firstPeak = 768;
constexpr int climbsToAPeak = 6;
/// Of a run's width the first levels have the least part, and the last one the most.
constexpr double leastPart = 0.1, mostPart = 3;
constexpr std::size_t leastWidth = 8;
/// What all levels together may remember (16 bytes each) of where items were laid.
constexpr std::size_t mostPlaces = std::size_t(1) << 21;
constexpr std::size_t mostItems = 1024;
/// Of what is offered, so many times the width are looked at closely, since some of them lead nowhere.
constexpr std::size_t kept = 3;
constexpr int nodesAStep = 4, childrenAStep = 8;

/// Sums are counted where the room is no more units than this across or up.
constexpr Tick mostUnits = 2048;
constexpr std::size_t wordBits = 64;

/// How much the waste to spare weighs against the area laid, by turns; and a little chance, so that no two runs are
/// alike.
constexpr std::array weights = {0.8, 0.3, 3.0};
constexpr double chance = 0.005;

} // namespace

void PlainFrontier::Sizes::setUp(std::vector<Of> sizes, Tick most) {
    m_sizes = std::move(sizes);
    std::stable_sort(m_sizes.begin(), m_sizes.end(), [](const Of &a, const Of &b) { return a.size < b.size; });
    m_most = most;
    m_words.clear();
    if (most <= mostUnits) m_words.resize(std::size_t(most) / wordBits + 1);
}

void PlainFrontier::Sizes::count(const Left *left) {
    switch (m_words.size()) {
    case 0: {
        const auto first =
            std::find_if(m_sizes.begin(), m_sizes.end(), [&](const Of &of) { return left[of.kind] > 0; });
        m_least = first == m_sizes.end() ? wall : first->size;
        return;
    }
    case 1:
        return countWords<1>(left);
    case 2:
        return countWords<2>(left);
    case 3:
        return countWords<3>(left);
    case 4:
        return countWords<4>(left);
    case 5:
    case 6:
        return countWords<6>(left);
    case 7:
    case 8:
        return countWords<8>(left);
    default:
        return countMany(left);
    }
}

/// Few words are kept where no loop has to look for them; more than `words` would be are counted for nothing.
template <std::size_t N>
void PlainFrontier::Sizes::countWords(const Left *left) {
    std::array<Word, N> sums = {1};
    const std::size_t last = m_words.size() - 1;
    const Word lastBits = ~Word(0) >> (wordBits - 1 - std::size_t(m_most) % wordBits);
    m_least = wall;
    Tick before = 0;
    for (const auto &[size, kind] : m_sizes) {
        if (left[kind] == 0) continue;
        if (m_least == wall) m_least = size;
        if (size > m_most) break;
        if (size != before) {
            // When all sums from this size on are there, no size from here on changes anything.
            std::size_t at = last;
            Word missing = ~sums[at] & lastBits;
            while (!missing && at > 0) missing = ~sums[--at];
            if (!missing || Tick(at * wordBits + std::size_t(63 - std::countl_zero(missing))) < size) break;
            before = size;
        }
        // One, two, four of them and so on, and the rest.
        for (int of = 1, rest = left[kind]; rest > 0; rest -= of, of *= 2) {
            const Area sum = Area(std::min(of, rest)) * size;
            if (sum > m_most) break;
            const std::size_t by = std::size_t(sum) / wordBits, bits = std::size_t(sum) % wordBits;
            for (std::size_t i = N; i-- > by;) {
                sums[i] |= sums[i - by] << bits;
                if (i > by) sums[i] |= sums[i - by - 1] >> 1 >> (wordBits - 1 - bits);
            }
        }
    }
    std::copy_n(sums.begin(), m_words.size(), m_words.begin());
}

void PlainFrontier::Sizes::countMany(const Left *left) {
    std::fill(m_words.begin(), m_words.end(), 0);
    m_words[0] = 1;
    m_least = wall;
    for (const auto &[size, kind] : m_sizes) {
        if (left[kind] == 0) continue;
        m_least = std::min(m_least, size);
        for (int of = 1, rest = left[kind]; rest > 0; rest -= of, of *= 2) {
            const Area sum = Area(std::min(of, rest)) * size;
            if (sum > m_most) break;
            const std::size_t by = std::size_t(sum) / wordBits, bits = std::size_t(sum) % wordBits;
            for (std::size_t i = m_words.size(); i-- > by;) {
                m_words[i] |= m_words[i - by] << bits;
                if (i > by) m_words[i] |= m_words[i - by - 1] >> 1 >> (wordBits - 1 - bits);
            }
        }
    }
}

void PlainFrontier::Sizes::save(Word *to) const { std::copy(m_words.begin(), m_words.end(), to); }

void PlainFrontier::Sizes::load(const Word *from, Tick least) {
    std::copy_n(from, m_words.size(), m_words.begin());
    m_least = least;
}

Tick PlainFrontier::Sizes::best(Tick room) const {
    if (m_words.empty()) return room;
    std::size_t at = std::size_t(room) / wordBits;
    Word word = m_words[at] & (~Word(0) >> (wordBits - 1 - std::size_t(room) % wordBits));
    while (!word) word = m_words[--at]; // nothing at all is a sum
    return Tick(at * wordBits + std::size_t(63 - std::countl_zero(word)));
}

PlainFrontier::PlainFrontier(const RectangleTask &task, std::uint64_t seed, int number)
    : m_task(task), m_random(seed * 104729 + std::uint64_t(number)), m_number(number), m_laid(task.items.size()) {
    Tick across = 0, along = 0;
    for (const RectangleOption &o : m_task.options) {
        across = std::gcd(across, o.width);
        along = std::gcd(along, o.height);
    }
    m_unitX = std::max<Tick>(1, across);
    m_unitY = std::max<Tick>(1, along);
    setUpKinds();
    m_worths = Worths(m_kinds.size());
}

void PlainFrontier::setUpKinds() {
    auto sizes = [&](int i) {
        std::vector<std::pair<Tick, Tick>> all;
        const RectangleItem &item = m_task.items[std::size_t(i)];
        for (int o = item.firstOption; o < item.endOption; ++o)
            all.emplace_back(m_task.options[std::size_t(o)].width, m_task.options[std::size_t(o)].height);
        return all;
    };
    std::vector<std::vector<std::pair<Tick, Tick>>> of;
    for (int i = 0; i < int(m_task.items.size()); ++i) {
        const auto mine = sizes(i);
        std::size_t k = 0;
        while (k < of.size() && (of[k] != mine || m_kinds[k].items.size() >= mostOfAKind)) ++k;
        if (k == of.size()) {
            of.push_back(mine);
            m_kinds.push_back({{}, m_task.items[std::size_t(i)].area / m_unitX / m_unitY, m_random.next()});
        }
        m_kinds[k].items.push_back(i);
        m_itemArea += m_kinds[k].area;
    }
}

bool PlainFrontier::applies(const RectangleTask &task) {
    return task.open() && isPlain(task) && task.items.size() > 1 && task.items.size() <= mostItems;
}

void PlainFrontier::aim(Tick top) {
    // Under a ceiling that had to be raised, what was too narrow before would be so again.
    m_width = m_begun && top >= m_top ? std::max(firstWidth, m_width / 2) : std::max(firstWidth, m_width / 8);
    m_top = top;
    m_begun = true;
    m_runs = 0;
    m_peak = firstPeak;
    m_climbs = 0;
    restart();
}

void PlainFrontier::restart() {
    if (m_runs > 0) climb();
    m_worths.learn(m_random);
    for (std::size_t k = 0; k < m_kinds.size(); ++k) m_kinds[k].worth = m_worths.of(int(k), m_kinds[k].area);
    const int turn = m_runs++ + m_number;
    m_lies = turn % 2 == 1;
    standOrLie();
    m_weight = m_spare > 0 ? weights[std::size_t(turn) % weights.size()] / double(m_spare) : 0;
    m_level.assign(1, Node{});
    m_level.front().steps = 1;
    m_pool.assign(1, {0, m_across, 0});
    m_left.clear();
    for (const Kind &kind : m_kinds) m_left.push_back(Left(kind.items.size()));
    m_places.assign(1, {Place{}});
    m_widths.count(m_left.data());
    m_heights.count(m_left.data());
    m_sums.clear();
    keepSums(m_level.front(), m_sums);
    beginLevel();
}

void PlainFrontier::climb() {
    const std::size_t widest = std::max(firstWidth, std::min(mostWidth, mostPlaces / m_task.items.size()));
    m_width *= 2;
    if (m_width <= std::min(m_peak, widest)) return;
    m_width = firstWidth;
    if (++m_climbs < climbsToAPeak) return;
    m_climbs = 0;
    m_peak = std::min(m_peak * 2, widest);
}

/// Measures room and items for the way that this run fills.
void PlainFrontier::standOrLie() {
    const RectangleSheet &sheet = m_task.sheets[0];
    m_across = (sheet.x1 - sheet.x0) / m_unitX;
    m_up = std::max<Tick>(0, m_top - sheet.y0) / m_unitY;
    if (m_lies) std::swap(m_across, m_up);
    m_spare = Area(m_across) * m_up - m_itemArea;
    m_boxes.clear();
    for (std::size_t k = 0; k < m_kinds.size(); ++k) {
        const RectangleItem &item = m_task.items[std::size_t(m_kinds[k].items.front())];
        for (int o = item.firstOption; o < item.endOption; ++o) {
            const RectangleOption &option = m_task.options[std::size_t(o)];
            Box box{int(k), o - item.firstOption, option.width / m_unitX, option.height / m_unitY};
            if (m_lies) std::swap(box.across, box.up);
            m_boxes.push_back(box);
        }
    }
    std::stable_sort(m_boxes.begin(), m_boxes.end(), [](const Box &a, const Box &b) { return a.across < b.across; });
    m_widths.setUp(sizesOf(&Box::across), m_across);
    m_heights.setUp(sizesOf(&Box::up), m_up);
}

std::vector<PlainFrontier::Sizes::Of> PlainFrontier::sizesOf(Tick Box::*size) const {
    std::vector<Sizes::Of> sizes;
    for (const Box &box : m_boxes) sizes.push_back({box.*size, box.kind});
    return sizes;
}

/// Notes what was counted last, so that it need not be counted again for this node.
void PlainFrontier::keepSums(Node &node, std::vector<Word> &sums) const {
    node.leastWidth = m_widths.least();
    node.leastHeight = m_heights.least();
    const std::size_t from = sums.size();
    sums.resize(from + m_widths.words() + m_heights.words());
    m_widths.save(sums.data() + from);
    m_heights.save(sums.data() + from + m_widths.words());
}

/// Narrow at first, where there is little to tell part layouts apart by, and wide at the end, where most lead nowhere:
/// so the same work starts over more often, and searches longer what comes near.
std::size_t PlainFrontier::widthHere() const {
    const double done = double(m_places.size()) / double(m_task.items.size());
    const double part = std::max(leastPart, mostPart * (done * done) * (done * done));
    return std::clamp(std::size_t(double(m_width) * part), leastWidth, mostWidth);
}

void PlainFrontier::beginLevel() {
    m_here = widthHere();
    m_children.clear();
    m_worst = std::numeric_limits<float>::infinity();
    m_at = m_growing = 0;
    m_grows = false;
}

bool PlainFrontier::step() {
    if (hopeless()) return false;
    if (!m_grows) {
        for (int k = 0; k < nodesAStep && m_at < m_level.size(); ++k) expand(m_at++);
        if (m_children.size() > m_here * 8) keepBest(m_here * kept);
        if (m_at < m_level.size()) return false;
        keepBest(m_here * kept);
        m_grows = true;
        m_nextLevel.clear();
        m_nextPool.clear();
        m_nextLeft.clear();
        m_nextSums.clear();
        m_known.clear(m_here);
        m_places.emplace_back();
        return false;
    }
    for (int k = 0; k < childrenAStep && m_growing < m_children.size() && m_nextLevel.size() < m_here; ++k) {
        if (!grow(m_children[m_growing++]) || m_nextLevel.back().placed < m_itemArea) continue;
        read();
        restart();
        return true;
    }
    if (m_growing == m_children.size() || m_nextLevel.size() >= m_here) endLevel();
    return false;
}

void PlainFrontier::endLevel() {
    std::swap(m_level, m_nextLevel);
    std::swap(m_pool, m_nextPool);
    std::swap(m_left, m_nextLeft);
    std::swap(m_sums, m_nextSums);
    if (m_level.empty())
        restart();
    else
        beginLevel();
}

/// All that a part layout could become by one item more in its narrowest gap, or where none fits there, in the next.
void PlainFrontier::expand(std::size_t at) {
    const Node &node = m_level[at];
    const auto first = m_pool.begin() + node.firstStep;
    m_steps.assign(first, first + node.steps);
    const Word *sums = m_sums.data() + at * (m_widths.words() + m_heights.words());
    m_widths.load(sums, node.leastWidth);
    m_heights.load(sums + m_widths.words(), node.leastHeight);
    for (Area waste = node.waste; waste <= m_spare;) {
        const std::size_t gap = narrowestGap();
        if (gap == m_steps.size() || offer(at, gap, waste)) return;
        waste += raise(gap);
    }
}

bool PlainFrontier::isGap(std::size_t step) const {
    const Tick y = m_steps[step].y;
    return y < m_up && (step == 0 || m_steps[step - 1].y > y) &&
           (step + 1 == m_steps.size() || m_steps[step + 1].y > y);
}

/// Of the steps that have higher ones both sides; past the last one where all is full.
std::size_t PlainFrontier::narrowestGap() const {
    std::size_t best = m_steps.size();
    Tick room = wall;
    for (std::size_t i = 0; i < m_steps.size(); ++i) {
        const Tick here = m_steps[i].end - m_steps[i].x;
        if (here >= room || !isGap(i)) continue;
        room = here;
        best = i;
    }
    return best;
}

bool PlainFrontier::offer(std::size_t at, std::size_t gap, Area waste) {
    const Step step = m_steps[gap];
    const Tick room = step.end - step.x, height = m_up - step.y;
    if (m_widths.least() > room) return false;
    const Left *items = &m_left[at * m_kinds.size()];
    const Tick left = gap > 0 ? m_steps[gap - 1].y : wall;
    const Tick right = gap + 1 < m_steps.size() ? m_steps[gap + 1].y : wall;
    const double worth = m_level[at].worth;
    bool any = false;
    for (std::size_t b = 0; b < m_boxes.size(); ++b) {
        const Box &box = m_boxes[b];
        if (box.across > room) break;
        if (items[box.kind] == 0 || box.up > height) continue;
        any = true;
        const Tick up = step.y + box.up, rest = room - box.across, above = height - box.up;
        const bool atRight = up != left && (up == right || right > left);
        Area wasted = waste;
        if (rest > 0) {
            const Tick beside = std::min(up, atRight ? left : right) - step.y;
            wasted +=
                Area(m_widths.lost(rest)) * (rest < m_widths.least() ? beside : std::min(beside, m_heights.least()));
        }
        wasted += Area(box.across) * m_heights.lost(above);
        if (wasted > m_spare) continue;
        const float guide = guideOf(wasted, worth + m_kinds[std::size_t(box.kind)].worth);
        if (guide > m_worst) continue;
        m_children.push_back(
            {guide, {std::int32_t(at), std::int32_t(b), atRight ? step.end - box.across : step.x, step.y}});
    }
    return any;
}

float PlainFrontier::guideOf(Area waste, double worth) {
    return float((m_weight * double(waste) + 1 + chance * m_random.share()) / worth);
}

/// Gives a gap up to where its lower wall ends; returns what that wastes.
Area PlainFrontier::raise(std::size_t gap) {
    Step &step = m_steps[gap];
    Tick level = m_up;
    if (gap > 0) level = std::min(level, m_steps[gap - 1].y);
    if (gap + 1 < m_steps.size()) level = std::min(level, m_steps[gap + 1].y);
    const Area waste = Area(step.end - step.x) * (level - step.y);
    step.y = level;
    joinAt(m_steps, gap);
    return waste;
}

/// The best come first; among equals those that were offered first.
void PlainFrontier::keepBest(std::size_t count) {
    const auto better = [](const Child &a, const Child &b) {
        return std::tie(a.guide, a.place.parent, a.place.box) < std::tie(b.guide, b.place.parent, b.place.box);
    };
    m_worst = keepBestOf(m_children, count, better, m_worst);
    if (m_at == m_level.size()) std::sort(m_children.begin(), m_children.end(), better);
}

/// Makes a node of the next level. False when the same was there before, or it leads nowhere.
bool PlainFrontier::grow(const Child &child) {
    const Place &place = child.place;
    const std::size_t kinds = m_kinds.size();
    const Node &parent = m_level[std::size_t(place.parent)];
    const Box &box = m_boxes[std::size_t(place.box)];
    const auto first = m_pool.begin() + parent.firstStep;
    m_steps.assign(first, first + parent.steps);
    Node node = parent;
    // What was given up on the way to this gap.
    auto gapHere = [&] {
        std::size_t i = 0;
        while (m_steps[i].end <= place.x) ++i;
        return i;
    };
    std::size_t gap = narrowestGap();
    while (gap != gapHere() || m_steps[gap].y != place.y) {
        node.waste += raise(gap);
        gap = narrowestGap();
    }
    const Step step = m_steps[gap], laid{place.x, place.x + box.across, place.y + box.up};
    m_steps[gap] = laid;
    if (laid.end < step.end) m_steps.insert(m_steps.begin() + std::ptrdiff_t(gap) + 1, {laid.end, step.end, step.y});
    if (step.x < laid.x) m_steps.insert(m_steps.begin() + std::ptrdiff_t(gap++), {step.x, laid.x, step.y});
    joinAt(m_steps, gap);
    const Kind &kind = m_kinds[std::size_t(box.kind)];
    node.placed += kind.area;
    node.worth += kind.worth;
    node.print += kind.print;
    if (isKnown(node.print)) return false;

    const auto from = m_left.begin() + std::ptrdiff_t(std::size_t(place.parent) * kinds);
    m_nextLeft.insert(m_nextLeft.end(), from, from + std::ptrdiff_t(kinds));
    Left *left = &m_nextLeft[m_nextLeft.size() - kinds];
    --left[box.kind];
    m_widths.count(left);
    m_heights.count(left);
    if (!settle(node.waste) || node.waste + lookAhead() > m_spare ||
        (node.waste == m_spare && !everyGapHasABox(left))) {
        m_nextLeft.resize(m_nextLeft.size() - kinds);
        return false;
    }
    m_worths.note(node.placed, [left](int k) { return left[k] > 0; });
    keepSums(node, m_nextSums);
    node.firstStep = std::int32_t(m_nextPool.size());
    node.steps = std::int32_t(m_steps.size());
    m_nextPool.insert(m_nextPool.end(), m_steps.begin(), m_steps.end());
    m_nextLevel.push_back(node);
    m_places.back().push_back(place);
    return true;
}

/// Gives up the gaps that nothing left is narrow enough for. False when that wastes too much.
bool PlainFrontier::settle(Area &waste) {
    for (std::size_t i = 0; i < m_steps.size() && waste <= m_spare;) {
        if (m_steps[i].end - m_steps[i].x >= m_widths.least() || !isGap(i)) {
            ++i;
            continue;
        }
        waste += raise(i);
        i = i > 0 ? i - 1 : 0; // joined with the one before it may be a gap again
    }
    return waste <= m_spare;
}

/// What is wasted whatever comes: across the gaps, or up to the ceiling.
Area PlainFrontier::lookAhead() const {
    Area across = 0, up = 0;
    for (std::size_t i = 0; i < m_steps.size(); ++i) {
        const Step &step = m_steps[i];
        const Tick room = step.end - step.x, above = m_up - step.y;
        up += Area(room) * m_heights.lost(above);
        if (!isGap(i)) continue;
        Tick deep = above;
        if (i > 0) deep = std::min(deep, m_steps[i - 1].y - step.y);
        if (i + 1 < m_steps.size()) deep = std::min(deep, m_steps[i + 1].y - step.y);
        across += Area(m_widths.lost(room)) * std::min(deep, m_heights.least());
    }
    return std::max(across, up);
}

/// Whether for every gap something is left that could lie there without waste.
bool PlainFrontier::everyGapHasABox(const Left *left) const {
    for (std::size_t i = 0; i < m_steps.size(); ++i) {
        if (!isGap(i)) continue;
        const Tick room = m_steps[i].end - m_steps[i].x, height = m_up - m_steps[i].y;
        bool any = false;
        for (const Box &box : m_boxes) {
            if (box.across > room) break;
            if (left[box.kind] == 0 || box.up > height) continue;
            any = m_widths.lost(room - box.across) == 0 && m_heights.lost(height - box.up) == 0;
            if (any) break;
        }
        if (!any) return false;
    }
    return true;
}

/// Of the skyline at hand with these items laid; from now on it is.
bool PlainFrontier::isKnown(std::uint64_t print) {
    for (const Step &s : m_steps) {
        print = (print ^ (std::uint64_t(std::uint32_t(s.x)) << 32 | std::uint32_t(s.y))) * 0x9e3779b97f4a7c15u;
        print ^= print >> 29;
    }
    return !m_known.add(print);
}

/// The layout that the last node grown is.
void PlainFrontier::read() {
    const RectangleSheet &sheet = m_task.sheets[0];
    m_reached = sheet.y0;
    std::vector<std::size_t> used(m_kinds.size());
    std::size_t at = m_places.back().size() - 1;
    for (std::size_t level = m_places.size() - 1; level > 0; --level) {
        const Place &place = m_places[level][at];
        at = std::size_t(place.parent);
        const Box &box = m_boxes[std::size_t(place.box)];
        const Kind &kind = m_kinds[std::size_t(box.kind)];
        const auto item = std::size_t(kind.items[used[std::size_t(box.kind)]++]);
        const int option = m_task.items[item].firstOption + box.option;
        const Tick x = m_lies ? place.y : place.x, y = m_lies ? place.x : place.y;
        m_laid[item] = {option, sheet.x0 + x * m_unitX, sheet.y0 + y * m_unitY};
        m_reached = std::max(m_reached, m_laid[item].y + m_task.options[std::size_t(option)].height);
    }
}

} // namespace boltwright::planner
