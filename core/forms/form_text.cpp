#include "core/forms/form_text.h"

#include "core/job/key_path.h"
#include "core/measure/length_text.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace boltwright {
namespace {

using Json = nlohmann::ordered_json;

template <class Value>
struct Word {
    Value value;
    const char *word;
};
template <class Value>
using Words = std::vector<Word<Value>>;

const Words<Measure> measureWords = {{Measure::Up, "up"},
                                     {Measure::Across, "across"},
                                     {Measure::Top, "top"},
                                     {Measure::Thickness, "thickness"},
                                     {Measure::Side, "side"}};
const Words<PartKind> kindWords = {{PartKind::Rectangle, "rectangle"},
                                   {PartKind::Trapezoid, "trapezoid"},
                                   {PartKind::OnPoint, "on point"},
                                   {PartKind::BoxCushion, "box cushion"},
                                   {PartKind::KnifeEdge, "knife edge"},
                                   {PartKind::KickSkirt, "kick skirt"},
                                   {PartKind::FlatSkirt, "flat skirt"},
                                   {PartKind::BoxPleatSkirt, "box pleat skirt"},
                                   {PartKind::GatheredSkirt, "gathered skirt"}};
const Words<EdgeTrim> trimWords = {{EdgeTrim::Gimp, "gimp"},
                                   {EdgeTrim::DoubleWelt, "double welt"},
                                   {EdgeTrim::Cord, "cord"},
                                   {EdgeTrim::Nails, "nails"}};
const Words<Centre> centreWords = {{Centre::Across, "across"}, {Centre::Up, "up"}, {Centre::Both, "both"}};
const Words<int> edgeWords = {{Top, "top"}, {Bottom, "bottom"}, {Left, "left"}, {Right, "right"}};

template <class Value>
const char *wordOf(const Words<Value> &words, Value value) {
    for (const auto &w : words)
        if (w.value == value) return w.word;
    return "";
}

/// A mistake in the text, on its way out.
struct Refused {
    std::string what;
};
[[noreturn]] void refuse(const std::string &where, const std::string &what) { throw Refused{where + ": " + what}; }

template <class Value>
Value wordIn(const Json &json, const std::string &where, const Words<Value> &words) {
    std::string all;
    for (const auto &w : words) {
        if (json.is_string() && json.get<std::string>() == w.word) return w.value;
        all += (all.empty() ? "" : ", ") + std::string(w.word);
    }
    refuse(where, json.dump() + " is none of " + all);
}

std::string textIn(const Json &json, const std::string &where) {
    if (!json.is_string() || json.get<std::string>().empty()) refuse(where, "write a text in quotes");
    return json.get<std::string>();
}

bool flagIn(const Json &json, const std::string &where) {
    if (!json.is_boolean()) refuse(where, "write true or false");
    return json.get<bool>();
}

int wholeIn(const Json &json, const std::string &where) {
    if (!json.is_number_integer() || json.get<std::int64_t>() < 1 || json.get<std::int64_t>() > 99)
        refuse(where, "write a number from 1 to 99");
    return json.get<int>();
}

Length lengthIn(const Json &json, const std::string &where, Unit unit) {
    const auto length = json.is_number()   ? readDecimal(json.dump(), unit)
                        : json.is_string() ? readLength(json.get<std::string>(), unit)
                                           : Result<Length>(fault("write a length such as 24 or \"24 1/2\""));
    if (!length) refuse(where, length.error().text);
    if (*length <= Length{}) refuse(where, "write a length above 0");
    return *length;
}

/// The keys of an object, each read once; a key that was not asked for is refused.
class Keys {
public:
    Keys(const Json &json, std::string where) : m_json(json), m_where(std::move(where)) {
        if (!json.is_object()) refuse(m_where, "write an object in braces");
    }
    const Json *find(const char *key) {
        m_asked.insert(key);
        const auto it = m_json.find(key);
        return it == m_json.end() ? nullptr : &*it;
    }
    const Json &need(const char *key) {
        const Json *json = find(key);
        if (!json) refuse(at(key), "this key is missing");
        return *json;
    }
    std::string at(const std::string &key) const { return m_where + ", " + key; }
    void done() const {
        for (const auto &[key, value] : m_json.items())
            if (!m_asked.contains(key)) refuse(m_where + ", " + quotedName(key), "there is no such key in a form");
    }

private:
    const Json &m_json;
    std::string m_where;
    std::set<std::string> m_asked;
};

std::vector<PartMeasure> measuresIn(const Json &json, const std::string &where, Unit unit) {
    if (!json.is_array()) refuse(where, "write a list such as [[\"up\", \"front to back\", 22]]");
    std::vector<PartMeasure> measures;
    for (const Json &item : json) {
        if (!item.is_array() || item.size() != 3) refuse(where, "a measure is its key, its words and a typical length");
        const Measure measure = wordIn(item[0], where, measureWords);
        for (const PartMeasure &before : measures)
            if (before.measure == measure) refuse(where, item[0].dump() + " stands twice");
        measures.push_back({measure, textIn(item[1], where), lengthIn(item[2], where, unit)});
    }
    return measures;
}

EdgeKind edgeKindIn(const Json &json, const std::string &where) {
    const auto kind = json.is_string() ? edgeKindNamed(json.get<std::string>()) : std::nullopt;
    if (kind) return *kind;
    std::string all;
    for (EdgeKind k : edgeKinds) all += (all.empty() ? "" : ", ") + std::string(nameOf(k));
    refuse(where, json.dump() + " is none of " + all);
}

std::array<EdgeKind, 4> edgesIn(const Json &json, const std::string &where) {
    std::array<EdgeKind, 4> edges{};
    if (json.is_string()) {
        edges.fill(edgeKindIn(json, where));
        return edges;
    }
    Keys keys(json, where);
    for (const auto &[edge, word] : edgeWords)
        if (const Json *kind = keys.find(word)) edges[std::size_t(edge)] = edgeKindIn(*kind, keys.at(word));
    keys.done();
    return edges;
}

std::map<int, EdgeTrim> trimsIn(const Json &json, const std::string &where) {
    std::map<int, EdgeTrim> trims;
    Keys keys(json, where);
    for (const auto &[edge, word] : edgeWords)
        if (const Json *trim = keys.find(word)) trims[edge] = wordIn(*trim, keys.at(word), trimWords);
    keys.done();
    return trims;
}

void needMeasures(const FormPart &part, const std::string &where) {
    const auto all = measuresOf(part.kind);
    for (Measure m : all)
        if (!part.measure(m))
            refuse(where,
                   fmt::format("a {} has the measure \"{}\"", wordOf(kindWords, part.kind), wordOf(measureWords, m)));
    for (const PartMeasure &p : part.measures)
        if (std::find(all.begin(), all.end(), p.measure) == all.end())
            refuse(where, fmt::format("a {} has no measure \"{}\"", wordOf(kindWords, part.kind),
                                      wordOf(measureWords, p.measure)));
}

FormPart partIn(const Json &json, std::size_t index, Unit unit) {
    const std::string id =
        json.is_object() && json.contains("id") && json["id"].is_string() ? json["id"].get<std::string>() : "";
    const std::string where = id.empty() ? fmt::format("parts[{}]", index) : "part " + quotedName(id);
    Keys keys(json, where);
    FormPart part;
    part.id = textIn(keys.need("id"), keys.at("id"));
    part.mark = textIn(keys.need("mark"), keys.at("mark"));
    part.name = textIn(keys.need("name"), keys.at("name"));
    if (const Json *kind = keys.find("kind")) part.kind = wordIn(*kind, keys.at("kind"), kindWords);
    part.measures = measuresIn(keys.need("measures"), keys.at("measures"), unit);
    needMeasures(part, keys.at("measures"));
    if (const Json *count = keys.find("count")) part.count = wholeIn(*count, keys.at("count"));
    if (const Json *mirror = keys.find("mirror")) part.mirror = flagIn(*mirror, keys.at("mirror"));
    if (const Json *hidden = keys.find("hidden")) part.hidden = flagIn(*hidden, keys.at("hidden"));
    if (const Json *optional = keys.find("optional")) part.optional = flagIn(*optional, keys.at("optional"));
    if (const Json *edges = keys.find("edges")) part.edges = edgesIn(*edges, keys.at("edges"));
    if (const Json *trims = keys.find("trims")) part.trims = trimsIn(*trims, keys.at("trims"));
    if (const Json *motif = keys.find("motif")) part.motif = wordIn(*motif, keys.at("motif"), centreWords);
    if (const Json *alike = keys.find("alike")) part.alike = flagIn(*alike, keys.at("alike"));
    if (const Json *pieces = keys.find("pieces")) part.mostPieces = wholeIn(*pieces, keys.at("pieces"));
    if (part.mostPieces > 1 && part.kind != PartKind::Rectangle && !isSkirt(part.kind))
        refuse(keys.at("pieces"), "only a rectangle or a skirt may be made of pieces");
    keys.done();
    return part;
}

bool knows(const PieceForm &form, const std::string &id) {
    if (form.part(id)) return true;
    constexpr std::string_view front = "-front";
    if (!id.ends_with(front)) return false;
    const FormPart *cushion = form.part(id.substr(0, id.size() - front.size()));
    return cushion && cushion->kind == PartKind::BoxCushion;
}

FormFlow flowIn(const Json &json, std::size_t index, const PieceForm &form) {
    Keys keys(json, fmt::format("flow[{}]", index));
    FormFlow flow;
    flow.from = textIn(keys.need("from"), keys.at("from"));
    flow.to = textIn(keys.need("to"), keys.at("to"));
    if (const Json *edge = keys.find("edge")) flow.edge = wordIn(*edge, keys.at("edge"), edgeWords);
    if (const Json *edge = keys.find("edge_to")) flow.edgeTo = wordIn(*edge, keys.at("edge_to"), edgeWords);
    keys.done();
    for (const auto &[key, id] : {std::pair{"from", flow.from}, std::pair{"to", flow.to}})
        if (!knows(form, id)) refuse(keys.at(key), quotedName(id) + " is no part of this form");
    return flow;
}

int drawnIn(const Json &json, const std::string &where) {
    if (!json.is_number_integer() || json.get<std::int64_t>() < -999 || json.get<std::int64_t>() > 999)
        refuse(where, "write whole numbers from -999 to 999");
    return json.get<int>();
}

std::string faceIn(const Json *json, const std::string &where) {
    if (!json) return {};
    if (!json->is_string()) refuse(where, "write a part's id in quotes");
    return json->get<std::string>();
}

/// Left turns only, so that what is seen of it is told by the sides' directions.
bool isConvex(const std::vector<std::array<int, 2>> &foot) {
    for (std::size_t i = 0; i < foot.size(); ++i) {
        const auto &a = foot[i], &b = foot[(i + 1) % foot.size()], &c = foot[(i + 2) % foot.size()];
        if ((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) <= 0) return false;
    }
    return foot.size() >= 3;
}

/// A block is a "box" of six numbers (from and to along x, y, z), or a "foot" of corners with "from" and "to".
DrawnBlock blockIn(const Json &json, std::size_t index) {
    Keys keys(json, fmt::format("drawing[{}]", index));
    DrawnBlock block;
    if (const Json *box = keys.find("box")) {
        if (!box->is_array() || box->size() != 6) refuse(keys.at("box"), "write six numbers");
        std::array<int, 6> n{};
        for (std::size_t i = 0; i < 6; ++i) n[i] = drawnIn((*box)[i], keys.at("box"));
        block.foot = {{n[0], n[2]}, {n[1], n[2]}, {n[1], n[3]}, {n[0], n[3]}};
        block.low = n[4], block.high = n[5];
        for (const char *side : {"front", "right", "back", "left"})
            block.sides.push_back(faceIn(keys.find(side), keys.at(side)));
    } else {
        const Json &foot = keys.need("foot");
        if (!foot.is_array() || foot.size() > 12) refuse(keys.at("foot"), "write three to twelve corners");
        for (const Json &corner : foot) {
            if (!corner.is_array() || corner.size() != 2) refuse(keys.at("foot"), "a corner is two numbers");
            block.foot.push_back({drawnIn(corner[0], keys.at("foot")), drawnIn(corner[1], keys.at("foot"))});
        }
        block.low = drawnIn(keys.need("from"), keys.at("from"));
        block.high = drawnIn(keys.need("to"), keys.at("to"));
        if (const Json *sides = keys.find("sides")) {
            if (!sides->is_array() || sides->size() != block.foot.size())
                refuse(keys.at("sides"), "write one for each corner");
            for (const Json &side : *sides) block.sides.push_back(faceIn(&side, keys.at("sides")));
        } else {
            block.sides.resize(block.foot.size());
        }
    }
    block.top = faceIn(keys.find("top"), keys.at("top"));
    keys.done();
    if (!isConvex(block.foot) || block.low >= block.high)
        refuse(fmt::format("drawing[{}]", index), "a block has corners counter-clockwise, is convex and stands up");
    return block;
}

PieceForm formIn(const Json &json) {
    Keys keys(json, "form");
    PieceForm form;
    if (const Json &version = keys.need("form"); version != 1) refuse(keys.at("form"), "this program reads version 1");
    const Words<Unit> units = {{Unit::Inch, "in"}, {Unit::Centimetre, "cm"}, {Unit::Millimetre, "mm"}};
    const Unit unit = wordIn(keys.need("unit"), keys.at("unit"), units);
    form.id = textIn(keys.need("id"), keys.at("id"));
    form.name = textIn(keys.need("name"), keys.at("name"));
    if (const Json *place = keys.find("place")) form.place = wholeIn(*place, keys.at("place"));
    const Json &parts = keys.need("parts");
    if (!parts.is_array() || parts.empty()) refuse(keys.at("parts"), "write a list of at least one part");
    std::set<std::string> ids;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        form.parts.push_back(partIn(parts[i], i, unit));
        if (!ids.insert(form.parts.back().id).second)
            refuse("part " + quotedName(form.parts.back().id), "this id stands twice");
    }
    if (const Json *flows = keys.find("flow")) {
        if (!flows->is_array()) refuse(keys.at("flow"), "write a list");
        for (std::size_t i = 0; i < flows->size(); ++i) form.flows.push_back(flowIn((*flows)[i], i, form));
    }
    if (const Json *drawing = keys.find("drawing")) {
        if (!drawing->is_array() || drawing->size() > 99) refuse(keys.at("drawing"), "write a list of blocks");
        for (std::size_t i = 0; i < drawing->size(); ++i) form.drawing.push_back(blockIn((*drawing)[i], i));
    }
    keys.done();
    return form;
}

Json lengthOut(Length length, Unit unit) { return Json::parse(writeDecimal(length, unit)); }

Json edgesOut(const FormPart &part) {
    if (std::all_of(part.edges.begin(), part.edges.end(), [&](EdgeKind k) { return k == part.edges[0]; }))
        return std::string(nameOf(part.edges[0]));
    Json out = Json::object();
    for (const auto &[edge, word] : edgeWords) out[word] = std::string(nameOf(part.edges[std::size_t(edge)]));
    return out;
}

Json partOut(const FormPart &part, Unit unit) {
    Json out = {{"id", part.id}, {"mark", part.mark}, {"name", part.name}};
    if (part.kind != PartKind::Rectangle) out["kind"] = wordOf(kindWords, part.kind);
    out["measures"] = Json::array();
    for (const PartMeasure &p : part.measures)
        out["measures"].push_back(Json::array({wordOf(measureWords, p.measure), p.words, lengthOut(p.typical, unit)}));
    if (part.count != 1) out["count"] = part.count;
    if (part.mirror) out["mirror"] = true;
    if (part.hidden) out["hidden"] = true;
    if (part.optional) out["optional"] = true;
    out["edges"] = edgesOut(part);
    for (const auto &[edge, trim] : part.trims) out["trims"][wordOf(edgeWords, edge)] = wordOf(trimWords, trim);
    if (part.motif) out["motif"] = wordOf(centreWords, *part.motif);
    if (part.alike) out["alike"] = true;
    if (part.mostPieces != 1) out["pieces"] = part.mostPieces;
    return out;
}

Json blockOut(const DrawnBlock &block) {
    Json out = {{"foot", block.foot}, {"from", block.low}, {"to", block.high}, {"sides", block.sides}};
    if (!block.top.empty()) out["top"] = block.top;
    return out;
}

} // namespace

Result<PieceForm> readForm(std::string_view text) {
    try {
        return formIn(Json::parse(text));
    } catch (const Refused &refused) {
        return fault(refused.what);
    } catch (const Json::exception &) {
        return fault("the form is not JSON; write it as the forms that come with the program are written");
    }
}

std::string writeForm(const PieceForm &form, Unit unit) {
    Json out = {{"form", 1}, {"unit", std::string(nameOf(unit))}, {"id", form.id}, {"name", form.name}};
    if (form.place > 0) out["place"] = form.place;
    out["parts"] = Json::array();
    for (const FormPart &part : form.parts) out["parts"].push_back(partOut(part, unit));
    if (!form.flows.empty()) out["flow"] = Json::array();
    for (const FormFlow &flow : form.flows)
        out["flow"].push_back({{"from", flow.from},
                               {"edge", wordOf(edgeWords, flow.edge)},
                               {"to", flow.to},
                               {"edge_to", wordOf(edgeWords, flow.edgeTo)}});
    for (const DrawnBlock &block : form.drawing) out["drawing"].push_back(blockOut(block));
    return out.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace boltwright
