#pragma once

namespace boltwright::app {

/// While one of these lives, the first Ctrl-C (or call to end) is noted instead of ending the program; a second one
/// ends it at once.
class Interrupt {
public:
    Interrupt();
    ~Interrupt();
    Interrupt(const Interrupt &) = delete;
    Interrupt &operator=(const Interrupt &) = delete;

    /// Any thread.
    static bool asked();
};

} // namespace boltwright::app
