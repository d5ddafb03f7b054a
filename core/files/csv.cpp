#include "core/files/csv.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace boltwright {
namespace {

constexpr std::size_t mostRows = 10'000, mostColumns = 200;

bool isControl(char c) {
    const auto u = static_cast<unsigned char>(c);
    return (u < 0x20 && c != '\n' && c != '\r' && c != '\t') || u == 0x7f;
}

/// Well-formed UTF-8 without overlong forms and surrogates (RFC 3629).
bool isUtf8(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const auto byte = [&](std::size_t k) {
            return i + k < text.size() ? static_cast<unsigned char>(text[i + k]) : 0u;
        };
        const unsigned lead = byte(0);
        const std::size_t length = lead < 0x80   ? 1
                                   : lead < 0xc2 ? 0
                                   : lead < 0xe0 ? 2
                                   : lead < 0xf0 ? 3
                                   : lead < 0xf5 ? 4
                                                 : 0;
        if (length == 0) return false;
        for (std::size_t k = 1; k < length; ++k)
            if ((byte(k) & 0xc0) != 0x80) return false;
        if ((lead == 0xe0 && byte(1) < 0xa0) || (lead == 0xed && byte(1) > 0x9f) || (lead == 0xf0 && byte(1) < 0x90) ||
            (lead == 0xf4 && byte(1) > 0x8f))
            return false;
        i += length;
    }
    return true;
}

/// What separates the cells of a line, told by counting outside quotes.
char separatorOf(std::string_view line) {
    constexpr std::array<char, 3> separators = {';', '\t', ','};
    std::array<int, 3> counts{};
    bool quoted = false;
    for (char c : line) {
        if (c == '"') quoted = !quoted;
        for (std::size_t i = 0; i < separators.size(); ++i)
            if (!quoted && c == separators[i]) ++counts[i];
    }
    const auto most = std::max_element(counts.begin(), counts.end());
    return *most == 0 ? ',' : separators[std::size_t(most - counts.begin())];
}

class CsvReader {
public:
    explicit CsvReader(std::string_view text) : m_text(text) {}

    Result<CsvTable> read() {
        if (m_text.starts_with("\xef\xbb\xbf")) m_text.remove_prefix(3);
        if (m_text.starts_with("\xff\xfe") || m_text.starts_with("\xfe\xff"))
            return fault(cellName(0, 0) + ": the text is not UTF-8; save the list as CSV in UTF-8");
        chooseSeparator();
        while (m_at < m_text.size()) {
            if (m_table.rows.size() == mostRows)
                return fault(here() + fmt::format(": the list is longer than {} rows", mostRows));
            m_table.rows.emplace_back();
            if (auto row = readRow(); !row) return fault(row.error());
        }
        return std::move(m_table);
    }

private:
    std::vector<std::string> &row() { return m_table.rows.back(); }
    std::string here() const {
        const bool begun = !m_table.rows.empty();
        return cellName(begun ? m_table.rows.size() - 1 : 0, begun ? m_table.rows.back().size() : 0);
    }

    std::string_view lineAt(std::size_t at) const {
        const std::size_t end = m_text.find_first_of("\r\n", at);
        return m_text.substr(at, end == std::string_view::npos ? end : end - at);
    }

    void chooseSeparator() {
        std::size_t at = m_text.find_first_not_of("\r\n");
        if (at == std::string_view::npos) at = 0;
        const std::string_view line = lineAt(at);
        if (line.size() == 5 && line.starts_with("sep=")) {
            m_table.separator = line[4];
            // Not a row of the list, but one of the sheet, where counting is concerned.
            m_text = m_text.substr(at + line.size());
            return;
        }
        m_table.separator = separatorOf(line);
    }

    Result<void> readRow() {
        while (true) {
            if (row().size() == mostColumns)
                return fault(here() + fmt::format(": a row has more than {} cells", mostColumns));
            auto cell = m_at < m_text.size() && m_text[m_at] == '"' ? quotedCell() : Result<std::string>(plainCell());
            if (!cell) return fault(cell.error());
            if (const auto bad = std::find_if(cell->begin(), cell->end(), isControl); bad != cell->end())
                return fault(here() +
                             fmt::format(": there is a control character (code {}); save the list as plain CSV",
                                         int(static_cast<unsigned char>(*bad))));
            if (!isUtf8(*cell)) return fault(here() + ": the text is not UTF-8; save the list as CSV in UTF-8");
            row().push_back(std::move(*cell));
            if (m_at < m_text.size() && m_text[m_at] == m_table.separator)
                ++m_at;
            else
                break;
        }
        if (m_at < m_text.size() && m_text[m_at] == '\r') ++m_at;
        if (m_at < m_text.size() && m_text[m_at] == '\n') ++m_at;
        if (row().size() == 1 && row()[0].empty()) row().clear();
        return {};
    }

    std::string plainCell() {
        std::string cell;
        for (; m_at < m_text.size(); ++m_at) {
            const char c = m_text[m_at];
            if (c == m_table.separator || c == '\r' || c == '\n') break;
            cell += c;
        }
        return cell;
    }

    Result<std::string> quotedCell() {
        std::string cell;
        for (++m_at; m_at < m_text.size(); ++m_at) {
            if (m_text[m_at] != '"') {
                cell += m_text[m_at];
                continue;
            }
            ++m_at;
            if (m_at < m_text.size() && m_text[m_at] == '"') {
                cell += '"';
                continue;
            }
            const bool ends = m_at == m_text.size() || m_text[m_at] == m_table.separator || m_text[m_at] == '\r' ||
                              m_text[m_at] == '\n';
            if (ends) return cell;
            return fault(here() +
                         ": something stands behind the closing quote; write a quote inside a quoted cell twice");
        }
        return fault(here() + ": a quote is opened here and never closed");
    }

    std::string_view m_text;
    std::size_t m_at = 0;
    CsvTable m_table;
};

std::string writtenCell(std::string cell, char separator) {
    for (char &c : cell)
        if (isControl(c)) c = ' ';
    const std::string special = std::string("\"\r\n") + separator;
    if (cell.find_first_of(special) == std::string::npos) return cell;
    std::string quoted = "\"";
    for (char c : cell) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + '"';
}

} // namespace

std::string columnLetters(std::size_t column) {
    std::string letters;
    for (std::size_t n = column + 1; n > 0; n = (n - 1) / 26) letters.insert(letters.begin(), char('A' + (n - 1) % 26));
    return letters;
}

std::string cellName(std::size_t row, std::size_t column) {
    return fmt::format("row {}, column {}", row + 1, columnLetters(column));
}

Result<CsvTable> readCsv(std::string_view text) { return CsvReader(text).read(); }

std::string writeCsv(const CsvTable &table) {
    std::string out;
    for (const auto &row : table.rows) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (i > 0) out += table.separator;
            out += writtenCell(row[i], table.separator);
        }
        // A row of one empty cell would read as an empty row.
        if (row.size() == 1 && row[0].empty()) out += "\"\"";
        out += "\r\n";
    }
    return out;
}

} // namespace boltwright
