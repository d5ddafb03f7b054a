#pragma once

#include "core/files/job_keys.h"
#include "core/files/kept_source.h"
#include "core/job/key_path.h"

#include <algorithm>

namespace boltwright {

/// What all readers of one file share: the job as far as it is read, and the first thing that is wrong.
struct Reading {
    Job &job;
    std::optional<Fault> fault;
    KeyPath place = {};      ///< of the fault
    std::string reason = {}; ///< the fault without its place
};

constexpr const char *missingKey = "this key is missing";
constexpr const char *notAList = " is not a list; write one in brackets",
                     *notAnObjectWords = " is not an object; write its keys in braces";

/// Reads the keys of one object into a part (see job_keys.h for its verbs). After the first fault it does nothing more.
class PartReader {
public:
    PartReader(const Json &object, KeyPath path, Reading &reading)
        : m_object(object), m_path(std::move(path)), m_reading(reading) {}

    Unit unit() const { return m_reading.job.unit; }
    const Job &job() const { return m_reading.job; }

    /// Never true; a writer says here whether it replaced the value.
    template <class Value, class Spelling>
    bool must(std::string_view key, Value &value, const Spelling &spelling) {
        if (const Json *json = needed(key)) read(key, *json, value, spelling);
        return false;
    }
    template <class Value, class Spelling, class LeftOut>
    void may(std::string_view key, Value &value, const Spelling &spelling, const LeftOut &leftOut) {
        value = leftOut;
        if (const Json *json = m_object.find(key)) read(key, *json, value, spelling);
    }
    template <class Value, class Spelling, class LeftOut>
    void shows(std::string_view key, Value &value, const Spelling &spelling, const LeftOut &leftOut) {
        may(key, value, spelling, leftOut);
    }
    template <class Value, class Spelling>
    void maybe(std::string_view key, std::optional<Value> &value, const Spelling &spelling) {
        value.reset();
        const Json *json = m_object.find(key);
        if (json && !json->is(Json::Kind::Null)) read(key, *json, value.emplace(), spelling);
    }

    template <class Part>
    void part(std::string_view key, Part &part) {
        this->part(key, part, [](PartReader &in, Part &p) { keysOf(in, p); });
    }
    template <class Part, class Keys>
    void part(std::string_view key, Part &part, const Keys &keys) {
        part = Part{};
        if (const Json *json = m_object.find(key)) readPart(*json, m_path.key(key), part, keys);
    }
    template <class Part>
    void optionalPart(std::string_view key, std::optional<Part> &part) {
        part.reset();
        const Json *json = m_object.find(key);
        // A bolt that is null beside remnants would be read by some as a bolt; the other parts may be null for none.
        if (json && (!json->is(Json::Kind::Null) || key == "bolt"))
            readPart(*json, m_path.key(key), part.emplace(), [](PartReader &in, Part &p) { keysOf(in, p); });
    }
    template <class Part>
    void parts(std::string_view key, std::vector<Part> &parts, Presence presence) {
        parts.clear();
        m_lists.push_back(key);
        const Json *json = presence == Presence::Required ? needed(key) : m_object.find(key);
        if (!json || stopped()) return;
        if (!json->is(Json::Kind::List)) return refuse(key, shown(*json) + notAList);
        for (std::size_t i = 0; i < json->items.size() && !stopped(); ++i)
            readPart(json->items[i], m_path.item(key, i, calledIn(json->items[i])), parts.emplace_back(),
                     [](PartReader &in, Part &p) { keysOf(in, p); });
    }
    template <class Keys>
    void inside(std::string_view key, const Keys &keys) {
        const Json *json = needed(key);
        if (!json) return;
        if (!json->is(Json::Kind::Object)) return refuse(key, notAnObject(*json));
        PartReader in(*json, m_path.key(key), m_reading);
        keys(in);
    }
    template <class List>
    void forget(const List &) {}

    void refuse(std::string_view key, const std::string &what) { refuseAt(m_path.key(key), what); }

    /// Reads a whole part from its object.
    template <class Part, class Keys>
    void readPart(const Json &json, const KeyPath &path, Part &part, const Keys &keys) {
        if (stopped()) return;
        if (!json.is(Json::Kind::Object)) return refuseAt(path, notAnObject(json));
        PartReader in(json, path, m_reading);
        keys(in, part);
        part.kept = in.kept();
    }

private:
    bool stopped() const { return m_reading.fault.has_value(); }

    const Json *needed(std::string_view key) {
        if (stopped()) return nullptr;
        const Json *json = m_object.find(key);
        if (!json) refuse(key, missingKey);
        return json;
    }

    template <class Value, class Spelling>
    void read(std::string_view key, const Json &json, Value &value, const Spelling &spelling) {
        if (stopped()) return;
        auto result = spelling.read(json);
        if (result)
            value = *std::move(result);
        else
            stop(m_path.key(key), result.error().where, result.error().what);
    }

    /// `within`: where in the value, as it stands behind its key.
    void stop(const KeyPath &path, const std::string &within, const std::string &what) {
        const std::string place = path.text() + within;
        m_reading.fault = place.empty() ? Fault{what} : Fault{what}.at(place);
        m_reading.place = path;
        m_reading.reason = what;
    }

    void refuseAt(const KeyPath &path, const std::string &what) {
        if (!stopped()) stop(path, {}, what);
    }

    static std::string notAnObject(const Json &json) { return shown(json) + notAnObjectWords; }

    /// The name by which a person knows a part of a list.
    static std::string calledIn(const Json &json) {
        for (const char *key : {"id", "panel", "name"})
            if (const Json *name = json.find(key); name && name->is(Json::Kind::Text)) return name->text;
        return {};
    }

    Kept kept() const {
        auto source = std::make_shared<Kept::Source>();
        source->object = Json::object();
        for (const auto &[key, value] : m_object.members) {
            const bool isList = std::find(m_lists.begin(), m_lists.end(), key) != m_lists.end();
            source->object.members.push_back({key, isList ? Json::list() : value});
        }
        return Kept(std::move(source));
    }

    const Json &m_object;
    KeyPath m_path;
    Reading &m_reading;
    std::vector<std::string_view> m_lists; ///< keys of lists whose parts keep their own
};

} // namespace boltwright
