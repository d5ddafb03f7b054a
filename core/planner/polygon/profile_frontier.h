#pragma once

#include "core/planner/beam.h"
#include "core/planner/polygon/arrangement.h"
#include "core/planner/polygon/profile.h"
#include "core/planner/random.h"

#include <array>
#include <cstdint>
#include <vector>

namespace boltwright::planner {

/// Many part layouts grown side by side on plain cloth that ends somewhere: slanted items come down on what is laid,
/// each to where it would come to rest, and those part layouts are kept that hold most and waste least. What is wasted
/// already can't be more than the cloth has to spare, so that where little is left over, few part layouts are left.
/// By turns it fills the cloth from each of its four sides. Concave items count as their hulls.
///
/// Its layouts are to be squeezed (see walker.h), which makes long ones the shortest as often as not; so the end it
/// aims at is mostly beyond the best there is.
class ProfileFrontier {
public:
    /// `number` tells those with one seed apart.
    ProfileFrontier(const Model &model, std::uint64_t seed, int number);

    static bool applies(const Model &model);

    /// Goes on by one part layout. True when it holds everything: then `layout` tells. `best`: the length to beat, and
    /// `bound` one that can't be; both decide how long the next layouts may be.
    bool step(double best, double bound);

    const std::vector<Where> &layout() const { return m_layout; }
    std::int64_t moves() const { return m_tries / triesAMove; } ///< in what one relocation takes

private:
    static constexpr std::int64_t triesAMove = 8; ///< an item on a part layout is tried about as fast
    using Left = std::uint8_t;                    ///< how many of a kind are left

    /// Items that lie alike.
    struct Kind {
        std::vector<int> items;
        double area = 0;
        std::uint64_t print = 0;
    };
    /// One way to lay a kind, as seen from the side that is filled from.
    struct Shape {
        int kind, option;
        const Rims *rims;
    };
    struct Node {
        std::int32_t firstPiece = 0, pieces = 0;
        double waste = 0, placed = 0;
        std::uint64_t print = 0; ///< of the items laid
    };
    struct Place {
        std::int32_t parent = -1, shape = -1; ///< parent: in the level before
        std::int32_t filled = 0;              ///< notches given up before it was laid
        double x = 0, y = 0;
    };
    struct Child {
        float guide = 0;
        Place place;
    };

    bool grows();
    void aim(double best, double bound);
    void begin();
    void beginLevel();
    void endLevel();
    void expand(std::size_t at);
    bool offer(std::size_t at, std::size_t notch, double waste, int filled);
    bool grow(const Child &child);
    void keepBest(std::size_t count);
    double fill(std::size_t notch);
    double lookAhead(const Left *left) const;
    bool isKnown(std::uint64_t print);
    void read();

    const Model &m_model;
    const Instance &m_instance;
    Random m_random;
    int m_number;
    std::vector<Kind> m_kinds;
    std::array<std::vector<Rims>, 4> m_rims; ///< by side and outline
    std::array<std::vector<Shape>, 4> m_shapes;
    double m_itemArea = 0;

    int m_side = 0;
    double m_across = 0, m_up = 0; ///< of the room as it is filled
    double m_end = 0, m_spare = -1;
    double m_weight = 0;
    std::size_t m_width = 0, m_widest = 0;
    int m_runsLeft = 0, m_found = 0; ///< for this end

    std::vector<Node> m_level, m_nextLevel;
    std::vector<Profile::Piece> m_pool, m_nextPool;
    std::vector<Left> m_left, m_nextLeft;
    std::vector<std::vector<Place>> m_places; ///< by level
    std::vector<Child> m_children;
    float m_worst = 0;
    Prints m_known;
    std::size_t m_at = 0, m_growing = 0;
    bool m_grows = false;
    Profile m_profile;
    std::vector<double> m_xs;
    std::vector<Where> m_layout;
    std::int64_t m_tries = 0;
};

} // namespace boltwright::planner
