#include "core/files/json.h"

#include <nlohmann/json.hpp>

#include <optional>

namespace boltwright {
namespace {

constexpr std::size_t widest = 110;

std::string quoted(const std::string &text) {
    // Bytes that are no UTF-8 can only come from a text typed or pasted by a program; they are replaced, not refused.
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

/// Adds the value on one line; false (and `out` left longer than `room`) as soon as that does not fit.
bool addOnOneLine(const Json &json, std::size_t room, std::string &out) {
    const auto addAll = [&](char open, char close, std::size_t count, auto &&addOne) {
        out += open;
        for (std::size_t i = 0; i < count; ++i) {
            if (i > 0) out += ", ";
            if (!addOne(i) || out.size() > room) return false;
        }
        out += close;
        return out.size() <= room;
    };
    switch (json.kind) {
    case Json::Kind::Null:
        out += "null";
        break;
    case Json::Kind::Flag:
        out += json.flag ? "true" : "false";
        break;
    case Json::Kind::Number:
        out += json.text;
        break;
    case Json::Kind::Text:
        out += quoted(json.text);
        break;
    case Json::Kind::List:
        return addAll('[', ']', json.items.size(),
                      [&](std::size_t i) { return addOnOneLine(json.items[i], room, out); });
    case Json::Kind::Object:
        return addAll('{', '}', json.members.size(), [&](std::size_t i) {
            out += quoted(json.members[i].key) + ": ";
            return addOnOneLine(json.members[i].value, room, out);
        });
    }
    return out.size() <= room;
}

/// Parts of a job stand on lines of their own, so that a change to one shows as a change of its lines.
bool alwaysBreaks(const Json &json, std::size_t depth) {
    return depth == 0 || (depth == 1 && !json.items.empty() && json.items[0].is(Json::Kind::Object));
}

/// Adds the value, `used` columns of its line being taken already and one kept for a comma behind it.
void add(const Json &json, std::size_t depth, std::size_t used, std::string &out) {
    const bool canBreak = !json.items.empty() || !json.members.empty();
    const std::size_t room = !canBreak ? std::string::npos : used < widest ? widest - used - 1 : 0;
    std::string line;
    if ((!canBreak || !alwaysBreaks(json, depth)) && addOnOneLine(json, room, line)) {
        out += line;
        return;
    }
    const bool isList = json.is(Json::Kind::List);
    const std::size_t count = isList ? json.items.size() : json.members.size();
    const std::string indent(2 * (depth + 1), ' ');
    out += isList ? "[\n" : "{\n";
    for (std::size_t i = 0; i < count; ++i) {
        const std::string key = isList ? "" : quoted(json.members[i].key) + ": ";
        out += indent + key;
        add(isList ? json.items[i] : json.members[i].value, depth + 1, indent.size() + key.size(), out);
        out += i + 1 < count ? ",\n" : "\n";
    }
    out += std::string(2 * depth, ' ') + (isList ? "]" : "}");
}

} // namespace

Json Json::ofFlag(bool flag) {
    Json json;
    json.kind = Kind::Flag;
    json.flag = flag;
    return json;
}

Json Json::ofNumber(std::string spelt) {
    Json json;
    json.kind = Kind::Number;
    json.text = std::move(spelt);
    return json;
}

Json Json::ofText(std::string text) {
    Json json;
    json.kind = Kind::Text;
    json.text = std::move(text);
    return json;
}

Json Json::list() { return list(std::vector<Json>()); }

Json Json::list(std::vector<Json> items) {
    Json json;
    json.kind = Kind::List;
    json.items = std::move(items);
    return json;
}

Json Json::object() {
    Json json;
    json.kind = Kind::Object;
    return json;
}

const Json *Json::find(std::string_view key) const {
    for (const Member &m : members)
        if (m.key == key) return &m.value;
    return nullptr;
}

std::string writeJson(const Json &json) {
    std::string out;
    add(json, 0, 0, out);
    return out + '\n';
}

std::string shown(const Json &json, std::size_t most) {
    std::string line;
    addOnOneLine(json, most, line);
    if (line.size() <= most) return line;
    std::size_t end = most - 3;
    while (end > 0 && (static_cast<unsigned char>(line[end]) & 0xc0) == 0x80) --end; // not inside a character
    return line.substr(0, end) + "...";
}

} // namespace boltwright
