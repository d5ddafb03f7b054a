#include "tests/core/planner/tiny.h"

#include <algorithm>

namespace tiny {
namespace {

int whole(Length l) { return int(l.ticks()); }

struct Rect {
    int sheet, x, y, w, h;
};

bool keepApart(const Rect &a, const Rect &b, int gap) {
    if (a.sheet != b.sheet) return true;
    const int dx = std::max({a.x - b.x - b.w, b.x - a.x - a.w, 0});
    const int dy = std::max({a.y - b.y - b.h, b.y - a.y - a.h, 0});
    const bool overlap = a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
    return !overlap && dx * dx + dy * dy >= gap * gap;
}

/// Whether the middle of a cell lies in a ring: edges crossed on the way to the left.
bool holdsCell(const ClothRing &ring, int x, int y) {
    bool inside = false;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const ClothPoint a = ring[i], b = ring[(i + 1) % ring.size()];
        if (a.x != b.x) continue; // upright edges only
        const int low = std::min(whole(a.y), whole(b.y)), high = std::max(whole(a.y), whole(b.y));
        if (low <= y && y < high && whole(a.x) <= x) inside = !inside;
    }
    return inside;
}

bool onCloth(const Instance &instance, const Rect &r, bool hidden) {
    const Sheet &sheet = instance.sheets[std::size_t(r.sheet)];
    for (int x = r.x; x < r.x + r.w; ++x)
        for (int y = r.y; y < r.y + r.h; ++y) {
            if (!holdsCell(sheet.room, x, y)) return false;
            for (const ClothRing &flaw : sheet.flaws)
                if (!hidden && holdsCell(flaw, x, y)) return false;
        }
    return true;
}

bool wholeSteps(const Instance &instance, const Option &a, ClothPoint pa, const Option &b, ClothPoint pb) {
    const auto &la = instance.sheets[std::size_t(a.sheet)].lattice;
    const auto &lb = instance.sheets[std::size_t(b.sheet)].lattice;
    if (a.turn != b.turn || instance.sheets[std::size_t(a.sheet)].lot != instance.sheets[std::size_t(b.sheet)].lot)
        return false;
    if (!la || !lb) return true;
    const int dx = whole(pa.x + a.anchor.x - la->motif().x) - whole(pb.x + b.anchor.x - lb->motif().x);
    const int dy = whole(pa.y + a.anchor.y - la->motif().y) - whole(pb.y + b.anchor.y - lb->motif().y);
    int rise = 0;
    if (la->repeatsAcross()) {
        if (dx % whole(la->across()) != 0) return false;
        if (la->repeatsAlong())
            rise = dx / whole(la->across()) * whole(la->along()) * la->dropNumerator() / la->dropDenominator();
    }
    return !la->repeatsAlong() || (dy - rise) % whole(la->along()) == 0;
}

Rect rectOf(const Instance &instance, const Option &option, ClothPoint corner) {
    const Outline &outline = instance.outlines[std::size_t(option.outline)];
    return {option.sheet, whole(corner.x), whole(corner.y), whole(outline.width), whole(outline.height)};
}

Rect rectOf(const Instance &instance, const Fixed &fixed) {
    const Outline &outline = instance.outlines[std::size_t(fixed.outline)];
    return {fixed.sheet, whole(fixed.corner.x), whole(fixed.corner.y), whole(outline.width), whole(outline.height)};
}

/// Whether one more placement goes with those already made.
bool goesWith(const Instance &instance, const std::vector<Placement> &laid, const Placement &next) {
    const Item &item = instance.items[std::size_t(next.item)];
    const Option &option = item.options[std::size_t(next.option)];
    const Rect rect = rectOf(instance, option, next.corner);
    if (!option.places.holds(next.corner) || !onCloth(instance, rect, item.hidden)) return false;
    for (const Fixed &fixed : instance.fixed)
        if (!keepApart(rect, rectOf(instance, fixed), whole(instance.gap))) return false;
    for (const Placement &other : laid) {
        const Item &otherItem = instance.items[std::size_t(other.item)];
        const Option &otherOption = otherItem.options[std::size_t(other.option)];
        if (!keepApart(rect, rectOf(instance, otherOption, other.corner), whole(instance.gap))) return false;
        if (item.group >= 0 && item.group == otherItem.group &&
            !wholeSteps(instance, option, next.corner, otherOption, other.corner))
            return false;
    }
    return true;
}

bool layRest(const Instance &instance, int length, std::vector<Placement> &laid) {
    if (laid.size() == instance.items.size()) return true;
    const int index = int(laid.size());
    const Item &item = instance.items[std::size_t(index)];
    for (std::size_t k = 0; k < item.options.size(); ++k) {
        const Option &option = item.options[k];
        const Sheet &sheet = instance.sheets[std::size_t(option.sheet)];
        const ClothBox room = boxOf(sheet.room);
        const Outline &outline = instance.outlines[std::size_t(option.outline)];
        const int top =
            (sheet.open ? std::min(length, whole(room.high.y)) : whole(room.high.y)) - whole(outline.height);
        for (int x = whole(room.low.x); x <= whole(room.high.x - outline.width); ++x)
            for (int y = whole(room.low.y); y <= top; ++y) {
                const Placement next{index, int(k), {Length::ticks(x), Length::ticks(y)}};
                if (!goesWith(instance, laid, next)) continue;
                laid.push_back(next);
                if (layRest(instance, length, laid)) return true;
                laid.pop_back();
            }
    }
    return false;
}

int endOfFixed(const Instance &instance) {
    int end = 0;
    for (const Fixed &fixed : instance.fixed)
        end = std::max(end, rectOf(instance, fixed).y + rectOf(instance, fixed).h);
    return end;
}

PlaceSet placesFor(Dice &dice, const std::optional<Lattice> &lattice, bool mayDrop) {
    PlaceSet places;
    if (!lattice || dice.oneIn(4)) return places;
    const bool across = lattice->repeatsAcross() && !dice.oneIn(4), along = lattice->repeatsAlong() && !dice.oneIn(4);
    if (across) {
        places.xStep = lattice->across();
        places.x0 = Length::ticks(dice(0, 5));
    }
    if (along) {
        places.yStep = lattice->along();
        places.y0 = Length::ticks(dice(0, 5));
        if (across) {
            // On a lattice this small a drop would be taken for none (it is within 4 ticks of it), so it is put in
            // here.
            if (mayDrop && dice.oneIn(2)) {
                places.riseNumerator = 1;
                places.riseDenominator = 2;
            }
        } else if (mayDrop && dice.oneIn(2)) {
            places.yDivide = 2;
        }
    }
    return places;
}

} // namespace

int addRectangle(Instance &instance, int w, int h) {
    Outline outline;
    outline.ring = box(0, 0, w, h);
    outline.parts = {outline.ring};
    outline.width = Length::ticks(w);
    outline.height = Length::ticks(h);
    outline.rectangle = true;
    outline.area = Area(w) * h;
    instance.outlines.push_back(outline);
    return int(instance.outlines.size()) - 1;
}

Instance bolt(int width, const std::vector<std::pair<int, int>> &sizes, int gap, int length) {
    Instance instance = remnant(width, length, sizes, gap);
    instance.sheets[0].open = true;
    return instance;
}

Instance remnant(int width, int height, const std::vector<std::pair<int, int>> &sizes, int gap) {
    Instance instance;
    instance.gap = Length::ticks(gap);
    instance.sheets.push_back({.room = box(0, 0, width, height), .flaws = {}, .lattice = {}});
    for (const auto &[w, h] : sizes) {
        Option option;
        option.outline = addRectangle(instance, w, h);
        Item item;
        item.options = {option};
        item.kind = int(instance.items.size());
        for (const Item &other : instance.items)
            if (instance.outlines[std::size_t(other.options[0].outline)].width == Length::ticks(w) &&
                instance.outlines[std::size_t(other.options[0].outline)].height == Length::ticks(h)) {
                item.kind = other.kind;
                break;
            }
        instance.items.push_back(item);
    }
    return instance;
}

Instance anything(Dice &dice, bool open) {
    Instance instance;
    if (dice.oneIn(2)) instance.gap = Length::ticks(dice(1, 3));
    std::optional<Pattern> pattern;
    if (dice.oneIn(2)) {
        pattern = Pattern{};
        if (!dice.oneIn(4)) pattern->across = Length::ticks(dice(2, 4));
        if (!pattern->across || dice.oneIn(2)) pattern->along = Length::ticks(2 * dice(1, 2));
    }
    const int sheets = open ? 1 : dice(1, 2);
    for (int s = 0; s < sheets; ++s) {
        const int x = dice(0, 1), y = dice(0, 1), w = dice(4, 7), h = open ? 40 : dice(4, 7);
        Sheet sheet;
        sheet.room = box(x, y, w, h);
        sheet.open = open;
        sheet.lot = dice(0, 1);
        if (!open && dice.oneIn(3)) { // a corner is missing
            const int a = dice(1, w - 1), b = dice(1, h - 1);
            auto at = [](int px, int py) { return ClothPoint{Length::ticks(px), Length::ticks(py)}; };
            sheet.room = {at(x, y), at(x + w, y), at(x + w, y + b), at(x + a, y + b), at(x + a, y + h), at(x, y + h)};
        }
        if (dice.oneIn(4)) sheet.flaws.push_back(box(x + dice(0, w - 1), y + dice(0, 4), dice(1, 2), dice(1, 2)));
        if (pattern) sheet.lattice = Lattice(*pattern, {Length::ticks(dice(0, 3)), Length::ticks(dice(0, 3))});
        instance.sheets.push_back(sheet);
    }
    if (dice.oneIn(4)) {
        const ClothBox room = boxOf(instance.sheets[0].room);
        const int w = dice(1, 3), h = dice(1, 3);
        const int outline = addRectangle(instance, w, h);
        instance.fixed.push_back(
            {0,
             outline,
             {room.low.x + Length::ticks(dice(0, whole(room.width()) - w)), room.low.y + Length::ticks(dice(0, 2))}});
    }
    const bool grouped = dice.oneIn(4);
    if (grouped) instance.groups.emplace_back();
    const int n = dice(2, 4);
    for (int i = 0; i < n; ++i) {
        if (i > 0 && !grouped && dice.oneIn(3)) { // a copy of the one before
            instance.items.push_back(instance.items.back());
            continue;
        }
        const int w = dice(1, 5), h = dice(1, 5);
        Item item;
        item.kind = i;
        item.hidden = dice.oneIn(6);
        const int upright = addRectangle(instance, w, h);
        const int lying = dice.oneIn(3) ? addRectangle(instance, h, w) : -1;
        for (int s = 0; s < sheets; ++s) {
            if (s > 0 && dice.oneIn(3)) continue;
            Option option;
            option.sheet = s;
            option.outline = upright;
            option.anchor = {Length::ticks(dice(0, w)), Length::ticks(dice(0, h))};
            option.places = placesFor(dice, instance.sheets[std::size_t(s)].lattice, !grouped);
            item.options.push_back(option);
            if (lying < 0) continue;
            option.outline = lying;
            option.turn = Turn::Deg90;
            option.places = placesFor(dice, instance.sheets[std::size_t(s)].lattice, !grouped);
            item.options.push_back(option);
        }
        if (grouped && i < 3) {
            item.group = 0;
            instance.groups[0].items.push_back(i);
        }
        instance.items.push_back(item);
    }
    return instance;
}

bool fits(const Instance &instance, int length) {
    if (std::any_of(instance.sheets.begin(), instance.sheets.end(), [](const Sheet &s) { return s.open; }) &&
        endOfFixed(instance) > length)
        return false;
    std::vector<Placement> laid;
    return layRest(instance, length, laid);
}

std::optional<int> leastLength(const Instance &instance, int most) {
    for (int length = endOfFixed(instance); length <= most; ++length)
        if (fits(instance, length)) return length;
    return std::nullopt;
}

bool keepsRules(const Instance &instance, const std::vector<Placement> &placements) {
    if (placements.size() != instance.items.size()) return false;
    std::vector<Placement> laid;
    for (std::size_t i = 0; i < placements.size(); ++i) {
        if (placements[i].item != int(i) || !goesWith(instance, laid, placements[i])) return false;
        laid.push_back(placements[i]);
    }
    return true;
}

} // namespace tiny
