#include "core/cloth/cloth_questions.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"

#include <algorithm>

namespace boltwright {

const std::vector<ClothQuestion> &clothQuestions() {
    // Sources are the trade notes' rows: T1 widths, T3 repeats, T6 direction, T10 law, T12 standards.
    static const std::vector<ClothQuestion> list = {
        {"width", marked("Width"), marked("How wide is it between the selvages? Measured, not read off a ticket."),
         marked("Tickets name the width with or without selvages. Cloth under 54 in takes more, or is refused by many "
                "shops."),
         marked("furniture price lists: 54 in usable; ASTM D3774 counts selvages in")},
        {"repeat", marked("Repeat"),
         marked("How far from motif to motif, along and across, measured over several of them?"),
         marked(
             "Printed repeats are approximate and vary from lot to lot. Order one repeat more than the layout needs."),
         marked("fabric houses' terms; workroom practice")},
        {"way", marked("One way or either"),
         marked("Has pile, print or weave a top? Which way does the hand stroke it smooth?"),
         marked("Pile lies downwards on backs and from back to front on seats; every part the same way."),
         marked("soft-furnishing manuals")},
        {"weight", marked("Upholstery weight"),
         marked("Does its label say that it is meant for upholstery, and for what use?"),
         marked("Curtain cloth on seats wears through. The maker's label decides; where there is none, the client is "
                "told."),
         marked("trade forms: no liability for durability")},
        {"stretch", marked("Stretch"), marked("Does it give on the bias, and are parts of this piece cut on the bias?"),
         marked(
             "Cloth on the bias grows while it is worked; welt from it lies better, panels from it need an even hand."),
         marked("common practice, no source")},
        {"square", marked("Bow and skew"),
         marked("Is the weft square to the selvage? How far is it off over the whole width?"),
         marked("Stripes and plaids show what is off. No standard sets a limit; look before cutting, not after."),
         marked("ASTM D3882, ISO 13015")},
        {"flaws", marked("Flaws"), marked("Was it looked over on both sides, with every flaw marked at the selvage?"),
         marked("Cloth that has been cut is seldom taken back."), marked("trade forms: inspect before cutting")},
        {"lots", marked("One dye lot"), marked("Is all of it from one lot, and ordered at once?"),
         marked("Lots differ in colour; a cutting sent for approval settles it."), marked("fabric houses' terms")},
        {"fire", marked("Fire label"), marked("Does it carry the label that the place of use asks for?"),
         marked("The law where the piece is sold or used decides, and who may certify it. This list does not replace "
                "its label, local rules or a licensed tester."),
         marked("16 CFR 1640 in the US, SI 1988/1324 in the UK, and what else holds there")},
        {"left", marked("What is left over"), marked("Does the client want it back?"),
         marked("Left-over cloth is often kept unless it was asked for at the order."), marked("trade forms")},
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
    const auto said = [&](Length length) { return localised(spokenWithUnit(length, unit)); };
    if (about == "width" && cloth.bolt)
        return phrase("%1 between the selvages, %2 edge to edge",
                      {said(cloth.bolt->width - cloth.selvage * 2), said(cloth.bolt->width)});
    if (about == "repeat") {
        if (!cloth.pattern) return phrase("plain in this job");
        std::string words;
        if (cloth.pattern->along) words = phrase("%1 along", {said(*cloth.pattern->along)});
        if (cloth.pattern->across)
            words += (words.empty() ? "" : ", ") + phrase("%1 across", {said(*cloth.pattern->across)});
        if (cloth.pattern->along && cloth.pattern->drop > Length{})
            words += phrase(", dropped by %1", {said(cloth.pattern->drop)});
        return words;
    }
    if (about == "way") return cloth.way == Way::One ? phrase("one way in this job") : phrase("either way in this job");
    if (about == "square" && (cloth.bow != Length{} || cloth.skew != Length{}))
        return phrase("bow %1, skew %2 over the width", {said(cloth.bow), said(abs(cloth.skew))});
    if (about == "flaws") {
        std::size_t flaws = cloth.bolt ? cloth.bolt->flaws.size() : 0;
        for (const Remnant &remnant : cloth.remnants) flaws += remnant.flaws.size();
        return flaws == 0 ? phrase("none marked in this job")
                          : phrase("%1 marked in this job", {std::to_string(flaws)});
    }
    return {};
}

std::string_view nameOf(ClothAnswer::Said said) {
    switch (said) {
    case ClothAnswer::Said::Open:
        return marked("not asked yet");
    case ClothAnswer::Said::Good:
        return marked("good");
    case ClothAnswer::Said::Doubt:
        return marked("in doubt");
    }
    return {};
}

} // namespace boltwright
