#include "app/cli/progress_line.h"

#include "core/measure/length_text.h"

#include <fmt/format.h>

#include <cstdio>
#include <unistd.h>

namespace boltwright::app {

namespace {

std::string sentence(const PlanProgress &progress, Unit unit) {
    const auto share = fmt::format("{:3.0f} %", progress.share * 100);
    if (!progress.found) return share + "  no room for all panels yet";
    if (progress.length == Length()) return share + "  all laid"; // remnants: no length to shorten
    return fmt::format("{}  {}, the least it can take is {}", share, spokenWithUnit(progress.length, unit),
                       spokenWithUnit(progress.bound, unit));
}

} // namespace

ProgressLine::ProgressLine(Unit unit) : m_unit(unit), m_shows(isatty(STDERR_FILENO) == 1) {}

void ProgressLine::show(const PlanProgress &progress) {
    // Ten times a second is as fast as anybody reads.
    const auto now = std::chrono::steady_clock::now();
    if (now - m_last < std::chrono::milliseconds(100)) return;
    m_last = now;
    fmt::print(stderr, "\r\033[K{}", sentence(progress, m_unit));
    std::fflush(stderr);
}

void ProgressLine::clear() {
    if (!m_shows) return;
    fmt::print(stderr, "\r\033[K");
}

} // namespace boltwright::app
