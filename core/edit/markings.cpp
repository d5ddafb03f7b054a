#include "core/edit/markings.h"

#include "core/base/language.h"
#include "core/rules/cut_shape.h"

#include <algorithm>
#include <cmath>

namespace boltwright {

namespace {

Cloth *clothOn(Job &job, const SheetOf &sheet) {
    for (Cloth &cloth : job.cloths)
        if (cloth.id == sheet.cloth) return &cloth;
    return nullptr;
}

/// Null: there is no such sheet.
Markings *markingsOf(Job &job, const SheetOf &sheet) {
    Cloth *cloth = clothOn(job, sheet);
    if (!cloth) return nullptr;
    if (cloth->bolt) return &cloth->bolt->markings;
    for (Remnant &remnant : cloth->remnants)
        if (sheet.on && remnant.id == *sheet.on) return &remnant.markings;
    return nullptr;
}

template <class Part>
bool has(const std::vector<Part> &parts, int index) {
    return index >= 0 && index < int(parts.size());
}

} // namespace

const Markings &markingsOf(const Job &job, const SheetOf &sheet) {
    static const Markings none;
    const Cloth *cloth = job.cloth(sheet.cloth);
    return cloth ? markingsOn(*cloth, sheet.on) : none;
}

Job withChalkLine(Job job, const SheetOf &sheet, ChalkLine line) {
    if (Markings *m = markingsOf(job, sheet)) m->lines.push_back(std::move(line));
    return job;
}

Job withChalkLineMoved(Job job, const SheetOf &sheet, int line, Length at) {
    if (Markings *m = markingsOf(job, sheet); m && has(m->lines, line)) m->lines[std::size_t(line)].at = at;
    return job;
}

Job withoutChalkLine(Job job, const SheetOf &sheet, int line) {
    if (Markings *m = markingsOf(job, sheet); m && has(m->lines, line)) m->lines.erase(m->lines.begin() + line);
    return job;
}

Job withNotePinned(Job job, const SheetOf &sheet, ClothPoint at, const std::string &text) {
    if (Markings *m = markingsOf(job, sheet); m && !text.empty()) m->notes.push_back({at, text, {}});
    return job;
}

Job withNoteMoved(Job job, const SheetOf &sheet, int note, ClothPoint at) {
    if (Markings *m = markingsOf(job, sheet); m && has(m->notes, note)) m->notes[std::size_t(note)].at = at;
    return job;
}

Job withNoteSaying(Job job, const SheetOf &sheet, int note, const std::string &text) {
    if (text.empty()) return withoutNote(std::move(job), sheet, note);
    if (Markings *m = markingsOf(job, sheet); m && has(m->notes, note)) m->notes[std::size_t(note)].text = text;
    return job;
}

Job withoutNote(Job job, const SheetOf &sheet, int note) {
    if (Markings *m = markingsOf(job, sheet); m && has(m->notes, note)) m->notes.erase(m->notes.begin() + note);
    return job;
}

ClothBox reachOf(const Job &job, const Layout &layout, const SheetOf &sheet) {
    const Cloth *cloth = job.cloth(sheet.cloth);
    if (!cloth) return {};
    if (!cloth->bolt) {
        const Remnant *remnant = sheet.on ? cloth->remnant(*sheet.on) : nullptr;
        return remnant ? boxOf(remnant->outline) : ClothBox{};
    }
    Length end = cloth->bolt->square;
    for (const Cut &cut : layout.cuts)
        if (sheetOf(job, cut) == sheet) end = std::max(end, boxOnCloth(job, layout, cut).high.y);
    return {{}, {cloth->bolt->width, cloth->bolt->length.value_or(end + cloth->bolt->width)}};
}

// What there is to come to rest at.

namespace {

struct Segment {
    ClothPoint a, b;
    std::string text;
};

struct Corner {
    ClothPoint at;
    std::string text;
};

/// Corners and edges of all that lies on a sheet.
struct Outlines {
    std::vector<Corner> corners;
    std::vector<Segment> edges;

    void take(const ClothRing &ring, const std::string &name) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            corners.push_back({ring[i], phrase("corner of %1", {name})});
            edges.push_back({ring[i], ring[(i + 1) % ring.size()], phrase("edge of %1", {name})});
        }
    }
};

void takeBolt(Outlines &all, const Cloth &cloth, const ClothBox &reach) {
    const auto upTheRoll = [&](Length x, const std::string &text) {
        all.edges.push_back({{x, reach.low.y}, {x, reach.high.y}, text});
    };
    const auto across = [&](Length y, const std::string &text) {
        all.edges.push_back({{reach.low.x, y}, {reach.high.x, y}, text});
    };
    upTheRoll(reach.low.x, phrase("left edge of the cloth"));
    upTheRoll(reach.high.x, phrase("right edge of the cloth"));
    across(Length{}, phrase("cut end"));
    for (const Length x : {reach.low.x, reach.high.x})
        all.corners.push_back({{x, Length{}}, phrase("corner of the cloth")});
    if (cloth.selvage > Length{}) {
        upTheRoll(cloth.selvage, phrase("left selvage"));
        upTheRoll(cloth.bolt->width - cloth.selvage, phrase("right selvage"));
    }
    if (cloth.bolt->square > Length{}) across(cloth.bolt->square, phrase("squared end"));
    if (cloth.bolt->length) across(*cloth.bolt->length, phrase("end of the bolt"));
}

Outlines outlinesOn(const Job &job, const Layout &layout, const SheetOf &sheet) {
    Outlines all;
    const Cloth *cloth = job.cloth(sheet.cloth);
    if (!cloth) return all;
    for (const Cut &cut : layout.cuts) {
        const Panel *panel = job.panel(cut.panel);
        if (!panel || sheetOf(job, cut) != sheet) continue;
        all.take(outlineOnCloth(job, layout, cut), panel->name.empty() ? panel->id : panel->name);
    }
    const ClothBox reach = reachOf(job, layout, sheet);
    if (cloth->bolt)
        takeBolt(all, *cloth, reach);
    else if (const Remnant *remnant = sheet.on ? cloth->remnant(*sheet.on) : nullptr)
        all.take(remnant->outline, phrase("the remnant"));
    for (const Flaw &flaw : flawsOn(*cloth, sheet.on)) all.take(flaw.outline, phrase("a flaw"));
    for (const ChalkLine &line : markingsOn(*cloth, sheet.on).lines) {
        if (line.runs == ChalkLine::Runs::Across)
            all.edges.push_back({{reach.low.x, line.at}, {reach.high.x, line.at}, phrase("chalk line")});
        else
            all.edges.push_back({{line.at, reach.low.y}, {line.at, reach.high.y}, phrase("chalk line")});
    }
    return all;
}

Area distanceSquared(ClothPoint a, ClothPoint b) { return dot(a - b, a - b); }

/// The point of the segment nearest to p, to the nearest tick. Only shown and snapped to, never decided by.
ClothPoint nearestOn(const Segment &s, ClothPoint p) {
    const Vector along = s.b - s.a, to = p - s.a;
    const Area whole = dot(along, along);
    if (whole == 0) return s.a;
    const double share = std::clamp(double(dot(to, along)) / double(whole), 0.0, 1.0);
    const auto part = [&](Length l) { return Length::ticks(std::llround(double(l.ticks()) * share)); };
    return s.a + Vector{part(along.x), part(along.y)};
}

/// Where the segment crosses the upright or level line through a point; none where it does not, or runs along it.
std::optional<ClothPoint> crossing(const Segment &s, ClothPoint through, bool level) {
    const auto on = [&](ClothPoint p) { return level ? p.y : p.x; };
    const Length at = on(through), a = on(s.a), b = on(s.b);
    if (a == b || at < std::min(a, b) || at > std::max(a, b)) return std::nullopt;
    const double share = double((at - a).ticks()) / double((b - a).ticks());
    const auto between = [&](Length from, Length to) {
        return from + Length::ticks(std::llround(double((to - from).ticks()) * share));
    };
    return level ? ClothPoint{between(s.a.x, s.b.x), at} : ClothPoint{at, between(s.a.y, s.b.y)};
}

} // namespace

Mark markNear(const Job &job, const Layout &layout, const SheetOf &sheet, ClothPoint hand, Length reach,
              const std::optional<ClothPoint> &from) {
    Mark best{Mark::Kind::Bare, hand, {}};
    if (reach == Length{}) return best;
    const Outlines all = outlinesOn(job, layout, sheet);
    Area least = reach * reach;
    const auto take = [&](Mark::Kind kind, ClothPoint at, const std::string &text) {
        const Area distance = distanceSquared(at, hand);
        if (distance > least || (distance == least && best.kind != Mark::Kind::Bare)) return;
        best = {kind, at, text};
        least = distance;
    };
    for (const Corner &corner : all.corners) take(Mark::Kind::Corner, corner.at, corner.text);
    if (best.kind != Mark::Kind::Bare) return best;
    if (from)
        for (const Segment &edge : all.edges)
            for (const bool level : {true, false})
                if (const auto p = crossing(edge, *from, level)) take(Mark::Kind::Edge, *p, edge.text);
    if (best.kind != Mark::Kind::Bare) return best;
    for (const Segment &edge : all.edges) take(Mark::Kind::Edge, nearestOn(edge, hand), edge.text);
    return best;
}

std::optional<Mark> nextMark(const Job &job, const Layout &layout, const SheetOf &sheet, ClothPoint from,
                             Heading heading) {
    const bool level = heading == Heading::TowardsLeft || heading == Heading::TowardsRight;
    const bool onwards = heading == Heading::TowardsRight || heading == Heading::UpTheRoll;
    const auto on = [&](ClothPoint p) { return level ? p.x : p.y; };
    std::optional<Mark> best;
    const auto take = [&](ClothPoint at, const std::string &text) {
        if (onwards ? on(at) <= on(from) : on(at) >= on(from)) return;
        if (best && abs(on(at) - on(from)) >= abs(on(best->at) - on(from))) return;
        best = Mark{Mark::Kind::Edge, at, text};
    };
    for (const Segment &edge : outlinesOn(job, layout, sheet).edges)
        if (const auto p = crossing(edge, from, level)) take(*p, edge.text);
    return best;
}

Mark chalkPlace(const Job &job, const Layout &layout, const SheetOf &sheet, ChalkLine::Runs runs, Length hand,
                Length reach) {
    const bool x = runs == ChalkLine::Runs::Along;
    const auto point = [&](Length at) { return x ? ClothPoint{at, Length{}} : ClothPoint{Length{}, at}; };
    Mark best{Mark::Kind::Bare, point(hand), {}};
    Length least = reach;
    const auto take = [&](Length at, Mark::Kind kind, const std::string &text) {
        if (abs(at - hand) > least || (abs(at - hand) == least && best.kind != Mark::Kind::Bare)) return;
        best = {kind, point(at), text};
        least = abs(at - hand);
    };
    for (const Corner &corner : outlinesOn(job, layout, sheet).corners)
        take(x ? corner.at.x : corner.at.y, Mark::Kind::Corner, corner.text);
    const ClothBox box = reachOf(job, layout, sheet);
    if (x) take(Length::ticks((box.low.x + box.high.x).ticks() / 2), Mark::Kind::Edge, "middle of the cloth");
    return best;
}

TapeReading readTape(ClothPoint from, ClothPoint to) {
    const Vector v = to - from;
    // Beside the whole root its two neighbours are looked at, so that rounding in the last place does no harm.
    const Area whole = dot(v, v);
    std::int64_t root = std::llround(std::sqrt(double(whole)));
    while (root > 0 && Area(root) * root - root >= whole) --root;
    while (Area(root) * root + root < whole) ++root;
    return {Length::ticks(root), abs(v.x), abs(v.y)};
}

ClothPoint oneStep(const Job &job, const SheetOf &sheet, ClothPoint from, Heading heading) {
    ClothPoint p = stepped(from, heading, smallStep(job.unit));
    const ClothBox box = reachOf(job, {}, sheet);
    p.x = std::clamp(p.x, box.low.x, box.high.x);
    p.y = std::max(p.y, box.low.y);
    const Cloth *cloth = job.cloth(sheet.cloth);
    if (cloth && (!cloth->bolt || cloth->bolt->length)) p.y = std::min(p.y, box.high.y);
    return p;
}

} // namespace boltwright
