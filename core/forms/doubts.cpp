#include "core/forms/doubts.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"

#include <algorithm>

namespace boltwright {
namespace {

constexpr Length inches(int n) { return Length::ticks(std::int64_t(n) * 8128); }

class Doubts {
public:
    Doubts(const PieceForm &form, const FormMeasures &measures, Unit unit, std::optional<Length> clothWidth)
        : m_form(form), m_measures(measures), m_unit(unit), m_clothWidth(clothWidth) {}

    std::vector<Doubt> all() {
        for (const FormPart &part : m_form.parts) {
            const PartMeasured *measured = of(part.id);
            if (!measured) continue;
            missing(part, *measured);
            unusual(part, *measured);
            pair(part, *measured);
            tall(part, *measured);
            wide(part, *measured);
            motifs(part, *measured);
            cushions(part, *measured);
            insideOut(part, *measured);
        }
        return std::move(m_doubts);
    }

private:
    const PartMeasured *of(const std::string &id) const {
        const auto it = m_measures.find(id);
        return it != m_measures.end() && it->second.there ? &it->second : nullptr;
    }
    std::string said(Length length) const { return localised(spokenWithUnit(length, m_unit)); }
    void add(const FormPart &part, std::optional<Measure> measure, std::string text) {
        m_doubts.push_back({part.id, measure, std::move(text)});
    }

    void missing(const FormPart &part, const PartMeasured &measured) {
        for (const PartMeasure &p : part.measures)
            if (measured.sizes[p.measure] <= Length{})
                add(part, p.measure, phrase("%1 is not measured yet", {p.words}));
        if (measured.count < 1) add(part, std::nullopt, phrase("there is none of it"));
    }

    void unusual(const FormPart &part, const PartMeasured &measured) {
        for (const PartMeasure &p : part.measures) {
            const Length length = measured.sizes[p.measure];
            if (length <= Length{} || p.typical < inches(2)) continue;
            if (length > p.typical * 2)
                add(part, p.measure, phrase("%1 is more than twice what is usual", {p.words}));
            else if (length * 2 < p.typical)
                add(part, p.measure, phrase("%1 is less than half of what is usual", {p.words}));
        }
    }

    void pair(const FormPart &part, const PartMeasured &measured) {
        if (!part.mirror || !measured.twin) return;
        for (const PartMeasure &p : part.measures) {
            const Length apart = abs(measured.sizes[p.measure] - (*measured.twin)[p.measure]);
            if (apart > inches(2))
                add(part, p.measure, phrase("left and right differ by %1 %2", {said(apart), p.words}));
        }
    }

    /// The usual one lies, this one stands.
    void tall(const FormPart &part, const PartMeasured &measured) {
        const PartMeasure *up = part.measure(Measure::Up), *across = part.measure(Measure::Across);
        if (!up || !across || up->typical >= across->typical || isSkirt(part.kind)) return;
        const Length high = measured.sizes[Measure::Up], broad = measured.sizes[Measure::Across];
        if (broad > Length{} && high > broad)
            add(part, Measure::Up, phrase("%1 is more than %2; were the two exchanged?", {up->words, across->words}));
    }

    void wide(const FormPart &part, const PartMeasured &measured) {
        if (!m_clothWidth || part.mostPieces > 1 || isSkirt(part.kind)) return;
        const Length across = measured.sizes[Measure::Across], up = measured.sizes[Measure::Up];
        if (across > *m_clothWidth && up > Length{})
            add(part, Measure::Across,
                phrase("wider than the cloth (%1) and made of one piece; railroad it, or allow a join",
                       {said(*m_clothWidth)}));
    }

    void motifs(const FormPart &part, const PartMeasured &measured) {
        if (part.motif && part.mirror && measured.twin && measured.motif != measured.twinMotif)
            add(part, std::nullopt, phrase("this part has no motif though its twin has"));
    }

    /// Seat cushions side by side fill the width before the back.
    void cushions(const FormPart &part, const PartMeasured &measured) {
        if (part.kind != PartKind::BoxCushion) return;
        for (const FormFlow &flow : m_form.flows) {
            const FormPart *back = flow.to == part.id ? m_form.part(flow.from) : nullptr;
            const PartMeasured *behind = back ? of(back->id) : nullptr;
            if (!behind || back->kind != PartKind::Rectangle) continue;
            const Length row = measured.sizes[Measure::Across] * measured.count,
                         before = behind->sizes[Measure::Across];
            if (before > Length{} && abs(row - before) > inches(1) * measured.count)
                add(part, Measure::Across,
                    phrase("side by side they measure %1, and %2 is %3 wide", {said(row), back->name, said(before)}));
        }
    }

    /// An outside is at least about as large as the inside it closes.
    void insideOut(const FormPart &part, const PartMeasured &measured) {
        if (!part.id.starts_with("outside-")) return;
        const FormPart *inside = m_form.part("inside-" + part.id.substr(8));
        const PartMeasured *other = inside ? of(inside->id) : nullptr;
        if (!other) return;
        const PartMeasure *across = part.measure(Measure::Across);
        const Length mine = measured.sizes[Measure::Across], theirs = other->sizes[Measure::Across];
        if (across && mine > Length{} && mine + inches(6) < theirs)
            add(part, Measure::Across,
                phrase("%1 it is %2 less than %3", {across->words, said(theirs - mine), inside->name}));
    }

    const PieceForm &m_form;
    const FormMeasures &m_measures;
    Unit m_unit;
    std::optional<Length> m_clothWidth;
    std::vector<Doubt> m_doubts;
};

} // namespace

std::vector<Doubt> doubtsOf(const PieceForm &form, const FormMeasures &measures, Unit unit,
                            std::optional<Length> clothWidth) {
    return Doubts(form, measures, unit, clothWidth).all();
}

} // namespace boltwright
