#include "core/geometry/outside.h"

#include "core/geometry/boost_adapt.h"

namespace boltwright {

std::vector<ClothRing> outside(const ClothBox &box, const ClothRing &ring) {
    boost_adapt::MultiPolygon left;
    boost::geometry::difference(boost_adapt::toBoost(ringOf(box)), boost_adapt::toBoost(ring), left);
    std::vector<ClothRing> parts;
    for (const boost_adapt::Polygon &part : left) {
        ClothRing out = boost_adapt::fromBoost(part);
        if (out.size() >= 3 && twiceArea(out) > 0) parts.push_back(std::move(out));
    }
    return parts;
}

} // namespace boltwright
