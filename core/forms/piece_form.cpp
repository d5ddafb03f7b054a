#include "core/forms/piece_form.h"

#include <algorithm>

namespace boltwright {

const PartMeasure *FormPart::measure(Measure m) const {
    const auto it =
        std::find_if(measures.begin(), measures.end(), [&](const PartMeasure &p) { return p.measure == m; });
    return it == measures.end() ? nullptr : &*it;
}

const FormPart *PieceForm::part(const std::string &partId) const {
    const auto it = std::find_if(parts.begin(), parts.end(), [&](const FormPart &p) { return p.id == partId; });
    return it == parts.end() ? nullptr : &*it;
}

FormMeasures typicalMeasures(const PieceForm &form, Unit unit) {
    const auto typical = [&](Length length) {
        constexpr std::int64_t centimetre = 3200;
        return unit == Unit::Inch ? length : Length::ticks(roundedQuotient(length.ticks(), centimetre) * centimetre);
    };
    FormMeasures measures;
    for (const FormPart &part : form.parts) {
        PartMeasured &m = measures[part.id];
        m.there = !part.optional;
        m.count = part.count;
        for (const PartMeasure &p : part.measures) m.sizes[p.measure] = typical(p.typical);
    }
    return measures;
}

} // namespace boltwright
