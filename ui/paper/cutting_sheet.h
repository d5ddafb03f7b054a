#pragma once

#include "core/paper/sheet_plan.h"
#include "ui/paper/page_extras.h"
#include "ui/paper/page_ink.h"
#include "ui/paper/pages.h"
#include "ui/picture/sheet_painter.h"

#include <memory>

namespace boltwright::ui {

/// The cutting sheet: what has changed where that was asked for, the cloth to scale, then the list to chalk from in
/// cutting order. Holds copies of job and layout,
/// so that a preview may outlive what it shows. Needs a QGuiApplication (offscreen will do), for the fonts.
class CuttingSheet : public Pages {
public:
    /// Errors: the layout has no cuts, or the cloth is too wide for the paper at that scale.
    static Result<std::shared_ptr<const CuttingSheet>> make(const Job &job, const Layout &layout,
                                                            const SheetOptions &options = {}, SheetExtras extras = {});

    CuttingSheet(const CuttingSheet &) = delete; // its parts refer to its own job
    CuttingSheet &operator=(const CuttingSheet &) = delete;

    QString title() const override;
    PaperSize paper() const override { return m_plan.paper; }
    int count() const override { return drawnFrom() + int(m_plan.pages.size()) + int(m_chalk.size()); }
    int drawnFrom() const { return int(m_changes.size()); } ///< the first page with cloth on it
    void paint(Surface &surface, int page) const override;
    const SheetPlan &plan() const { return m_plan; }

private:
    CuttingSheet(const Job &job, const Layout &layout, SheetExtras extras);
    void paintCloth(Surface &surface, const SheetPage &page) const;
    PageInk heading(int page) const;
    PageInk notes(const SheetPage &page) const;

    Job m_job;
    Layout m_layout;
    SheetExtras m_extras;
    DrawnLayout m_drawn;
    SheetPlan m_plan;
    QList<PageInk> m_changes, m_chalk;
};

/// Writes the cutting sheet as PDF. Errors: as `CuttingSheet::make`, or the file cannot be written.
Result<void> writeCuttingSheet(const Job &job, const Layout &layout, const std::filesystem::path &file,
                               const SheetOptions &options = {}, SheetExtras extras = {});

/// Writes the chalk list alone as comma-separated values.
Result<void> writeChalkCsv(const Job &job, const Layout &layout, const std::filesystem::path &file);

} // namespace boltwright::ui
