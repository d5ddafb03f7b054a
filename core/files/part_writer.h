#pragma once

#include "core/files/job_keys.h"
#include "core/files/kept_source.h"

#include <algorithm>

namespace boltwright {

/// Nothing said about any edge, however long the list.
inline bool sameValue(const EdgeLengths &a, const EdgeLengths &b) {
    for (std::size_t i = 0; i < std::max(a.size(), b.size()); ++i)
        if ((i < a.size() ? a[i] : std::nullopt) != (i < b.size() ? b[i] : std::nullopt)) return false;
    return true;
}
template <class Value>
bool sameValue(const Value &a, const Value &b) {
    return a == b;
}

/// Writes the keys of one part over the object it was read from (see job_keys.h for its verbs). A value that has not
/// changed keeps its spelling, a key that was left out and still means the same stays left out, and keys that are not
/// known stay where they are. New keys go behind the key that comes before them in job_keys.h.
class PartWriter {
public:
    PartWriter(const Json *source, const Job &job)
        : m_object(source ? *source : Json::object()), m_isNew(!source), m_job(job) {}

    Unit unit() const { return m_job.unit; }
    const Job &job() const { return m_job; }

    /// Whether another value stood here.
    template <class Value, class Spelling>
    bool must(std::string_view key, const Value &value, const Spelling &spelling) {
        Json *there = find(key);
        if (there && stands(*there, value, spelling)) return pass(key), false;
        put(key, spelling.print(value));
        return there != nullptr;
    }
    template <class Value, class Spelling, class LeftOut>
    void may(std::string_view key, const Value &value, const Spelling &spelling, const LeftOut &leftOut) {
        if (find(key) || !sameValue(value, Value(leftOut))) must(key, value, spelling);
    }
    template <class Value, class Spelling, class LeftOut>
    void shows(std::string_view key, const Value &value, const Spelling &spelling, const LeftOut &leftOut) {
        if (m_isNew) must(key, value, spelling);
        may(key, value, spelling, leftOut);
    }
    template <class Value, class Spelling>
    void maybe(std::string_view key, const std::optional<Value> &value, const Spelling &spelling) {
        if (value)
            must(key, *value, spelling);
        else
            passNullOrRemove(key);
    }

    template <class Part>
    void part(std::string_view key, Part &part) {
        this->part(key, part, [](PartWriter &out, Part &p) { keysOf(out, p); });
    }
    template <class Part, class Keys>
    void part(std::string_view key, Part &part, const Keys &keys) {
        Json written = writtenPart(find(key), part, keys);
        if (find(key) || !written.members.empty()) put(key, std::move(written));
    }
    template <class Part>
    void optionalPart(std::string_view key, std::optional<Part> &part) {
        if (part)
            put(key, writtenPart(find(key), *part, [](PartWriter &out, Part &p) { keysOf(out, p); }));
        else
            passNullOrRemove(key);
    }
    template <class Part>
    void parts(std::string_view key, std::vector<Part> &parts, Presence presence) {
        if (!find(key) && parts.empty() && presence == Presence::Optional) return;
        Json list = Json::list();
        for (Part &part : parts)
            list.items.push_back(writtenPart(nullptr, part, [](PartWriter &out, Part &p) { keysOf(out, p); }));
        put(key, std::move(list));
    }
    template <class Keys>
    void inside(std::string_view key, const Keys &keys) {
        PartWriter out(find(key), m_job);
        keys(out);
        put(key, std::move(out.m_object));
    }
    /// Drops keys that would say something else now.
    template <class List>
    void forget(const List &keys) {
        for (const std::string_view key : keys) remove(key);
    }

    void refuse(std::string_view, const std::string &) {}

    /// The part as an object. `elsewhere` is what to start from when the part itself keeps nothing.
    template <class Part, class Keys>
    Json writtenPart(const Json *elsewhere, Part &part, const Keys &keys) const {
        const auto *source = part.kept.source();
        const Json *start = source                                           ? &source->object
                            : elsewhere && elsewhere->is(Json::Kind::Object) ? elsewhere
                                                                             : nullptr;
        PartWriter out(start, m_job);
        keys(out, part);
        return std::move(out.m_object);
    }

private:
    Json *find(std::string_view key) { return const_cast<Json *>(m_object.find(key)); }

    template <class Value, class Spelling>
    static bool stands(const Json &json, const Value &value, const Spelling &spelling) {
        const auto read = spelling.read(json);
        return read && sameValue(Value(*read), value);
    }

    void pass(std::string_view key) { m_last = key; }

    void put(std::string_view key, Json value) {
        if (Json *there = find(key)) {
            *there = std::move(value);
        } else {
            const auto last = std::find_if(m_object.members.begin(), m_object.members.end(),
                                           [&](const Json::Member &m) { return m.key == m_last; });
            const auto behind = last == m_object.members.end() ? m_object.members.begin() : last + 1;
            m_object.members.insert(behind, {std::string(key), std::move(value)});
        }
        pass(key);
    }

    void passNullOrRemove(std::string_view key) {
        const Json *there = find(key);
        if (there && there->is(Json::Kind::Null))
            pass(key);
        else
            remove(key);
    }

    void remove(std::string_view key) {
        std::erase_if(m_object.members, [&](const Json::Member &m) { return m.key == key; });
    }

    Json m_object;
    bool m_isNew;
    const Job &m_job;
    std::string_view m_last; ///< the known key met last, in the order of job_keys.h
};

} // namespace boltwright
