#include "core/check/saying.h"

#include "core/measure/length_text.h"

#include <fmt/format.h>

#include <cmath>

namespace boltwright::judge {

namespace {

const std::string &calledBy(const Panel &panel) {
    return !panel.name.empty() ? panel.name : !panel.mark.empty() ? panel.mark : panel.id;
}

} // namespace

std::string nameOf(const Panel &panel, int copy) {
    if (panel.count == 1 && copy == 1) return calledBy(panel);
    return fmt::format("{} ({} of {})", calledBy(panel), copy, panel.count);
}

std::string nameOf(const Scene &scene, const Cut &cut) {
    const Panel *panel = scene.panel(cut.panel);
    const std::string name = panel ? nameOf(*panel, cut.copy) : fmt::format("'{}'", cut.panel);
    return cut.of > 1 ? fmt::format("{}, piece {} of {}", name, cut.piece, cut.of) : name;
}

std::string nameOf(const Cloth &cloth) { return cloth.name.empty() ? cloth.id : cloth.name; }

std::string sheetOf(const LaidCut &laid) {
    const std::string cloth = nameOf(*laid.cloth);
    return laid.remnant ? fmt::format("remnant {} of {}", laid.remnant->id, cloth) : cloth;
}

std::string edgeOf(const Panel &panel, std::size_t edge) {
    if (std::holds_alternative<PolygonShape>(panel.shape)) return fmt::format("edge {}", edge);
    constexpr const char *names[] = {"bottom", "right", "top", "left"};
    return fmt::format("the {} edge", edge < 4 ? names[edge] : "missing");
}

std::string amount(const Scene &scene, Length length) {
    const Unit unit = scene.job.unit;
    // The smallest figure that is spoken: 1/16 in, 0.1 cm, 1 mm.
    const Length least = Length::ticks(unit == Unit::Inch ? 508 : 320);
    if (length > Length{} && length < least) return "less than " + spokenWithUnit(least, unit);
    return spokenWithUnit(length, unit);
}

std::string amount(const Scene &scene, double ticks) { return amount(scene, Length::ticks(std::llround(ticks))); }

std::string turnedHow(Turn turn) {
    return turn == Turn::Deg0 ? "not turned" : fmt::format("turned by {} degrees", degrees(turn));
}

Finding about(Finding::Kind kind, const Scene &scene, const Cut &cut, const std::string &does) {
    return {kind, cut.panel, cut.copy, cut.piece, nameOf(scene, cut) + " " + does + "."};
}

Finding about(Finding::Kind kind, const Panel &panel, int copy, const std::string &does) {
    return {kind, panel.id, copy, 0, nameOf(panel, copy) + " " + does + "."};
}

} // namespace boltwright::judge
