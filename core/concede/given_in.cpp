#include "core/concede/given_in.h"

#include <algorithm>

namespace boltwright {
namespace {

using Kind = Concession::Kind;
using planner::CopyKey;
using planner::GivenUp;

void addAllowances(GivenUp &given, const Panel &panel, const Concession &c) {
    EdgeLengths &allow = given.allow[CopyKey{c.panel, c.copy}];
    allow.resize(std::size_t(edgeCount(panel.shape)));
    for (int edge = 0; edge < int(allow.size()); ++edge)
        if (!c.edge || *c.edge == edge) allow[std::size_t(edge)] = c.to;
}

void addPieces(GivenUp &given, const Layout &layout, const Concession &c) {
    std::vector<const Cut *> pieces;
    for (const Cut &cut : layout.cuts)
        if (cut.panel == c.panel && cut.copy == c.copy && cut.length) pieces.push_back(&cut);
    std::sort(pieces.begin(), pieces.end(), [](const Cut *a, const Cut *b) { return a->piece < b->piece; });
    auto &lengths = given.pieces[CopyKey{c.panel, c.copy}];
    for (const Cut *cut : pieces) lengths.push_back(*cut->length);
}

} // namespace

std::vector<GivenOne> givenIn(const Layout &layout) {
    std::vector<GivenOne> all;
    for (const Concession &c : layout.conceded) all.push_back({c.kind, {c.panel, c.copy}, c.edge});
    for (const LeftOut &l : layout.leftOut) all.push_back({Kind::OtherCloth, {l.panel, l.copy}, {}});
    std::sort(all.begin(), all.end());
    return all;
}

GivenUp allBut(const Job &job, const Layout &layout, const GivenOne &one) {
    GivenUp given;
    for (const Concession &c : layout.conceded) {
        const CopyKey key{c.panel, c.copy};
        if (GivenOne{c.kind, key, c.edge} == one) continue;
        switch (c.kind) {
        case Kind::Trim:
        case Kind::Stretcher:
            addAllowances(given, *job.panel(c.panel), c);
            break;
        case Kind::Turn:
            given.turned.insert(key);
            break;
        case Kind::Uncentre:
            given.offCentre.insert(key);
            break;
        case Kind::Seam:
            addPieces(given, layout, c);
            break;
        case Kind::OtherCloth:
            for (const Cut &cut : layout.cuts)
                if (cut.panel == c.panel && cut.copy == c.copy && cut.cloth) given.otherCloth[key] = *cut.cloth;
            break;
        }
    }
    for (const LeftOut &l : layout.leftOut)
        if (const GivenOne left{Kind::OtherCloth, {l.panel, l.copy}, {}}; left != one) given.leftOut.insert(left.copy);
    return given;
}

} // namespace boltwright
