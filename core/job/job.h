#pragma once

#include "core/cloth/cloth.h"
#include "core/job/layout.h"
#include "core/job/trimming.h"
#include "core/measure/unit.h"
#include "core/panel/flow.h"
#include "core/panel/panel.h"

#include <string>
#include <vector>

namespace boltwright {

struct JobCard {
    std::string title, client, piece, notes, date; ///< date as ISO 8601, or empty
    Kept kept;
    bool operator==(const JobCard &) const = default;
};

/// One job: cloths, panels, and the layouts made so far. A value: copied, compared, sent to threads. Parts refer to
/// each other by id. A job that came through `readJob` keeps the contract's input rules (ids exist and are unique,
/// measures are greater than zero, outlines are simple); `faultsOfJob` says whether an edited one still does.
struct Job {
    Unit unit = Unit::Inch;
    JobCard card;
    std::vector<Cloth> cloths; ///< the first is the main cloth
    Length gap;                ///< kept between cuts
    std::vector<Panel> panels;
    std::vector<Flow> flows;
    std::vector<Trimming> trimmings;
    std::vector<Layout> layouts;
    Kept kept;
    bool operator==(const Job &) const = default;

    const Panel *panel(const std::string &id) const; ///< null: none of that id
    const Cloth *cloth(const std::string &id) const;
    const Cloth &clothOf(const Panel &panel) const; ///< the cloth the panel wants
    const Cloth &clothOf(const Cut &cut) const;     ///< the cloth the cut lies on
};

/// What is wrong with a job as input, each a sentence that names the key; empty when all is right. The same rules as
/// reading a file applies.
std::vector<std::string> faultsOfJob(const Job &job);

} // namespace boltwright
