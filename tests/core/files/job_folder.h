#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

/// Files of the project that tests read.
namespace boltwright::test {

inline std::filesystem::path projectFolder() { return BOLTWRIGHT_SOURCE_DIR; }

inline std::string textOf(const std::filesystem::path &file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

} // namespace boltwright::test
