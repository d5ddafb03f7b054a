#include "core/trimmings/tufting.h"

#include "core/geometry/exact.h"
#include "core/trimmings/pi.h"

#include <cmath>

namespace boltwright {
namespace {

Length rootUp(Wide square) {
    const std::int64_t root = rootDown(square);
    return Length::ticks(Wide(root) * root < square ? root + 1 : root);
}

Length repeated(Length flat, Length step, Length over) {
    const std::int64_t whole = wholeTimes(flat, step);
    return over * whole + (flat - step * whole);
}

} // namespace

Length overOneTuft(Length spacing, Length depth) {
    // 2·√((s/2)² + d²) = √(s² + 4·d²)
    return rootUp(Wide(spacing.ticks()) * spacing.ticks() + Wide(4) * depth.ticks() * depth.ticks());
}

Length tuftedLength(Length flat, Length spacing, Length depth) {
    return repeated(flat, spacing, overOneTuft(spacing, depth));
}

Length overOneChannel(Length width, Length height) {
    if (height * 2 >= width) {
        const Length half = timesUp(width, {piFromAbove.numerator, 2 * piFromAbove.denominator});
        return half + height * 2 - width;
    }
    if (height == Length{}) return width;
    // Where it is not a whole fraction of a circle the arc needs the arctangent: 4·r·atan(2h/w), r = (w² + 4h²)/8h. The
    // result is an amount to order, rounded up by a tick beyond the library's error.
    const double w = double(width.ticks()), h = double(height.ticks());
    const double radius = (w * w + 4 * h * h) / (8 * h);
    return Length::ticks(std::int64_t(std::ceil(4 * radius * std::atan(2 * h / w) + 1e-3)));
}

Length channelledLength(Length flat, Length width, Length height) {
    return repeated(flat, width, overOneChannel(width, height));
}

} // namespace boltwright
