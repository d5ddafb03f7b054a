#include "core/forms/panel_doubts.h"

#include "core/base/language.h"
#include "core/geometry/polygon.h"
#include "core/measure/length_text.h"

#include <algorithm>
#include <array>

namespace boltwright {
namespace {

/// Marks of parts that come in pairs, one left and one right.
constexpr std::array<std::string_view, 5> paired = {"IA", "OA", "IW", "OW", "AF"};
constexpr Length muchApart = Length::ticks(2 * 8128);

struct Size {
    Length across, up;
};

Size sizeOf(const Panel &panel) {
    const PanelBox box = boxOf(measuredOutline(panel.shape));
    return {box.width(), box.height()};
}

class PanelDoubts {
public:
    explicit PanelDoubts(const Job &job) : m_job(job) {}

    std::vector<PanelDoubt> all() {
        for (const Panel &panel : m_job.panels) {
            twin(panel);
            tall(panel);
            wide(panel);
            bare(panel);
        }
        return std::move(m_doubts);
    }

private:
    std::string said(Length length) const { return localised(spokenWithUnit(length, m_job.unit)); }
    void add(const Panel &panel, std::string text) { m_doubts.push_back({panel.id, std::move(text)}); }

    static bool isPaired(const Panel &panel) {
        return std::find(paired.begin(), paired.end(), panel.mark) != paired.end();
    }

    /// The one before it of the same mark, where both are single.
    const Panel *twinOf(const Panel &panel) const {
        if (!isPaired(panel) || panel.count != 1) return nullptr;
        const Panel *before = nullptr;
        for (const Panel &other : m_job.panels) {
            if (&other == &panel) return before;
            if (other.mark == panel.mark && other.count == 1) before = &other;
        }
        return nullptr;
    }

    void twin(const Panel &panel) {
        const Panel *other = twinOf(panel);
        if (!other) return;
        const Size mine = sizeOf(panel), theirs = sizeOf(*other);
        if (const Length apart = abs(mine.up - theirs.up); apart > muchApart)
            add(panel, phrase("the two differ by %1 in height", {said(apart)}));
        if (const Length apart = abs(mine.across - theirs.across); apart > muchApart)
            add(panel, phrase("the two differ by %1 from side to side", {said(apart)}));
        if (panel.motif.has_value() != other->motif.has_value())
            add(panel.motif ? *other : panel, phrase("this part has no motif though its twin has"));
    }

    void tall(const Panel &panel) {
        if (panel.mark != "IA" && panel.mark != "OA") return;
        for (const Panel &back : m_job.panels)
            if (back.mark == "IB" && sizeOf(panel).up > sizeOf(back).across)
                return add(panel, phrase("taller than the back is wide (%1); were its two measures exchanged?",
                                         {said(sizeOf(back).across)}));
    }

    void wide(const Panel &panel) {
        const Cloth &cloth = m_job.clothOf(panel);
        const bool turns = panel.may.turn || panel.run == Run::Either || panel.run == Run::Bias;
        if (!cloth.bolt || panel.pieces.most > 1 || turns) return;
        const PanelBox box = boxOf(cutOutline(panel.shape, preferredAllowances(panel)));
        const bool railroaded = panel.run == Run::Railroad || (!panel.run && cloth.up == PatternUp::Across);
        const Length needed = railroaded ? box.height() : box.width(), usable = cloth.bolt->width - cloth.selvage * 2;
        if (needed > usable)
            add(panel, phrase("as it runs it is %1 wide, and the cloth %2 between the selvages",
                              {said(needed), said(usable)}));
    }

    void bare(const Panel &panel) {
        const auto added = preferredAllowances(panel);
        const bool strips = panel.mark == "W" || panel.mark == "DW";
        if (!strips && std::all_of(added.begin(), added.end(), [](Length l) { return l == Length{}; }))
            add(panel, phrase("nothing is added at any edge"));
    }

    const Job &m_job;
    std::vector<PanelDoubt> m_doubts;
};

} // namespace

std::vector<PanelDoubt> doubtsOfPanels(const Job &job) { return PanelDoubts(job).all(); }

} // namespace boltwright
