#pragma once

// For .cpp files of this folder only: our rings as Boost.Geometry polygons of doubles, whole ticks both ways.

#include "core/geometry/polygon.h"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

#include <cmath>

namespace boltwright::boost_adapt {

using Point = boost::geometry::model::d2::point_xy<double>;
using Polygon = boost::geometry::model::polygon<Point, false, false>; // counter-clockwise, open
using MultiPolygon = boost::geometry::model::multi_polygon<Polygon>;

inline Polygon toBoost(const ClothRing &ring) {
    Polygon out;
    for (ClothPoint p : ring) out.outer().emplace_back(double(p.x.ticks()), double(p.y.ticks()));
    return out;
}

/// Rounded to ticks; holes are left out.
inline ClothRing fromBoost(const Polygon &polygon) {
    ClothRing out;
    for (const Point &p : polygon.outer()) {
        const ClothPoint q{Length::ticks(std::llround(p.x())), Length::ticks(std::llround(p.y()))};
        if (out.empty() || out.back() != q) out.push_back(q);
    }
    while (out.size() > 1 && out.front() == out.back()) out.pop_back();
    return out;
}

} // namespace boltwright::boost_adapt
