#pragma once

#include "app/cli/command.h"
#include "core/paper/paper_size.h"

#include <functional>
#include <string>

namespace boltwright::app {

/// What every command takes that writes a layout as a picture or a page.
struct PageArguments {
    std::string job, layout, out;
};

void addPageArguments(CLI::App &command, PageArguments &arguments, const std::string &fileNames);

/// Loads the job, picks the layout and hands both to `write`, with Qt running without a display. A layout that is not
/// right is written all the same, since seeing it helps to mend it; standard error then says so.
Exit writePage(const PageArguments &arguments, const std::function<Result<void>(const Job &, const Layout &)> &write);

/// "a4" as Paper::A4. Errors: no such paper; the sentence lists those there are.
Result<Paper> paperFromCommandLine(const std::string &name);

} // namespace boltwright::app
