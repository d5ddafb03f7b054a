#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

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
    /// A key, one of the parts listed under a key, or (without a name) one value of the list before it.
    struct Step {
        std::string name;
        std::optional<std::size_t> index;
        std::string called; ///< the part's id or name; empty where it has none
    };

    KeyPath key(std::string_view name) const { return then({std::string(name), std::nullopt, {}}); }
    /// One of the parts listed under `name`; `called` is the part's id or name, empty where it has none.
    KeyPath item(std::string_view name, std::size_t index, std::string_view called = {}) const {
        return then({std::string(name), index, std::string(called)});
    }
    /// One value of a plain list: "outline[3]".
    KeyPath at(std::size_t index) const { return then({{}, index, {}}); }

    const std::vector<Step> &steps() const { return m_steps; }

    std::string text() const {
        std::string text;
        bool afterItem = false;
        for (const Step &step : m_steps) {
            if (!step.name.empty()) text += (text.empty() ? "" : afterItem ? ", " : ".") + step.name;
            if (step.index) text += "[" + std::to_string(*step.index) + "]";
            if (!step.called.empty()) text += " " + quotedName(step.called);
            afterItem = step.index && !step.name.empty();
        }
        return text;
    }

private:
    KeyPath then(Step step) const {
        KeyPath longer = *this;
        longer.m_steps.push_back(std::move(step));
        return longer;
    }
    std::vector<Step> m_steps;
};

} // namespace boltwright
