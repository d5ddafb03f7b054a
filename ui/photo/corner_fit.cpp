#include "ui/photo/corner_fit.h"

#include <QLineF>

#include <algorithm>
#include <cmath>
#include <vector>

namespace boltwright::ui {

namespace {

constexpr double fineness = 0.5;      // pixels from sample to sample across an edge
constexpr double leastStep = 10;      // shades of 256 by which a sheet must stand out from what it lies on
constexpr double near = 0.75;         // pixels from the line within which a sample belongs to it
constexpr double share = 0.5;         // of all samples that must belong to it
constexpr int mostSamples = 160;      // along one edge
constexpr double farthestAlong = 600; // pixels: a lens bends what is longer

/// How light the picture is at a place, between its pixels; outside of it as at its edge.
double lightAt(const QImage &picture, QPointF p) {
    const double x = std::clamp(p.x() - 0.5, 0.0, picture.width() - 1.0),
                 y = std::clamp(p.y() - 0.5, 0.0, picture.height() - 1.0);
    const int x0 = int(x), y0 = int(y), x1 = std::min(x0 + 1, picture.width() - 1),
              y1 = std::min(y0 + 1, picture.height() - 1);
    const double right = x - x0, down = y - y0;
    const auto light = [&](int i, int j) { return double(qGray(picture.pixel(i, j))); };
    return (light(x0, y0) * (1 - right) + light(x1, y0) * right) * (1 - down) +
           (light(x0, y1) * (1 - right) + light(x1, y1) * right) * down;
}

struct Sample {
    double along, off; ///< pixels along the side that was clicked, and from it to the edge
    double step;       ///< shades
};

/// Where along a line across the side the light changes most, in the way that `sign` says; none: nowhere clearly. What
/// is nearer to the middle, where the click was, counts for more: a stripe of the cloth may be darker than paper is
/// white, but it is farther off.
struct Edge {
    double index, step; ///< step: shades
};
std::optional<Edge> edgeAcross(const std::vector<double> &light, double sign) {
    const int count = int(light.size());
    std::vector<double> change(std::size_t(count), 0.0);
    for (int i = 2; i + 2 < count; ++i)
        change[std::size_t(i)] = std::max(0.0, sign * (light[std::size_t(i + 2)] + light[std::size_t(i + 1)] -
                                                       light[std::size_t(i - 1)] - light[std::size_t(i - 2)]));
    const double middle = (count - 1) / 2.0, wide = 0.3 * count;
    const auto counted = [&](int i) {
        const double off = (i - middle) / wide;
        return change[std::size_t(i)] * std::exp(-off * off / 2);
    };
    int best = 0;
    for (int i = 1; i < count; ++i)
        if (counted(i) > counted(best)) best = i;
    // The step from well before to well behind; each of the two differences spans three or less samples.
    constexpr int around = 5;
    double sum = 0, moment = 0;
    for (int i = std::max(0, best - around); i <= std::min(count - 1, best + around); ++i) {
        sum += change[std::size_t(i)];
        moment += change[std::size_t(i)] * i;
    }
    const int before = std::max(0, best - 4), behind = std::min(count - 1, best + 4);
    const double step = sign * (light[std::size_t(behind)] - light[std::size_t(before)]);
    if (step < leastStep || sum <= 0) return std::nullopt;
    return Edge{moment / sum, step};
}

struct Line {
    double at0, slope; ///< off = at0 + slope * along
    double offOf(const Sample &s) const { return s.off - at0 - slope * s.along; }
};

std::optional<Line> through(const std::vector<Sample> &samples) {
    double n = 0, x = 0, y = 0, xx = 0, xy = 0;
    for (const Sample &s : samples) {
        n += 1;
        x += s.along;
        y += s.off;
        xx += s.along * s.along;
        xy += s.along * s.off;
    }
    const double det = n * xx - x * x;
    if (n < 2 || det <= 0) return std::nullopt;
    const double slope = (n * xy - x * y) / det;
    return Line{(y - slope * x) / n, slope};
}

/// The line that most samples agree on, whatever the others say: pairs of samples are tried, and the best pair's
/// followers have the last word (Fischler and Bolles, "Random sample consensus", 1981, with the pairs in order in place
/// of random ones; from memory).
struct Agreed {
    Line line;
    double strength; ///< shades of all that agree
};
std::optional<Agreed> agreedLine(const std::vector<Sample> &samples, int tried) {
    const auto followers = [&](const Line &line) {
        std::vector<Sample> all;
        for (const Sample &s : samples)
            if (std::abs(line.offOf(s)) <= near) all.push_back(s);
        return all;
    };
    std::vector<Sample> best;
    const std::size_t step = std::max<std::size_t>(1, samples.size() / 16);
    for (std::size_t i = 0; i < samples.size(); i += step)
        for (std::size_t j = i + step; j < samples.size(); j += step)
            if (const auto line = through({samples[i], samples[j]}))
                if (auto all = followers(*line); all.size() > best.size()) best = std::move(all);
    if (double(best.size()) < share * tried || best.size() < 12) return std::nullopt;
    auto line = through(best);
    for (int again = 0; again < 3 && line; ++again) line = through(followers(*line));
    if (!line) return std::nullopt;
    Agreed agreed{*line, 0};
    for (const Sample &s : followers(*line)) agreed.strength += s.step;
    return agreed;
}

/// The sheet's edge on the half of the side from `corner` to `next` that is nearer to `corner`. `signs`: whether it
/// gets lighter (1) or darker (-1) to the right of that way, as seen on the screen.
std::optional<QLineF> edgeBeside(const QImage &picture, QPointF corner, QPointF next, double reach,
                                 const std::vector<double> &signs) {
    const QLineF side(corner, next);
    const double length = side.length();
    if (length < 40) return std::nullopt;
    const QPointF along = (next - corner) / length, across(-along.y(), along.x());
    const double from = reach + 2, to = std::min(length / 2, farthestAlong);
    const int count = std::min(mostSamples, int((to - from) / 1.5));
    if (count < 16) return std::nullopt;
    std::optional<Line> found;
    double most = 0;
    for (const double sign : signs) {
        std::vector<Sample> samples;
        for (int i = 0; i < count; ++i) {
            const double at = from + (to - from) * i / (count - 1);
            std::vector<double> light;
            // Three lines beside each other, so that the grain of a photograph tells less than its edges.
            for (double off = -reach - 3; off <= reach + 3; off += fineness) {
                const QPointF p = corner + along * at + across * off;
                light.push_back((lightAt(picture, p - along) + lightAt(picture, p) + lightAt(picture, p + along)) / 3);
            }
            if (const auto edge = edgeAcross(light, sign))
                samples.push_back({at, -reach - 3 + edge->index * fineness, edge->step});
        }
        const auto agreed = agreedLine(samples, count);
        if (!agreed || agreed->strength <= most) continue;
        most = agreed->strength;
        found = agreed->line;
    }
    if (!found) return std::nullopt;
    const auto point = [&](double at) { return corner + along * at + across * (found->at0 + found->slope * at); };
    return QLineF(point(0), point(to));
}

} // namespace

std::array<std::optional<QPointF>, 4> cornersOnEdges(const QImage &picture, const QPolygonF &clicked, double reach,
                                                     SheetShade shade) {
    std::array<std::optional<QPointF>, 4> found;
    if (clicked.size() != 4 || picture.isNull()) return found;
    double area = 0;
    for (int i = 0; i < 4; ++i) {
        const QPointF a = clicked[i], b = clicked[(i + 1) % 4];
        area += a.x() * b.y() - a.y() * b.x();
    }
    // Clockwise as seen on the screen, the sheet lies to the right of its sides.
    const double inside = area > 0 ? 1 : -1;
    const auto signs = [&](double right) {
        return shade == SheetShade::Lighter ? std::vector{right} : std::vector{1.0, -1.0};
    };
    for (int i = 0; i < 4; ++i) {
        const auto one = edgeBeside(picture, clicked[i], clicked[(i + 1) % 4], reach, signs(inside)),
                   other = edgeBeside(picture, clicked[i], clicked[(i + 3) % 4], reach, signs(-inside));
        QPointF corner;
        if (!one || !other || one->intersects(*other, &corner) == QLineF::NoIntersection) continue;
        // Lines that nearly run into each other cross anywhere.
        const double angle = std::fmod(one->angleTo(*other), 180);
        if (angle < 20 || angle > 160) continue;
        if (QLineF(corner, clicked[i]).length() <= reach) found[std::size_t(i)] = corner;
    }
    return found;
}

} // namespace boltwright::ui
