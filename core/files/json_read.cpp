#include "core/files/json.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace boltwright {
namespace {

// Far beyond what a job needs. Keeps everything that walks the tree from running out of stack.
constexpr std::size_t deepest = 64;

/// What the library tells while it reads, built into a tree.
class Builder {
public:
    bool null() { return add({}); }
    bool boolean(bool flag) { return add(Json::ofFlag(flag)); }
    bool number_integer(std::int64_t n) { return add(Json::ofNumber(std::to_string(n))); }
    bool number_unsigned(std::uint64_t n) { return add(Json::ofNumber(std::to_string(n))); }
    // The text and not the number, so that no digit of it is lost.
    bool number_float(double, const std::string &spelt) { return add(Json::ofNumber(spelt)); }
    bool string(std::string &text) { return add(Json::ofText(std::move(text))); }
    bool binary(std::vector<std::uint8_t> &) { return false; }

    bool start_object(std::size_t) { return open(Json::object()); }
    bool start_array(std::size_t) { return open(Json::list()); }
    bool key(std::string &key) {
        m_open.back().members.push_back({std::move(key), {}});
        return true;
    }
    bool end_array() { return close(); }
    bool end_object() {
        std::vector<std::string_view> keys;
        for (const auto &m : m_open.back().members) keys.push_back(m.key);
        std::sort(keys.begin(), keys.end());
        const auto twice = std::adjacent_find(keys.begin(), keys.end());
        if (twice == keys.end()) return close();
        const std::string name = shown(Json::ofText(std::string(*twice)));
        m_open.pop_back();
        m_fault = {path() + "the key " + name + " stands twice in one object; keep one of them"};
        return false;
    }

    template <class Exception>
    bool parse_error(std::size_t, const std::string &, const Exception &exception) {
        m_fault = {sentenceOf(exception.what())};
        return false;
    }

    Result<Json> finish(bool complete) {
        if (complete) return std::move(m_root);
        return fault(m_fault);
    }

private:
    bool add(Json value) {
        if (m_open.empty()) {
            m_root = std::move(value);
        } else if (m_open.back().is(Json::Kind::List)) {
            m_open.back().items.push_back(std::move(value));
        } else {
            m_open.back().members.back().value = std::move(value);
        }
        return true;
    }
    bool open(Json value) {
        if (m_open.size() == deepest) {
            m_fault = {fmt::format("lists and objects are nested more than {} deep, which no job needs", deepest)};
            return false;
        }
        m_open.push_back(std::move(value));
        return true;
    }
    bool close() {
        Json value = std::move(m_open.back());
        m_open.pop_back();
        return add(std::move(value));
    }

    /// Where the value lies that is being read: "panels[2].shape: ", empty at the top.
    std::string path() const {
        std::string path;
        for (const Json &json : m_open) {
            if (json.is(Json::Kind::List))
                path += fmt::format("[{}]", json.items.size());
            else
                path += (path.empty() ? "" : ".") + json.members.back().key;
        }
        return path.empty() ? path : path + ": ";
    }

    /// The library's message in our words: "gap: this is not JSON: line 3, column 7: invalid literal".
    std::string sentenceOf(const std::string &message) const {
        if (const auto number = message.rfind("number overflow parsing "); number != std::string::npos)
            return path() + printable(message.substr(message.find('\'', number))) + " is too large a number";
        if (message.find("ill-formed UTF-8") != std::string::npos || message.find("invalid BOM") != std::string::npos)
            return placeIn(message) + "the text is not UTF-8; save it as UTF-8";
        const bool inValue = message.find("while parsing value") != std::string::npos;
        return (inValue ? path() : "") + "this is not JSON: " + placeIn(message) + printable(reasonIn(message));
    }

    /// "unexpected end of input; expected '}'" of "[...] parse error at ...: syntax error while parsing object -
    /// unexpected end of input; last read: ...; expected '}'".
    static std::string reasonIn(std::string message) {
        if (const auto last = message.find("; last read"); last != std::string::npos) {
            const auto next = message.rfind("; expected");
            const bool expects = next != std::string::npos && next > last;
            message.erase(last, expects ? next - last : std::string::npos);
        }
        const auto parsing = message.find("while parsing ");
        const auto start = parsing == std::string::npos ? parsing : message.find(" - ", parsing);
        return start == std::string::npos ? message : message.substr(start + 3);
    }

    /// What was read may be anything; a sentence stays on one line.
    static std::string printable(std::string text) {
        for (char &c : text)
            if (static_cast<unsigned char>(c) < 0x20 || static_cast<unsigned char>(c) > 0x7e) c = '?';
        return text;
    }

    static std::string placeIn(const std::string &message) {
        const auto at = message.find("at line ");
        if (at == std::string::npos) return "";
        const auto from = at + 3, end = message.find(':', from);
        return message.substr(from, end - from) + ": ";
    }

    Json m_root;
    std::vector<Json> m_open; ///< the lists and objects not yet closed, outermost first
    Fault m_fault{"this is not JSON"};
};

} // namespace

Result<Json> readJson(std::string_view text) {
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) return fault("there is nothing in it");
    Builder builder;
    const bool complete = nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
    return builder.finish(complete);
}

} // namespace boltwright
