#include "core/paper/paper_size.h"

#include <algorithm>
#include <cctype>

namespace boltwright {
using namespace literals;

PaperSize sizeOf(Paper paper) {
    switch (paper) {
    case Paper::Letter:
        return {8.5_in, 11_in};
    case Paper::A4:
        return {210_mm, 297_mm};
    case Paper::Legal:
        return {8.5_in, 14_in};
    case Paper::A3:
        return {297_mm, 420_mm};
    case Paper::Tabloid:
        return {11_in, 17_in};
    }
    return {};
}

PaperSize heldAs(Paper paper, bool sideways) {
    const PaperSize size = sizeOf(paper);
    return sideways ? PaperSize{size.height, size.width} : size;
}

PaperBox printable(PaperSize paper) {
    return {{paperMargin(), paperMargin()}, {paper.width - paperMargin(), paper.height - paperMargin()}};
}

std::vector<Paper> allPapers() { return {Paper::Letter, Paper::A4, Paper::Legal, Paper::A3, Paper::Tabloid}; }

std::string nameOf(Paper paper) {
    switch (paper) {
    case Paper::Letter:
        return "Letter";
    case Paper::A4:
        return "A4";
    case Paper::Legal:
        return "Legal";
    case Paper::A3:
        return "A3";
    case Paper::Tabloid:
        return "Tabloid";
    }
    return {};
}

std::optional<Paper> paperNamed(std::string_view name) {
    auto same = [](char a, char b) {
        return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
    };
    for (Paper paper : allPapers()) {
        const std::string own = nameOf(paper);
        if (std::equal(own.begin(), own.end(), name.begin(), name.end(), same)) return paper;
    }
    return std::nullopt;
}

} // namespace boltwright
