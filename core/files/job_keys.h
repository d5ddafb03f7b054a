#pragma once

#include "core/files/spellings.h"

/// Every key of a job file, once, for reading and for writing: in the order in which the program writes them, each with
/// how it is spelt and what leaving it out means. `Io` is a PartReader or a PartWriter:
///
///   must(key, value, spelling)            the key has to be there
///   may(key, value, spelling, leftOut)    left out, the value is `leftOut`
///   shows(key, value, spelling, leftOut)  the same, but a new part is written with it
///   maybe(key, optional, spelling)        left out or null, there is none
///   part, optionalPart, parts             parts that keep what they were read from
///   inside(key, keysInIt)                 an object that is no part of its own
namespace boltwright {

enum class Presence { Required, Optional };

inline const Shape *shapeOfPanel(const Job &job, const std::string &id) {
    const Panel *panel = job.panel(id);
    return panel ? &panel->shape : nullptr;
}

template <class Io>
void keysOf(Io &io, JobCard &card) {
    io.may("title", card.title, AsText{}, "");
    io.may("client", card.client, AsText{}, "");
    io.may("piece", card.piece, AsText{}, "");
    io.may("notes", card.notes, AsText{}, "");
    io.may("date", card.date, AsText{}, "");
}

template <class Io>
void keysOfPicture(Io &io, PictureSource &picture) {
    io.may("file", picture.file, AsText{}, "");
    io.may("data", picture.data, AsBytes{}, PictureBytes{});
}

template <class Io>
void keysOf(Io &io, Swatch &swatch) {
    keysOfPicture(io, swatch.picture);
    io.may("corners", swatch.corners, AsPicturePoints{}, Swatch{}.corners);
    io.may("motif", swatch.motif, AsPicturePoint{}, Swatch{}.motif);
}

template <class Io>
void keysOf(Io &io, Band &band) {
    io.must("from", band.from, AsLength{io.unit()});
    io.must("width", band.width, AsLength{io.unit()});
    io.must("colour", band.colour, AsColour{});
}

template <class Io>
void keysOf(Io &io, ClothLook &look) {
    io.may("ground", look.ground, AsColour{}, "");
    io.may("colour", look.colour, AsColour{}, "");
    io.maybe("figure", look.figure, AsWord{figureWords});
    io.parts("bands", look.bands, Presence::Optional);
    io.maybe("size", look.size, AsLength{io.unit()});
    io.optionalPart("swatch", look.swatch);
}

template <class Io>
void keysOf(Io &io, TapedLength &taped) {
    io.must("from", taped.from, AsPoint<ClothFrame>{io.unit()});
    io.must("to", taped.to, AsPoint<ClothFrame>{io.unit()});
    io.must("taped", taped.taped, AsLength{io.unit()});
}

template <class Io>
void keysOf(Io &io, RemnantPhoto &photo) {
    keysOfPicture(io, photo.picture);
    io.must("points", photo.points, AsPicturePoints{});
    io.must("at", photo.at, AsRing<ClothFrame>{io.unit()});
    io.parts("taped", photo.taped, Presence::Optional);
}

template <class Io>
void keysOf(Io &io, Flaw &flaw) {
    io.must("outline", flaw.outline, AsRing<ClothFrame>{io.unit()});
    io.may("note", flaw.note, AsText{}, "");
}

template <class Io>
void keysOf(Io &io, ChalkLine &line) {
    io.must("runs", line.runs, AsWord{chalkWords});
    io.must("at", line.at, AsLength{io.unit()});
}

template <class Io>
void keysOf(Io &io, PinnedNote &note) {
    io.must("at", note.at, AsPoint<ClothFrame>{io.unit()});
    io.may("text", note.text, AsText{}, "");
}

template <class Io>
void keysOf(Io &io, Bolt &bolt) {
    io.must("width", bolt.width, AsLength{io.unit()});
    io.maybe("length", bolt.length, AsLength{io.unit()});
    io.may("square", bolt.square, AsLength{io.unit()}, Length{});
    io.parts("flaws", bolt.flaws, Presence::Optional);
    io.parts("chalk_lines", bolt.markings.lines, Presence::Optional);
    io.parts("pinned_notes", bolt.markings.notes, Presence::Optional);
}

template <class Io>
void keysOf(Io &io, Remnant &remnant) {
    io.must("id", remnant.id, AsText{});
    io.must("outline", remnant.outline, AsRing<ClothFrame>{io.unit()});
    io.parts("flaws", remnant.flaws, Presence::Optional);
    io.parts("chalk_lines", remnant.markings.lines, Presence::Optional);
    io.parts("pinned_notes", remnant.markings.notes, Presence::Optional);
    io.may("lot", remnant.lot, AsText{}, "");
    io.maybe("motif", remnant.motif, AsPoint<ClothFrame>{io.unit()});
    io.optionalPart("photo", remnant.photo);
}

template <class Io>
void keysOf(Io &io, Pattern &pattern) {
    io.maybe("across", pattern.across, AsLength{io.unit()});
    io.maybe("along", pattern.along, AsLength{io.unit()});
    io.may("drop", pattern.drop, AsLength{io.unit()}, Length{});
    io.may("motif", pattern.motif, AsPoint<ClothFrame>{io.unit()}, ClothPoint{});
}

template <class Io>
void keysOf(Io &io, Price &price) {
    io.may("per", price.per, AsText{}, "");
    io.may("amount", price.amount, AsAmount{}, 0.0);
    io.may("currency", price.currency, AsText{}, "");
}

template <class Io>
void keysOf(Io &io, ClothAnswer &answer) {
    io.must("about", answer.about, AsText{});
    io.may("said", answer.said, AsWord{saidWords}, ClothAnswer::Said::Open);
    io.may("note", answer.note, AsText{}, "");
}

template <class Io>
void keysOf(Io &io, Cloth &cloth) {
    io.must("id", cloth.id, AsText{});
    io.may("name", cloth.name, AsText{}, "");
    io.optionalPart("bolt", cloth.bolt);
    io.parts("remnants", cloth.remnants, Presence::Optional);
    io.may("selvage", cloth.selvage, AsLength{io.unit()}, Length{});
    io.may("edge", cloth.edge, AsLength{io.unit()}, Length{});
    io.may("way", cloth.way, AsWord{wayWords}, Way::One);
    io.may("up", cloth.up, AsWord{upWords}, PatternUp::Roll);
    io.optionalPart("pattern", cloth.pattern);
    io.optionalPart("price", cloth.price);
    io.may("bow", cloth.bow, AsLength{io.unit()}, Length{});
    io.may("skew", cloth.skew, AsLength{io.unit()}, Length{});
    io.parts("asked", cloth.asked, Presence::Optional);
    io.optionalPart("look", cloth.look);
}

template <class Io>
void keysOf(Io &io, MotifWish &wish) {
    // Shown, so that the object is never empty: some readers take that for none.
    io.shows("centre", wish.centre, AsWord{centreWords}, Centre::Both);
    io.maybe("at", wish.at, AsPoint<PanelFrame>{io.unit()});
}

template <class Io>
void keysOf(Io &io, Pieces &pieces) {
    io.may("most", pieces.most, AsWhole{}, 1);
    io.may("seam", pieces.seam, AsLength{io.unit()}, Length{});
    io.may("shortest", pieces.shortest, AsLength{io.unit()}, Length{});
    io.may("match", pieces.match, AsFlag{}, false);
    io.may("where", pieces.where, AsWord{whereWords}, Pieces::Where::Any);
}

/// `may` of a panel, whose edges are those of its shape.
template <class Io>
void keysOfMay(Io &io, May &may, const Shape &shape) {
    io.may("turn", may.turn, AsFlag{}, false);
    io.may("uncentre", may.uncentre, AsFlag{}, false);
    io.may("other_cloth", may.otherCloth, AsOtherCloth{}, OtherCloth{});
    io.may("stretcher", may.stretcher, AsLengthByEdge{io.unit(), shape}, std::map<int, Length>{});
}

template <class Io>
void keysOfShape(Io &io, Shape &shape) {
    constexpr std::array<std::string_view, 6> measures = {"across", "bottom", "top", "up", "shift", "points"};
    ShapeKind kind = ShapeKind(shape.index());
    const bool another = io.must("kind", kind, AsWord{shapeWords});
    if (another) io.forget(measures);
    if (kind == ShapeKind::Rectangle) {
        if (shape.index() != 0) shape = Rectangle{};
        auto &rectangle = std::get<Rectangle>(shape);
        io.must("across", rectangle.across, AsLength{io.unit()});
        io.must("up", rectangle.up, AsLength{io.unit()});
    } else if (kind == ShapeKind::Trapezoid) {
        if (shape.index() != 1) shape = Trapezoid{};
        auto &trapezoid = std::get<Trapezoid>(shape);
        io.must("bottom", trapezoid.bottom, AsLength{io.unit()});
        io.must("top", trapezoid.top, AsLength{io.unit()});
        io.must("up", trapezoid.up, AsLength{io.unit()});
        io.may("shift", trapezoid.shift, AsLength{io.unit()}, Length{});
    } else {
        if (shape.index() != 2) shape = PolygonShape{};
        io.must("points", std::get<PolygonShape>(shape).points, AsRing<PanelFrame>{io.unit()});
    }
}

template <class Io>
void keysOf(Io &io, Panel &panel) {
    io.must("id", panel.id, AsText{});
    io.may("mark", panel.mark, AsText{}, "");
    io.may("name", panel.name, AsText{}, "");
    io.may("count", panel.count, AsWhole{}, 1);
    io.maybe("cloth", panel.cloth, AsText{});
    io.inside("shape", [&](Io &in) { keysOfShape(in, panel.shape); });
    io.may("allow", panel.allow, AsEdgeLengths{io.unit(), &panel.shape}, EdgeLengths{});
    io.may("allow_min", panel.allowMin, AsEdgeLengths{io.unit(), &panel.shape}, EdgeLengths{});
    io.maybe("run", panel.run, AsWord{runWords});
    io.optionalPart("motif", panel.motif);
    io.may("alike", panel.alike, AsFlag{}, false);
    io.may("mirror", panel.mirror, AsFlag{}, false);
    io.part("pieces", panel.pieces);
    io.part("may", panel.may, [&](Io &in, May &may) { keysOfMay(in, may, panel.shape); });
    io.may("hidden", panel.hidden, AsFlag{}, false);
}

template <class Io>
void keysOf(Io &io, Flow &flow) {
    io.must("from", flow.from.panel, AsText{});
    io.maybe("edge", flow.from.edge, AsEdge{shapeOfPanel(io.job(), flow.from.panel)});
    io.maybe("at", flow.from.at, AsPoint<PanelFrame>{io.unit()});
    io.maybe("copy", flow.from.copy, AsWhole{});
    io.must("to", flow.to.panel, AsText{});
    io.maybe("edge_to", flow.to.edge, AsEdge{shapeOfPanel(io.job(), flow.to.panel)});
    io.maybe("at_to", flow.to.at, AsPoint<PanelFrame>{io.unit()});
    io.maybe("copy_to", flow.to.copy, AsWhole{});
    io.may("lost", flow.lost, AsLength{io.unit()}, Length{});
}

template <class Io>
void keysOf(Io &io, Trimming &trimming) {
    io.must("kind", trimming.kind, AsWord{trimmingWords});
    io.may("name", trimming.name, AsText{}, "");
    io.must("edges", trimming.edges, AsLength{io.unit()});
    io.may("runs", trimming.runs, AsWhole{}, 1);
    io.may("reserve", trimming.reserve, AsWhole{}, 0);
    io.maybe("cloth", trimming.cloth, AsText{});
    io.may("strip", trimming.strip, AsLength{io.unit()}, Length{});
    io.may("run", trimming.run, AsWord{stripRunWords}, StripRun::Across);
    io.may("from", trimming.from, AsWord{stripsFromWords}, StripsFrom::Cloth);
    io.may("shortest", trimming.shortest, AsLength{io.unit()}, Length{});
    io.may("head", trimming.head, AsLength{io.unit()}, Length{});
    io.may("pitch", trimming.pitch, AsLength{io.unit()}, Length{});
    io.may("panel", trimming.panel, AsText{}, "");
}

template <class Io>
void keysOf(Io &io, ClothUse &use) {
    io.must("id", use.id, AsText{});
    io.maybe("length", use.length, AsLength{io.unit()});
    io.maybe("bound", use.bound, AsLength{io.unit()});
    io.may("proved", use.proved, AsFlag{}, false);
}

template <class Io>
void keysOf(Io &io, Cut &cut) {
    io.must("panel", cut.panel, AsText{});
    io.must("copy", cut.copy, AsWhole{});
    io.may("piece", cut.piece, AsWhole{}, 1);
    io.may("of", cut.of, AsWhole{}, 1);
    io.maybe("cloth", cut.cloth, AsText{});
    io.maybe("on", cut.on, AsText{});
    io.must("x", cut.x, AsLength{io.unit()});
    io.must("y", cut.y, AsLength{io.unit()});
    io.may("turn", cut.turn, AsTurn{}, Turn::Deg0);
    io.may("mirrored", cut.mirrored, AsFlag{}, false);
    io.may("allow", cut.allow, AsEdgeLengths{io.unit(), shapeOfPanel(io.job(), cut.panel)}, EdgeLengths{});
    io.maybe("length", cut.length, AsLength{io.unit()});
    io.may("state", cut.state, AsWord{stateWords}, CutState::Planned);
}

template <class Io>
void keysOf(Io &io, LeftOut &leftOut) {
    io.must("panel", leftOut.panel, AsText{});
    io.must("copy", leftOut.copy, AsWhole{});
}

template <class Io>
void keysOf(Io &io, Concession &concession) {
    io.must("kind", concession.kind, AsWord{concessionWords});
    io.must("panel", concession.panel, AsText{});
    io.must("copy", concession.copy, AsWhole{});
    const Shape *shape = shapeOfPanel(io.job(), concession.panel);
    if (concession.kind == Concession::Kind::Trim)
        io.must("edge", concession.edge, AsConcededEdges{shape});
    else
        io.maybe("edge", concession.edge, AsConcededEdge{shape});
    io.maybe("from", concession.from, AsLength{io.unit()});
    io.maybe("to", concession.to, AsLength{io.unit()});
}

template <class Io>
void keysOf(Io &io, Layout &layout) {
    io.may("name", layout.name, AsText{}, "");
    io.may("made_by", layout.madeBy, AsText{}, "");
    io.parts("cloths", layout.cloths, Presence::Optional);
    io.parts("cuts", layout.cuts, Presence::Required);
    io.parts("left_out", layout.leftOut, Presence::Optional);
    io.parts("conceded", layout.conceded, Presence::Optional);
    io.may("on_table", layout.onTable, AsFlag{}, false);
}

template <class Io>
void keysOf(Io &io, Job &job) {
    int version = 1;
    io.must("boltwright", version, AsWhole{});
    if (version != 1)
        io.refuse("boltwright",
                  std::to_string(version) + " is a version of the format that this program does not know; it reads 1");
    io.must("unit", job.unit, AsWord{unitWords});
    io.part("job", job.card);
    io.parts("cloths", job.cloths, Presence::Required);
    io.may("gap", job.gap, AsLength{io.unit()}, Length{});
    io.parts("panels", job.panels, Presence::Required);
    io.parts("flow", job.flows, Presence::Optional);
    io.parts("trimmings", job.trimmings, Presence::Optional);
    io.parts("layouts", job.layouts, Presence::Optional);
}

} // namespace boltwright
