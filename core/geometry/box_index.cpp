#include "core/geometry/box_index.h"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/index/rtree.hpp>

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <utility>

namespace boltwright {
namespace {

using Point = boost::geometry::model::d2::point_xy<std::int64_t>;
using Box = boost::geometry::model::box<Point>;
using Entry = std::pair<Box, int>;

Box toBoost(const ClothBox &box, Length wider = {}) {
    return {{(box.low.x - wider).ticks(), (box.low.y - wider).ticks()},
            {(box.high.x + wider).ticks(), (box.high.y + wider).ticks()}};
}

std::vector<Entry> entries(const std::vector<ClothBox> &boxes) {
    std::vector<Entry> out;
    out.reserve(boxes.size());
    for (int i = 0; i < int(boxes.size()); ++i) out.emplace_back(toBoost(boxes[std::size_t(i)]), i);
    return out;
}

} // namespace

struct BoxIndex::Tree {
    boost::geometry::index::rtree<Entry, boost::geometry::index::quadratic<16>> boxes;
};

BoxIndex::BoxIndex(const std::vector<ClothBox> &boxes)
    : m_tree(std::make_unique<const Tree>(Tree{decltype(Tree::boxes)(entries(boxes))})) {}
BoxIndex::~BoxIndex() = default;

std::vector<int> BoxIndex::near(const ClothBox &box, Length gap) const {
    std::vector<int> found;
    for (auto it = m_tree->boxes.qbegin(boost::geometry::index::intersects(toBoost(box, gap)));
         it != m_tree->boxes.qend(); ++it)
        found.push_back(it->second);
    std::sort(found.begin(), found.end());
    return found;
}

} // namespace boltwright
