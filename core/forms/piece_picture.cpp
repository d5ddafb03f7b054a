#include "core/forms/piece_picture.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace boltwright {
namespace {

// A picture only: floating point decides nothing here.
struct Spot {
    double x = 0, y = 0;
};
struct Place {
    double x = 0, y = 0, z = 0;
};

constexpr double unit = 10; ///< picture units an inch

std::string points(const std::vector<Spot> &line) {
    std::string out;
    for (const Spot &p : line) out += fmt::format("{:.1f},{:.1f} ", p.x, p.y);
    if (!out.empty()) out.pop_back();
    return out;
}

/// Where the hand may end up: the box of all that was drawn.
class Drawing {
public:
    void polygon(const std::vector<Spot> &corners, const std::string &fill, const std::string &stroke, double width,
                 const std::string &more = {}) {
        for (const Spot &p : corners) meet(p);
        m_text += fmt::format("<polygon points=\"{}\" fill=\"{}\" stroke=\"{}\" stroke-width=\"{:.1f}\" "
                              "stroke-linejoin=\"round\"{}/>\n",
                              points(corners), fill, stroke, width, more);
    }

    void arrow(const std::vector<Spot> &line, int number, bool strong, const PictureInks &inks) {
        if (line.size() < 2) return;
        const std::string &colour = strong ? inks.accent : inks.quiet;
        const double width = strong ? 5 : 2.4;
        m_text += fmt::format("<polyline points=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{:.1f}\" "
                              "stroke-linejoin=\"round\"/>\n",
                              points(line), colour, width);
        head(line[1], line[0], colour, strong);
        head(line[line.size() - 2], line.back(), colour, strong);
        const Spot at = halfway(line);
        const double radius = strong ? 15 : 12;
        m_text += fmt::format("<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"{:.1f}\" fill=\"{}\" stroke=\"{}\" "
                              "stroke-width=\"2\"/>\n",
                              at.x, at.y, radius, strong ? inks.accent : inks.paper, colour);
        words(fmt::format("{}", number), {at.x, at.y + radius * 0.42}, radius * 1.25,
              strong ? inks.onAccent : inks.quiet, true);
        for (const Spot &p : line) meet(p, 22);
    }

    void words(const std::string &text, Spot middle, double size, const std::string &colour, bool bold,
               double turned = 0) {
        const std::string turn =
            turned == 0 ? "" : fmt::format(" transform=\"rotate({:.0f} {:.1f} {:.1f})\"", turned, middle.x, middle.y);
        m_text += fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" font-family=\"sans-serif\" font-size=\"{:.1f}\" "
                              "text-anchor=\"middle\" fill=\"{}\"{}{}>{}</text>\n",
                              middle.x, middle.y, size, colour, bold ? " font-weight=\"bold\"" : "", turn, text);
        const double half = double(text.size()) * size * 0.3;
        meet({middle.x - (turned == 0 ? half : size), middle.y - (turned == 0 ? size : half)});
        meet({middle.x + (turned == 0 ? half : size), middle.y + (turned == 0 ? size * 0.4 : half)});
    }

    std::string svg() const {
        const double rim = 14;
        return fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{:.0f} {:.0f} {:.0f} {:.0f}\">\n{}"
                           "</svg>\n",
                           m_low.x - rim, m_low.y - rim, m_high.x - m_low.x + 2 * rim, m_high.y - m_low.y + 2 * rim,
                           m_text);
    }

private:
    void meet(Spot p, double around = 0) {
        m_low = {std::min(m_low.x, p.x - around), std::min(m_low.y, p.y - around)};
        m_high = {std::max(m_high.x, p.x + around), std::max(m_high.y, p.y + around)};
    }

    void head(Spot from, Spot tip, const std::string &colour, bool strong) {
        const double dx = tip.x - from.x, dy = tip.y - from.y, size = std::hypot(dx, dy);
        if (size < 1) return;
        const double length = strong ? 20 : 14, half = length * 0.42, ux = dx / size, uy = dy / size;
        const Spot foot{tip.x - ux * length, tip.y - uy * length};
        m_text += fmt::format(
            "<polygon points=\"{}\" fill=\"{}\"/>\n",
            points({tip, {foot.x - uy * half, foot.y + ux * half}, {foot.x + uy * half, foot.y - ux * half}}), colour);
    }

    static Spot halfway(const std::vector<Spot> &line) {
        double all = 0;
        for (std::size_t i = 1; i < line.size(); ++i)
            all += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
        double left = all / 2;
        for (std::size_t i = 1; i < line.size(); ++i) {
            const double piece = std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
            if (piece > 0 && left <= piece)
                return {line[i - 1].x + (line[i].x - line[i - 1].x) * left / piece,
                        line[i - 1].y + (line[i].y - line[i - 1].y) * left / piece};
            left -= piece;
        }
        return line.back();
    }

    std::string m_text;
    Spot m_low{1e9, 1e9}, m_high{-1e9, -1e9};
};

/// Looks down on the piece from the front and the left, or from behind and the right.
struct Eye {
    bool behind = false;
    // Towards the eye on the floor: (-1, -2) from the front; so far above it as makes tops look wide enough.
    double towardsX() const { return behind ? 1 : -1; }
    double towardsY() const { return behind ? 2 : -2; }

    Spot seen(Place p) const {
        const double root = std::sqrt(5.0), cosine = (behind ? -2 : 2) / root, sine = (behind ? -1 : 1) / root;
        constexpr double flat = 0.42, upright = 0.91; // about 25 degrees above the floor
        const double across = p.x * cosine - p.y * sine, away = p.x * sine + p.y * cosine;
        return {across * unit, -(p.z * upright + away * flat) * unit};
    }
    /// A side from a to b of a foot that runs counter-clockwise looks to its right.
    bool sees(const std::array<int, 2> &a, const std::array<int, 2> &b) const {
        return (b[1] - a[1]) * towardsX() - (b[0] - a[0]) * towardsY() > 0;
    }
};

/// One face of a block: a side by its number, or the top (-1).
struct Face {
    const DrawnBlock *block = nullptr;
    int side = -1;
    bool isTop() const { return side < 0; }
    const std::string &part() const { return isTop() ? block->top : block->sides[std::size_t(side)]; }
    std::array<int, 2> from() const { return block->foot[std::size_t(side)]; }
    std::array<int, 2> to() const { return block->foot[(std::size_t(side) + 1) % block->foot.size()]; }

    std::vector<Place> corners() const {
        const double low = block->low, high = block->high;
        std::vector<Place> out;
        if (isTop()) {
            for (const auto &p : block->foot) out.push_back({double(p[0]), double(p[1]), high});
        } else {
            const double ax = from()[0], ay = from()[1], bx = to()[0], by = to()[1];
            out = {{ax, ay, low}, {bx, by, low}, {bx, by, high}, {ax, ay, high}};
        }
        return out;
    }
};

std::vector<Spot> seenLine(const Eye &eye, const std::vector<Place> &line) {
    std::vector<Spot> out;
    out.reserve(line.size());
    for (const Place &p : line) out.push_back(eye.seen(p));
    return out;
}

double areaOf(const std::vector<Spot> &ring) {
    double twice = 0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Spot &a = ring[i], &b = ring[(i + 1) % ring.size()];
        twice += a.x * b.y - a.y * b.x;
    }
    return std::abs(twice) / 2;
}

struct Span {
    int least = 0, most = 0;
};
template <class Value>
Span spanOf(const DrawnBlock &block, Value value) {
    Span span{value(block.foot[0]), value(block.foot[0])};
    for (const auto &p : block.foot) {
        span.least = std::min(span.least, value(p));
        span.most = std::max(span.most, value(p));
    }
    return span;
}

/// Whether a has to be drawn before b: it lies under it or behind it.
bool isBehind(const DrawnBlock &a, const DrawnBlock &b, const Eye &eye) {
    if (a.high <= b.low) return true;
    if (b.high <= a.low) return false;
    for (const DrawnBlock *edges : {&a, &b})
        for (std::size_t i = 0; i < edges->foot.size(); ++i) {
            const auto &from = edges->foot[i], &to = edges->foot[(i + 1) % edges->foot.size()];
            const int nx = to[1] - from[1], ny = from[0] - to[0];
            const auto along = [&](const std::array<int, 2> &p) { return nx * p[0] + ny * p[1]; };
            const Span sa = spanOf(a, along), sb = spanOf(b, along);
            const double towards = nx * eye.towardsX() + ny * eye.towardsY();
            if (sa.most <= sb.least && towards != 0) return towards > 0;
            if (sb.most <= sa.least && towards != 0) return towards < 0;
        }
    return &a < &b;
}

class Picture {
public:
    Picture(const PieceForm &form, const PieceView &view) : m_form(form), m_view(view) {
        m_part = form.part(view.lit);
        for (const DrawnBlock &block : form.drawing)
            if (isThere(block)) m_blocks.push_back(&block);
        m_eye.behind = false;
        if (m_part && !main().block) {
            m_eye.behind = true;
            if (!main().block) m_eye.behind = false;
        }
        liftOff();
    }

    const Eye &eye() const { return m_eye; }

    std::string svg(const PictureInks &inks) {
        for (const DrawnBlock *block : inOrder()) draw(*block, inks);
        if (m_part) arrows(inks);
        return m_drawing.svg();
    }

private:
    /// Bare frame is always there; what is covered only with one of its parts.
    bool isThere(const DrawnBlock &block) const {
        const auto named = block.parts();
        return named.empty() ||
               std::any_of(named.begin(), named.end(), [&](const std::string &p) { return m_view.there.contains(p); });
    }

    /// What hides most of the lit part's top is not drawn.
    void liftOff() {
        if (!m_part) return;
        const Face face = main();
        if (!face.block || !face.isTop()) return;
        const auto x = [](const auto &p) { return p[0]; };
        const auto y = [](const auto &p) { return p[1]; };
        const auto overlap = [](Span a, Span b) { return std::min(a.most, b.most) - std::max(a.least, b.least); };
        const DrawnBlock &lit = *face.block;
        std::erase_if(m_blocks, [&](const DrawnBlock *block) {
            if (block == &lit || block->low != lit.high) return false;
            const int across = overlap(spanOf(*block, x), spanOf(lit, x)),
                      deep = overlap(spanOf(*block, y), spanOf(lit, y));
            if (across <= 0 || deep <= 0) return false;
            const Span lx = spanOf(lit, x), ly = spanOf(lit, y);
            // Several cushions share a deck.
            return deep * 2 > ly.most - ly.least || across * 2 > lx.most - lx.least;
        });
    }

    std::vector<Face> facesSeen(const DrawnBlock &block) const {
        std::vector<Face> faces;
        for (int i = 0; i < int(block.foot.size()); ++i) {
            const Face face{&block, i};
            if (m_eye.sees(face.from(), face.to())) faces.push_back(face);
        }
        faces.push_back({&block, -1});
        return faces;
    }

    /// The lit part's largest face that is seen; without a block: none is.
    Face main() const {
        Face best;
        double largest = 0;
        for (const DrawnBlock *block : m_blocks)
            for (const Face &face : facesSeen(*block)) {
                if (face.part() != m_view.lit) continue;
                const double area = areaOf(seenLine(m_eye, face.corners()));
                if (area > largest * 1.001) best = face, largest = area;
            }
        return best;
    }

    std::vector<const DrawnBlock *> inOrder() const {
        std::vector<const DrawnBlock *> left = m_blocks, out;
        while (!left.empty()) {
            auto next = std::find_if(left.begin(), left.end(), [&](const DrawnBlock *b) {
                return std::none_of(left.begin(), left.end(),
                                    [&](const DrawnBlock *a) { return a != b && isBehind(*a, *b, m_eye); });
            });
            if (next == left.end()) next = left.begin();
            out.push_back(*next);
            left.erase(next);
        }
        return out;
    }

    void draw(const DrawnBlock &block, const PictureInks &inks) {
        for (const Face &face : facesSeen(block)) {
            const bool covered = !face.part().empty() && m_view.there.contains(face.part());
            const bool lit = covered && face.part() == m_view.lit;
            const auto ring = seenLine(m_eye, face.corners());
            m_drawing.polygon(ring, covered || !face.part().empty() ? inks.cloth : inks.frame, inks.ink, 1.6);
            // Shade by where the face looks: tops light, fronts less, sides least.
            const bool front =
                !face.isTop() && std::abs(face.to()[0] - face.from()[0]) > std::abs(face.to()[1] - face.from()[1]);
            const double shade = face.isTop() ? 0 : front ? 0.06 : 0.14;
            if (shade > 0) m_drawing.polygon(ring, inks.ink, "none", 0, fmt::format(" fill-opacity=\"{:.2f}\"", shade));
            if (lit) m_drawing.polygon(ring, inks.accent, inks.accent, 3, " fill-opacity=\"0.32\"");
        }
    }

    // Arrows

    void arrows(const PictureInks &inks) {
        const Face face = main();
        if (!face.block) return;
        // The one that is being taken is drawn last, on top.
        for (const bool strong : {false, true}) {
            int number = 0;
            for (const PartMeasure &p : m_part->measures) {
                ++number;
                if (strong == (!m_view.measure || *m_view.measure == p.measure))
                    m_drawing.arrow(seenLine(m_eye, lineOf(p.measure, face)), number, strong, inks);
            }
        }
    }

    std::vector<Place> lineOf(Measure measure, const Face &face) const {
        switch (measure) {
        case Measure::Up:
            return face.isTop() ? overTop(*face.block, false, 0.7) : upSide(face);
        case Measure::Across:
            if (isSkirt(m_part->kind)) return alongSide(sideLooking(true, face));
            if (!face.isTop()) {
                const auto chain = round();
                return chain.empty() ? alongSide(face) : chain;
            }
            return overTop(*face.block, true, m_part->kind == PartKind::Trapezoid ? 0.14 : 0.4);
        case Measure::Top:
            return face.isTop() ? overTop(*face.block, true, 0.86) : alongSide(face, 0.86);
        case Measure::Thickness:
            return thickness(face);
        case Measure::Side:
            return alongSide(sideLooking(false, face));
        }
        return {};
    }

    /// Through a top, side to side or front to back, at that share of its other measure.
    static std::vector<Place> overTop(const DrawnBlock &block, bool across, double share) {
        const bool square =
            block.foot.size() == 4 && (block.foot[0][0] == block.foot[1][0] || block.foot[0][1] == block.foot[1][1]);
        if (!square) share = 0.5;
        const std::size_t run = across ? 0 : 1, other = 1 - run;
        const Span span = spanOf(block, [&](const auto &p) { return p[other]; });
        const double level = span.least + (span.most - span.least) * share;
        double least = 1e9, most = -1e9;
        for (std::size_t i = 0; i < block.foot.size(); ++i) {
            const auto &a = block.foot[i], &b = block.foot[(i + 1) % block.foot.size()];
            const double al = a[other], bl = b[other];
            if ((al < level && bl < level) || (al > level && bl > level)) continue;
            for (double t : al == bl ? std::vector<double>{0, 1} : std::vector<double>{(level - al) / (bl - al)}) {
                const double at = a[run] + (b[run] - a[run]) * t;
                least = std::min(least, at), most = std::max(most, at);
            }
        }
        const auto place = [&](double at) {
            return across ? Place{at, level, double(block.high)} : Place{level, at, double(block.high)};
        };
        return {place(least), place(most)};
    }

    /// Up a side; over the top as well where the same part goes on there.
    std::vector<Place> upSide(const Face &face) const {
        const double share = 0.7, low = face.block->low, high = face.block->high;
        const double x = face.from()[0] + (face.to()[0] - face.from()[0]) * share,
                     y = face.from()[1] + (face.to()[1] - face.from()[1]) * share;
        std::vector<Place> line = {{x, y, low}, {x, y, high}};
        const bool cushion = m_part->kind == PartKind::BoxCushion || m_part->kind == PartKind::KnifeEdge;
        if (face.block->top == m_view.lit && !cushion) {
            // Straight on, to the far side of the top.
            const bool along = face.from()[0] == face.to()[0];
            const auto across = overTop(*face.block, along, share);
            const Place far = std::abs(across[0].x - x) + std::abs(across[0].y - y) >
                                      std::abs(across[1].x - x) + std::abs(across[1].y - y)
                                  ? across[0]
                                  : across[1];
            line.push_back(along ? Place{far.x, y, high} : Place{x, far.y, high});
        }
        return line;
    }

    static std::vector<Place> alongSide(const Face &face, double share = 0.38) {
        if (!face.block || face.isTop()) return {};
        const double z = face.block->low + (face.block->high - face.block->low) * share;
        return {{double(face.from()[0]), double(face.from()[1]), z}, {double(face.to()[0]), double(face.to()[1]), z}};
    }

    /// Round a part that covers several sides, one after the other, as the back of a tub chair.
    std::vector<Place> round() const {
        if (m_part->kind != PartKind::Rectangle) return {};
        std::vector<Face> faces;
        for (const DrawnBlock *block : m_blocks)
            for (int i = 0; i < int(block->foot.size()); ++i)
                if (block->sides[std::size_t(i)] == m_view.lit) faces.push_back({block, i});
        if (faces.size() < 3) return {};
        // Begin with the one that nothing leads to.
        const auto begin = std::find_if(faces.begin(), faces.end(), [&](const Face &f) {
            return std::none_of(faces.begin(), faces.end(), [&](const Face &g) { return g.to() == f.from(); });
        });
        if (begin == faces.end()) return {};
        std::vector<Place> line;
        const double z = begin->block->low + (begin->block->high - begin->block->low) * 0.62;
        const auto add = [&](std::array<int, 2> p) { line.push_back({double(p[0]), double(p[1]), z}); };
        add(begin->from());
        for (auto at = begin; at != faces.end() && line.size() <= faces.size();) {
            add(at->to());
            const auto end = at->to();
            at = std::find_if(faces.begin(), faces.end(), [&](const Face &f) { return f.from() == end; });
        }
        return line.size() > 3 ? line : std::vector<Place>{};
    }

    /// The lit part's side that is seen and runs side to side, or front to back.
    Face sideLooking(bool across, const Face &otherwise) const {
        Face best = otherwise;
        for (const DrawnBlock *block : m_blocks)
            for (const Face &face : facesSeen(*block))
                if (!face.isTop() && face.part() == m_view.lit && (face.from()[1] == face.to()[1]) == across)
                    best = face;
        return best;
    }

    std::vector<Place> thickness(const Face &face) const {
        if (!face.isTop()) {
            // Of an upright cushion: over its top, away from the face.
            const bool along = face.from()[0] == face.to()[0];
            return overTop(*face.block, along, 0.25);
        }
        for (const Face &side : facesSeen(*face.block))
            if (!side.isTop()) {
                const double x = side.from()[0] + (side.to()[0] - side.from()[0]) * 0.25,
                             y = side.from()[1] + (side.to()[1] - side.from()[1]) * 0.25;
                return {{x, y, double(face.block->low)}, {x, y, double(face.block->high)}};
            }
        return {};
    }

    const PieceForm &m_form;
    const PieceView &m_view;
    const FormPart *m_part = nullptr;
    std::vector<const DrawnBlock *> m_blocks;
    Eye m_eye;
    Drawing m_drawing;
};

} // namespace

bool seenFromBehind(const PieceForm &form, const PieceView &view) { return Picture(form, view).eye().behind; }

bool isDrawn(const PieceForm &form, const std::string &part) {
    return std::any_of(form.drawing.begin(), form.drawing.end(), [&](const DrawnBlock &block) {
        const auto named = block.parts();
        return std::find(named.begin(), named.end(), part) != named.end();
    });
}

std::string pieceSvg(const PieceForm &form, const PieceView &view, const PictureInks &inks) {
    return Picture(form, view).svg(inks);
}

namespace {

/// The flat part in picture units, u to the right and v upwards.
class FlatPart {
public:
    FlatPart(const FormPart &part, const Sizes &sizes, const TradeRules &rules) : m_part(part), m_rules(rules) {
        m_across = sizes[Measure::Across].toMillimetres();
        m_up = sizes[Measure::Up].toMillimetres();
        m_top = part.kind == PartKind::Trapezoid ? sizes[Measure::Top].toMillimetres() : m_across;
        if (m_across <= 0 || m_up <= 0) m_across = m_up = m_top = 1;
        m_scale = 300 / std::max({m_across, m_up, m_top});
    }

    std::string svg(std::optional<Measure> measure, const PictureInks &inks) {
        outline(inks);
        arrows(measure, inks);
        if (!isSkirt(m_part.kind) && m_part.kind != PartKind::KnifeEdge) edges(inks);
        return m_drawing.svg();
    }

private:
    Spot at(double u, double v) const { return {u * m_scale, -v * m_scale}; }
    double added(int edge) const { return allowanceFor(m_part.edges[std::size_t(edge)], m_rules).toMillimetres(); }

    void outline(const PictureInks &inks) {
        const double inset = (m_across - m_top) / 2;
        const bool plain = m_part.kind == PartKind::Rectangle || m_part.kind == PartKind::Trapezoid ||
                           m_part.kind == PartKind::BoxCushion;
        if (m_part.kind == PartKind::OnPoint) {
            m_drawing.polygon({at(0, 0), at(m_across, 0), at(m_across, m_up), at(0, m_up)}, "none", inks.quiet, 1.6,
                              " stroke-dasharray=\"4 6\"");
            m_drawing.polygon({at(m_across / 2, 0), at(m_across, m_up / 2), at(m_across / 2, m_up), at(0, m_up / 2)},
                              inks.cloth, inks.ink, 3);
            return;
        }
        if (plain)
            m_drawing.polygon({at(-added(Left), -added(Bottom)), at(m_across + added(Right), -added(Bottom)),
                               at(m_across - inset + added(Right), m_up + added(Top)),
                               at(inset - added(Left), m_up + added(Top))},
                              inks.cloth, inks.ink, 3);
        m_drawing.polygon({at(0, 0), at(m_across, 0), at(m_across - inset, m_up), at(inset, m_up)},
                          plain ? "none" : inks.cloth, inks.ink, 1.6, " stroke-dasharray=\"10 7\"");
    }

    void arrows(std::optional<Measure> measure, const PictureInks &inks) {
        for (const bool strong : {false, true}) {
            int number = 0;
            for (const PartMeasure &p : m_part.measures) {
                ++number;
                if (strong != (!measure || *measure == p.measure)) continue;
                const bool tapered = m_part.kind == PartKind::Trapezoid;
                const double inset = (m_across - m_top) / 2;
                if (p.measure == Measure::Up)
                    m_drawing.arrow(
                        {at(m_across * (tapered ? 0.5 : 0.72), 0), at(m_across * (tapered ? 0.5 : 0.72), m_up)}, number,
                        strong, inks);
                if (p.measure == Measure::Across)
                    m_drawing.arrow({at(0, tapered ? 0 : m_up * 0.4), at(m_across, tapered ? 0 : m_up * 0.4)}, number,
                                    strong, inks);
                if (p.measure == Measure::Top)
                    m_drawing.arrow({at(inset, m_up), at(m_across - inset, m_up)}, number, strong, inks);
            }
        }
    }

    void edges(const PictureInks &inks) {
        const double size = 17, off = 10;
        const auto word = [&](int edge) { return std::string(nameOf(m_part.edges[std::size_t(edge)])); };
        if (m_part.kind == PartKind::OnPoint) {
            m_drawing.words(word(Bottom), {at(m_across / 2, 0).x, at(0, 0).y + size + off}, size, inks.quiet, false);
            return;
        }
        const Spot middle = at(m_across / 2, m_up / 2);
        m_drawing.words(word(Top), {middle.x, at(0, m_up + added(Top)).y - off}, size, inks.quiet, false);
        m_drawing.words(word(Bottom), {middle.x, at(0, -added(Bottom)).y + size + off * 0.6}, size, inks.quiet, false);
        m_drawing.words(word(Left), {at(-added(Left), 0).x - off, middle.y}, size, inks.quiet, false, -90);
        m_drawing.words(word(Right), {at(m_across + added(Right), 0).x + off + size * 0.7, middle.y}, size, inks.quiet,
                        false, -90);
    }

    const FormPart &m_part;
    const TradeRules &m_rules;
    double m_across = 1, m_up = 1, m_top = 1, m_scale = 1;
    Drawing m_drawing;
};

} // namespace

std::string flatPartSvg(const FormPart &part, const Sizes &sizes, const TradeRules &rules,
                        std::optional<Measure> measure, const PictureInks &inks) {
    return FlatPart(part, sizes, rules).svg(measure, inks);
}

} // namespace boltwright
