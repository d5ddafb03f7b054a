#pragma once

namespace boltwright::app {

/// The whole program: reads the command line, does what it says, and gives the exit code. Without a command it opens
/// the window.
int run(int argc, char **argv);

} // namespace boltwright::app
