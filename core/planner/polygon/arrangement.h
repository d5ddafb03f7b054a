#pragma once

#include "core/planner/polygon/no_fit_table.h"
#include "core/planner/polygon/spots.h"
#include "core/planner/random.h"

#include <optional>
#include <vector>

namespace boltwright::planner {

/// What a search over one instance needs to know and never changes; shared by all walkers.
struct Model {
    explicit Model(const Instance &instance);
    const Instance &instance;
    NoFitTable noFits;
    bool open = false;                     ///< there is an open sheet (the only one)
    double bottom = 0;                     ///< of the open sheet's room
    double ceiling = 0;                    ///< of the open sheet's room: as far as the bolt reaches
    double obstaclesTop = 0;               ///< greatest y of what is fixed on the open sheet, and of its flaws
    std::vector<std::vector<int>> choices; ///< by item: its options without those that lay it exactly alike
};

/// Where an item lies; `option` -1: nowhere.
struct Where {
    int option = -1;
    double x = 0, y = 0;
};

/// Items on their sheets, overlaps allowed, with the depth of every overlap and a weight on every pair. What a group
/// has in common is part of it.
class Arrangement {
public:
    Arrangement(const Model &model, Random &random);

    int size() const { return int(m_at.size()); }
    const std::vector<Where> &places() const { return m_at; }
    const Where &at(int item) const { return m_at[std::size_t(item)]; }

    /// The open sheet's end from now on; items that reach beyond it count as out of place.
    void setTop(double top);
    double top() const { return m_top; }
    bool beyondTop(int item) const;
    bool inRoom(int item); ///< within the hull of its sheet's room, below the top

    void clear();
    void restore(const std::vector<Where> &places); ///< groups take what their items have
    void lift(int item);
    void put(int item, const Where &where);

    double overlap(int item) const;         ///< sum of depths
    double weightedOverlap(int item) const; ///< sum of depths times weights
    double totalOverlap() const;
    bool misplaced(int item) const; ///< lies nowhere, beyond the top, or overlaps
    bool right() const;             ///< every item lies somewhere, and nothing overlaps
    double used() const;            ///< greatest y on the open sheet

    /// The cheapest place for a lifted or lying item among all its options, cheaper than `enough`.
    std::optional<Where> cheapest(int item, double enough);
    /// The same, looked for round about where the item lies and in a few places elsewhere: where there are many items,
    /// several such looks take less time than one at all places. Now and then all are looked at.
    std::optional<Where> cheapestNear(int item, double enough);
    /// The lowest place where nothing is in the way (open sheet), or that of the first sheet that has one.
    std::optional<Where> lowest(int item);
    /// The same for a lifted item that lay at `before`; where there are many items, only round about and below.
    std::optional<Where> lowestNear(int item, const Where &before);

    /// Chooses anew what a group has in common, all its items lifted; the first of them leads to a good phase. False
    /// when no turn, lot and phase was found that all can follow.
    bool regroup(int group);
    bool settled(int group) const { return m_groups[std::size_t(group)].set; }

    /// What is left to an item with one of its options, its group considered; nothing when the group rules it out.
    const std::optional<PlaceSet> &placesOf(int item, int option) const;

    void resetWeights();
    /// Overlapping pairs weigh more from now on, the deeper the more; others a little less.
    void raiseWeights();

    std::int64_t moves() const { return m_moves; } ///< places looked for so far

private:
    struct Shared { ///< what the items of a group have in common
        bool set = false;
        Turn turn = Turn::Deg0;
        int lot = 0;
        Vector phase;
    };
    struct Fit { ///< remembered until the top changes
        bool known = false;
        InnerFit fit;
    };

    const Option &optionOf(int item, int option) const;
    const InnerFit &fitOf(const Option &option);

    void prepare(int item, const Option &option, const PlaceSet &places, InnerFit fit);
    std::vector<InnerFit> windowsOf(int item, const Option &option);
    double depthBetween(int a, int b) const;
    double depthOnSheet(int item) const;
    std::size_t pair(int a, int b) const { return std::size_t(a) * m_at.size() + std::size_t(b); }

    bool canFollow(int item, const Shared &shared);
    std::vector<Vector> phasesWorthTrying(int group, Turn turn, int lot, int leader);
    Vector phaseOf(int item, int option, double x, double y) const;
    void share(int group, const Shared &shared);

    const Model &m_model;
    const Instance &m_instance;
    Random &m_random;
    std::vector<Where> m_at;
    std::vector<double> m_overlap, m_weight;           // by pair of items
    std::vector<double> m_sheetOverlap, m_sheetWeight; // by item: with what lies on its sheet anyhow
    std::vector<Shared> m_groups;
    std::vector<std::vector<std::optional<PlaceSet>>> m_places; // by item and option: what is left to it in its group
    std::vector<Fit> m_fits;                                    // by sheet and outline
    Spots m_spots;
    double m_top = 0;
    std::int64_t m_moves = 0;
};

} // namespace boltwright::planner
