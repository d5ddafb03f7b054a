#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

#include <algorithm>
#include <limits>
#include <set>

namespace boltwright::judge {

namespace {

using Kind = Finding::Kind;

/// Numbers of copies that the layout says something about, in order.
std::set<int> copiesTold(const Scene &scene, const Panel &panel) {
    std::set<int> told;
    for (auto it = scene.copies.lower_bound({panel.id, std::numeric_limits<int>::min()});
         it != scene.copies.end() && it->first.first == panel.id; ++it)
        told.insert(it->first.second);
    for (const LeftOut &left : scene.layout.leftOut)
        if (left.panel == panel.id) told.insert(left.copy);
    return told;
}

/// One finding for every run of copies that the layout does not mention.
Findings copiesNotTold(const Scene &scene, const Panel &panel) {
    Findings findings;
    const auto missing = [&](int from, int to) {
        if (from > to) return;
        findings.push_back(
            from == to ? about(Kind::Missing, panel, from, phrase("is missing from the layout"))
                       : about(Kind::Missing, panel, from,
                               phrase("and the copies up to %1 are missing from the layout", {std::to_string(to)})));
    };
    int next = 1;
    for (const int copy : copiesTold(scene, panel)) {
        if (copy < next || copy > panel.count) continue;
        missing(next, copy - 1);
        next = copy + 1;
    }
    missing(next, panel.count);
    return findings;
}

std::string whatIsWrongWith(const Copy &copy) {
    const int of = copy.cuts.front()->of;
    if (of <= 1 && copy.cuts.size() > 1) return phrase("is laid out %1 times", {std::to_string(copy.cuts.size())});
    return phrase("is not whole: each of its pieces must be there once");
}

Findings copiesLaidWrong(const Scene &scene) {
    Findings findings;
    for (const auto &[key, copy] : scene.copies) {
        if (copy.number < 1 || copy.number > copy.panel->count)
            findings.push_back(
                about(Kind::Missing, *copy.panel, copy.number, phrase("is a copy that nobody asked for")));
        else if (!copy.whole)
            findings.push_back(about(Kind::Missing, *copy.panel, copy.number, whatIsWrongWith(copy)));
    }
    for (const Cut &cut : scene.layout.cuts)
        if (!scene.panel(cut.panel))
            findings.push_back(about(Kind::Missing, scene, cut, phrase("is laid out, and the job has no such panel")));
    return findings;
}

Findings copiesLeftOutWrong(const Scene &scene) {
    Findings findings;
    std::set<std::pair<std::string, int>> seen;
    for (const LeftOut &left : scene.layout.leftOut) {
        const Panel *panel = scene.panel(left.panel);
        if (!panel || left.copy < 1 || left.copy > panel->count) {
            findings.push_back({Kind::Missing, left.panel, left.copy, 0,
                                phrase("Copy %1 of '%2' is left out, and the job asks for no such copy.",
                                       {std::to_string(left.copy), left.panel})});
            continue;
        }
        const auto say = [&](const std::string &does) {
            findings.push_back(about(Kind::Missing, *panel, left.copy, does));
        };
        if (!seen.insert({left.panel, left.copy}).second) say(phrase("is left out twice"));
        if (!panel->may.otherCloth.any) say(phrase("is left out, and it may not go to another cloth"));
        if (scene.copies.count({left.panel, left.copy})) say(phrase("is laid out and left out at once"));
    }
    return findings;
}

} // namespace

Findings copiesMissing(const Scene &scene) {
    Findings findings;
    const auto add = [&](const Findings &more) { findings.insert(findings.end(), more.begin(), more.end()); };
    for (const Panel &panel : scene.job.panels) add(copiesNotTold(scene, panel));
    add(copiesLaidWrong(scene));
    add(copiesLeftOutWrong(scene));
    return findings;
}

} // namespace boltwright::judge
