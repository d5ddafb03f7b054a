#pragma once

#include "core/files/json.h"
#include "core/job/job.h"

#include <array>
#include <map>
#include <string>

/// How each kind of value stands in a job file. A spelling reads a value (or says what is wrong with it) and prints it
/// in the one way in which the program writes it; to print and to read gives the same value.
namespace boltwright {

/// What is wrong with a value, and where inside it: {"[3]", "4 is not a point; ..."}.
struct Misread {
    std::string where, what;
};
template <class T>
using Read = tl::expected<T, Misread>;

struct AsText {
    Read<std::string> read(const Json &) const;
    Json print(const std::string &text) const { return Json::ofText(text); }
};
struct AsFlag {
    Read<bool> read(const Json &) const;
    Json print(bool flag) const { return Json::ofFlag(flag); }
};
struct AsWhole {
    Read<int> read(const Json &) const;
    Json print(int n) const { return Json::ofNumber(std::to_string(n)); }
};
/// Money.
struct AsAmount {
    Read<double> read(const Json &) const;
    Json print(double amount) const;
};
/// "#rrggbb"; empty: one of the program's own.
struct AsColour {
    Read<std::string> read(const Json &) const;
    Json print(const std::string &colour) const { return Json::ofText(colour); }
};
/// A picture file's bytes as base64.
struct AsBytes {
    Read<PictureBytes> read(const Json &) const;
    Json print(const PictureBytes &bytes) const { return Json::ofText(bytes.base64()); }
};
/// [right, down], to a millionth.
struct AsPicturePoint {
    Read<PicturePoint> read(const Json &) const;
    Json print(PicturePoint point) const;
};
/// Four of them.
struct AsPicturePoints {
    Read<std::vector<PicturePoint>> read(const Json &) const;
    Json print(const std::vector<PicturePoint> &points) const;
};
struct AsTurn {
    Read<Turn> read(const Json &) const;
    Json print(Turn turn) const { return Json::ofNumber(std::to_string(degrees(turn))); }
};
/// A number in the job's unit or a text as a person writes it, with a sign or without.
struct AsLength {
    Unit unit;
    Read<Length> read(const Json &) const;
    Json print(Length length) const;
};

/// [x, y]
template <class Frame>
struct AsPoint {
    Unit unit;
    Read<PointIn<Frame>> read(const Json &) const;
    Json print(PointIn<Frame> p) const;
};
/// [[x, y], ...]
template <class Frame>
struct AsRing {
    Unit unit;
    Read<RingIn<Frame>> read(const Json &) const;
    Json print(const RingIn<Frame> &ring) const;
};

/// One word of a closed set.
template <class Value>
struct Word {
    std::string_view word;
    Value value;
};
std::string wordList(const std::vector<std::string_view> &words); ///< "one or two", "a, b or c"
Misread notAmong(const Json &json, const std::vector<std::string_view> &words);

template <class Value, std::size_t Count>
struct AsWord {
    const std::array<Word<Value>, Count> &words;
    Read<Value> read(const Json &json) const {
        std::vector<std::string_view> all;
        for (const auto &w : words) {
            if (json.is(Json::Kind::Text) && json.text == w.word) return w.value;
            all.push_back(w.word);
        }
        return tl::unexpected(notAmong(json, all));
    }
    Json print(Value value) const {
        for (const auto &w : words)
            if (w.value == value) return Json::ofText(std::string(w.word));
        return {};
    }
};
template <class Value, std::size_t Count>
AsWord(const std::array<Word<Value>, Count> &) -> AsWord<Value, Count>;

/// Lengths by edge: one for all, or by the edge's name; for a polygon a list, or by the edge's number. Without a shape
/// (a cut of a panel that the job has not) the edges are taken for those of a rectangle unless there is a list.
struct AsEdgeLengths {
    Unit unit;
    const Shape *shape;
    Read<EdgeLengths> read(const Json &) const;
    Json print(const EdgeLengths &lengths) const;
};
/// Lengths of some edges, by name or number.
struct AsLengthByEdge {
    Unit unit;
    const Shape &shape;
    Read<std::map<int, Length>> read(const Json &) const;
    Json print(const std::map<int, Length> &lengths) const;
};
/// An edge of the shape: its name, a polygon's by number. Without a shape any edge is taken.
struct AsEdge {
    const Shape *shape;
    Read<int> read(const Json &) const;
    Json print(int edge) const;
};
/// The edge of a concession. The panel may have changed since, so an edge that its shape has no more is taken too.
struct AsConcededEdge {
    const Shape *shape;
    Read<int> read(const Json &) const;
    Json print(int edge) const;
};
/// The same, or "all" (none).
struct AsConcededEdges {
    const Shape *shape;
    Read<std::optional<int>> read(const Json &) const;
    Json print(std::optional<int> edge) const;
};
/// false, true, or a cloth's id.
struct AsOtherCloth {
    Read<OtherCloth> read(const Json &) const;
    Json print(const OtherCloth &other) const;
};

// The words of the file.
enum class ShapeKind { Rectangle, Trapezoid, Polygon };
inline constexpr std::array<Word<Unit>, 3> unitWords = {
    {{"in", Unit::Inch}, {"cm", Unit::Centimetre}, {"mm", Unit::Millimetre}}};
inline constexpr std::array<Word<ShapeKind>, 3> shapeWords = {
    {{"rectangle", ShapeKind::Rectangle}, {"trapezoid", ShapeKind::Trapezoid}, {"polygon", ShapeKind::Polygon}}};
inline constexpr std::array<Word<ChalkLine::Runs>, 2> chalkWords = {
    {{"across", ChalkLine::Runs::Across}, {"along", ChalkLine::Runs::Along}}};
inline constexpr std::array<Word<Way>, 2> wayWords = {{{"one", Way::One}, {"two", Way::Two}}};
inline constexpr std::array<Word<PatternUp>, 2> upWords = {{{"roll", PatternUp::Roll}, {"across", PatternUp::Across}}};
inline constexpr std::array<Word<Figure>, 3> figureWords = {
    {{"stripes", Figure::Stripes}, {"spots", Figure::Spots}, {"sprig", Figure::Sprig}}};
inline constexpr std::array<Word<Run>, 5> runWords = {{{"up-roll", Run::UpRoll},
                                                       {"down-roll", Run::DownRoll},
                                                       {"railroad", Run::Railroad},
                                                       {"either", Run::Either},
                                                       {"bias", Run::Bias}}};
inline constexpr std::array<Word<Centre>, 3> centreWords = {
    {{"across", Centre::Across}, {"up", Centre::Up}, {"both", Centre::Both}}};
inline constexpr std::array<Word<Pieces::Where>, 2> whereWords = {
    {{"any", Pieces::Where::Any}, {"balanced", Pieces::Where::Balanced}}};
inline constexpr std::array<Word<ClothAnswer::Said>, 3> saidWords = {
    {{"open", ClothAnswer::Said::Open}, {"good", ClothAnswer::Said::Good}, {"doubt", ClothAnswer::Said::Doubt}}};
inline constexpr std::array<Word<Trimming::Kind>, 5> trimmingWords = {{{"welt", Trimming::Kind::Welt},
                                                                       {"double-welt", Trimming::Kind::DoubleWelt},
                                                                       {"gimp", Trimming::Kind::Gimp},
                                                                       {"cord", Trimming::Kind::Cord},
                                                                       {"nails", Trimming::Kind::Nails}}};
inline constexpr std::array<Word<StripRun>, 3> stripRunWords = {
    {{"up-roll", StripRun::UpRoll}, {"across", StripRun::Across}, {"bias", StripRun::Bias}}};
inline constexpr std::array<Word<StripsFrom>, 3> stripsFromWords = {
    {{"cloth", StripsFrom::Cloth}, {"scraps", StripsFrom::Scraps}, {"bought", StripsFrom::Bought}}};
inline constexpr std::array<Word<CutState>, 3> stateWords = {
    {{"planned", CutState::Planned}, {"locked", CutState::Locked}, {"cut", CutState::Cut}}};
inline constexpr std::array<Word<Concession::Kind>, 6> concessionWords = {
    {{"trim", Concession::Kind::Trim},
     {"stretcher", Concession::Kind::Stretcher},
     {"seam", Concession::Kind::Seam},
     {"turn", Concession::Kind::Turn},
     {"uncentre", Concession::Kind::Uncentre},
     {"other_cloth", Concession::Kind::OtherCloth}}};

} // namespace boltwright
