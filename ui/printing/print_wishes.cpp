#include "ui/printing/print_wishes.h"

#include "ui/paper/client_page.h"
#include "ui/paper/cutting_sheet.h"
#include "ui/paper/label_pages.h"
#include "ui/paper/true_size_pages.h"

namespace boltwright::ui {
namespace {

Result<std::shared_ptr<const Pages>> sheetPages(const Job &job, const Layout &layout, const PrintWishes &wishes) {
    SheetExtras extras;
    if (wishes.changedFrom && *wishes.changedFrom < int(job.layouts.size()))
        extras.changes = changesBetween(job, job.layouts[std::size_t(*wishes.changedFrom)], job, layout);
    auto sheet = CuttingSheet::make(job, layout, {wishes.paper, wishes.sideways, wishes.scale, wishes.onOnePage},
                                    std::move(extras));
    if (!sheet) return fault(sheet.error());
    return *sheet;
}

} // namespace

Result<std::shared_ptr<const Pages>> pagesFor(const Job &job, const Layout &layout, const PrintWishes &wishes) {
    switch (wishes.what) {
    case PrintWishes::What::CuttingSheet:
        return sheetPages(job, layout, wishes);
    case PrintWishes::What::Labels:
        return labelPages(job, layout, wishes.grid, wishes.labelsUsed);
    case PrintWishes::What::TrueSize: {
        auto pages = trueSizePages(job, layout, wishes.panel, wishes.paper, wishes.sideways);
        if (!pages) return fault(pages.error());
        return *pages;
    }
    case PrintWishes::What::ClientPage:
        return clientPage(job, layout, wishes.paper, wishes.why);
    }
    return fault("nothing to print");
}

} // namespace boltwright::ui
