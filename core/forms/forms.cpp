#include "core/forms/forms.h"

#include "core/base/ensure.h"
#include "core/base/language.h"
#include "core/forms/form_text.h"

#include <algorithm>
#include <string_view>

namespace boltwright {

/// The texts of core/forms/pieces, built in.
extern const std::vector<std::string_view> pieceFormTexts;

namespace {

/// In the reader's language, names and measures: from here they go on screen and into jobs. A shop's own form keeps the
/// words in which it was written.
PieceForm inWordsOfTheReader(PieceForm form) {
    const auto said = [](std::string &text) { text = phrase(std::string_view(text)); };
    said(form.name);
    for (FormPart &part : form.parts) {
        said(part.name);
        for (PartMeasure &measure : part.measures) said(measure.words);
    }
    return form;
}

} // namespace

const std::vector<PieceForm> &pieceForms() {
    static const std::vector<PieceForm> all = [] {
        std::vector<PieceForm> forms;
        for (std::string_view text : pieceFormTexts) {
            auto form = readForm(text);
            ensure(form.has_value(), form ? "" : form.error().text.c_str());
            forms.push_back(inWordsOfTheReader(std::move(*form)));
        }
        std::sort(forms.begin(), forms.end(), [](const PieceForm &a, const PieceForm &b) { return a.place < b.place; });
        return forms;
    }();
    return all;
}

const PieceForm *pieceForm(const std::string &id) {
    const auto &all = pieceForms();
    const auto it = std::find_if(all.begin(), all.end(), [&](const PieceForm &f) { return f.id == id; });
    return it == all.end() ? nullptr : &*it;
}

} // namespace boltwright
