#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

namespace boltwright {

/// The language of whoever reads screen and paper. Core writes English and knows no other; who shows its words lends
/// it these. Left out: as written.
struct Language {
    std::string (*text)(const char *english) = nullptr;        ///< a whole phrase, with %1, %2 where parts come in
    std::string (*number)(const std::string &plain) = nullptr; ///< "92.5" as it is written there, such as "92,5"
};

/// From now on, in every thread. What core hands to files and to `check` stays English.
void speak(Language language);

/// A phrase in the reader's language, its %1, %2 ... replaced by parts.
std::string phrase(const char *english, std::initializer_list<std::string> parts = {});
/// The same for a phrase out of a table, where it stands as `marked`.
std::string phrase(std::string_view english);
/// A number that was written plainly.
std::string numeral(const std::string &plain);
/// A length that was written plainly, with the names of its units: "3 yd 7 1/2 in", "92.5 cm".
std::string localised(const std::string &plain);

/// Marks a text in a table for whoever collects what is to be translated; changes nothing.
constexpr const char *marked(const char *english) { return english; }

} // namespace boltwright
