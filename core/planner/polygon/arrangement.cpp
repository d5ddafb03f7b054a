#include "core/planner/polygon/arrangement.h"

#include "core/planner/polygon/ticks.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace boltwright::planner {
namespace {

/// From so many items on, an item is not tried at every place there is each time it moves.
constexpr int manyItems = 18;
/// How large a stretch of places is looked at in one piece, in sizes of the item, and how many besides that round the
/// item itself.
constexpr double windowSize = 1;
constexpr int windowsElsewhere = 2;

/// Whether a place set has a place within bounds; y is checked in every column.
bool hasPlace(const PlaceSet &places, const InnerFit &fit) {
    if (fit.empty()) return false;
    const Length lowX = toLength(fit.lowX), lowY = toLength(fit.lowY);
    if (places.freeX()) return places.freeY() || toTicks(places.nextY(lowX, lowY)) <= fit.highY;
    for (Length x = places.nextX(lowX); toTicks(x) <= fit.highX; x += places.xStep)
        if (toTicks(places.nextY(x, lowY)) <= fit.highY) return true;
    return false;
}

bool laysAlike(const Option &a, const Option &b, bool grouped) {
    return a.sheet == b.sheet && a.outline == b.outline && a.places == b.places &&
           (!grouped || (a.turn == b.turn && a.anchor == b.anchor));
}

} // namespace

Model::Model(const Instance &i) : instance(i), noFits(i) {
    for (const Item &item : i.items) {
        choices.emplace_back();
        for (int o = 0; o < int(item.options.size()); ++o) {
            const auto alike = [&](int other) {
                return laysAlike(item.options[std::size_t(o)], item.options[std::size_t(other)], item.group >= 0);
            };
            if (std::none_of(choices.back().begin(), choices.back().end(), alike)) choices.back().push_back(o);
        }
    }
    open = !i.sheets.empty() && i.sheets[0].open;
    if (!open) return;
    const ClothBox room = boxOf(i.sheets[0].room);
    bottom = obstaclesTop = toTicks(room.low.y);
    ceiling = toTicks(room.high.y);
    for (const ClothRing &flaw : i.sheets[0].flaws) obstaclesTop = std::max(obstaclesTop, toTicks(boxOf(flaw).high.y));
    for (const Fixed &f : i.fixed)
        obstaclesTop = std::max(obstaclesTop, toTicks(f.corner.y + i.outlines[std::size_t(f.outline)].height + i.gap));
}

Arrangement::Arrangement(const Model &model, Random &random)
    : m_model(model), m_instance(model.instance), m_random(random), m_at(model.instance.items.size()),
      m_overlap(m_at.size() * m_at.size()), m_weight(m_at.size() * m_at.size(), 1), m_sheetOverlap(m_at.size()),
      m_sheetWeight(m_at.size(), 1), m_groups(model.instance.groups.size()),
      m_fits(model.instance.sheets.size() * model.instance.outlines.size()), m_top(model.ceiling) {
    for (const Item &item : m_instance.items) {
        m_places.emplace_back();
        for (const Option &option : item.options) m_places.back().push_back(option.places);
    }
}

const Option &Arrangement::optionOf(int item, int option) const {
    return m_instance.items[std::size_t(item)].options[std::size_t(option)];
}

void Arrangement::setTop(double top) {
    if (top == m_top) return;
    m_top = top;
    for (Fit &f : m_fits) f.known = false;
}

const InnerFit &Arrangement::fitOf(const Option &option) {
    Fit &f = m_fits[std::size_t(option.sheet) * m_instance.outlines.size() + std::size_t(option.outline)];
    if (!f.known) f = {true, m_model.noFits.within(option.sheet, option.outline, m_model.open ? m_top : 1e300)};
    return f.fit;
}

bool Arrangement::beyondTop(int item) const {
    const Where &w = at(item);
    return m_model.open &&
           w.y + toTicks(m_instance.outlines[std::size_t(optionOf(item, w.option).outline)].height) > m_top;
}

bool Arrangement::inRoom(int item) {
    const Where &w = at(item);
    return fitOf(optionOf(item, w.option)).holds(w.x, w.y);
}

void Arrangement::clear() {
    for (int i = 0; i < size(); ++i) lift(i);
    for (int g = 0; g < int(m_groups.size()); ++g) share(g, {});
}

void Arrangement::restore(const std::vector<Where> &places) {
    clear();
    for (int g = 0; g < int(m_groups.size()); ++g) {
        const auto &items = m_instance.groups[std::size_t(g)].items;
        const auto lying =
            std::find_if(items.begin(), items.end(), [&](int i) { return places[std::size_t(i)].option >= 0; });
        if (lying == items.end()) continue;
        const Where &w = places[std::size_t(*lying)];
        const Option &option = optionOf(*lying, w.option);
        share(g, {true, option.turn, m_instance.sheets[std::size_t(option.sheet)].lot,
                  phaseOf(*lying, w.option, w.x, w.y)});
    }
    for (int i = 0; i < size(); ++i)
        if (places[std::size_t(i)].option >= 0) put(i, places[std::size_t(i)]);
}

void Arrangement::lift(int item) {
    m_at[std::size_t(item)].option = -1;
    m_sheetOverlap[std::size_t(item)] = 0;
    for (int j = 0; j < size(); ++j) m_overlap[pair(item, j)] = m_overlap[pair(j, item)] = 0;
}

void Arrangement::put(int item, const Where &where) {
    m_at[std::size_t(item)] = where;
    m_sheetOverlap[std::size_t(item)] = depthOnSheet(item);
    for (int j = 0; j < size(); ++j)
        if (j != item) m_overlap[pair(item, j)] = m_overlap[pair(j, item)] = depthBetween(item, j);
}

double Arrangement::depthBetween(int a, int b) const {
    if (a > b) std::swap(a, b);
    const Where &p = at(a), &q = at(b);
    if (p.option < 0 || q.option < 0) return 0;
    const Option &from = optionOf(a, p.option), &to = optionOf(b, q.option);
    if (from.sheet != to.sheet) return 0;
    double deepest = 0;
    for (const ConvexNoFit &part : m_model.noFits.between(from.outline, to.outline).parts)
        deepest = std::max(deepest, part.depth(q.x - p.x, q.y - p.y));
    return deepest;
}

double Arrangement::depthOnSheet(int item) const {
    const Where &w = at(item);
    const Option &option = optionOf(item, w.option);
    double sum = 0;
    for (const ConvexNoFit &part :
         m_model.noFits.onSheet(option.sheet, option.outline, m_instance.items[std::size_t(item)].hidden).parts)
        sum = std::max(sum, part.depth(w.x, w.y));
    return sum;
}

double Arrangement::overlap(int item) const {
    double sum = m_sheetOverlap[std::size_t(item)];
    for (int j = 0; j < size(); ++j) sum += m_overlap[pair(item, j)];
    return sum;
}

double Arrangement::weightedOverlap(int item) const {
    double sum = m_sheetOverlap[std::size_t(item)] * m_sheetWeight[std::size_t(item)];
    for (int j = 0; j < size(); ++j) sum += m_overlap[pair(item, j)] * m_weight[pair(item, j)];
    return sum;
}

double Arrangement::totalOverlap() const {
    double sum = 0;
    for (int i = 0; i < size(); ++i) {
        sum += m_sheetOverlap[std::size_t(i)];
        for (int j = 0; j < i; ++j) sum += m_overlap[pair(i, j)];
    }
    return sum;
}

bool Arrangement::misplaced(int item) const { return at(item).option < 0 || beyondTop(item) || overlap(item) > 0; }

bool Arrangement::right() const {
    for (int i = 0; i < size(); ++i)
        if (misplaced(i)) return false;
    return true;
}

double Arrangement::used() const {
    double most = m_model.bottom;
    for (int i = 0; i < size(); ++i)
        if (at(i).option >= 0)
            most = std::max(
                most, at(i).y + toTicks(m_instance.outlines[std::size_t(optionOf(i, at(i).option).outline)].height));
    return most;
}

const std::optional<PlaceSet> &Arrangement::placesOf(int item, int option) const {
    return m_places[std::size_t(item)][std::size_t(option)];
}

void Arrangement::prepare(int item, const Option &option, const PlaceSet &places, InnerFit fit) {
    m_spots.start(std::move(fit), places);
    m_spots.add(m_model.noFits.onSheet(option.sheet, option.outline, m_instance.items[std::size_t(item)].hidden), 0, 0,
                m_sheetWeight[std::size_t(item)]);
    for (int j = 0; j < size(); ++j) {
        const Where &w = at(j);
        if (j == item || w.option < 0) continue;
        const Option &other = optionOf(j, w.option);
        if (other.sheet != option.sheet) continue;
        m_spots.add(m_model.noFits.between(other.outline, option.outline), w.x, w.y, m_weight[pair(item, j)]);
    }
    ++m_moves;
}

std::optional<Where> Arrangement::cheapest(int item, double enough) {
    const std::vector<int> &choices = m_model.choices[std::size_t(item)];
    std::optional<Where> found;
    const int first = choices.size() > 1 ? m_random.below(int(choices.size())) : 0;
    for (int k = 0; k < int(choices.size()); ++k) {
        const int o = choices[std::size_t((first + k) % int(choices.size()))];
        const auto &places = placesOf(item, o);
        if (!places) continue;
        prepare(item, optionOf(item, o), *places, fitOf(optionOf(item, o)));
        if (const auto spot = m_spots.best(enough, m_random.below(4))) {
            found = Where{o, spot->x, spot->y};
            enough = spot->cost;
        }
    }
    return found;
}

std::vector<InnerFit> Arrangement::windowsOf(int item, const Option &option) {
    const InnerFit &fit = fitOf(option);
    if (fit.empty()) return {};
    const Outline &outline = m_instance.outlines[std::size_t(option.outline)];
    const double width = toTicks(outline.width) * windowSize, height = toTicks(outline.height) * windowSize,
                 across = fit.highX - fit.lowX, along = fit.highY - fit.lowY;
    if (!fit.upright || std::min(width, across) * std::min(height, along) * 4 > across * along) return {fit};
    const auto windowAt = [&](double x, double y) {
        InnerFit w = fit;
        w.lowX = std::clamp(std::floor(x - width / 2), fit.lowX, std::max(fit.lowX, fit.highX - width));
        w.lowY = std::clamp(std::floor(y - height / 2), fit.lowY, std::max(fit.lowY, fit.highY - height));
        w.highX = std::min(fit.highX, std::ceil(w.lowX + width));
        w.highY = std::min(fit.highY, std::ceil(w.lowY + height));
        w.corners = {{w.lowX, w.lowY}, {w.highX, w.lowY}, {w.highX, w.highY}, {w.lowX, w.highY}};
        return w;
    };
    std::vector<InnerFit> windows;
    const Where &here = at(item);
    if (here.option >= 0 && optionOf(item, here.option).sheet == option.sheet)
        windows.push_back(windowAt(here.x, here.y));
    for (int k = 0; k < windowsElsewhere; ++k)
        windows.push_back(
            windowAt(fit.lowX + across * m_random.below(1024) / 1023, fit.lowY + along * m_random.below(1024) / 1023));
    return windows;
}

std::optional<Where> Arrangement::cheapestNear(int item, double enough) {
    if (size() < manyItems || m_random.oneIn(16)) return cheapest(item, enough);
    std::optional<Where> found;
    const std::vector<int> &choices = m_model.choices[std::size_t(item)];
    const int first = choices.size() > 1 ? m_random.below(int(choices.size())) : 0;
    for (int k = 0; k < int(choices.size()); ++k) {
        const int o = choices[std::size_t((first + k) % int(choices.size()))];
        const auto &places = placesOf(item, o);
        if (!places) continue;
        const Option &option = optionOf(item, o);
        if (!places->freeX() || !places->freeY()) return cheapest(item, enough);
        for (const InnerFit &window : windowsOf(item, option)) {
            prepare(item, option, *places, window);
            if (const auto spot = m_spots.best(enough, m_random.below(4))) {
                found = Where{o, spot->x, spot->y};
                enough = spot->cost;
            }
        }
    }
    return found;
}

std::optional<Where> Arrangement::lowest(int item) {
    std::optional<Where> found;
    double least = 1e300;
    for (int o : m_model.choices[std::size_t(item)]) {
        const auto &places = placesOf(item, o);
        if (!places) continue;
        const Option &option = optionOf(item, o);
        prepare(item, option, *places, fitOf(option));
        const auto spot = m_spots.lowestFree();
        if (!spot) continue;
        const double top = spot->y + toTicks(m_instance.outlines[std::size_t(option.outline)].height);
        if (top < least) {
            least = top;
            found = Where{o, spot->x, spot->y};
        }
        if (!m_model.open) break;
    }
    return found;
}

std::optional<Where> Arrangement::lowestNear(int item, const Where &before) {
    const Option &option = optionOf(item, before.option);
    const auto &places = placesOf(item, before.option);
    InnerFit fit = fitOf(option);
    if (size() < manyItems || !fit.upright || !places || !places->freeX() || !places->freeY()) return lowest(item);
    const Outline &outline = m_instance.outlines[std::size_t(option.outline)];
    fit.lowX = std::max(fit.lowX, std::floor(before.x - toTicks(outline.width) / 2));
    fit.highX = std::min(fit.highX, std::ceil(before.x + toTicks(outline.width) / 2));
    fit.lowY = std::max(fit.lowY, std::floor(before.y - toTicks(outline.height) / 2));
    fit.highY = std::min(fit.highY, before.y);
    fit.corners = {{fit.lowX, fit.lowY}, {fit.highX, fit.lowY}, {fit.highX, fit.highY}, {fit.lowX, fit.highY}};
    prepare(item, option, *places, std::move(fit));
    const auto spot = m_spots.lowestFree();
    return spot ? std::optional(Where{before.option, spot->x, spot->y}) : std::nullopt;
}

Vector Arrangement::phaseOf(int item, int option, double x, double y) const {
    const Option &o = optionOf(item, option);
    const auto &lattice = m_instance.sheets[std::size_t(o.sheet)].lattice;
    const ClothPoint motif = lattice ? lattice->motif() : ClothPoint{};
    return ClothPoint{toLength(x), toLength(y)} + o.anchor - motif;
}

void Arrangement::share(int group, const Shared &shared) {
    m_groups[std::size_t(group)] = shared;
    for (int item : m_instance.groups[std::size_t(group)].items)
        for (std::size_t o = 0; o < m_places[std::size_t(item)].size(); ++o) {
            const Option &option = optionOf(item, int(o));
            auto &places = m_places[std::size_t(item)][o];
            if (!shared.set)
                places = option.places;
            else if (option.turn != shared.turn || m_instance.sheets[std::size_t(option.sheet)].lot != shared.lot)
                places.reset();
            else
                places = placesInGroup(m_instance, option, shared.phase);
        }
}

bool Arrangement::canFollow(int item, const Shared &shared) {
    for (int o : m_model.choices[std::size_t(item)]) {
        const Option &option = optionOf(item, o);
        if (option.turn != shared.turn || m_instance.sheets[std::size_t(option.sheet)].lot != shared.lot) continue;
        const auto places = placesInGroup(m_instance, option, shared.phase);
        if (places && hasPlace(*places, fitOf(option))) return true;
    }
    return false;
}

std::vector<Vector> Arrangement::phasesWorthTrying(int group, Turn turn, int lot, int leader) {
    std::vector<Vector> phases;
    // Where the leader would like to lie by itself comes first ...
    for (int o : m_model.choices[std::size_t(leader)]) {
        const Option &option = optionOf(leader, o);
        if (option.turn != turn || m_instance.sheets[std::size_t(option.sheet)].lot != lot) continue;
        prepare(leader, option, option.places, fitOf(option));
        if (const auto spot = m_spots.best(1e300)) phases.push_back(phaseOf(leader, o, spot->x, spot->y));
    }
    // ... then what the others need in order to fit at all: their own wishes, and the edges of the cloth.
    for (int item : m_instance.groups[std::size_t(group)].items)
        for (int o : m_model.choices[std::size_t(item)]) {
            const Option &option = optionOf(item, o);
            if (option.turn != turn || m_instance.sheets[std::size_t(option.sheet)].lot != lot) continue;
            const InnerFit &fit = fitOf(option);
            if (fit.empty()) continue;
            for (Length x : {option.places.nextX(toLength(fit.lowX)), option.places.previousX(toLength(fit.highX))}) {
                phases.push_back(phaseOf(item, o, toTicks(x), toTicks(option.places.nextY(x, toLength(fit.lowY)))));
                if (!m_model.open)
                    phases.push_back(
                        phaseOf(item, o, toTicks(x), toTicks(option.places.previousY(x, toLength(fit.highY)))));
            }
        }
    // One item may decide across, another along.
    const std::size_t single = std::min<std::size_t>(phases.size(), 24);
    for (std::size_t i = 0; i < single; ++i)
        for (std::size_t j = 0; j < single; ++j)
            if (i != j) phases.push_back({phases[i].x, phases[j].y});
    return phases;
}

bool Arrangement::regroup(int group) {
    const auto &items = m_instance.groups[std::size_t(group)].items;
    share(group, {});
    for (int i : items) lift(i);
    if (items.empty()) return true;
    const int leader = items[std::size_t(m_random.below(int(items.size())))];
    std::vector<int> choices = m_model.choices[std::size_t(leader)];
    m_random.shuffle(choices);
    for (int o : choices) {
        const Option &option = optionOf(leader, o);
        Shared shared{true, option.turn, m_instance.sheets[std::size_t(option.sheet)].lot, {}};
        for (const Vector &phase : phasesWorthTrying(group, shared.turn, shared.lot, leader)) {
            shared.phase = phase;
            if (!std::all_of(items.begin(), items.end(), [&](int i) { return canFollow(i, shared); })) continue;
            share(group, shared);
            return true;
        }
    }
    return false;
}

void Arrangement::resetWeights() {
    std::fill(m_weight.begin(), m_weight.end(), 1);
    std::fill(m_sheetWeight.begin(), m_sheetWeight.end(), 1);
}

void Arrangement::raiseWeights() {
    double deepest = 0;
    for (double d : m_overlap) deepest = std::max(deepest, d);
    for (double d : m_sheetOverlap) deepest = std::max(deepest, d);
    if (deepest <= 0) return;
    auto change = [&](double &weight, double depth) {
        weight = depth > 0 ? weight * (1.2 + 0.8 * depth / deepest) : std::max(1., weight * 0.95);
    };
    for (std::size_t k = 0; k < m_overlap.size(); ++k) change(m_weight[k], m_overlap[k]);
    for (std::size_t k = 0; k < m_sheetOverlap.size(); ++k) change(m_sheetWeight[k], m_sheetOverlap[k]);
}

} // namespace boltwright::planner
