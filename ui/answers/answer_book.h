#pragma once

#include "core/concede/concede.h"
#include "core/yardage/ask.h"
#include "core/yardage/run_ways.h"
#include "core/yardage/staircase.h"
#include "ui/models/ask_table_model.h"

#include <memory>
#include <mutex>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace boltwright::ui {

// What each page found last.
struct FoundWays {
    Conceding answer;
    std::vector<std::string> verdicts; ///< one a way; empty: right
};
struct FoundRuns {
    std::vector<RunAnswer> answers;
};
struct FoundAsks {
    std::vector<Length> widths;
    std::vector<AskTableModel::Kind> kinds;
    std::vector<std::optional<AskAnswer>> answers; ///< row by row
    std::vector<ExtraLength> extra;
    Length reserve;
    int step = 0; ///< which of the steps it is sold by
};
struct FoundStairs {
    Staircase stairs;
};

/// What was found stays when its page closes, with the job it was found for, until something else is found or another
/// job is opened. It is written from any thread.
class AnswerBook {
public:
    template <class Found>
    struct Entry {
        Job job; ///< without its layouts
        Found found;
    };

    template <class Found>
    void keep(const Job &job, Found found) {
        auto entry = std::make_shared<Entry<Found>>(Entry<Found>{withoutLayouts(job), std::move(found)});
        const std::scoped_lock lock(m_mutex);
        std::get<Slot<Found>>(m_slots) = std::move(entry);
    }
    /// Null: nothing was found yet.
    template <class Found>
    std::shared_ptr<const Entry<Found>> kept() const {
        const std::scoped_lock lock(m_mutex);
        return std::get<Slot<Found>>(m_slots);
    }
    void clear() {
        const std::scoped_lock lock(m_mutex);
        m_slots = {};
    }
    /// Whether what was found for `then` still answers `now`: only its layouts may differ.
    static bool sameQuestion(const Job &then, const Job &now) { return then == withoutLayouts(now); }

private:
    template <class Found>
    using Slot = std::shared_ptr<const Entry<Found>>;
    static Job withoutLayouts(Job job) {
        job.layouts.clear();
        return job;
    }

    mutable std::mutex m_mutex;
    std::tuple<Slot<FoundWays>, Slot<FoundRuns>, Slot<FoundAsks>, Slot<FoundStairs>> m_slots;
};

} // namespace boltwright::ui
