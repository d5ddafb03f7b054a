#pragma once

#include "core/paper/true_size.h"
#include "ui/paper/pages.h"

#include <memory>
#include <vector>

namespace boltwright::ui {

/// Drawings at 1:1, each over as many pages as it takes: neighbours overlap, with match marks in the middle of the
/// overlap, and every page has a bar to lay a rule on.
class TrueSizePages : public Pages {
public:
    /// Errors: a drawing would take more than 200 pages; there is none.
    static Result<std::shared_ptr<const TrueSizePages>> make(const Job &job, std::vector<TrueDrawing> drawings,
                                                             Paper paper, std::optional<bool> sideways = {});
    QString title() const override;
    PaperSize paper() const override { return m_plans.front().paper; }
    int count() const override { return int(m_pages.size()); }
    void paint(Surface &surface, int page) const override;

    struct Page {
        std::size_t drawing, tile;
    };
    const std::vector<Page> &pages() const { return m_pages; }
    const std::vector<TruePlan> &plans() const { return m_plans; }
    const std::vector<TrueDrawing> &drawings() const { return m_drawings; }

private:
    void paintLines(Surface &surface, const TrueDrawing &drawing, const TruePlan &plan, const TrueTile &tile) const;
    void paintWords(Surface &surface, const TrueDrawing &drawing, const TruePlan &plan, const TrueTile &tile) const;
    void paintMatches(Surface &surface, const TruePlan &plan, const TrueTile &tile) const;
    void paintHeading(Surface &surface, const TrueDrawing &drawing, const TruePlan &plan, const TrueTile &tile) const;

    Unit m_unit = Unit::Inch;
    QString m_job;
    std::vector<TrueDrawing> m_drawings;
    std::vector<TruePlan> m_plans;
    std::vector<Page> m_pages;
};

/// One panel (see `cutNamed`), or with an empty name every cloth of the layout. Errors: as above, or no such panel.
Result<std::shared_ptr<const TrueSizePages>> trueSizePages(const Job &job, const Layout &layout,
                                                           const std::string &panel, Paper paper,
                                                           std::optional<bool> sideways = {});

} // namespace boltwright::ui
