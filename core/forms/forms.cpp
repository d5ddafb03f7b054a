#include "core/forms/forms.h"

#include "core/base/ensure.h"
#include "core/forms/form_text.h"

#include <algorithm>
#include <string_view>

namespace boltwright {

/// The texts of core/forms/pieces, built in.
extern const std::vector<std::string_view> pieceFormTexts;

const std::vector<PieceForm> &pieceForms() {
    static const std::vector<PieceForm> all = [] {
        std::vector<PieceForm> forms;
        for (std::string_view text : pieceFormTexts) {
            auto form = readForm(text);
            ensure(form.has_value(), form ? "" : form.error().text.c_str());
            forms.push_back(std::move(*form));
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
