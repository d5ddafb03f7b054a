#include "core/check/saying.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"

#include <cmath>

namespace boltwright::judge {

namespace {

const std::string &calledBy(const Panel &panel) {
    return !panel.name.empty() ? panel.name : !panel.mark.empty() ? panel.mark : panel.id;
}

} // namespace

std::string nameOf(const Panel &panel, int copy) {
    if (panel.count == 1 && copy == 1) return calledBy(panel);
    return phrase("%1 (%2 of %3)", {calledBy(panel), std::to_string(copy), std::to_string(panel.count)});
}

std::string nameOf(const Scene &scene, const Cut &cut) {
    const Panel *panel = scene.panel(cut.panel);
    const std::string name = panel ? nameOf(*panel, cut.copy) : phrase("'%1'", {cut.panel});
    return cut.of > 1 ? phrase("%1, piece %2 of %3", {name, std::to_string(cut.piece), std::to_string(cut.of)}) : name;
}

std::string nameOf(const Cloth &cloth) { return cloth.name.empty() ? cloth.id : cloth.name; }

std::string sheetOf(const LaidCut &laid) {
    const std::string cloth = nameOf(*laid.cloth);
    return laid.remnant ? phrase("remnant %1 of %2", {laid.remnant->id, cloth}) : cloth;
}

std::string edgeOf(const Panel &panel, std::size_t edge) {
    // Counted from 1, as a person counts corners; the file counts from 0.
    if (std::holds_alternative<PolygonShape>(panel.shape)) return phrase("edge %1", {std::to_string(edge + 1)});
    constexpr const char *names[] = {marked("bottom"), marked("right"), marked("top"), marked("left")};
    return phrase("the %1 edge", {phrase(std::string_view(edge < 4 ? names[edge] : marked("missing")))});
}

std::string amount(const Scene &scene, Length length) {
    const Unit unit = scene.job.unit;
    // The smallest figure that is spoken: 1/16 in, 0.1 cm, 1 mm.
    const Length least = Length::ticks(unit == Unit::Inch ? 508 : 320);
    if (length > Length{} && length < least) return phrase("less than %1", {localised(spokenWithUnit(least, unit))});
    return localised(spokenWithUnit(length, unit));
}

std::string amount(const Scene &scene, double ticks) { return amount(scene, Length::ticks(std::llround(ticks))); }

std::string turnedHow(Turn turn) {
    return turn == Turn::Deg0 ? phrase("not turned") : phrase("turned by %1 degrees", {std::to_string(degrees(turn))});
}

Finding about(Finding::Kind kind, const Scene &scene, const Cut &cut, const std::string &does) {
    return {kind, cut.panel, cut.copy, cut.piece, phrase("%1 %2.", {nameOf(scene, cut), does})};
}

Finding about(Finding::Kind kind, const Panel &panel, int copy, const std::string &does) {
    return {kind, panel.id, copy, 0, phrase("%1 %2.", {nameOf(panel, copy), does})};
}

} // namespace boltwright::judge
