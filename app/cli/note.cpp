#include "app/cli/command.h"
#include "core/edit/job_edit.h"
#include "core/files/job_file.h"
#include "core/measure/length_text.h"
#include "core/paper/true_size.h"
#include "core/table/at_table.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <memory>

namespace boltwright::app {

namespace {

struct NoteArguments {
    std::string job, out, on, said;
    std::vector<std::string> cut, wrong, flaw;
};

/// The pieces of the copy that a person names on the last layout.
Result<std::vector<int>> piecesNamed(const Job &job, const std::string &name) {
    const Layout &layout = job.layouts.back();
    const auto named = cutNamed(job, layout, name);
    if (!named) return fault(named.error());
    std::vector<int> pieces;
    for (int i = 0; i < int(layout.cuts.size()); ++i) {
        const Cut &cut = layout.cuts[std::size_t(i)];
        if (cut.panel == named->panel && cut.copy == named->copy) pieces.push_back(i);
    }
    if (pieces.empty()) return fault(fmt::format("\"{}\" is not on the cloth", name));
    return pieces;
}

/// "body", or "left-over/A" for a remnant; empty: the first cloth's bolt.
Result<SheetOf> sheetNamed(const Job &job, const std::string &name) {
    const auto slash = name.find('/');
    const Cloth *cloth = name.empty() ? &job.cloths.front() : job.cloth(name.substr(0, slash));
    if (!cloth) return fault(fmt::format("--on {}: the job has no such cloth", name));
    if (slash == std::string::npos) {
        if (cloth->bolt) return SheetOf{cloth->id, {}};
        return fault(fmt::format("--on: cloth \"{0}\" lies there as remnants; name one, such as {0}/{1}", cloth->id,
                                 cloth->remnants.front().id));
    }
    if (!cloth->remnant(name.substr(slash + 1))) return fault(fmt::format("--on {}: there is no such remnant", name));
    return SheetOf{cloth->id, name.substr(slash + 1)};
}

Result<Flaw> flawOf(const NoteArguments &arguments, Unit unit) {
    std::array<Length, 4> measures;
    for (std::size_t i = 0; i < measures.size(); ++i) {
        const auto length = readLength(arguments.flaw[i], unit);
        if (!length) return fault(length.error().at("--flaw"));
        measures[i] = *length;
    }
    const auto [x, y, across, along] = measures;
    if (across <= Length{} || along <= Length{}) return fault("--flaw: its size is greater than nothing");
    return Flaw{ringOf(ClothBox{{x, y}, {x + across, y + along}}), arguments.said, {}};
}

Result<Job> noted(Job job, const NoteArguments &arguments) {
    for (const std::string &name : arguments.cut) {
        const auto pieces = piecesNamed(job, name);
        if (!pieces) return fault(pieces.error());
        job.layouts = withCutsMarked(job, int(job.layouts.size()) - 1, *pieces, CutState::Cut);
    }
    for (const std::string &name : arguments.wrong) {
        // One piece after the other: each takes itself off the layout, the first sometimes all of them.
        const auto pieces = piecesNamed(job, name);
        if (!pieces) return fault(pieces.error());
        job = withCutGoneWrong(job, int(job.layouts.size()) - 1, pieces->front());
    }
    if (!arguments.flaw.empty()) {
        const auto sheet = sheetNamed(job, arguments.on);
        if (!sheet) return fault(sheet.error());
        const auto flaw = flawOf(arguments, job.unit);
        if (!flaw) return fault(flaw.error());
        job = withFlawFound(std::move(job), *sheet, *flaw);
    }
    return job;
}

Exit runNote(const NoteArguments &arguments) {
    const auto job = loadJob(arguments.job);
    if (!job) return inputIsWrong(job.error());
    if (const auto layout = chosenLayout(*job, {}, arguments.job); !layout) return inputIsWrong(layout.error());
    auto after = noted(*job, arguments);
    if (!after) return inputIsWrong(after.error().at(arguments.job));
    after = withLayoutsFollowing(*job, std::move(*after));
    const std::string out = arguments.out.empty() ? arguments.job : arguments.out;
    if (const auto saved = saveJob(*after, out); !saved) return inputIsWrong(saved.error());
    const auto again =
        cutsOnFlaws(*after, after->layouts.back()).size() + copiesPutAside(*after, after->layouts.back()).size();
    if (again > 0)
        fmt::print("{} to plan again: boltwright plan --stay {}\n",
                   again == 1 ? "one piece" : fmt::format("{} pieces", again), out);
    return Exit::Done;
}

} // namespace

void addNote(CLI::App &program, Command &chosen) {
    auto arguments = std::make_shared<NoteArguments>();
    auto *command = program.add_subcommand(
        "note", "Note what happened at the table: what is cut, a cut gone wrong, a flaw in the cloth");
    command->add_option("JOB", arguments->job, "The job file")->required();
    command->add_option("--out", arguments->out, "Where to write it; left out: JOB itself")->type_name("FILE");
    command->add_option("--cut", arguments->cut, "A piece that is cut, by its mark, or mark and copy such as IB/2")
        ->type_name("MARK...");
    command->add_option("--wrong", arguments->wrong, "A piece whose cut went wrong: that cloth is spoiled")
        ->type_name("MARK...");
    auto *flaw = command->add_option("--flaw", arguments->flaw, "A flaw: from left selvage, from cut end, its size")
                     ->expected(4)
                     ->type_name("X Y ACROSS ALONG");
    command->add_option("--on", arguments->on, "The cloth it is in, a remnant as CLOTH/REMNANT; left out: the first")
        ->needs(flaw)
        ->type_name("CLOTH");
    command->add_option("--said", arguments->said, "A word on the flaw, such as slub")->needs(flaw)->type_name("WORDS");
    command->callback([arguments, &chosen] { chosen = [arguments] { return runNote(*arguments); }; });
}

} // namespace boltwright::app
