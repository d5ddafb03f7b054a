#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace boltwright {

/// JSON as it was spelt: keys in their order, numbers as their text ("48.00" stays so). What a job file is read from
/// and written to; nothing outside core/files sees it.
struct Json {
    enum class Kind { Null, Flag, Number, Text, List, Object };
    struct Member;

    Kind kind = Kind::Null;
    bool flag = false;
    std::string text;            ///< a text, or a number as spelt
    std::vector<Json> items;     ///< of a list
    std::vector<Member> members; ///< of an object; no key stands twice

    static Json ofFlag(bool flag);
    static Json ofNumber(std::string spelt);
    static Json ofText(std::string text);
    static Json list();
    static Json list(std::vector<Json> items);
    static Json object();

    bool is(Kind k) const { return kind == k; }
    const Json *find(std::string_view key) const; ///< null: no such key, or no object

    bool operator==(const Json &) const = default;
};

struct Json::Member {
    std::string key;
    Json value;
    bool operator==(const Member &) const = default;
};

/// Reads JSON text (RFC 8259, UTF-8). Errors: not JSON (with line and column), a key that stands twice in one object
/// (with its path), or nested more than 64 deep.
Result<Json> readJson(std::string_view text);

/// The text of a file: what fits 110 columns stands on one line, the rest is broken and set in by two spaces; a newline
/// at the end. The same value always gives the same text.
std::string writeJson(const Json &json);

/// On one line, cut after `most` bytes or a little less: for sentences that show a value.
std::string shown(const Json &json, std::size_t most = 60);

} // namespace boltwright
