#include "core/paper/sheet_plan.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"

#include <algorithm>
#include <initializer_list>

namespace boltwright {
using namespace literals;
namespace {

constexpr Length headingHeight = 14_mm;
constexpr Length notesWidth = 50_mm, notesHeight = 32_mm, besideNotes = 5_mm;
constexpr Length betweenStrips = 3_mm;
constexpr Length overlapOnPaper = 12_mm;
constexpr std::size_t mostPages = 200;

/// A length of cloth on paper, rounded up to the tick so that what fits really does.
Length onPaper(Length cloth, int scale) { return Length::ticks((cloth.ticks() + scale - 1) / scale); }

/// The room for cloth on a page.
struct Room {
    PaperBox box;
    Length forLength() const {
        return box.width() - StripEdges::left - 2_mm;
    } // the last mark of a tape is half a mark wide
    Length forWidth() const { return box.height() - StripEdges::above - StripEdges::below; }
};

SheetPlan emptyPlan(Paper paper, bool sideways, int scale) {
    SheetPlan plan;
    plan.paper = sizeOf(paper);
    if (sideways) std::swap(plan.paper.width, plan.paper.height);
    plan.sideways = sideways;
    plan.scale = scale;
    const Length left = paperMargin(), right = plan.paper.width - paperMargin(), top = paperMargin(),
                 bottom = plan.paper.height - paperMargin();
    plan.heading = {{left, top}, {right, top + headingHeight}};
    plan.notes = sideways ? PaperBox{{right - notesWidth, top + headingHeight}, {right, bottom}}
                          : PaperBox{{left, bottom - notesHeight}, {right, bottom}};
    return plan;
}

Room roomOf(const SheetPlan &plan) {
    const PaperPoint low{paperMargin(), plan.heading.high.y};
    if (plan.sideways) return {{low, {plan.notes.low.x - besideNotes, plan.paper.height - paperMargin()}}};
    return {{low, {plan.paper.width - paperMargin(), plan.notes.low.y - 3_mm}}};
}

std::int64_t quotientUp(Length a, Length b) { return (a.ticks() + b.ticks() - 1) / b.ticks(); }

/// Where the next stretch is laid over this one: as evenly as can be, at a straight cut where one is near enough that
/// no further stretch is needed for it, since that tears no panel in two.
Length nextMatch(Length from, Length end, Length most, Length overlap, const std::vector<Length> &across) {
    const Length half = Length::ticks(overlap.ticks() / 2);
    const std::int64_t left = quotientUp(end - from - overlap, most - overlap); // stretches still to come, this one too
    const Length even = from + half + Length::ticks((end - from - overlap).ticks() / left);
    const Length least = end - half - (most - overlap) * (left - 1), furthest = from + most - half;
    std::optional<Length> best;
    for (Length y : across)
        if (y >= std::max(least, from + overlap) && y <= furthest && (!best || abs(y - even) < abs(*best - even)))
            best = y;
    return best.value_or(even);
}

/// The stretches of one sheet, from the cut end up.
std::vector<SheetStrip> strips(std::size_t index, const ClothSheet &sheet, const std::vector<Length> &across,
                               const SheetPlan &plan, int &matches) {
    const ClothBox box = sheet.box();
    const Length most = roomOf(plan).forLength() * plan.scale, overlap = overlapOnPaper * plan.scale;
    const Length half = Length::ticks(overlap.ticks() / 2);
    std::vector<SheetStrip> out;
    SheetStrip strip{.sheet = index, .from = box.low.y, .to = {}, .corner = {}, .matchBefore = {}, .matchAfter = {}};
    while (box.high.y - strip.from > most) {
        const Length match = nextMatch(strip.from, box.high.y, most, overlap, across);
        strip.to = match + half;
        strip.matchAfter = match;
        strip.after = ++matches;
        out.push_back(strip);
        strip = {.sheet = index, .from = match - half, .to = {}, .corner = {}, .matchBefore = match, .matchAfter = {}};
        strip.before = matches;
    }
    strip.to = box.high.y;
    out.push_back(strip);
    return out;
}

/// Lays the strips one below the other, page by page.
void fillPages(SheetPlan &plan, const std::vector<ClothSheet> &sheets, const std::vector<std::vector<Length>> &across) {
    const Room room = roomOf(plan);
    Length y = room.box.low.y;
    int matches = 0;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        const Length height = StripEdges::above + onPaper(sheets[i].box().width(), plan.scale) + StripEdges::below;
        for (SheetStrip strip : strips(i, sheets[i], across[i], plan, matches)) {
            if (plan.pages.empty() || y + height > room.box.high.y) {
                plan.pages.emplace_back();
                y = room.box.low.y;
            }
            strip.corner = {room.box.low.x + StripEdges::left, y + StripEdges::above};
            plan.pages.back().strips.push_back(strip);
            y += height + betweenStrips;
        }
    }
}

Length widest(const std::vector<ClothSheet> &sheets) {
    Length most;
    for (const ClothSheet &sheet : sheets) most = std::max(most, sheet.box().width());
    return most;
}

std::optional<SheetPlan> planAt(const std::vector<ClothSheet> &sheets, const std::vector<std::vector<Length>> &across,
                                Paper paper, bool sideways, int scale) {
    SheetPlan plan = emptyPlan(paper, sideways, scale);
    const Room room = roomOf(plan);
    if (onPaper(widest(sheets), scale) > room.forWidth()) return std::nullopt;
    Length total; // a sheet of thousands of pages is no sheet: do not even lay it out
    for (const ClothSheet &sheet : sheets) total += sheet.box().height();
    if (total.ticks() / scale / (room.forLength() - overlapOnPaper).ticks() * 2 > std::int64_t(mostPages))
        return std::nullopt;
    fillPages(plan, sheets, across);
    return plan;
}

/// The better way round of those allowed: fewer pages, sideways among equals.
std::optional<SheetPlan> bestWayRound(const std::vector<ClothSheet> &sheets,
                                      const std::vector<std::vector<Length>> &across, const SheetOptions &options,
                                      int scale) {
    std::optional<SheetPlan> best;
    for (bool sideways : {true, false}) {
        if (options.sideways && *options.sideways != sideways) continue;
        auto plan = planAt(sheets, across, options.paper, sideways, scale);
        if (plan && (!best || plan->pages.size() < best->pages.size())) best = std::move(plan);
    }
    return best;
}

std::vector<int> usualScales(Unit unit) {
    return unit == Unit::Inch ? std::vector{8, 10, 16, 20} : std::vector{10, 20};
}
const std::vector<int> smallScales = {24, 25, 30, 32, 40, 50, 64, 100};

std::optional<SheetPlan> chosenPlan(const Job &job, const std::vector<ClothSheet> &sheets,
                                    const std::vector<std::vector<Length>> &across, const SheetOptions &options) {
    std::vector<SheetPlan> plans;
    for (int scale : usualScales(job.unit))
        if (auto plan = bestWayRound(sheets, across, options, scale)) plans.push_back(std::move(*plan));
    // One page is worth a smaller drawing only while everything on it can still be read at arm's length.
    for (const SheetPlan &plan : plans)
        if (plan.pages.size() == 1 && plan.scale <= 10) return plan;
    for (std::size_t enough : {2u, 3u})
        for (const SheetPlan &plan : plans)
            if (plan.pages.size() <= enough) return plan;
    if (!plans.empty())
        return *std::min_element(plans.begin(), plans.end(), [](const SheetPlan &a, const SheetPlan &b) {
            return a.pages.size() < b.pages.size();
        });
    for (int scale : smallScales)
        if (auto plan = bestWayRound(sheets, across, options, scale)) return plan;
    return std::nullopt;
}

} // namespace

Result<SheetPlan> planSheet(const Job &job, const std::vector<ClothSheet> &sheets,
                            const std::vector<std::vector<Length>> &across, const SheetOptions &options) {
    if (options.scale && (*options.scale < 1 || *options.scale > 1000))
        return fault(phrase("a scale of 1:%1 makes no sheet; write a number such as 10 for 1:10",
                            {std::to_string(*options.scale)}));
    if (options.onOnePage) {
        constexpr int smallest = 200;
        for (int scale = 1; scale <= smallest; ++scale)
            if (auto plan = bestWayRound(sheets, across, options, scale); plan && plan->pages.size() == 1) return *plan;
        return fault(phrase("the cloth is too long for one page of %1; more pages, or larger paper, would do",
                            {nameOf(options.paper)}));
    }
    if (!options.scale) {
        if (auto plan = chosenPlan(job, sheets, across, options)) return *plan;
        return fault(phrase("the cloth is too large for %1 at any scale that can be read; larger paper would do",
                            {nameOf(options.paper)}));
    }
    if (auto plan = bestWayRound(sheets, across, options, *options.scale)) return *plan;
    std::string would;
    for (int scale : {8, 10, 16, 20, 24, 25, 30, 32, 40, 50, 64, 100})
        if (would.empty() && scale > *options.scale && bestWayRound(sheets, across, options, scale))
            would = phrase("1:%1 would do", {std::to_string(scale)});
    // What somebody is likely to have beside the paper they chose.
    const bool metric = options.paper == Paper::A4 || options.paper == Paper::A3;
    SheetOptions larger = options;
    larger.paper = metric ? Paper::A3 : Paper::Tabloid;
    if (larger.paper != options.paper && bestWayRound(sheets, across, larger, *options.scale))
        would = would.empty() ? phrase("%1 paper would do", {nameOf(larger.paper)})
                              : phrase("%1, or %2 paper", {would, nameOf(larger.paper)});
    return fault(phrase("at 1:%1 the cloth is too large for %2; %3",
                        {std::to_string(*options.scale), nameOf(options.paper),
                         would.empty() ? phrase("a smaller scale or larger paper would do") : would}));
}

Length scaleBar(Unit unit, int scale, Length room) {
    const std::vector<Length> usual = unit == Unit::Inch
                                          ? std::vector{1_in, 2_in, 3_in, 6_in, 12_in, 18_in, 36_in, 72_in, 180_in}
                                          : std::vector{1_cm, 2_cm, 5_cm, 10_cm, 20_cm, 50_cm, 100_cm, 200_cm, 500_cm};
    Length best = usual.front();
    for (Length length : usual)
        if (length.ticks() <= room.ticks() * scale) best = length;
    return best;
}

Length testSquare(Unit unit) { return unit == Unit::Inch ? 1_in : 25_mm; }

} // namespace boltwright
