#pragma once

// A piece from its form to a planned, checked layout.

#include "core/check/check.h"
#include "core/files/job_file.h"
#include "core/forms/forms.h"
#include "core/forms/panels_from.h"
#include "core/forms/trim_list.h"
#include "core/planner/plan.h"
#include "core/trimmings/welt.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

namespace boltwright::test {

/// The form as measured, on cloth of the trade's usual width with a selvage on both sides; welt as strips of the same
/// cloth where `cord` is given.
inline Job jobOfForm(const PieceForm &form, const FormMeasures &measures, std::optional<Pattern> pattern,
                     std::optional<Length> cord = {}) {
    using namespace literals;
    const TradeRules rules;
    Job job = jobOf(bolt(54_in), {}, 0.125_in);
    job.cloths[0].selvage = 0.5_in;
    job.cloths[0].way = pattern ? Way::One : Way::Two;
    job.cloths[0].pattern = pattern;
    FormPanels made = panelsFrom(form, measures, rules, job.cloths[0]);
    job.panels = std::move(made.panels);
    job.flows = std::move(made.flows);
    if (cord) {
        const TrimList trims = trimsOf(form, measures, rules);
        const Length strip = weltStripWidth(*cord, rules);
        if (auto welt = weltPanel(weltNeeded(trims.welt, trims.weltJoins, strip), strip, 53_in))
            job.panels.push_back(*welt);
    }
    return job;
}

/// The length of cloth planned; the job reads back from its file, and its layout is right.
inline Length plannedLength(const Job &job, std::int64_t steps) {
    for (const std::string &wrong : faultsOfJob(job)) FAIL_CHECK(wrong);
    const auto again = readJob(writeJob(job));
    REQUIRE(again);
    CHECK(writeJob(*again) == writeJob(job));
    PlanOptions options;
    options.seconds.reset();
    options.steps = steps;
    options.threads = 2;
    const Plan planned = plan(job, options);
    INFO(planned.reason);
    REQUIRE(planned.kind == planner::Outcome::Kind::Fits);
    const auto findings = check(job, planned.layout);
    if (!findings.empty()) FAIL_CHECK(findings[0].text);
    CHECK(planned.layout.leftOut.empty());
    return *planned.layout.cloths.at(0).length;
}

} // namespace boltwright::test
