#include "core/cloth/cloth_questions.h"

#include "core/measure/length_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace boltwright {

const std::vector<ClothQuestion> &clothQuestions() {
    // Sources are the trade notes' rows: T1 widths, T3 repeats, T6 direction, T10 law, T12 standards.
    static const std::vector<ClothQuestion> list = {
        {"width", "Width", "How wide is it between the selvages? Measured, not read off a ticket.",
         "Tickets name the width with or without selvages. Cloth under 54 in takes more, or is refused by many shops.",
         "furniture price lists: 54 in usable (T1.4); ASTM D3774 counts selvages in (T1.3)"},
        {"repeat", "Repeat", "How far from motif to motif, along and across, measured over several of them?",
         "Printed repeats are approximate and vary from lot to lot. Order one repeat more than the layout needs.",
         "fabric houses' terms (T3.11); workroom practice (T4.3)"},
        {"way", "One way or either", "Has pile, print or weave a top? Which way does the hand stroke it smooth?",
         "Pile lies downwards on backs and from back to front on seats; every part the same way.",
         "soft-furnishing manuals (T6.12)"},
        {"weight", "Upholstery weight", "Does its label say that it is meant for upholstery, and for what use?",
         "Curtain cloth on seats wears through. The maker's label decides; where there is none, the client is told.",
         "trade forms: no liability for durability (T10.9)"},
        {"stretch", "Stretch", "Does it give on the bias, and are parts of this piece cut on the bias?",
         "Cloth on the bias grows while it is worked; welt from it lies better, panels from it need an even hand.",
         "common practice, no source"},
        {"square", "Bow and skew", "Is the weft square to the selvage? How far is it off over the whole width?",
         "Stripes and plaids show what is off. No standard sets a limit; look before cutting, not after.",
         "ASTM D3882, ISO 13015 (T12.8)"},
        {"flaws", "Flaws", "Was it looked over on both sides, with every flaw marked at the selvage?",
         "Cloth that has been cut is seldom taken back.", "trade forms: inspect before cutting (T10.9)"},
        {"lots", "One dye lot", "Is all of it from one lot, and ordered at once?",
         "Lots differ in colour; a cutting sent for approval settles it.", "fabric houses' terms (T10.10)"},
        {"fire", "Fire label", "Does it carry the label that the place of use asks for?",
         "The law where the piece is sold or used decides, and who may certify it. This list does not replace its "
         "label, "
         "local rules or a licensed tester.",
         "16 CFR 1640 in the US, SI 1988/1324 in the UK, and what else holds there (T10.1 to T10.7)"},
        {"left", "What is left over", "Does the client want it back?",
         "Left-over cloth is often kept unless it was asked for at the order.", "trade forms (T10.9)"},
    };
    return list;
}

ClothAnswer answerTo(const Cloth &cloth, std::string_view about) {
    for (const ClothAnswer &answer : cloth.asked)
        if (answer.about == about) return answer;
    ClothAnswer open;
    open.about = about;
    return open;
}

Cloth withAnswer(Cloth cloth, const ClothAnswer &answer) {
    const auto there = std::find_if(cloth.asked.begin(), cloth.asked.end(),
                                    [&](const ClothAnswer &a) { return a.about == answer.about; });
    const bool open = answer.said == ClothAnswer::Said::Open && answer.note.empty();
    if (there != cloth.asked.end() && open)
        cloth.asked.erase(there);
    else if (there != cloth.asked.end())
        *there = answer;
    else if (!open)
        cloth.asked.push_back(answer);
    return cloth;
}

std::string knownOf(const Cloth &cloth, std::string_view about, Unit unit) {
    const auto said = [&](Length length) { return spokenWithUnit(length, unit); };
    if (about == "width" && cloth.bolt)
        return fmt::format("{} between the selvages, {} edge to edge", said(cloth.bolt->width - cloth.selvage * 2),
                           said(cloth.bolt->width));
    if (about == "repeat") {
        if (!cloth.pattern) return "plain in this job";
        std::string words;
        if (cloth.pattern->along) words = said(*cloth.pattern->along) + " along";
        if (cloth.pattern->across) words += (words.empty() ? "" : ", ") + said(*cloth.pattern->across) + " across";
        if (cloth.pattern->along && cloth.pattern->drop > Length{})
            words += ", dropped by " + said(cloth.pattern->drop);
        return words;
    }
    if (about == "way") return cloth.way == Way::One ? "one way in this job" : "either way in this job";
    if (about == "square" && (cloth.bow != Length{} || cloth.skew != Length{}))
        return fmt::format("bow {}, skew {} over the width", said(cloth.bow), said(abs(cloth.skew)));
    if (about == "flaws") {
        std::size_t flaws = cloth.bolt ? cloth.bolt->flaws.size() : 0;
        for (const Remnant &remnant : cloth.remnants) flaws += remnant.flaws.size();
        return flaws == 0 ? "none marked in this job" : fmt::format("{} marked in this job", flaws);
    }
    return {};
}

std::string_view nameOf(ClothAnswer::Said said) {
    switch (said) {
    case ClothAnswer::Said::Open:
        return "not asked yet";
    case ClothAnswer::Said::Good:
        return "good";
    case ClothAnswer::Said::Doubt:
        return "in doubt";
    }
    return {};
}

} // namespace boltwright
