#pragma once

#include "core/geometry/polygon.h"

#include <memory>
#include <vector>

namespace boltwright {

/// Boxes in a tree (Boost.Geometry's R-tree), so that those beside a place are found without asking all.
class BoxIndex {
public:
    explicit BoxIndex(const std::vector<ClothBox> &boxes);
    ~BoxIndex();
    BoxIndex(const BoxIndex &) = delete;
    BoxIndex &operator=(const BoxIndex &) = delete;

    /// Which of the boxes lie at most `gap` from this one both across and up, those that touch included; in their
    /// order.
    std::vector<int> near(const ClothBox &box, Length gap) const;

private:
    struct Tree;
    std::unique_ptr<const Tree> m_tree;
};

} // namespace boltwright
