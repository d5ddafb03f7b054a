#include "core/forms/piece_form.h"

#include <algorithm>

namespace boltwright {

const PartMeasure *FormPart::measure(Measure m) const {
    const auto it =
        std::find_if(measures.begin(), measures.end(), [&](const PartMeasure &p) { return p.measure == m; });
    return it == measures.end() ? nullptr : &*it;
}

std::vector<std::string> DrawnBlock::parts() const {
    std::vector<std::string> named;
    const auto add = [&](const std::string &part) {
        if (!part.empty() && std::find(named.begin(), named.end(), part) == named.end()) named.push_back(part);
    };
    for (const std::string &side : sides) add(side);
    add(top);
    return named;
}

const FormPart *PieceForm::part(const std::string &partId) const {
    const auto it = std::find_if(parts.begin(), parts.end(), [&](const FormPart &p) { return p.id == partId; });
    return it == parts.end() ? nullptr : &*it;
}

std::vector<Measure> measuresOf(PartKind kind) {
    switch (kind) {
    case PartKind::Trapezoid:
        return {Measure::Up, Measure::Across, Measure::Top};
    case PartKind::BoxCushion:
        return {Measure::Up, Measure::Across, Measure::Thickness};
    case PartKind::KickSkirt:
    case PartKind::FlatSkirt:
    case PartKind::BoxPleatSkirt:
    case PartKind::GatheredSkirt:
        return {Measure::Up, Measure::Across, Measure::Side};
    case PartKind::Rectangle:
    case PartKind::OnPoint:
    case PartKind::KnifeEdge:
        return {Measure::Up, Measure::Across};
    }
    return {};
}

bool isSkirt(PartKind kind) {
    return kind == PartKind::KickSkirt || kind == PartKind::FlatSkirt || kind == PartKind::BoxPleatSkirt ||
           kind == PartKind::GatheredSkirt;
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
