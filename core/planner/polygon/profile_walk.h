#pragma once

#include "core/planner/polygon/arrangement.h"
#include "core/planner/polygon/profile.h"

#include <functional>

namespace boltwright::planner {

/// Lays items on a bolt from the lowest notch upwards, each notch by the item that fits it best, and searches for the
/// order that decides between equals: within a given length as much area as possible is laid, and when all of it is,
/// the length is drawn in (the scheme of Wei, Oon, Zhu & Lim 2011 for rectangles, here on slanted edges as well).
/// Strong where exact fits are the rule.
class ProfileWalk {
public:
    ProfileWalk(const Model &model, std::uint64_t seed);

    /// Lays everything once, in one of a few plain orders.
    void lay(int opening);
    void run(std::int64_t moves, const std::function<bool()> &stop);
    std::int64_t moves() const { return m_moves; }

    bool found() const { return m_found; }
    double length() const { return m_length; }
    const std::vector<Where> &best() const { return m_best; }
    /// Somebody found a layout of this length: no longer one is of use.
    void mustBeat(double length);
    void rememberBound(double bound) { m_bound = bound; }
    bool done() const { return m_limit <= m_bound; }

private:
    struct Fit {
        int item = -1, option = -1;
        double x = 0, y = 0;
        double lost = 0;
        int flush = 0;
    };

    double layBelow(double end);
    void tryItem(int item, std::size_t notch, double end, Fit &best);
    double clearOfSheet(int item, const Option &option, const PlaceSet &places, double x, double y) const;
    void keep();
    void mutate();

    const Model &m_model;
    const Instance &m_instance;
    Random m_random;
    Arrangement m_sharing; ///< nothing lies in it: it knows what groups have in common
    std::vector<Rims> m_rims;
    double m_left = 0, m_right = 0, m_smallLoss = 1;
    std::vector<double> m_widths; ///< by item: its least width
    std::vector<int> m_byWidth;   ///< items from the narrowest
    std::size_t m_narrow = 0;     ///< of those, the first not laid yet
    double m_narrowestLeft = 0;

    std::vector<int> m_order, m_kept;
    double m_laid = -1;     ///< area that the kept order lays within the limit
    double m_limit = 1e300; ///< the length to beat
    double m_end = 1e300;   ///< the end tried now
    std::vector<double> m_late;
    std::size_t m_now = 0;
    int m_starts = 0;

    Profile m_profile;
    std::vector<Where> m_at;
    std::vector<double> m_tries;
    std::vector<int> m_alike; ///< by item: the first that lies exactly as it does
    std::vector<int> m_seen;  ///< by those: the notch it was tried for last
    int m_notch = 0;
    std::vector<Where> m_best;
    double m_length = 0, m_bound = 0;
    bool m_found = false;
    std::int64_t m_moves = 0;
};

} // namespace boltwright::planner
