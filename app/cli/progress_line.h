#pragma once

#include "core/measure/unit.h"
#include "core/planner/plan.h"

#include <chrono>

namespace boltwright::app {

/// One line on standard error that is written over while planning goes on; only when a person looks at a terminal.
class ProgressLine {
public:
    explicit ProgressLine(Unit unit);

    bool shows() const { return m_shows; }
    /// Any thread, one call at a time.
    void show(const PlanProgress &progress);
    void clear();

private:
    Unit m_unit;
    bool m_shows;
    std::chrono::steady_clock::time_point m_last{};
};

} // namespace boltwright::app
