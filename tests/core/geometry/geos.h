#pragma once

// The outside judge of our geometry: GEOS (libgeos.org), by its C interface, in doubles of ticks.

#include "core/geometry/polygon.h"

#include <geos_c.h>

#include <memory>
#include <vector>

namespace boltwright::geos {

inline void start() {
    static const bool once = (initGEOS(nullptr, nullptr), true);
    (void)once;
}

struct Free {
    void operator()(GEOSGeometry *g) const { GEOSGeom_destroy(g); }
};
using Shape = std::unique_ptr<GEOSGeometry, Free>;

template <class Frame>
Shape shape(const RingIn<Frame> &ring) {
    start();
    GEOSCoordSequence *points = GEOSCoordSeq_create(unsigned(ring.size() + 1), 2);
    for (unsigned i = 0; i <= ring.size(); ++i) {
        GEOSCoordSeq_setX(points, i, double(ring[i % ring.size()].x.ticks()));
        GEOSCoordSeq_setY(points, i, double(ring[i % ring.size()].y.ticks()));
    }
    return Shape(GEOSGeom_createPolygon(GEOSGeom_createLinearRing(points), nullptr, 0));
}

inline Shape both(const Shape &a, const Shape &b) { return Shape(GEOSIntersection(a.get(), b.get())); }
inline Shape without(const Shape &a, const Shape &b) { return Shape(GEOSDifference(a.get(), b.get())); }
inline Shape joined(const Shape &a, const Shape &b) { return Shape(GEOSUnion(a.get(), b.get())); }

/// Moved outwards (or inwards, negative), corners as arcs of 90 points a quarter.
inline Shape buffered(const Shape &a, double by) { return Shape(GEOSBuffer(a.get(), by, 90)); }

/// Moved outwards with mitred corners of any reach.
inline Shape mitred(const Shape &a, double by) {
    return Shape(GEOSBufferWithStyle(a.get(), by, 8, GEOSBUF_CAP_ROUND, GEOSBUF_JOIN_MITRE, 1e9));
}

inline Shape unionOf(const std::vector<ClothRing> &rings) {
    start();
    Shape sum(GEOSGeom_createEmptyPolygon());
    for (const ClothRing &ring : rings) sum = joined(sum, shape(ring));
    return sum;
}

inline double area(const Shape &a) {
    double out = 0;
    GEOSArea(a.get(), &out);
    return out;
}
inline double distance(const Shape &a, const Shape &b) {
    double out = 0;
    GEOSDistance(a.get(), b.get(), &out);
    return out;
}
inline bool valid(const Shape &a) { return GEOSisValid(a.get()) == 1; }
inline bool covers(const Shape &a, const Shape &b) { return GEOSCovers(a.get(), b.get()) == 1; }

} // namespace boltwright::geos
