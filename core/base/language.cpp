#include "core/base/language.h"

#include <algorithm>
#include <atomic>

namespace boltwright {
namespace {

std::atomic<decltype(Language::text)> s_text{nullptr};
std::atomic<decltype(Language::number)> s_number{nullptr};

} // namespace

void speak(Language language) {
    s_text = language.text;
    s_number = language.number;
}

std::string phrase(const char *english, std::initializer_list<std::string> parts) {
    const auto translate = s_text.load();
    const std::string text = translate ? translate(english) : english;
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool mark = text[i] == '%' && i + 1 < text.size() && text[i + 1] >= '1' && text[i + 1] <= '9';
        const std::size_t index = mark ? std::size_t(text[i + 1] - '1') : parts.size();
        if (index >= parts.size()) {
            out += text[i];
            continue;
        }
        out += *(parts.begin() + index); // what came in is not looked at again
        ++i;
    }
    return out;
}

std::string phrase(std::string_view english) { return phrase(std::string(english).c_str()); }

std::string localised(const std::string &plain) {
    std::string out;
    for (std::size_t at = 0; at <= plain.size();) {
        const std::size_t end = std::min(plain.find(' ', at), plain.size());
        const std::string word = plain.substr(at, end - at);
        const bool letters =
            !word.empty() && ((word[0] >= 'a' && word[0] <= 'z') || (word[0] >= 'A' && word[0] <= 'Z'));
        out += (at > 0 ? " " : "") + (letters ? phrase(std::string_view(word)) : numeral(word));
        at = end + 1;
    }
    return out;
}

std::string numeral(const std::string &plain) {
    const auto write = s_number.load();
    return write ? write(plain) : plain;
}

} // namespace boltwright
