#include "core/paper/chalk_list.h"

#include "core/measure/length_text.h"
#include "core/paper/words.h"
#include "core/rules/cut_shape.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace boltwright {
namespace {

std::int64_t roundedUp(std::int64_t a, std::int64_t b) { return a / b + (a % b > 0 ? 1 : 0); }

/// Which axes of the cloth the panel's motif must be level on.
struct Asked {
    bool x = false, y = false;
};
Asked askedAxes(const Panel &panel, const Cut &cut) {
    const Centre centre = panel.motif->centre;
    if (centre == Centre::Both) return {true, true};
    return (centre == Centre::Across) != swapsAxes(cut.turn) ? Asked{true, false} : Asked{false, true};
}

/// Motif (column, row), rows counted before the drop is added.
ClothPoint motifAt(const Lattice &lattice, std::int64_t column, std::int64_t row) {
    return lattice.motif() +
           Vector{lattice.across() * column,
                  lattice.along() * row + (lattice.repeatsAcross() ? lattice.rise(column) : Length{})};
}

struct Place {
    std::int64_t column = 0, row = 0;
};

/// The motif nearest to `p`, among those that are level with it where that was asked.
Place nearestMotif(const Lattice &lattice, ClothPoint p, Asked asked) {
    const std::int64_t column =
        lattice.repeatsAcross() ? roundedQuotient((p.x - lattice.motif().x).ticks(), lattice.across().ticks()) : 0;
    // Level along the roll only: with a drop the level motif may stand some columns aside.
    const std::int64_t aside =
        lattice.repeatsAcross() && lattice.dropNumerator() != 0 ? std::min(lattice.dropDenominator(), 64) : 0;
    Place best;
    std::tuple<std::int64_t, Area> least{};
    for (std::int64_t c = column - aside; c <= column + aside; ++c) {
        const Length foot = motifAt(lattice, c, 0).y;
        const std::int64_t row =
            lattice.repeatsAlong() ? roundedQuotient((p.y - foot).ticks(), lattice.along().ticks()) : 0;
        const Vector off = motifAt(lattice, c, row) - p;
        const std::int64_t dx = lattice.repeatsAcross() ? off.x.ticks() : 0,
                           dy = lattice.repeatsAlong() ? off.y.ticks() : 0;
        constexpr std::int64_t level = 8; // ticks: what rounding leaves
        const std::int64_t miss = (asked.x ? std::abs(dx) : 0) / level + (asked.y ? std::abs(dy) : 0) / level;
        const std::tuple<std::int64_t, Area> worth{miss, dx * dx + dy * dy};
        if (c == column - aside || worth < least) {
            least = worth;
            best = {c, row};
        }
    }
    return best;
}

/// Which motif of a row is the first whole one: half as wide as its repeat, with all of it past `edge`. `first` is
/// where the motif of index 0 lies.
std::int64_t firstWhole(Length first, Length edge, Length step) {
    return roundedUp((edge - first).ticks() + step.ticks() / 4, step.ticks());
}

/// The sheet's corner, past what is not cut from: selvage and squared end of a bolt, the edge of a remnant.
ClothPoint cutFrom(const Cloth &cloth, const ClothSheet &sheet) {
    const ClothPoint corner = sheet.box().low;
    return cloth.bolt ? corner + Vector{cloth.selvage, cloth.bolt->square} : corner + Vector{cloth.edge, cloth.edge};
}

bool followsPattern(const Job &job, const Layout &layout, const Panel &panel, const Cut &cut) {
    if (isFreed(layout, cut)) return false;
    return panel.motif || panel.alike || panel.pieces.match ||
           std::any_of(job.flows.begin(), job.flows.end(),
                       [&](const Flow &f) { return f.from.panel == panel.id || f.to.panel == panel.id; });
}

ChalkRow rowOf(const Job &job, const Layout &layout, const ClothSheet &sheet, const SheetCut &laid) {
    const Cut &cut = layout.cuts[std::size_t(laid.cut)];
    const Panel &panel = *job.panel(cut.panel);
    ChalkRow row;
    row.cut = laid.cut;
    row.mark = panel.mark;
    row.name = panel.name.empty() ? panel.id : panel.name;
    row.copy = cut.copy;
    row.copies = panel.count;
    row.piece = cut.piece;
    row.of = cut.of;
    row.mirrored = cut.mirrored;
    row.alreadyCut = cut.state == CutState::Cut;
    const PanelBox outline = boxOf(outlineOf(panel, cut, layout)), measured = boxOf(measuredOutline(panel.shape));
    row.cutAcross = outline.width();
    row.cutUp = outline.height();
    row.measuredAcross = measured.width();
    row.measuredUp = measured.height();
    row.allowances = allowancesOf(panel, cut);
    const ClothPoint corner = sheet.box().low;
    row.fromSelvage = laid.box.low.x - corner.x;
    row.fromEnd = laid.box.low.y - corner.y;
    row.turn = cut.turn;
    if (followsPattern(job, layout, panel, cut)) row.motif = motifSeat(job, layout, sheet, laid);
    for (const Concession &c : layout.conceded)
        if (c.panel == cut.panel && c.copy == cut.copy) row.conceded.push_back(concessionWords(job, layout, c));
    return row;
}

std::string quoted(const std::string &field) {
    if (field.find_first_of(",\"\r\n") == std::string::npos) return field;
    std::string out = "\"";
    for (char c : field) out += c == '"' ? std::string("\"\"") : std::string(1, c);
    return out + '"';
}

} // namespace

std::optional<MotifSeat> motifSeat(const Job &job, const Layout &layout, const ClothSheet &sheet,
                                   const SheetCut &laid) {
    const Cloth *cloth = job.cloth(sheet.cloth);
    const auto lattice = cloth ? cloth->latticeOn(sheet.on) : std::nullopt;
    if (!lattice) return std::nullopt;
    const Cut &cut = layout.cuts[std::size_t(laid.cut)];
    const Panel &panel = *job.panel(cut.panel);
    const ClothPoint middle = laid.box.low + Vector{Length::ticks(laid.box.width().ticks() / 2),
                                                    Length::ticks(laid.box.height().ticks() / 2)};
    const ClothPoint point = laid.motif.value_or(middle);
    const Place place = nearestMotif(*lattice, point, laid.motif ? askedAxes(panel, cut) : Asked{});

    MotifSeat seat;
    seat.held = laid.motif.has_value();
    seat.at = motifAt(*lattice, place.column, place.row);
    const ClothPoint from = cutFrom(*cloth, sheet);
    if (lattice->repeatsAcross())
        seat.column = int(place.column - firstWhole(lattice->motif().x, from.x, lattice->across()) + 1);
    else
        seat.at.x = point.x;
    if (lattice->repeatsAlong())
        seat.row = int(place.row - firstWhole(motifAt(*lattice, place.column, 0).y, from.y, lattice->along()) + 1);
    else
        seat.at.y = point.y;
    seat.corner = laid.box.low - seat.at;
    return seat;
}

std::vector<ChalkSheet> chalkList(const Job &job, const Layout &layout) {
    std::vector<ChalkSheet> list;
    int number = 0;
    for (const ClothSheet &sheet : clothSheets(job, layout)) {
        const CuttingOrder order = cuttingOrder(job, layout, sheet);
        ChalkSheet out{sheet.cloth, sheet.on, order.across, {}, {}, {}};
        const Cloth &cloth = *job.cloth(sheet.cloth);
        if (const auto lattice = cloth.latticeOn(sheet.on)) {
            const ClothPoint from = cutFrom(cloth, sheet), corner = sheet.box().low;
            std::int64_t column = 0;
            if (lattice->repeatsAcross()) {
                column = firstWhole(lattice->motif().x, from.x, lattice->across());
                out.firstColumn = motifAt(*lattice, column, 0).x - corner.x;
            }
            if (lattice->repeatsAlong()) {
                const std::int64_t row = firstWhole(motifAt(*lattice, column, 0).y, from.y, lattice->along());
                out.firstRow = motifAt(*lattice, column, row).y - corner.y;
            }
        }
        for (const auto *part : {&order.done, &order.cuts})
            for (int index : *part) {
                out.rows.push_back(rowOf(job, layout, sheet, sheet.cuts[std::size_t(index)]));
                out.rows.back().number = ++number;
            }
        list.push_back(std::move(out));
    }
    return list;
}

std::string chalkCsv(const Job &job, const std::vector<ChalkSheet> &list) {
    const std::string unit(nameOf(job.unit));
    std::string out = fmt::format(
        "number,cloth,mark,name,copy,copies,piece,pieces,cut across ({0}),cut up ({0}),measured across ({0}),"
        "measured up ({0}),allowances ({0}),from left selvage ({0}),from cut end ({0}),turn,motif,"
        "from motif across ({0}),from motif along ({0}),given up,counted from\r\n",
        unit);
    auto decimal = [&](Length l) { return writeDecimal(l, job.unit); };
    for (const ChalkSheet &sheet : list) {
        for (const ChalkRow &row : sheet.rows) {
            std::string allowances, conceded;
            for (Length l : row.allowances) allowances += (allowances.empty() ? "" : " ") + decimal(l);
            for (const std::string &words : row.conceded) conceded += (conceded.empty() ? "" : "; ") + words;
            const std::vector<std::string> fields = {std::to_string(row.number),
                                                     sheetName(job, sheet.cloth, sheet.on),
                                                     row.mark,
                                                     row.name,
                                                     std::to_string(row.copy),
                                                     std::to_string(row.copies),
                                                     std::to_string(row.piece),
                                                     std::to_string(row.of),
                                                     decimal(row.cutAcross),
                                                     decimal(row.cutUp),
                                                     decimal(row.measuredAcross),
                                                     decimal(row.measuredUp),
                                                     allowances,
                                                     decimal(row.fromSelvage),
                                                     decimal(row.fromEnd),
                                                     turnWords(row.turn),
                                                     row.motif ? seatWords(*row.motif) : "",
                                                     row.motif && row.motif->column ? decimal(row.motif->corner.x) : "",
                                                     row.motif && row.motif->row ? decimal(row.motif->corner.y) : "",
                                                     conceded,
                                                     row.motif ? countedWords(sheet, job.unit) : ""};
            for (std::size_t i = 0; i < fields.size(); ++i) out += (i ? "," : "") + quoted(fields[i]);
            out += "\r\n";
        }
    }
    return out;
}

} // namespace boltwright
