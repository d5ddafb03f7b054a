#include "core/rules/photo_scale.h"

#include "core/base/language.h"
#include "core/geometry/shape_ops.h"
#include "core/measure/length_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace boltwright {

namespace {

constexpr double agreeing = 0.005;
constexpr double mostChange = 0.05;
constexpr double leastShare = 0.25; // of the long side
constexpr double leastSine = 0.5;   // 30 degrees between the two
constexpr double ticksPerMillimetre = 320;

struct Span {
    double x, y; ///< millimetres
    double length() const { return std::hypot(x, y); }
};

Span spanOf(const TapedLength &taped) {
    return {(taped.to.x - taped.from.x).toMillimetres(), (taped.to.y - taped.from.y).toMillimetres()};
}

Length scaled(Length length, double by) {
    return Length::ticks(std::llround(length.toMillimetres() * by * ticksPerMillimetre));
}

struct Scale {
    double across = 1, up = 1;
    void apply(ClothPoint &p) const { p = {scaled(p.x, across), scaled(p.y, up)}; }
    void apply(ClothRing &ring) const {
        for (ClothPoint &p : ring) apply(p);
    }
};

/// The scales squared solve two equations: x²·sx² + y²·sy² = taped², for either length.
std::optional<Scale> scaleOf(const std::array<TapedLength, 2> &taped) {
    const Span a = spanOf(taped[0]), b = spanOf(taped[1]);
    const double la = taped[0].taped.toMillimetres(), lb = taped[1].taped.toMillimetres();
    const double determinant = a.x * a.x * b.y * b.y - a.y * a.y * b.x * b.x;
    // Mirror images of each other, such as two diagonals, say the same twice: one scale for both then.
    if (std::abs(determinant) < 0.2 * std::pow(a.length() * b.length(), 2)) {
        const double first = la / a.length(), second = lb / b.length();
        if (std::abs(first - second) > 2 * agreeing) return std::nullopt;
        return Scale{(first + second) / 2, (first + second) / 2};
    }
    const double across = (la * la * b.y * b.y - lb * lb * a.y * a.y) / determinant;
    const double up = (lb * lb * a.x * a.x - la * la * b.x * b.x) / determinant;
    if (across <= 0 || up <= 0) return std::nullopt;
    return Scale{std::sqrt(across), std::sqrt(up)};
}

double longSide(const ClothRing &outline) {
    const ClothBox box = boxOf(outline);
    return std::max(box.width(), box.height()).toMillimetres();
}

} // namespace

bool isScaleTaped(const Remnant &remnant) {
    if (!remnant.photo) return true;
    const auto agrees = [](const TapedLength &t) {
        return std::abs(spanOf(t).length() - t.taped.toMillimetres()) <= agreeing * t.taped.toMillimetres();
    };
    return std::count_if(remnant.photo->taped.begin(), remnant.photo->taped.end(), agrees) >= 2;
}

std::optional<Fault> notTapedYet(const Job &job, const Layout &layout) {
    for (const Cut &cut : layout.cuts) {
        const Panel *panel = job.panel(cut.panel);
        if (!panel || !cut.on) continue;
        const Cloth &cloth = job.clothOf(cut);
        const Remnant *remnant = cloth.remnant(*cut.on);
        if (!remnant || isScaleTaped(*remnant)) continue;
        return Fault{phrase("remnant %1 was measured in a photograph only; tape two lengths on the cloth itself "
                            "first (Cloth, then Tape two lengths), before anything is cut by it",
                            {remnant->id})};
    }
    return std::nullopt;
}

Result<Remnant> scaledByTape(const Remnant &remnant, const std::array<TapedLength, 2> &taped) {
    const double needed = leastShare * longSide(remnant.outline);
    for (const TapedLength &t : taped) {
        if (t.taped <= Length{})
            return fault(phrase("a taped length is missing; measure it on the cloth and write it down"));
        if (spanOf(t).length() < needed)
            return fault(
                phrase("that is too short to tell the scale by; tape a length of at least a quarter of the cloth"));
    }
    const Span a = spanOf(taped[0]), b = spanOf(taped[1]);
    if (std::abs(a.x * b.y - a.y * b.x) < leastSine * a.length() * b.length())
        return fault(phrase("both lengths lie nearly the same way; tape one along the cloth and one across it"));
    const auto scale = scaleOf(taped);
    if (!scale)
        return fault(
            phrase("the two lengths contradict each other; measure both again, or click the corners of the known "
                   "rectangle again"));
    const double change = std::max(std::abs(scale->across - 1), std::abs(scale->up - 1));
    if (change > mostChange)
        return fault(phrase("the photograph is %1 % off, more than a tape can put right; measure both lengths "
                            "again, or click the corners of the known rectangle again",
                            {numeral(fmt::format("{:.0f}", change * 100))}));
    Remnant right = remnant;
    scale->apply(right.outline);
    for (Flaw &flaw : right.flaws) scale->apply(flaw.outline);
    if (right.motif) scale->apply(*right.motif);
    if (right.photo) {
        scale->apply(right.photo->at);
        right.photo->taped.assign(taped.begin(), taped.end());
        for (TapedLength &t : right.photo->taped) {
            scale->apply(t.from);
            scale->apply(t.to);
        }
    }
    return right;
}

} // namespace boltwright
