#include "core/job/fault_words.h"

#include <fmt/format.h>

#include <array>
#include <utility>

namespace boltwright {
namespace {

struct Word {
    std::string_view under, key, word; ///< `under` empty: wherever the key stands
};

// The first that fits holds. An empty word is left out: what stands around it says enough.
constexpr std::array<Word, 70> faultWords = {{
    {"pattern", "across", "horizontal repeat"},
    {"pattern", "along", "vertical repeat"},
    {"pattern", "motif", "where a motif sits"},
    {"shape", "kind", "kind of shape"},
    {"shape", "bottom", "across at the bottom"},
    {"shape", "top", "across at the top"},
    {"shape", "shift", "lean"},
    {"shape", "points", "corners"},
    {"bolt", "length", "length"},
    {"flow", "edge", "edge"},
    {"flow", "edge_to", "edge"},
    {"flow", "at", "place"},
    {"flow", "at_to", "place"},
    {"", "cloths", "cloths"},
    {"", "panels", "panels"},
    {"", "id", "name"},
    {"", "mark", "mark"},
    {"", "name", "name"},
    {"", "count", "count"},
    {"", "cloth", "cloth"},
    {"", "shape", ""},
    {"", "bolt", ""},
    {"", "pattern", ""},
    {"", "pieces", ""},
    {"", "may", ""},
    {"", "width", "width"},
    {"", "square", "lost to square the end"},
    {"", "selvage", "selvage"},
    {"", "edge", "kept from the edge"},
    {"", "outline", "outline"},
    {"", "drop", "drop"},
    {"", "price", "price"},
    {"", "per", "sold by"},
    {"", "amount", ""},
    {"", "gap", "gap between cuts"},
    {"", "across", "across"},
    {"", "up", "up"},
    {"", "top", "top"},
    {"", "bottom", "bottom"},
    {"", "left", "left"},
    {"", "right", "right"},
    {"", "allow", "allowance"},
    {"", "allow_min", "least allowance"},
    {"", "motif", "centred"},
    {"", "centre", ""},
    {"", "most", "pieces at most"},
    {"", "seam", "seam at a join"},
    {"", "shortest", "shortest piece"},
    {"", "lost", "lost in the join"},
    {"", "other_cloth", "other cloth"},
    {"", "stretcher", "pulled out of sight"},
    {"", "boltwright", "version of the file"},
    {"", "unit", "unit"},
    {"", "job", "job card"},
    {"", "title", "title"},
    {"", "client", "client"},
    {"", "way", "nap"},
    {"", "along", "along"},
    {"", "run", "run"},
    {"", "alike", "copies alike"},
    {"", "mirror", "mirrored copies"},
    {"", "hidden", "out of sight"},
    {"", "flow", "pattern match"},
    {"", "layouts", "layouts"},
    {"", "cuts", "cuts"},
    {"", "turn", "turn"},
    {"", "where", "joins lie"},
    {"", "match", "pattern over joins"},
    {"", "uncentre", "off centre"},
    {"", "remnants", "remnants"},
}};

std::string wordFor(std::string_view under, const std::string &key) {
    for (const Word &word : faultWords)
        if (word.key == key && (word.under.empty() || word.under == under)) return std::string(word.word);
    return key;
}

template <class Part>
std::string nameOr(const Part *part, const std::string &id) {
    return part && !part->name.empty() ? part->name : id;
}

std::string itemInWords(const Job &job, const KeyPath::Step &step) {
    const std::size_t index = *step.index;
    if (step.name == "panels" && index < job.panels.size()) {
        const Panel &panel = job.panels[index];
        return !panel.name.empty() ? panel.name : !panel.mark.empty() ? panel.mark : panel.id;
    }
    if (step.name == "cloths" && index < job.cloths.size()) return nameOr(&job.cloths[index], job.cloths[index].id);
    if (step.name == "remnants") return "remnant " + step.called;
    if (step.name == "flaws") return fmt::format("flaw {}", index + 1);
    if (step.name == "flow") return fmt::format("pattern match {}", index + 1);
    if (step.name == "layouts") return step.called.empty() ? fmt::format("layout {}", index + 1) : step.called;
    return step.called.empty() ? fmt::format("{} {}", step.name, index + 1) : step.called;
}

/// A polygon's edges are counted from 0 by the file, and from 1 by a person.
std::string stretcherEdge(const std::string &key) {
    if (key.empty() || key.find_first_not_of("0123456789") != std::string::npos || key.size() > 6) return key;
    return fmt::format("edge {}", std::stoi(key) + 1);
}

} // namespace

std::string placeInWords(const Job &job, const KeyPath &place) {
    std::string text, under;
    for (const KeyPath::Step &step : place.steps()) {
        const std::string part = step.name.empty()      ? fmt::format("edge {}", *step.index + 1)
                                 : step.index           ? itemInWords(job, step)
                                 : under == "stretcher" ? stretcherEdge(step.name)
                                                        : wordFor(under, step.name);
        if (!part.empty()) text += (text.empty() ? "" : ", ") + part;
        under = step.name;
    }
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = char(text[0] - 'a' + 'A');
    return text;
}

} // namespace boltwright
