#include "core/forms/trim_list.h"

#include "core/base/language.h"
#include "core/geometry/exact.h"
#include "core/trimmings/welt.h"

#include <algorithm>

namespace boltwright {
namespace {

Length sideOfBlock(const FormPart &part, const Sizes &s, int edge) {
    const Length across = s[Measure::Across], up = s[Measure::Up];
    const auto slant = [](Length a, Length b) {
        return Length::ticks(rootDown(Wide(a.ticks()) * a.ticks() + Wide(b.ticks()) * b.ticks()));
    };
    if (part.kind == PartKind::OnPoint) return slant(timesDown(across, {1, 2}), timesDown(up, {1, 2}));
    if (part.kind == PartKind::Trapezoid && edge == Top) return s[Measure::Top];
    if (part.kind == PartKind::Trapezoid && edge != Bottom)
        return slant(Length::ticks(abs(across - s[Measure::Top]).ticks() / 2), up);
    return edge == Bottom || edge == Top ? across : up;
}

void addWelt(TrimList &list, const FormPart &part, const PartMeasured &measured, const TradeRules &rules) {
    // Both plates of a cushion carry it.
    const int times = part.kind == PartKind::BoxCushion ? 2 * measured.count : 1;
    const auto run = [&](Sizes sizes, int copies) {
        if (part.kind == PartKind::BoxCushion) {
            sizes[Measure::Across] += rules.cushionOversize;
            sizes[Measure::Up] += rules.cushionOversize;
        }
        Length length;
        for (int e = 0; e < 4; ++e)
            if (part.edges[std::size_t(e)] == EdgeKind::Welt) length += sideOfBlock(part, sizes, e);
        list.welt += length * copies;
        if (length > Length{}) list.weltJoins += copies;
    };
    if (part.kind == PartKind::BoxCushion) return run(measured.sizes, times);
    const bool pair = part.mirror && measured.twin && measured.count == 2;
    run(measured.sizes, pair ? 1 : measured.count);
    if (pair) run(*measured.twin, 1);
}

void addTrims(TrimList &list, const FormPart &part, const PartMeasured &measured) {
    for (const auto &[edge, trim] : part.trims) {
        const bool pair = part.mirror && measured.twin && measured.count == 2;
        const Length length = pair ? sideOfBlock(part, measured.sizes, edge) + sideOfBlock(part, *measured.twin, edge)
                                   : sideOfBlock(part, measured.sizes, edge) * measured.count;
        switch (trim) {
        case EdgeTrim::Gimp:
            list.gimp += length;
            break;
        case EdgeTrim::DoubleWelt:
            list.doubleWelt += length;
            break;
        case EdgeTrim::Cord:
            list.cord += length;
            break;
        case EdgeTrim::Nails:
            list.nails += length;
            break;
        }
    }
}

} // namespace

TrimList trimsOf(const PieceForm &form, const FormMeasures &measures, const TradeRules &rules) {
    TrimList list;
    for (const FormPart &part : form.parts) {
        const auto measured = measures.find(part.id);
        if (measured == measures.end() || !measured->second.there) continue;
        addWelt(list, part, measured->second, rules);
        addTrims(list, part, measured->second);
    }
    return list;
}

std::optional<Panel> weltPanel(Length need, Length stripWidth, Length usableWidth) {
    if (need <= Length{} || stripWidth <= Length{}) return std::nullopt;
    const auto strips = stripsFor(need, stripWidth, usableWidth, stripWidth);
    if (!strips) return std::nullopt;
    Panel panel;
    panel.id = "welt";
    panel.mark = "W";
    panel.name = phrase("Welt strips");
    panel.count = int(strips->strips);
    panel.shape = Rectangle{std::min(need, usableWidth), stripWidth};
    panel.run = Run::UpRoll;
    return panel;
}

} // namespace boltwright
