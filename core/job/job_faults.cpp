#include "core/geometry/shape_ops.h"
#include "core/job/fault_words.h"
#include "core/job/job.h"
#include "core/job/key_path.h"
#include "core/measure/length_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace boltwright {
namespace {

// Far beyond any piece of furniture; a slip of the finger must not keep the machine busy for hours.
constexpr int mostCopies = 10'000;
constexpr int mostPieces = 1'000;
constexpr std::size_t mostCorners = 1'000;
constexpr int mostInCount = 1'000'000; ///< of a copy's or piece's number in a layout

/// What is wrong so far, each with the place where it stands.
class Faults {
public:
    enum class Words { Files, Trades, PlacesOnly };
    Faults(const Job &job, Words words) : m_job(job), m_words(words) {}

    void add(const KeyPath &where, const std::string &what) {
        if (m_words == Words::PlacesOnly)
            m_texts.push_back(where.text());
        else
            m_texts.push_back(Fault{what}.at(isForScreen() ? placeInWords(m_job, where) : where.text()).text);
    }
    /// For a sentence that names a key or a value of the file.
    void add(const KeyPath &where, const std::string &what, const std::string &inTradeWords) {
        add(where, isForScreen() ? inTradeWords : what);
    }

    void needPositive(const KeyPath &where, Length length) {
        if (length <= Length{}) add(where, written(length) + " is not greater than zero; write a measure above 0");
    }
    void needNoSign(const KeyPath &where, Length length) {
        if (length < Length{}) add(where, written(length) + " is less than zero; write 0 or more");
    }
    std::string written(Length length) const {
        return fmt::format("{} {}", writeDecimal(length, m_job.unit), nameOf(m_job.unit));
    }

    std::vector<std::string> take() { return std::move(m_texts); }
    std::size_t count() const { return m_texts.size(); }

private:
    bool isForScreen() const { return m_words == Words::Trades; }

    const Job &m_job;
    Words m_words;
    std::vector<std::string> m_texts;
};

// Outlines

template <class Frame>
bool hasTwoAlike(RingIn<Frame> ring) {
    std::sort(ring.begin(), ring.end());
    return std::adjacent_find(ring.begin(), ring.end()) != ring.end();
}

/// Whether the ring may be asked further questions.
template <class Frame>
bool needOutline(Faults &faults, const KeyPath &where, const RingIn<Frame> &ring) {
    if (ring.size() < 3) {
        faults.add(where, fmt::format("an outline of {} corners holds nothing; give at least three", ring.size()));
    } else if (ring.size() > mostCorners) {
        faults.add(where, fmt::format("{} corners are too many; give at most {}", ring.size(), mostCorners));
    } else if (hasTwoAlike(ring)) {
        faults.add(where, "a corner stands twice; give each once, and not the first again at the end");
    } else if (!isSimple(ring)) {
        faults.add(where, "the outline crosses or touches itself; give its corners in order, one way round");
    } else {
        return true;
    }
    return false;
}

void faultsOfFlaws(Faults &faults, const KeyPath &owner, const std::vector<Flaw> &flaws) {
    for (std::size_t i = 0; i < flaws.size(); ++i)
        needOutline(faults, owner.item("flaws", i).key("outline"), flaws[i].outline);
}

/// Ids are there, and each is used once.
template <class Parts>
void faultsOfIds(Faults &faults, const KeyPath &owner, std::string_view list, const Parts &parts) {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::string &id = parts[i].id;
        const KeyPath where = owner.item(list, i, id).key("id");
        if (id.empty())
            faults.add(where, "it is empty; give a name that no other has");
        else if (!seen.insert(id).second)
            faults.add(where, quotedName(id) + " is used twice; give each its own");
    }
}

// Cloths

void faultsOfBolt(Faults &faults, const KeyPath &where, const Cloth &cloth) {
    const KeyPath bolt = where.key("bolt");
    faults.needPositive(bolt.key("width"), cloth.bolt->width);
    if (cloth.bolt->length) faults.needPositive(bolt.key("length"), *cloth.bolt->length);
    faults.needNoSign(bolt.key("square"), cloth.bolt->square);
    faultsOfFlaws(faults, bolt, cloth.bolt->flaws);
    if (cloth.bolt->width > Length{} && cloth.selvage >= Length{} && 2 * cloth.selvage >= cloth.bolt->width)
        faults.add(where.key("selvage"), fmt::format("two selvages of {} leave nothing of a width of {}",
                                                     faults.written(cloth.selvage), faults.written(cloth.bolt->width)));
}

void faultsOfPattern(Faults &faults, const KeyPath &where, const Pattern &pattern) {
    if (!pattern.across && !pattern.along)
        faults.add(where, "a pattern repeats across, along or both; give at least one",
                   "give the horizontal repeat, the vertical one, or both");
    if (pattern.across) faults.needPositive(where.key("across"), *pattern.across);
    if (pattern.along) faults.needPositive(where.key("along"), *pattern.along);
    faults.needNoSign(where.key("drop"), pattern.drop);
}

void faultsOfPrice(Faults &faults, const KeyPath &where, const Price &price) {
    if (price.per != "yd" && price.per != "m")
        faults.add(where.key("per"),
                   quotedName(price.per) + " is no length that cloth is sold by; write \"yd\" or \"m\"");
    if (!std::isfinite(price.amount) || price.amount < 0)
        faults.add(where.key("amount"), fmt::format("{} is no price; write zero or more", price.amount));
}

void faultsOfLook(Faults &faults, const KeyPath &where, const ClothLook &look) {
    if (look.size) faults.needPositive(where.key("size"), *look.size);
    for (std::size_t i = 0; i < look.bands.size(); ++i)
        faults.needPositive(where.item("bands", i).key("width"), look.bands[i].width);
}

void faultsOfPhoto(Faults &faults, const KeyPath &where, const RemnantPhoto &photo) {
    if (photo.at.size() != 4)
        faults.add(where.key("at"),
                   fmt::format("{} places; give the four at which the picture's points lie", photo.at.size()));
    else
        needOutline(faults, where.key("at"), photo.at);
    for (std::size_t i = 0; i < photo.taped.size(); ++i)
        faults.needPositive(where.item("taped", i).key("taped"), photo.taped[i].taped);
}

void faultsOfCloth(Faults &faults, const KeyPath &where, const Cloth &cloth) {
    if (cloth.bolt && !cloth.remnants.empty()) faults.add(where, "it has a bolt and remnants; make two cloths of them");
    if (!cloth.bolt && cloth.remnants.empty())
        faults.add(where, "it has neither a bolt nor remnants; give one of them");
    faults.needNoSign(where.key("selvage"), cloth.selvage);
    faults.needNoSign(where.key("edge"), cloth.edge);
    if (cloth.bolt) faultsOfBolt(faults, where, cloth);
    faultsOfIds(faults, where, "remnants", cloth.remnants);
    for (std::size_t i = 0; i < cloth.remnants.size(); ++i) {
        const Remnant &remnant = cloth.remnants[i];
        const KeyPath place = where.item("remnants", i, remnant.id);
        needOutline(faults, place.key("outline"), remnant.outline);
        faultsOfFlaws(faults, place, remnant.flaws);
        if (remnant.photo) faultsOfPhoto(faults, place.key("photo"), *remnant.photo);
    }
    if (cloth.pattern) faultsOfPattern(faults, where.key("pattern"), *cloth.pattern);
    if (cloth.price) faultsOfPrice(faults, where.key("price"), *cloth.price);
    faults.needNoSign(where.key("bow"), cloth.bow);
    if (cloth.look) faultsOfLook(faults, where.key("look"), *cloth.look);
}

// Panels

/// Whether the measured shape may be asked further questions.
bool needShape(Faults &faults, const KeyPath &where, const Shape &shape) {
    const std::size_t before = faults.count();
    if (const auto *rectangle = std::get_if<Rectangle>(&shape)) {
        faults.needPositive(where.key("across"), rectangle->across);
        faults.needPositive(where.key("up"), rectangle->up);
    } else if (const auto *trapezoid = std::get_if<Trapezoid>(&shape)) {
        faults.needPositive(where.key("bottom"), trapezoid->bottom);
        faults.needPositive(where.key("top"), trapezoid->top);
        faults.needPositive(where.key("up"), trapezoid->up);
    } else if (const auto &points = std::get<PolygonShape>(shape).points;
               needOutline(faults, where.key("points"), points) && twiceArea(points) < 0) {
        faults.add(where.key("points"), "the corners run clockwise; give them counter-clockwise");
    }
    return faults.count() == before;
}

/// The key of one edge in an allowance: "allow.top", "allow[2]".
KeyPath edgeKey(const KeyPath &list, const Shape &shape, int edge) {
    return std::holds_alternative<PolygonShape>(shape) ? list.at(std::size_t(edge)) : list.key(edgeName(shape, edge));
}

/// Every corner of the cut outline is within 1 km of the origin: a mitre at a sharp corner can be far longer than the
/// allowance. In floating point, since it is asked before anything exact may be asked; it decides nothing that is near.
bool cutOutlineIsWithinReach(const PanelRing &ring, const std::vector<Length> &allowances) {
    const std::size_t n = ring.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Vector in = ring[i] - ring[(i + n - 1) % n], out = ring[(i + 1) % n] - ring[i];
        const double lengths = std::hypot(double(in.x.ticks()), double(in.y.ticks())) *
                               std::hypot(double(out.x.ticks()), double(out.y.ticks()));
        const double sine = std::abs(double(cross(in, out))) / lengths;
        const bool straightOn = sine < 1e-9 && dot(in, out) > 0;
        const double most = double(std::max(allowances[(i + n - 1) % n], allowances[i]).ticks());
        const double reach = straightOn ? most : 2 * most / std::max(sine, 1e-12);
        const double corner = std::max(std::abs(double(ring[i].x.ticks())), std::abs(double(ring[i].y.ticks())));
        if (corner + reach > double(Length::limit().ticks())) return false;
    }
    return true;
}

void faultsOfAllowances(Faults &faults, const KeyPath &where, const Panel &panel) {
    const std::size_t before = faults.count();
    const auto needEdges = [&](std::string_view key, const EdgeLengths &lengths) {
        if (lengths.size() > edgeCount(panel.shape))
            return faults.add(where.key(key), fmt::format("{} lengths for {} edges; give one an edge", lengths.size(),
                                                          edgeCount(panel.shape)));
        for (std::size_t i = 0; i < lengths.size(); ++i)
            if (lengths[i]) faults.needNoSign(edgeKey(where.key(key), panel.shape, int(i)), *lengths[i]);
    };
    needEdges("allow", panel.allow);
    needEdges("allow_min", panel.allowMin);
    if (faults.count() > before) return;
    const auto preferred = preferredAllowances(panel);
    for (std::size_t i = 0; i < panel.allowMin.size(); ++i)
        if (panel.allowMin[i] && *panel.allowMin[i] > preferred[i])
            faults.add(edgeKey(where.key("allow_min"), panel.shape, int(i)),
                       fmt::format("{} is more than the {} of \"allow\"; what an edge may shrink to is at most that",
                                   faults.written(*panel.allowMin[i]), faults.written(preferred[i])),
                       fmt::format("{} is more than the allowance of {}; what an edge may shrink to is at most that",
                                   faults.written(*panel.allowMin[i]), faults.written(preferred[i])));
    if (!cutOutlineIsWithinReach(measuredOutline(panel.shape), preferred))
        faults.add(where.key("allow"), "with these allowances the cut outline reaches beyond 1 km");
    else if (const auto outline = cutOutline(panel.shape, preferred); !isSimple(outline) || twiceArea(outline) <= 0)
        faults.add(where.key("allow"), "with these allowances the cut outline crosses itself; make them smaller");
}

bool asks(Centre centre, Centre axis) { return centre == Centre::Both || centre == axis; }

/// Whether the cloth repeats on every axis that the wish names, in the turns of that run. On the bias a wish holds on
/// the axes that repeat.
bool repeatsAsAsked(const MotifWish &wish, const Pattern &pattern, Run run) {
    const auto upright = [&] {
        return (!asks(wish.centre, Centre::Across) || pattern.across) &&
               (!asks(wish.centre, Centre::Up) || pattern.along);
    };
    const auto railroaded = [&] {
        return (!asks(wish.centre, Centre::Across) || pattern.along) &&
               (!asks(wish.centre, Centre::Up) || pattern.across);
    };
    switch (run) {
    case Run::UpRoll:
    case Run::DownRoll:
        return upright();
    case Run::Railroad:
        return railroaded();
    case Run::Either:
        return upright() || railroaded();
    case Run::Bias:
        return true;
    }
    return false;
}

void faultsOfMotif(Faults &faults, const KeyPath &where, const Panel &panel, const Cloth &home) {
    const std::string homeName = quotedName(home.name.empty() ? home.id : home.name);
    if (!home.pattern)
        return faults.add(
            where,
            fmt::format("cloth {} has no pattern; leave the motif out, or give the cloth its repeat",
                        quotedName(home.id)),
            fmt::format("cloth {} has no repeat to centre; say \"no\", or give the cloth its repeat first", homeName));
    const Run run = panel.run.value_or(home.up == PatternUp::Across ? Run::Railroad : Run::UpRoll);
    if (run == Run::Bias && panel.motif->centre != Centre::Both)
        return faults.add(where.key("centre"), "on the bias only \"both\" can be asked for",
                          "on the bias it can be centred both ways, or not at all");
    if (repeatsAsAsked(*panel.motif, *home.pattern, run)) return;
    if (panel.may.turn && repeatsAsAsked(*panel.motif, *home.pattern, Run::Either)) return;
    // With both repeats every turn would do, so one of them is missing.
    faults.add(
        where.key("centre"),
        fmt::format(
            "cloth {} repeats only {}, and in no turn of this panel does that do; ask for another centre or run",
            quotedName(home.id), home.pattern->across ? "across" : "along"),
        fmt::format("cloth {} has no {} repeat, and as the panel runs that does not do; centre it another way, or "
                    "run it another way",
                    homeName, home.pattern->across ? "vertical" : "horizontal"));
}

void faultsOfPieces(Faults &faults, const KeyPath &where, const Panel &panel) {
    const Pieces &pieces = panel.pieces;
    if (pieces.most < 1 || pieces.most > mostPieces)
        faults.add(where.key("most"), fmt::format("{} is no number of pieces; write 1 to {}", pieces.most, mostPieces));
    else if (pieces.most > 1 && !std::holds_alternative<Rectangle>(panel.shape))
        faults.add(where.key("most"),
                   fmt::format("{}, but only a rectangle may be made of pieces; write 1", pieces.most));
    faults.needNoSign(where.key("seam"), pieces.seam);
    faults.needNoSign(where.key("shortest"), pieces.shortest);
}

void faultsOfMay(Faults &faults, const KeyPath &where, const Panel &panel, const Job &job) {
    const std::string &other = panel.may.otherCloth.id;
    if (!other.empty() && !job.cloth(other))
        faults.add(where.key("other_cloth"),
                   fmt::format("there is no cloth {}; write true, false or a cloth's id", quotedName(other)));
    for (const auto &[edge, length] : panel.may.stretcher) {
        const KeyPath stretcher = where.key("stretcher");
        if (edge < 0 || std::size_t(edge) >= edgeCount(panel.shape))
            faults.add(stretcher, fmt::format("there is no edge {}", edge));
        else
            faults.needNoSign(stretcher.key(edgeName(panel.shape, edge)), length);
    }
}

void faultsOfPanel(Faults &faults, const KeyPath &where, const Panel &panel, const Job &job) {
    if (panel.count < 1 || panel.count > mostCopies)
        faults.add(where.key("count"),
                   fmt::format("{} is no number of copies; write 1 to {}", panel.count, mostCopies));
    if (panel.cloth && !job.cloth(*panel.cloth))
        faults.add(where.key("cloth"), "there is no cloth " + quotedName(*panel.cloth));
    else if (panel.motif && !job.cloths.empty())
        faultsOfMotif(faults, where.key("motif"), panel, job.clothOf(panel));
    if (needShape(faults, where.key("shape"), panel.shape)) {
        faultsOfAllowances(faults, where, panel);
        faultsOfMay(faults, where.key("may"), panel, job);
    }
    faultsOfPieces(faults, where.key("pieces"), panel);
}

// Joins over which the pattern runs on

struct EndKeys {
    std::string_view panel, edge, at, copy;
};
constexpr EndKeys firstEnd = {"from", "edge", "at", "copy"}, secondEnd = {"to", "edge_to", "at_to", "copy_to"};

void faultsOfEnd(Faults &faults, const KeyPath &where, const FlowEnd &end, const EndKeys &keys, const Job &job) {
    const Panel *panel = job.panel(end.panel);
    if (!panel) return faults.add(where.key(keys.panel), "there is no panel " + quotedName(end.panel));
    if (!end.edge && !end.at)
        faults.add(where, fmt::format("give \"{}\" or \"{}\", so that it is known where {} is joined", keys.edge,
                                      keys.at, quotedName(end.panel)));
    if (end.edge && (*end.edge < 0 || std::size_t(*end.edge) >= edgeCount(panel->shape)))
        faults.add(where.key(keys.edge), fmt::format("{} has no edge {}", quotedName(end.panel), *end.edge));
    if (end.copy && (*end.copy < 1 || *end.copy > panel->count))
        faults.add(where.key(keys.copy),
                   fmt::format("{} has no copy {}; write 1 to {}", quotedName(end.panel), *end.copy, panel->count));
}

void faultsOfFlow(Faults &faults, const KeyPath &where, const Flow &flow, const Job &job) {
    faultsOfEnd(faults, where, flow.from, firstEnd, job);
    faultsOfEnd(faults, where, flow.to, secondEnd, job);
    faults.needNoSign(where.key("lost"), flow.lost);
    if (flow.lost > Length{} && !flow.from.edge)
        faults.add(where.key("lost"), "what is lost needs \"edge\", which says which way it goes");
    const bool namesTwoCopies = flow.from.copy && flow.to.copy && flow.from.copy != flow.to.copy;
    if (flow.from.panel == flow.to.panel && !namesTwoCopies)
        faults.add(where, fmt::format("it joins {} to itself; name two of its copies with \"copy\" and \"copy_to\"",
                                      quotedName(flow.from.panel)));
}

// Layouts. Whether one is right is for the check to say; here stands only what no layout can mean.

void needCount(Faults &faults, const KeyPath &where, int n) {
    if (n < 1 || n > mostInCount) faults.add(where, fmt::format("{} is no number to count by; write 1 or more", n));
}

void faultsOfCut(Faults &faults, const KeyPath &where, const Cut &cut, const Job &job) {
    needCount(faults, where.key("copy"), cut.copy);
    needCount(faults, where.key("piece"), cut.piece);
    needCount(faults, where.key("of"), cut.of);
    if (cut.piece > cut.of)
        faults.add(where.key("piece"), fmt::format("there is no piece {} of {}", cut.piece, cut.of));
    if (cut.cloth && !job.cloth(*cut.cloth))
        faults.add(where.key("cloth"), "there is no cloth " + quotedName(*cut.cloth));
    for (const auto &length : cut.allow)
        if (length) faults.needNoSign(where.key("allow"), *length);
    if (cut.length) faults.needPositive(where.key("length"), *cut.length);
}

void faultsOfConcession(Faults &faults, const KeyPath &where, const Concession &concession) {
    needCount(faults, where.key("copy"), concession.copy);
    const bool isStretcher = concession.kind == Concession::Kind::Stretcher;
    if (isStretcher && !concession.edge) faults.add(where.key("edge"), "this key is missing", "it is not told");
    if (!isStretcher && concession.kind != Concession::Kind::Trim) return;
    if (!concession.from) faults.add(where.key("from"), "this key is missing", "it is not told");
    if (!concession.to) faults.add(where.key("to"), "this key is missing", "it is not told");
    if (concession.from) faults.needNoSign(where.key("from"), *concession.from);
    if (concession.to) faults.needNoSign(where.key("to"), *concession.to);
}

void faultsOfLayout(Faults &faults, const KeyPath &where, const Layout &layout, const Job &job) {
    for (std::size_t i = 0; i < layout.cloths.size(); ++i) {
        const KeyPath use = where.item("cloths", i, layout.cloths[i].id);
        if (!job.cloth(layout.cloths[i].id))
            faults.add(use.key("id"), "there is no cloth " + quotedName(layout.cloths[i].id));
        if (layout.cloths[i].length) faults.needNoSign(use.key("length"), *layout.cloths[i].length);
        if (layout.cloths[i].bound) faults.needNoSign(use.key("bound"), *layout.cloths[i].bound);
    }
    for (std::size_t i = 0; i < layout.cuts.size(); ++i)
        faultsOfCut(faults, where.item("cuts", i, layout.cuts[i].panel), layout.cuts[i], job);
    for (std::size_t i = 0; i < layout.leftOut.size(); ++i)
        needCount(faults, where.item("left_out", i, layout.leftOut[i].panel).key("copy"), layout.leftOut[i].copy);
    for (std::size_t i = 0; i < layout.conceded.size(); ++i)
        faultsOfConcession(faults, where.item("conceded", i, layout.conceded[i].panel), layout.conceded[i]);
}

void faultsOfTrimming(Faults &faults, const KeyPath &where, const Trimming &trimming, const Job &job) {
    faults.needPositive(where.key("edges"), trimming.edges);
    needCount(faults, where.key("runs"), trimming.runs);
    if (trimming.reserve < 0 || trimming.reserve > 100)
        faults.add(where.key("reserve"), fmt::format("{} in the hundred is not from 0 to 100", trimming.reserve));
    if (trimming.cloth && !job.cloth(*trimming.cloth))
        faults.add(where.key("cloth"), "there is no cloth " + quotedName(*trimming.cloth));
    for (const auto &[key, length] : {std::pair{"strip", trimming.strip}, std::pair{"shortest", trimming.shortest},
                                      std::pair{"head", trimming.head}, std::pair{"pitch", trimming.pitch}})
        faults.needNoSign(where.key(key), length);
    if (trimming.isStrip()) faults.needPositive(where.key("strip"), trimming.strip);
    if (trimming.isStrip() && trimming.from == StripsFrom::Scraps)
        faults.needPositive(where.key("shortest"), trimming.shortest);
    if (trimming.kind == Trimming::Kind::Nails) faults.needPositive(where.key("head"), trimming.head);
}

void needFewCopies(Faults &faults, const std::vector<Panel> &panels) {
    std::int64_t copies = 0;
    for (const Panel &panel : panels) copies += std::max(panel.count, 0);
    if (copies > mostCopies)
        faults.add(KeyPath().key("panels"),
                   fmt::format("{} copies in all are too many; a job has at most {}", copies, mostCopies));
}

std::vector<std::string> allFaults(const Job &job, Faults::Words words) {
    Faults faults(job, words);
    const KeyPath top;
    if (job.cloths.empty()) faults.add(top.key("cloths"), "there is none; give at least one");
    faultsOfIds(faults, top, "cloths", job.cloths);
    for (std::size_t i = 0; i < job.cloths.size(); ++i)
        faultsOfCloth(faults, top.item("cloths", i, job.cloths[i].id), job.cloths[i]);
    faults.needNoSign(top.key("gap"), job.gap);
    faultsOfIds(faults, top, "panels", job.panels);
    needFewCopies(faults, job.panels);
    for (std::size_t i = 0; i < job.panels.size(); ++i)
        faultsOfPanel(faults, top.item("panels", i, job.panels[i].id), job.panels[i], job);
    for (std::size_t i = 0; i < job.flows.size(); ++i) faultsOfFlow(faults, top.item("flow", i), job.flows[i], job);
    for (std::size_t i = 0; i < job.trimmings.size(); ++i)
        faultsOfTrimming(faults, top.item("trimmings", i, job.trimmings[i].name), job.trimmings[i], job);
    for (std::size_t i = 0; i < job.layouts.size(); ++i)
        faultsOfLayout(faults, top.item("layouts", i, job.layouts[i].name), job.layouts[i], job);
    return faults.take();
}

} // namespace

std::vector<std::string> faultsOfJob(const Job &job) { return allFaults(job, Faults::Words::Files); }
std::vector<std::string> placesOfFaults(const Job &job) { return allFaults(job, Faults::Words::PlacesOnly); }
std::vector<std::string> faultsInWords(const Job &job) { return allFaults(job, Faults::Words::Trades); }

} // namespace boltwright
