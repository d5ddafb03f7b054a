#include "core/files/cut_list_csv.h"

#include "core/files/csv.h"
#include "core/geometry/shape_ops.h"
#include "core/job/key_path.h"
#include "core/measure/length_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <functional>
#include <set>

namespace boltwright {
namespace {

/// A panel as a row tells it: the shape in the measures that it may have.
struct Row {
    Panel panel;
    std::optional<Length> across, up, top, lean;
    std::optional<PanelRing> corners;
    std::array<std::optional<Length>, 4> add, least;       ///< by `Edge`
    std::vector<std::optional<Length>> addEach, leastEach; ///< a polygon's
};

Row rowOf(const Panel &panel) {
    Row row;
    row.panel = panel;
    if (const auto *r = std::get_if<Rectangle>(&panel.shape)) {
        row.across = r->across;
        row.up = r->up;
    } else if (const auto *t = std::get_if<Trapezoid>(&panel.shape)) {
        row.across = t->bottom;
        row.up = t->up;
        row.top = t->top;
        if (t->shift != Length{}) row.lean = t->shift;
    } else {
        row.corners = std::get<PolygonShape>(panel.shape).points;
        row.addEach = panel.allow;
        row.leastEach = panel.allowMin;
        return row;
    }
    for (std::size_t e = 0; e < 4; ++e) {
        if (e < panel.allow.size()) row.add[e] = panel.allow[e];
        if (e < panel.allowMin.size()) row.least[e] = panel.allowMin[e];
    }
    return row;
}

/// What is wrong with a cell, and what would be right.
using Read = Result<void>;

struct Column {
    std::string heading;
    std::vector<std::string> also;                              ///< other headings for it
    bool length = false;                                        ///< its heading carries the unit
    bool always = false;                                        ///< written though no panel needs it
    std::function<std::string(const Row &, Unit)> write;        ///< empty: nothing to say
    std::function<Read(Row &, const std::string &, Unit)> read; ///< of a cell that holds something
};

std::string trimmed(std::string_view text) {
    const auto isSpace = [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; };
    while (!text.empty() && isSpace(text.front())) text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back())) text.remove_suffix(1);
    return std::string(text);
}

std::string lower(std::string text) {
    for (char &c : text)
        if (c >= 'A' && c <= 'Z') c = char(c - 'A' + 'a');
    return text;
}

std::vector<std::string> split(const std::string &text, const std::string &at) {
    std::vector<std::string> parts;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find_first_of(at, from), text.size());
        if (std::string part = trimmed(std::string_view(text).substr(from, to - from)); !part.empty())
            parts.push_back(std::move(part));
        from = to + 1;
    }
    return parts;
}

enum class Sign { Positive, ZeroOrMore, Any };

Result<Length> lengthIn(const std::string &cell, Unit unit, Sign sign) {
    const auto length = readLength(cell, unit, Spelling::Hand);
    if (!length) return fault(length.error());
    if (sign == Sign::Positive && *length <= Length{})
        return fault(quotedName(cell) + " is not greater than zero; write a measure above 0");
    if (sign == Sign::ZeroOrMore && *length < Length{})
        return fault(quotedName(cell) + " is less than zero; write 0 or more");
    return *length;
}

/// A length that is there or not.
template <class Get>
Column lengthColumn(std::string heading, std::vector<std::string> also, Sign sign, const Get &get,
                    bool always = false) {
    return {std::move(heading),
            std::move(also),
            true,
            always,
            [get](const Row &row, Unit unit) {
                const std::optional<Length> length = get(const_cast<Row &>(row));
                return length ? writeDecimal(*length, unit) : std::string();
            },
            [get, sign](Row &row, const std::string &cell, Unit unit) -> Read {
                const auto length = lengthIn(cell, unit, sign);
                if (!length) return fault(length.error());
                get(row) = *length;
                return {};
            }};
}

/// A length that is zero where nothing is said.
template <class Get>
Column zeroColumn(std::string heading, std::vector<std::string> also, const Get &get) {
    return {std::move(heading),
            std::move(also),
            true,
            false,
            [get](const Row &row, Unit unit) {
                const Length length = get(const_cast<Row &>(row));
                return length == Length{} ? std::string() : writeDecimal(length, unit);
            },
            [get](Row &row, const std::string &cell, Unit unit) -> Read {
                const auto length = lengthIn(cell, unit, Sign::ZeroOrMore);
                if (!length) return fault(length.error());
                get(row) = *length;
                return {};
            }};
}

template <class Get>
Column textColumn(std::string heading, std::vector<std::string> also, const Get &get, bool always) {
    return {std::move(heading),
            std::move(also),
            false,
            always,
            [get](const Row &row, Unit) { return std::string(get(const_cast<Row &>(row))); },
            [get](Row &row, const std::string &cell, Unit) -> Read {
                get(row) = cell;
                return {};
            }};
}

template <class Get>
Column flagColumn(std::string heading, std::vector<std::string> also, const Get &get) {
    return {std::move(heading),
            std::move(also),
            false,
            false,
            [get](const Row &row, Unit) { return get(const_cast<Row &>(row)) ? std::string("yes") : std::string(); },
            [get](Row &row, const std::string &cell, Unit) -> Read {
                const std::string word = lower(trimmed(cell));
                const bool yes = word == "yes" || word == "y" || word == "x" || word == "1" || word == "true";
                if (!yes && word != "no" && word != "n" && word != "0" && word != "false")
                    return fault(quotedName(cell) + " is neither yes nor no");
                get(row) = yes;
                return {};
            }};
}

template <class Get>
Column wholeColumn(std::string heading, std::vector<std::string> also, const Get &get, int most, bool always) {
    return {std::move(heading),
            std::move(also),
            false,
            always,
            [get, always](const Row &row, Unit) {
                const int n = get(const_cast<Row &>(row));
                return n == 1 && !always ? std::string() : std::to_string(n);
            },
            [get, most](Row &row, const std::string &cell, Unit) -> Read {
                const std::string word = trimmed(cell);
                int n = 0;
                const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), n);
                if (error != std::errc{} || end != word.data() + word.size() || n < 1 || n > most)
                    return fault(quotedName(cell) + fmt::format(" is no number from 1 to {}", most));
                get(row) = n;
                return {};
            }};
}

template <class Value>
struct Named {
    Value value;
    const char *word;
};

/// One word of a few; the first is what nothing says.
template <class Value, class Get>
Column wordColumn(std::string heading, std::vector<std::string> also, std::vector<Named<Value>> words, const Get &get) {
    return {std::move(heading),
            std::move(also),
            false,
            false,
            [get, words](const Row &row, Unit) {
                for (std::size_t i = 1; i < words.size(); ++i)
                    if (words[i].value == get(const_cast<Row &>(row))) return std::string(words[i].word);
                return std::string();
            },
            [get, words](Row &row, const std::string &cell, Unit) -> Read {
                std::string all;
                for (const auto &[value, word] : words) {
                    if (lower(trimmed(cell)) == word) {
                        get(row) = value;
                        return {};
                    }
                    all += (all.empty() ? "" : ", ") + std::string(word);
                }
                return fault(quotedName(cell) + " is none of " + all);
            }};
}

std::string writePoint(PanelPoint p, Unit unit) { return writeDecimal(p.x, unit) + " " + writeDecimal(p.y, unit); }

Result<PanelPoint> pointIn(const std::string &text, Unit unit) {
    const auto parts = split(text, " \t\n\r");
    if (parts.size() != 2) return fault(quotedName(text) + " is no point; write two numbers such as 12 8.5");
    PanelPoint p;
    for (int i = 0; i < 2; ++i) {
        const auto length = lengthIn(parts[std::size_t(i)], unit, Sign::Any);
        if (!length) return fault(length.error());
        (i == 0 ? p.x : p.y) = *length;
    }
    return p;
}

Column cornersColumn() {
    return {"Corners",
            {},
            true,
            false,
            [](const Row &row, Unit unit) {
                std::string text;
                if (row.corners)
                    for (PanelPoint p : *row.corners) text += (text.empty() ? "" : " / ") + writePoint(p, unit);
                return text;
            },
            [](Row &row, const std::string &cell, Unit unit) -> Read {
                PanelRing ring;
                const auto points = split(cell, "/");
                if (points.size() > 500) return fault("more than 500 corners are too many");
                for (const std::string &part : points) {
                    const auto p = pointIn(part, unit);
                    if (!p) return fault(p.error());
                    ring.push_back(*p);
                }
                if (ring.size() < 3) return fault("an outline has at least three corners, such as 0 0 / 24 0 / 12 17");
                if (!isSimple(ring)) return fault("the outline crosses or touches itself; give its corners in order");
                if (twiceArea(ring) <= 0) return fault("the corners run clockwise; give them counter-clockwise");
                row.corners = std::move(ring);
                return {};
            }};
}

/// A polygon's edges in order, "-" for one that has none.
template <class Get>
Column eachEdgeColumn(std::string heading, const Get &get) {
    return {std::move(heading),
            {},
            true,
            false,
            [get](const Row &row, Unit unit) {
                std::string text;
                for (const auto &length : get(const_cast<Row &>(row)))
                    text += (text.empty() ? "" : " ") + (length ? writeDecimal(*length, unit) : std::string("-"));
                return text;
            },
            [get](Row &row, const std::string &cell, Unit unit) -> Read {
                std::vector<std::optional<Length>> lengths;
                const auto parts = split(cell, " \t\n\r");
                if (parts.size() > 500) return fault("more than 500 lengths are too many");
                for (const std::string &part : parts) {
                    if (part == "-") {
                        lengths.emplace_back();
                        continue;
                    }
                    const auto length = lengthIn(part, unit, Sign::ZeroOrMore);
                    if (!length) return fault(length.error());
                    lengths.emplace_back(*length);
                }
                get(row) = std::move(lengths);
                return {};
            }};
}

Column motifPointColumn() {
    return {"Motif at",
            {},
            true,
            false,
            [](const Row &row, Unit unit) {
                const auto &motif = row.panel.motif;
                return motif && motif->at ? writePoint(*motif->at, unit) : std::string();
            },
            [](Row &row, const std::string &cell, Unit unit) -> Read {
                const auto p = pointIn(cell, unit);
                if (!p) return fault(p.error());
                if (!row.panel.motif) row.panel.motif = MotifWish{};
                row.panel.motif->at = *p;
                return {};
            }};
}

Column motifColumn() {
    static const std::vector<Named<Centre>> words = {
        {Centre::Across, "side to side"}, {Centre::Up, "up and down"}, {Centre::Both, "both ways"}};
    return {"Centre a motif",
            {"Motif", "Centre"},
            false,
            false,
            [](const Row &row, Unit) {
                for (const auto &[value, word] : words)
                    if (row.panel.motif && row.panel.motif->centre == value) return std::string(word);
                return std::string();
            },
            [](Row &row, const std::string &cell, Unit) -> Read {
                const std::string said = lower(trimmed(cell));
                if (said == "no") return {};
                for (const auto &[value, word] : words)
                    if (said == word || (said == "yes" && value == Centre::Both)) {
                        if (!row.panel.motif) row.panel.motif = MotifWish{};
                        row.panel.motif->centre = value;
                        return {};
                    }
                return fault(quotedName(cell) + " is none of side to side, up and down, both ways, no");
            }};
}

Column otherClothColumn() {
    return {"May be cut from another cloth",
            {},
            false,
            false,
            [](const Row &row, Unit) {
                const OtherCloth &other = row.panel.may.otherCloth;
                return other.any ? std::string("any cloth") : other.id;
            },
            [](Row &row, const std::string &cell, Unit) -> Read {
                const std::string word = lower(trimmed(cell));
                if (word == "no") return {};
                const bool any = word == "yes" || word == "any cloth";
                row.panel.may.otherCloth = any ? OtherCloth{true, {}} : OtherCloth{false, cell};
                return {};
            }};
}

/// "bottom", or a polygon's edge as a person counts it, from 1; the job file counts from 0.
std::string edgeCell(const Shape &shape, int edge) {
    return std::holds_alternative<PolygonShape>(shape) ? std::to_string(edge + 1) : edgeName(shape, edge);
}

std::optional<int> edgeInCell(const Shape &shape, const std::string &name) {
    for (int edge = 0; edge < int(edgeCount(shape)); ++edge)
        if (edgeCell(shape, edge) == name) return edge;
    return std::nullopt;
}

/// "bottom 0.5 / left 1"; a polygon's edges by number.
Column stretcherColumn() {
    return {"Strip may be sewn on",
            {},
            true,
            false,
            [](const Row &row, Unit unit) {
                std::string text;
                for (const auto &[edge, left] : row.panel.may.stretcher)
                    text +=
                        (text.empty() ? "" : " / ") + edgeCell(row.panel.shape, edge) + " " + writeDecimal(left, unit);
                return text;
            },
            [](Row &row, const std::string &cell, Unit unit) -> Read {
                for (const std::string &part : split(cell, "/")) {
                    const auto words = split(part, " \t\n\r");
                    const std::optional<int> edge =
                        words.size() == 2 ? edgeInCell(row.panel.shape, lower(words[0])) : std::nullopt;
                    if (!edge)
                        return fault(quotedName(part) +
                                     (row.corners ? " names no edge and length; write one such as 1 1/2, edge 1 first"
                                                  : " names no edge and length; write one such as bottom 1/2"));
                    const auto left = lengthIn(words[1], unit, Sign::ZeroOrMore);
                    if (!left) return fault(left.error());
                    row.panel.may.stretcher[*edge] = *left;
                }
                return {};
            }};
}

constexpr std::array<std::pair<int, const char *>, 4> edgesInOrder = {
    {{Top, "top"}, {Bottom, "bottom"}, {Left, "left"}, {Right, "right"}}};

const char *const acrossHeading = "Side to side";
const char *const upHeading = "Up and down";
const char *const cornersHeading = "Corners";
const char *const topHeading = "Side to side at the top";
const char *const leanHeading = "Top moved to the right";
const char *const addEachHeading = "Add at each edge";
const char *const leastEachHeading = "At least at each edge";
const char *const piecesHeading = "Made of pieces, at most";
const char *const idHeading = "Id";
const char *const stripHeading = "Strip may be sewn on";

std::vector<Column> makeColumns() {
    std::vector<Column> all;
    all.push_back(textColumn(
        "Mark", {"Code"}, [](Row &r) -> std::string & { return r.panel.mark; }, true));
    all.push_back(textColumn(
        "Name", {"Part", "Panel", "Description"}, [](Row &r) -> std::string & { return r.panel.name; }, true));
    all.push_back(wholeColumn(
        "Count", {"Qty", "Quantity", "Number", "Pieces", "No."}, [](Row &r) -> int & { return r.panel.count; }, 999,
        true));
    all.push_back(lengthColumn(
        acrossHeading, {"Width", "Across", "Side-to-side"}, Sign::Positive,
        [](Row &r) -> std::optional<Length> & { return r.across; }, true));
    all.push_back(lengthColumn(
        upHeading, {"Height", "Up", "Up-and-down", "Front to back", "Length"}, Sign::Positive,
        [](Row &r) -> std::optional<Length> & { return r.up; }, true));
    all.push_back(lengthColumn(topHeading, {"Top width"}, Sign::Positive,
                               [](Row &r) -> std::optional<Length> & { return r.top; }));
    all.push_back(lengthColumn(leanHeading, {}, Sign::Any, [](Row &r) -> std::optional<Length> & { return r.lean; }));
    all.push_back(cornersColumn());
    for (const auto &[edge, name] : edgesInOrder)
        all.push_back(lengthColumn(
            fmt::format("Add at {}", name), {fmt::format("Add {}", name)}, Sign::ZeroOrMore,
            [e = std::size_t(edge)](Row &r) -> std::optional<Length> & { return r.add[e]; }, true));
    all.push_back(eachEdgeColumn(
        addEachHeading, [](Row & r) -> auto & { return r.addEach; }));
    for (const auto &[edge, name] : edgesInOrder)
        all.push_back(lengthColumn(fmt::format("At least at {}", name), {}, Sign::ZeroOrMore,
                                   [e = std::size_t(edge)](Row &r) -> std::optional<Length> & { return r.least[e]; }));
    all.push_back(eachEdgeColumn(
        leastEachHeading, [](Row & r) -> auto & { return r.leastEach; }));
    all.push_back(wordColumn<std::optional<Run>>("Run", {"Direction"},
                                                 {{std::nullopt, "as the cloth"},
                                                  {Run::UpRoll, "up the roll"},
                                                  {Run::DownRoll, "down the roll"},
                                                  {Run::Railroad, "railroaded"},
                                                  {Run::Either, "either way"},
                                                  {Run::Bias, "on the bias"}},
                                                 [](Row &r) -> std::optional<Run> & { return r.panel.run; }));
    all.push_back(motifColumn());
    all.push_back(motifPointColumn());
    all.push_back(flagColumn("Copies alike", {}, [](Row &r) -> bool & { return r.panel.alike; }));
    all.push_back(flagColumn("Mirrored pairs", {"Mirrored"}, [](Row &r) -> bool & { return r.panel.mirror; }));
    all.push_back(flagColumn("Out of sight", {"Hidden"}, [](Row &r) -> bool & { return r.panel.hidden; }));
    all.push_back({"Cloth",
                   {"Fabric"},
                   false,
                   false,
                   [](const Row &r, Unit) { return r.panel.cloth.value_or(""); },
                   [](Row &r, const std::string &cell, Unit) -> Read {
                       r.panel.cloth = cell;
                       return {};
                   }});
    all.push_back(wholeColumn(
        piecesHeading, {}, [](Row &r) -> int & { return r.panel.pieces.most; }, 99, false));
    all.push_back(zeroColumn("Seam of a join", {}, [](Row &r) -> Length & { return r.panel.pieces.seam; }));
    all.push_back(zeroColumn("Shortest piece", {}, [](Row &r) -> Length & { return r.panel.pieces.shortest; }));
    all.push_back(flagColumn("Pattern runs over joins", {}, [](Row &r) -> bool & { return r.panel.pieces.match; }));
    all.push_back(wordColumn<Pieces::Where>("Joins", {},
                                            {{Pieces::Where::Any, "anywhere"}, {Pieces::Where::Balanced, "balanced"}},
                                            [](Row &r) -> Pieces::Where & { return r.panel.pieces.where; }));
    all.push_back(flagColumn("May be turned", {}, [](Row &r) -> bool & { return r.panel.may.turn; }));
    all.push_back(flagColumn("May lie off centre", {}, [](Row &r) -> bool & { return r.panel.may.uncentre; }));
    all.push_back(otherClothColumn());
    all.push_back(stretcherColumn());
    all.push_back(textColumn(
        idHeading, {}, [](Row &r) -> std::string & { return r.panel.id; }, false));
    return all;
}

const std::vector<Column> &columns() {
    static const std::vector<Column> all = makeColumns();
    return all;
}

/// What is wrong with a row as a whole, and under which heading it is best mended.
struct RowFault {
    std::string heading, what;
};

std::optional<RowFault> giveShape(Row &row) {
    if (row.corners) {
        row.panel.shape = PolygonShape{*row.corners};
        for (const auto &[there, heading] :
             {std::pair{row.across.has_value(), acrossHeading}, std::pair{row.up.has_value(), upHeading},
              std::pair{row.top.has_value(), topHeading}, std::pair{row.lean.has_value(), leanHeading}})
            if (there) return RowFault{heading, "the corners give the shape already; leave this empty"};
        return std::nullopt;
    }
    for (const auto &[length, heading] : {std::pair{row.across, acrossHeading}, std::pair{row.up, upHeading}})
        if (!length) return RowFault{heading, "nothing is measured here; write a length such as 20 1/2"};
    if (row.top)
        row.panel.shape = Trapezoid{*row.across, *row.top, *row.up, row.lean.value_or(Length{})};
    else if (row.lean)
        return RowFault{topHeading, "a top that is moved needs its own measure side to side"};
    else
        row.panel.shape = Rectangle{*row.across, *row.up};
    return std::nullopt;
}

std::optional<RowFault> giveAllowances(Row &row) {
    Panel &panel = row.panel;
    const auto said = [](const auto &l) { return l.has_value(); };
    if (row.corners) {
        for (const auto &[edge, name] : edgesInOrder) {
            if (row.add[std::size_t(edge)])
                return RowFault{fmt::format("Add at {}", name),
                                "a shape of corners is added to under 'Add at each edge'"};
            if (row.least[std::size_t(edge)])
                return RowFault{fmt::format("At least at {}", name), "a shape of corners has 'At least at each edge'"};
        }
        panel.allow = row.addEach;
        panel.allowMin = row.leastEach;
        for (const auto &[list, heading] :
             {std::pair{&panel.allow, addEachHeading}, std::pair{&panel.allowMin, leastEachHeading}})
            if (list->size() > row.corners->size())
                return RowFault{heading, fmt::format("{} lengths for {} edges; give one an edge", list->size(),
                                                     row.corners->size())};
    } else {
        for (const auto &[list, heading] :
             {std::pair{&row.addEach, addEachHeading}, std::pair{&row.leastEach, leastEachHeading}})
            if (!list->empty()) return RowFault{heading, "this is for a shape that is given by its corners"};
        if (std::any_of(row.add.begin(), row.add.end(), said)) panel.allow.assign(row.add.begin(), row.add.end());
        if (std::any_of(row.least.begin(), row.least.end(), said))
            panel.allowMin.assign(row.least.begin(), row.least.end());
    }
    for (std::size_t e = 0; e < panel.allowMin.size(); ++e)
        if (panel.allowMin[e] && *panel.allowMin[e] > panel.allowance(int(e)))
            return RowFault{row.corners ? leastEachHeading : "At least at " + edgeName(panel.shape, int(e)),
                            "this is more than what is added there; what an edge may shrink to is at most that"};
    if (panel.pieces.most > 1 && !std::holds_alternative<Rectangle>(panel.shape))
        return RowFault{piecesHeading, "only a rectangle may be made of pieces; write 1"};
    return std::nullopt;
}

/// The rules that the job file has for a panel, where it stands alone on cloth that repeats both ways.
std::optional<RowFault> faultOfPanel(Panel panel) {
    Job job;
    Cloth cloth;
    cloth.id = "cloth";
    cloth.bolt = Bolt{};
    cloth.bolt->width = Length::ticks(54 * 8128);
    cloth.pattern = Pattern{};
    cloth.pattern->across = cloth.pattern->along = Length::ticks(8128);
    job.cloths.push_back(std::move(cloth));
    panel.cloth.reset();
    panel.may.otherCloth.id.clear();
    const bool corners = std::holds_alternative<PolygonShape>(panel.shape);
    job.panels.push_back(std::move(panel));
    const auto faults = faultsOfJob(job);
    if (faults.empty()) return std::nullopt;
    // The part behind the key's path, which speaks of the file's words.
    const std::size_t colon = faults[0].rfind("': ") == std::string::npos ? faults[0].find(": ")
                                                                          : faults[0].find(": ", faults[0].find("', "));
    return RowFault{corners ? cornersHeading : acrossHeading,
                    colon == std::string::npos ? faults[0] : faults[0].substr(colon + 2)};
}

/// The id that a panel gets when it has none: its name in small letters, or its mark.
std::string idFor(const Panel &panel) {
    std::string id;
    for (char c : panel.name.empty() ? panel.mark : panel.name) {
        const auto u = static_cast<unsigned char>(c);
        const bool keeps = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || u >= 0x80;
        if (c >= 'A' && c <= 'Z')
            id += char(c - 'A' + 'a');
        else if (keeps)
            id += c;
        else if (!id.empty() && id.back() != '-')
            id += '-';
    }
    while (!id.empty() && id.back() == '-') id.pop_back();
    return id.empty() ? "panel" : id;
}

/// Gives every panel without an id one that no other has.
void giveIds(std::vector<Panel> &panels) {
    std::set<std::string> taken;
    for (const Panel &panel : panels) taken.insert(panel.id);
    for (Panel &panel : panels) {
        if (!panel.id.empty()) continue;
        const std::string plain = idFor(panel);
        std::string id = plain;
        for (int n = 2; taken.contains(id); ++n) id = plain + "-" + std::to_string(n);
        taken.insert(id);
        panel.id = std::move(id);
    }
}

/// "side to side" and the unit of "Side to side (in)".
struct Heading {
    std::string words;
    std::optional<Unit> unit;
};
Heading headingOf(const std::string &cell) {
    Heading heading{lower(trimmed(cell)), std::nullopt};
    const std::size_t open = heading.words.rfind('(');
    if (open != std::string::npos && heading.words.back() == ')') {
        heading.unit = unitNamed(trimmed(heading.words.substr(open + 1, heading.words.size() - open - 2)));
        if (heading.unit) heading.words = trimmed(heading.words.substr(0, open));
    }
    return heading;
}

const Column *columnCalled(const std::string &words) {
    for (const Column &column : columns()) {
        if (lower(column.heading) == words) return &column;
        for (const std::string &other : column.also)
            if (lower(other) == words) return &column;
    }
    return nullptr;
}

class CutListReader {
public:
    CutListReader(CsvTable table, Unit unit) : m_table(std::move(table)), m_unit(unit) {}

    Result<CutList> read() {
        if (auto headings = readHeadings(); !headings) return fault(headings.error());
        for (std::size_t row = m_headingRow + 1; row < m_table.rows.size(); ++row)
            if (auto panel = readRow(row); !panel) return fault(panel.error());
        giveIds(m_list.panels);
        return std::move(m_list);
    }

private:
    /// Which column of the list a column of the table is, and its unit.
    struct Known {
        const Column *column = nullptr;
        Unit unit = Unit::Inch;
    };

    static bool isEmpty(const std::vector<std::string> &row) {
        return std::all_of(row.begin(), row.end(), [](const std::string &cell) { return trimmed(cell).empty(); });
    }

    Result<void> readHeadings() {
        while (m_headingRow < m_table.rows.size() && isEmpty(m_table.rows[m_headingRow])) ++m_headingRow;
        if (m_headingRow == m_table.rows.size())
            return fault(cellName(0, 0) +
                         ": the list is empty; its first row holds headings such as Name, Side to side");
        const auto &cells = m_table.rows[m_headingRow];
        for (std::size_t at = 0; at < cells.size(); ++at) {
            const Heading heading = headingOf(cells[at]);
            m_known.push_back({columnCalled(heading.words), heading.unit.value_or(m_unit)});
            if (!m_known[at].column) {
                if (!heading.words.empty()) m_list.unused.push_back(trimmed(cells[at]));
                continue;
            }
            for (std::size_t before = 0; before < at; ++before)
                if (m_known[before].column == m_known[at].column)
                    return fault(cellName(m_headingRow, at) +
                                 fmt::format(": {} stands over column {} too; keep one of them",
                                             quotedName(m_known[at].column->heading), columnLetters(before)));
        }
        return needMeasures();
    }

    Result<void> needMeasures() const {
        if (columnAt(cornersHeading)) return {};
        for (const char *heading : {acrossHeading, upHeading})
            if (!columnAt(heading))
                return fault(
                    cellName(m_headingRow, m_known.size()) +
                    fmt::format(": no column is headed {}; every panel has its two measures", quotedName(heading)));
        return {};
    }

    std::optional<std::size_t> columnAt(const std::string &heading) const {
        for (std::size_t at = 0; at < m_known.size(); ++at)
            if (m_known[at].column && m_known[at].column->heading == heading) return at;
        return std::nullopt;
    }

    /// "row 4, column D (Side to side): what"; where the table has no such column, the first behind it.
    tl::unexpected<Fault> faultAt(std::size_t row, const std::string &heading, const std::string &what) const {
        std::string line = cellName(row, columnAt(heading).value_or(m_known.size())) + " (" + heading + "): " + what;
        for (char &c : line)
            if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
        return fault(std::move(line));
    }

    Result<void> readRow(std::size_t at) {
        const auto &cells = m_table.rows[at];
        if (isEmpty(cells)) return {};
        for (std::size_t i = m_known.size(); i < cells.size(); ++i)
            if (!trimmed(cells[i]).empty())
                return fault(cellName(at, i) +
                             ": there is no heading over this; is a length with a decimal comma not quoted?");
        Row row;
        if (auto read = readCells(at, row, false); !read) return read;
        if (const auto wrong = giveShape(row)) return faultAt(at, wrong->heading, wrong->what);
        // Edges have names only once the shape is known.
        if (auto read = readCells(at, row, true); !read) return read;
        if (const auto wrong = giveAllowances(row)) return faultAt(at, wrong->heading, wrong->what);
        if (row.panel.mark.empty() && row.panel.name.empty() && row.panel.id.empty())
            return faultAt(at, "Name", "the panel has neither a mark nor a name");
        if (!row.panel.id.empty() && !m_ids.insert(row.panel.id).second)
            return faultAt(at, idHeading, quotedName(row.panel.id) + " is used twice; give each its own");
        Panel probe = row.panel;
        if (probe.id.empty()) probe.id = "panel";
        if (const auto wrong = faultOfPanel(std::move(probe))) return faultAt(at, wrong->heading, wrong->what);
        m_list.panels.push_back(std::move(row.panel));
        return {};
    }

    Result<void> readCells(std::size_t at, Row &row, bool ofEdges) {
        const auto &cells = m_table.rows[at];
        for (std::size_t i = 0; i < std::min(cells.size(), m_known.size()); ++i) {
            const Column *column = m_known[i].column;
            if (!column || trimmed(cells[i]).empty() || (column->heading == stripHeading) != ofEdges) continue;
            // Texts keep their spaces; everything else is read without.
            const bool text = column->heading == "Mark" || column->heading == "Name" || column->heading == "Cloth" ||
                              column->heading == idHeading || column->heading == "May be cut from another cloth";
            if (auto read = column->read(row, text ? cells[i] : trimmed(cells[i]), m_known[i].unit); !read)
                return faultAt(at, column->heading, read.error().text);
        }
        return {};
    }

    CsvTable m_table;
    Unit m_unit;
    std::size_t m_headingRow = 0;
    std::vector<Known> m_known; ///< by column of the table
    std::set<std::string> m_ids;
    CutList m_list;
};

bool idsFollow(const std::vector<Panel> &panels) {
    std::vector<Panel> without = panels;
    for (Panel &panel : without) panel.id.clear();
    giveIds(without);
    for (std::size_t i = 0; i < panels.size(); ++i)
        if (panels[i].id != without[i].id) return false;
    return true;
}

} // namespace

bool hasCutListHeadings(std::string_view text) {
    const auto table = readCsv(text);
    if (!table) return false;
    for (const auto &row : table->rows) {
        if (std::all_of(row.begin(), row.end(), [](const std::string &cell) { return trimmed(cell).empty(); }))
            continue;
        return std::count_if(row.begin(), row.end(), [](const std::string &cell) {
                   const std::string words = headingOf(cell).words;
                   return !words.empty() && columnCalled(words);
               }) >= 2;
    }
    return false;
}

Result<CutList> readCutList(std::string_view text, Unit unit) {
    auto table = readCsv(text);
    if (!table) return fault(table.error());
    return CutListReader(std::move(*table), unit).read();
}

std::string writeCutList(const std::vector<Panel> &panels, Unit unit, char separator) {
    CsvTable table{separator, std::vector<std::vector<std::string>>(panels.size() + 1)};
    std::vector<Row> rows;
    for (const Panel &panel : panels) rows.push_back(rowOf(panel));
    const bool withoutIds = idsFollow(panels);
    for (const Column &column : columns()) {
        std::vector<std::string> cells;
        for (const Row &row : rows) cells.push_back(column.write(row, unit));
        const bool empty = std::all_of(cells.begin(), cells.end(), [](const std::string &c) { return c.empty(); });
        if ((empty && !column.always) || (withoutIds && column.heading == idHeading)) continue;
        table.rows[0].push_back(column.length ? fmt::format("{} ({})", column.heading, nameOf(unit)) : column.heading);
        for (std::size_t i = 0; i < cells.size(); ++i) table.rows[i + 1].push_back(std::move(cells[i]));
    }
    return writeCsv(table);
}

} // namespace boltwright
