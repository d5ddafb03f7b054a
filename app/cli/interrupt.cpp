#include "app/cli/interrupt.h"

#include <atomic>
#include <csignal>

namespace boltwright::app {

namespace {

std::atomic<bool> wasAsked = false;
static_assert(std::atomic<bool>::is_always_lock_free, "a signal handler may set nothing else");

void note(int signal) {
    wasAsked = true;
    std::signal(signal, SIG_DFL);
}

} // namespace

Interrupt::Interrupt() {
    wasAsked = false;
    std::signal(SIGINT, note);
    std::signal(SIGTERM, note);
}

Interrupt::~Interrupt() {
    std::signal(SIGINT, SIG_DFL);
    std::signal(SIGTERM, SIG_DFL);
}

bool Interrupt::asked() { return wasAsked; }

} // namespace boltwright::app
