#pragma once

#include "core/measure/length.h"

namespace boltwright {

/// The cloth face up on the table: x across the width from the left selvage, y up the roll from the cut end.
struct ClothFrame {};
/// The panel as seen facing it on the furniture: x (u) left to right, y (v) bottom to top.
struct PanelFrame {};

/// A displacement, the same in every frame that is not turned.
struct Vector {
    Length x, y;
    friend constexpr Vector operator+(Vector a, Vector b) { return {a.x + b.x, a.y + b.y}; }
    friend constexpr Vector operator-(Vector a, Vector b) { return {a.x - b.x, a.y - b.y}; }
    friend constexpr Vector operator-(Vector a) { return {-a.x, -a.y}; }
    friend constexpr bool operator==(const Vector &, const Vector &) = default;
    friend constexpr auto operator<=>(const Vector &, const Vector &) = default;
};

/// A point in one frame. Points of different frames do not mix: a turn and a place lie between them.
template <class Frame>
struct PointIn {
    Length x, y;
    friend constexpr PointIn operator+(PointIn p, Vector v) { return {p.x + v.x, p.y + v.y}; }
    friend constexpr PointIn operator-(PointIn p, Vector v) { return {p.x - v.x, p.y - v.y}; }
    friend constexpr Vector operator-(PointIn a, PointIn b) { return {a.x - b.x, a.y - b.y}; }
    friend constexpr bool operator==(const PointIn &, const PointIn &) = default;
    friend constexpr auto operator<=>(const PointIn &, const PointIn &) = default;
};

using ClothPoint = PointIn<ClothFrame>;
using PanelPoint = PointIn<PanelFrame>;

/// The z part of the cross product: twice the signed area of the triangle 0, a, b.
constexpr Area cross(Vector a, Vector b) { return a.x * b.y - a.y * b.x; }
constexpr Area dot(Vector a, Vector b) { return a.x * b.x + a.y * b.y; }

} // namespace boltwright
