#include "core/paper/cloth_sheet.h"

#include "core/rules/cut_shape.h"

#include <algorithm>

namespace boltwright {
using namespace literals;
namespace {

constexpr Length beyondLastCut = Length::ticks(60 * 320); // enough to see that the cloth goes on

/// The part of the measured rectangle that a piece holds: to the join, without the seam it is sewn by.
PanelRing measuredPart(const Panel &panel, const PieceSpan &span) {
    PanelBox part = boxOf(measuredOutline(panel.shape));
    Length &low = span.sideToSide ? part.low.x : part.low.y;
    Length &high = span.sideToSide ? part.high.x : part.high.y;
    if (!span.first) low = std::max(low, span.from);
    if (!span.last) high = std::min(high, span.to);
    return ringOf(part);
}

SheetCut sheetCut(const Job &job, const Layout &layout, int index) {
    const Cut &cut = layout.cuts[std::size_t(index)];
    const Panel &panel = *job.panel(cut.panel);
    const LaidCut laid = lay(panel, cut, layout);
    SheetCut out;
    out.cut = index;
    out.outline = laid.ring;
    out.box = laid.box;
    for (PanelPoint p : cut.of > 1 ? measuredPart(panel, laid.span) : measuredOutline(panel.shape))
        out.measured.push_back(laid.at(p));
    out.measured = counterClockwise(std::move(out.measured));
    out.up = Laying(laid.outline, cut.turn, cut.mirrored, {cut.x, cut.y}).direction({{}, 1_mm});
    if (panel.motif && !isFreed(layout, cut) && laid.span.holds(anchorOf(panel))) out.motif = laid.at(anchorOf(panel));
    return out;
}

/// The shown part of a bolt.
void showBolt(ClothSheet &sheet, const Bolt &bolt) {
    Length end = sheet.lastCut + beyondLastCut;
    sheet.goesOn = true;
    if (bolt.length && *bolt.length <= end) {
        end = *bolt.length;
        sheet.goesOn = false;
    }
    sheet.outline = ringOf(ClothBox{{{}, {}}, {bolt.width, end}});
}

} // namespace

bool isFreed(const Layout &layout, const Cut &cut) {
    return std::any_of(layout.conceded.begin(), layout.conceded.end(), [&](const Concession &c) {
        return c.kind == Concession::Kind::Uncentre && c.panel == cut.panel && c.copy == cut.copy;
    });
}

std::vector<ClothSheet> clothSheets(const Job &job, const Layout &layout) {
    std::vector<ClothSheet> sheets;
    for (const Cloth &cloth : job.cloths) {
        if (cloth.bolt) {
            sheets.push_back({.cloth = cloth.id, .on = {}, .outline = {}, .goesOn = false, .lastCut = {}, .cuts = {}});
        }
        for (const Remnant &remnant : cloth.remnants)
            sheets.push_back({.cloth = cloth.id,
                              .on = remnant.id,
                              .outline = counterClockwise(remnant.outline),
                              .goesOn = false,
                              .lastCut = {},
                              .cuts = {}});
    }
    for (std::size_t i = 0; i < layout.cuts.size(); ++i) {
        const Cut &cut = layout.cuts[i];
        if (!job.panel(cut.panel)) continue;
        const std::string &cloth = job.clothOf(cut).id;
        for (ClothSheet &sheet : sheets) {
            if (sheet.cloth != cloth || sheet.on != cut.on) continue;
            sheet.cuts.push_back(sheetCut(job, layout, int(i)));
            sheet.lastCut = std::max(sheet.lastCut, sheet.cuts.back().box.high.y);
        }
    }
    std::erase_if(sheets, [](const ClothSheet &s) { return s.cuts.empty(); });
    for (ClothSheet &sheet : sheets)
        if (const Cloth *cloth = job.cloth(sheet.cloth); cloth->bolt) showBolt(sheet, *cloth->bolt);
    return sheets;
}

} // namespace boltwright
