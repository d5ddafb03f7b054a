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

/// 0 is "a", 25 "z", 26 "aa".
std::string letterOf(int number) {
    std::string letters;
    for (int n = number; n >= 0; n = n / 26 - 1) letters.insert(letters.begin(), char('a' + n % 26));
    return letters;
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

/// What a person drew on the cloth and pinned to it; `notes` counts them through all sheets.
void takeMarkings(ClothSheet &sheet, const Markings &markings, int &notes) {
    const ClothBox box = sheet.box();
    for (const PinnedNote &note : markings.notes)
        sheet.notes.push_back({letterOf(notes++), note.at, note.at.x - box.low.x, note.at.y - box.low.y, note.text});
    for (const ChalkLine &line : markings.lines) {
        const bool across = line.runs == ChalkLine::Runs::Across;
        const Length low = across ? box.low.y : box.low.x, high = across ? box.high.y : box.high.x;
        if (line.at < low || line.at > high) continue;
        sheet.chalk.push_back(across ? ClothLine{{box.low.x, line.at}, {box.high.x, line.at}}
                                     : ClothLine{{line.at, box.low.y}, {line.at, box.high.y}});
    }
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
    int notes = 0;
    for (ClothSheet &sheet : sheets) {
        const Cloth *cloth = job.cloth(sheet.cloth);
        if (cloth->bolt) showBolt(sheet, *cloth->bolt);
        takeMarkings(sheet, markingsOn(*cloth, sheet.on), notes);
    }
    return sheets;
}

} // namespace boltwright
