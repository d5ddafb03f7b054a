#include "core/files/spellings.h"

#include "core/measure/length_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace boltwright {
namespace {

using Kind = Json::Kind;

tl::unexpected<Misread> wrong(const Json &json, std::string_view what) {
    return tl::unexpected(Misread{"", fmt::format("{} {}", shown(json), what)});
}

template <class T>
tl::unexpected<Misread> inside(const std::string &where, const Read<T> &bad) {
    return tl::unexpected(Misread{where + bad.error().where, bad.error().what});
}

/// In the order in which the file lists them.
constexpr std::array<std::pair<std::string_view, int>, 4> edgesByName = {
    {{"top", Top}, {"bottom", Bottom}, {"left", Left}, {"right", Right}}};

bool isPolygon(const Shape *shape) { return shape && std::holds_alternative<PolygonShape>(*shape); }

std::optional<int> namedEdge(std::string_view name) {
    for (const auto &[word, edge] : edgesByName)
        if (word == name) return edge;
    return std::nullopt;
}

template <class Number>
std::optional<Number> numberIn(std::string_view text) {
    Number number{};
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    return number;
}

std::optional<int> numberedEdge(std::string_view text) {
    const auto number = numberIn<int>(text);
    // A number that is no edge of anything would only serve to run out of memory.
    return number && *number >= 0 && *number < 10'000 ? number : std::nullopt;
}

std::string edgesOf(const Shape *shape) {
    if (isPolygon(shape)) return fmt::format("an edge's number from 0 to {}", edgeCount(*shape) - 1);
    return "top, bottom, left or right";
}

/// The edge that a key of an object names.
std::optional<int> edgeOfKey(const std::string &key, const Shape *shape) {
    if (!shape) return namedEdge(key) ? namedEdge(key) : numberedEdge(key);
    if (!isPolygon(shape)) return namedEdge(key);
    const auto edge = numberedEdge(key);
    return edge && std::size_t(*edge) < edgeCount(*shape) ? edge : std::nullopt;
}

std::string keyOfEdge(int edge, const Shape *shape) {
    if (!isPolygon(shape))
        for (const auto &[word, e] : edgesByName)
            if (e == edge) return std::string(word);
    return std::to_string(edge);
}

/// The edges in the order in which the file lists them.
std::vector<int> inFileOrder(std::size_t count, const Shape *shape) {
    if (!isPolygon(shape) && count == 4) return {Top, Bottom, Left, Right};
    std::vector<int> edges;
    for (std::size_t i = 0; i < count; ++i) edges.push_back(int(i));
    return edges;
}

/// A name or a number, as far as the shape has names; whether it has that edge is not asked.
std::optional<int> anyEdge(const Json &json, const Shape *shape) {
    if (json.is(Kind::Text) && !isPolygon(shape))
        if (const auto edge = namedEdge(json.text)) return edge;
    if (json.is(Kind::Number) || (json.is(Kind::Text) && (!shape || isPolygon(shape)))) {
        const auto edge = numberedEdge(json.text);
        if (edge && (!shape || isPolygon(shape) || *edge >= 4)) return edge;
    }
    return std::nullopt;
}

Json printedEdge(int edge, const Shape *shape) {
    if (shape && !isPolygon(shape) && edge < 4) return Json::ofText(keyOfEdge(edge, shape));
    return Json::ofNumber(std::to_string(edge));
}

} // namespace

Read<std::string> AsText::read(const Json &json) const {
    if (json.is(Kind::Text)) return json.text;
    return wrong(json, "is not a text; write one in double quotes");
}

Read<bool> AsFlag::read(const Json &json) const {
    if (json.is(Kind::Flag)) return json.flag;
    return wrong(json, "is neither true nor false");
}

Read<int> AsWhole::read(const Json &json) const {
    if (json.is(Kind::Number))
        if (const auto number = numberIn<int>(json.text)) return *number;
    return wrong(json, "is not a whole number; write one such as 2");
}

Read<double> AsAmount::read(const Json &json) const {
    if (json.is(Kind::Number))
        if (const auto number = numberIn<double>(json.text); number && std::isfinite(*number)) return *number;
    return wrong(json, "is not an amount of money; write a number such as 48.50");
}

Json AsAmount::print(double amount) const {
    std::array<char, 64> text;
    const auto end = std::to_chars(text.data(), text.data() + text.size(), amount).ptr;
    return Json::ofNumber(std::string(text.data(), end));
}

Read<std::string> AsColour::read(const Json &json) const {
    if (json.is(Kind::Text) && json.text.empty()) return json.text;
    if (json.is(Kind::Text) && json.text.size() == 7 && json.text[0] == '#' &&
        json.text.find_first_not_of("0123456789abcdefABCDEF", 1) == std::string::npos)
        return json.text;
    return wrong(json, "is no colour; write one such as \"#a7b0ad\"");
}

Read<PictureBytes> AsBytes::read(const Json &json) const {
    if (json.is(Kind::Text)) return PictureBytes(json.text);
    return wrong(json, "is no picture; write its bytes as base64 text");
}

namespace {

std::optional<double> shareIn(const Json &json) {
    if (!json.is(Kind::Number)) return std::nullopt;
    const auto number = numberIn<double>(json.text);
    // Beyond its edge is a place too, but not a mile beyond.
    return number && std::isfinite(*number) && std::abs(*number) <= 100 ? number : std::nullopt;
}

/// Whole millionths are printed alike by every machine.
Json shareOf(double share) {
    const long long millionths = std::llround(share * 1e6);
    std::string text = fmt::format("{}{}.{:06}", millionths < 0 ? "-" : "", std::abs(millionths) / 1'000'000,
                                   std::abs(millionths) % 1'000'000);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return Json::ofNumber(text);
}

} // namespace

Read<PicturePoint> AsPicturePoint::read(const Json &json) const {
    if (json.is(Kind::List) && json.items.size() == 2)
        if (const auto right = shareIn(json.items[0]), down = shareIn(json.items[1]); right && down)
            return PicturePoint{*right, *down};
    return wrong(json, "is no place in a picture; write [0.25, 0.5] for a quarter from the left and half way down");
}

Json AsPicturePoint::print(PicturePoint point) const { return Json::list({shareOf(point.right), shareOf(point.down)}); }

Read<std::vector<PicturePoint>> AsPicturePoints::read(const Json &json) const {
    if (!json.is(Kind::List) || json.items.size() != 4) return wrong(json, "are not four places in a picture");
    std::vector<PicturePoint> points;
    for (std::size_t i = 0; i < json.items.size(); ++i) {
        const auto point = AsPicturePoint{}.read(json.items[i]);
        if (!point) return tl::unexpected(Misread{fmt::format("[{}]", i) + point.error().where, point.error().what});
        points.push_back(*point);
    }
    return points;
}

Json AsPicturePoints::print(const std::vector<PicturePoint> &points) const {
    std::vector<Json> items;
    for (const PicturePoint &point : points) items.push_back(AsPicturePoint{}.print(point));
    return Json::list(std::move(items));
}

Read<Turn> AsTurn::read(const Json &json) const {
    if (const auto number = AsWhole{}.read(json))
        if (const auto turn = turnOf(*number)) return *turn;
    return wrong(json, "is no turn of a panel; write 0, 45, 90, 135, 180, 225, 270 or 315");
}

Read<Length> AsLength::read(const Json &json) const {
    Result<Length> length;
    if (json.is(Kind::Number))
        length = readDecimal(json.text, unit);
    else if (json.is(Kind::Text))
        length = readLength(json.text, unit);
    else
        return wrong(json, "is not a length; write one such as 20.5 or \"20 1/2 in\"");
    if (length) return *length;
    // The sentence quotes the text; as the file spells it, it stays on one line.
    std::string sentence = length.error().text;
    if (json.is(Kind::Text) && sentence.starts_with("\"" + json.text + "\""))
        sentence = shown(json) + sentence.substr(json.text.size() + 2);
    return tl::unexpected(Misread{"", sentence});
}

Json AsLength::print(Length length) const { return Json::ofNumber(writeDecimal(length, unit)); }

template <class Frame>
Read<PointIn<Frame>> AsPoint<Frame>::read(const Json &json) const {
    if (!json.is(Kind::List) || json.items.size() != 2)
        return wrong(json, "is not a point; write two lengths such as [12, 8.5]");
    const auto x = AsLength{unit}.read(json.items[0]), y = AsLength{unit}.read(json.items[1]);
    if (!x) return inside("[0]", x);
    if (!y) return inside("[1]", y);
    return PointIn<Frame>{*x, *y};
}

template <class Frame>
Json AsPoint<Frame>::print(PointIn<Frame> p) const {
    return Json::list({AsLength{unit}.print(p.x), AsLength{unit}.print(p.y)});
}

template <class Frame>
Read<RingIn<Frame>> AsRing<Frame>::read(const Json &json) const {
    if (!json.is(Kind::List))
        return wrong(json, "is not a list of corners; write one such as [[0, 0], [24, 0], [24, 17]]");
    RingIn<Frame> ring;
    for (std::size_t i = 0; i < json.items.size(); ++i) {
        const auto point = AsPoint<Frame>{unit}.read(json.items[i]);
        if (!point) return inside(fmt::format("[{}]", i), point);
        ring.push_back(*point);
    }
    return ring;
}

template <class Frame>
Json AsRing<Frame>::print(const RingIn<Frame> &ring) const {
    Json json = Json::list();
    for (const auto &p : ring) json.items.push_back(AsPoint<Frame>{unit}.print(p));
    return json;
}

template struct AsPoint<ClothFrame>;
template struct AsPoint<PanelFrame>;
template struct AsRing<ClothFrame>;
template struct AsRing<PanelFrame>;

std::string wordList(const std::vector<std::string_view> &words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
        text += fmt::format("\"{}\"", words[i]);
    }
    return text;
}

Misread notAmong(const Json &json, const std::vector<std::string_view> &words) {
    return {"", fmt::format("{} is not known here; write {}", shown(json), wordList(words))};
}

Read<EdgeLengths> AsEdgeLengths::read(const Json &json) const {
    const AsLength asLength{unit};
    const std::size_t count = shape ? edgeCount(*shape) : 4;
    if (json.is(Kind::Number) || json.is(Kind::Text)) {
        const auto length = asLength.read(json);
        if (!length) return inside("", length);
        return EdgeLengths(count, *length);
    }
    if (json.is(Kind::List)) {
        if (shape && json.items.size() != count)
            return wrong(json,
                         fmt::format("has {} lengths; write one an edge, which makes {}", json.items.size(), count));
        EdgeLengths lengths;
        for (std::size_t i = 0; i < json.items.size(); ++i) {
            const auto length = asLength.read(json.items[i]);
            if (!length) return inside(fmt::format("[{}]", i), length);
            lengths.push_back(*length);
        }
        return lengths;
    }
    if (json.is(Kind::Object)) {
        EdgeLengths lengths(count);
        for (const auto &[key, value] : json.members) {
            const auto edge = edgeOfKey(key, shape);
            if (!edge) return wrong(Json::ofText(key), "is no edge of this panel; write " + edgesOf(shape));
            const auto length = asLength.read(value);
            if (!length) return inside("." + key, length);
            if (std::size_t(*edge) >= lengths.size()) lengths.resize(std::size_t(*edge) + 1);
            lengths[std::size_t(*edge)] = *length;
        }
        return lengths;
    }
    return wrong(json, "gives no length by edge; write one such as 1.5 or {\"top\": 1.5}");
}

Json AsEdgeLengths::print(const EdgeLengths &lengths) const {
    const AsLength asLength{unit};
    const bool complete = !lengths.empty() && (!shape || lengths.size() == edgeCount(*shape)) &&
                          std::all_of(lengths.begin(), lengths.end(), [](const auto &l) { return l.has_value(); });
    const bool alike = std::all_of(lengths.begin(), lengths.end(), [&](const auto &l) { return l == lengths[0]; });
    if (complete && alike && (shape || lengths.size() == 4)) return asLength.print(*lengths[0]);
    if (complete && (shape ? isPolygon(shape) : lengths.size() != 4)) {
        Json json = Json::list();
        for (const auto &length : lengths) json.items.push_back(asLength.print(*length));
        return json;
    }
    Json json = Json::object();
    for (const int edge : inFileOrder(lengths.size(), shape))
        if (const auto &length = lengths[std::size_t(edge)])
            json.members.push_back({keyOfEdge(edge, shape), asLength.print(*length)});
    return json;
}

Read<std::map<int, Length>> AsLengthByEdge::read(const Json &json) const {
    if (!json.is(Kind::Object)) return wrong(json, "gives no length by edge; write one such as {\"bottom\": 0.5}");
    std::map<int, Length> lengths;
    for (const auto &[key, value] : json.members) {
        const auto edge = edgeOfKey(key, &shape);
        if (!edge) return wrong(Json::ofText(key), "is no edge of this panel; write " + edgesOf(&shape));
        const auto length = AsLength{unit}.read(value);
        if (!length) return inside("." + key, length);
        lengths[*edge] = *length;
    }
    return lengths;
}

Json AsLengthByEdge::print(const std::map<int, Length> &lengths) const {
    Json json = Json::object();
    const auto add = [&](int edge) {
        if (const auto it = lengths.find(edge); it != lengths.end())
            json.members.push_back({keyOfEdge(edge, &shape), AsLength{unit}.print(it->second)});
    };
    for (const int edge : inFileOrder(edgeCount(shape), &shape)) add(edge);
    return json;
}

Read<int> AsEdge::read(const Json &json) const {
    const auto edge = anyEdge(json, shape);
    if (edge && (!shape || std::size_t(*edge) < edgeCount(*shape))) return *edge;
    return wrong(json, "is no edge of this panel; write " + edgesOf(shape));
}

Json AsEdge::print(int edge) const { return printedEdge(edge, shape); }

Read<int> AsConcededEdge::read(const Json &json) const {
    if (const auto edge = anyEdge(json, shape)) return *edge;
    return wrong(json, "is no edge; write " + edgesOf(shape));
}

Json AsConcededEdge::print(int edge) const { return printedEdge(edge, shape); }

Read<std::optional<int>> AsConcededEdges::read(const Json &json) const {
    if (json.is(Kind::Text) && json.text == "all") return std::optional<int>();
    if (const auto edge = anyEdge(json, shape)) return edge;
    return wrong(json, "is no edge; write " + edgesOf(shape) + ", or \"all\"");
}

Json AsConcededEdges::print(std::optional<int> edge) const {
    return edge ? printedEdge(*edge, shape) : Json::ofText("all");
}

Read<OtherCloth> AsOtherCloth::read(const Json &json) const {
    if (json.is(Kind::Flag)) return OtherCloth{json.flag, ""};
    if (json.is(Kind::Text)) return OtherCloth{false, json.text};
    return wrong(json, "names no cloth; write true, false or a cloth's id");
}

Json AsOtherCloth::print(const OtherCloth &other) const {
    return other.any || other.id.empty() ? Json::ofFlag(other.any) : Json::ofText(other.id);
}

} // namespace boltwright
