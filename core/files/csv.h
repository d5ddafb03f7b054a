#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace boltwright {

/// A table of texts as comma-separated values tell it (RFC 4180). Row 0 is the first line, empty lines are rows too, so
/// that counting is that of a spreadsheet; rows may differ in length.
struct CsvTable {
    char separator = ',';
    std::vector<std::vector<std::string>> rows;
    bool operator==(const CsvTable &) const = default;
};

/// "A", "B", ... "Z", "AA": how a spreadsheet names a column (counted from 0).
std::string columnLetters(std::size_t column);
/// "row 4, column C": rows and columns counted from 0.
std::string cellName(std::size_t row, std::size_t column);

/// Reads a table of at most 10,000 rows and 200 columns. The separator is a comma, semicolon or tab: what a first line
/// "sep=;" says, else what occurs most in the first line that holds anything. Lines end in LF, CRLF or CR; a byte order
/// mark is skipped. A cell that begins with a quote ends with one, and a doubled quote inside is one; elsewhere a quote
/// is a quote (3' 2"). Errors name row and column, in one line.
Result<CsvTable> readCsv(std::string_view text);

/// As RFC 4180 has it, lines ending in CRLF; cells are quoted where they must be. Control characters other than line
/// ends and tabs become spaces. What is written without them is read back as the same table.
std::string writeCsv(const CsvTable &table);

} // namespace boltwright
