#pragma once

#include <string>
#include <string_view>

namespace boltwright {

/// An id or name as a sentence shows it: in single quotes, short, and on one line whatever it holds.
inline std::string quotedName(std::string_view name) {
    constexpr std::size_t most = 60;
    std::size_t end = name.size();
    if (end > most) {
        end = most;
        while (end > 0 && (static_cast<unsigned char>(name[end]) & 0xc0) == 0x80) --end; // not inside a character
    }
    std::string text = "'" + std::string(name.substr(0, end)) + (end < name.size() ? "...'" : "'");
    for (char &c : text)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = '?';
    return text;
}

/// Where something stands in a job, as a person finds it in the file: "panels[2] 'inside-back', shape.across". Counts
/// from 0, as the file does.
class KeyPath {
public:
    KeyPath key(std::string_view name) const {
        const char *joint = m_text.empty() ? "" : m_endsInItem ? ", " : ".";
        return {m_text + joint + std::string(name), false};
    }
    /// One of the parts listed under `name`; `called` is the part's id or name, empty where it has none.
    KeyPath item(std::string_view name, std::size_t index, std::string_view called = {}) const {
        std::string text = key(name).m_text + "[" + std::to_string(index) + "]";
        if (!called.empty()) text += " " + quotedName(called);
        return {text, true};
    }
    /// One value of a plain list: "outline[3]".
    KeyPath at(std::size_t index) const { return {m_text + "[" + std::to_string(index) + "]", false}; }

    const std::string &text() const { return m_text; }

    KeyPath() = default;

private:
    KeyPath(std::string text, bool endsInItem) : m_text(std::move(text)), m_endsInItem(endsInItem) {}
    std::string m_text;
    bool m_endsInItem = false;
};

} // namespace boltwright
