#include "profile/read_described.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <map>
#include <set>

#include "profile/read_measure.hpp"
#include "profile/read_value.hpp"
#include "profile/yaml_guard.hpp"
#include "profile/yaml_tree.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

using Kind = YamlNode::Kind;

std::string in_words(std::string_view key) { return with_replaced(std::string{key}, "_", " "); }

std::optional<FieldState> state_word(std::string_view text) {
    if (text == "unknown") return FieldState::unknown;
    if (text == "none") return FieldState::none;
    if (text == "off") return FieldState::off;
    return std::nullopt;
}

bool allows(const FieldInfo& info, FieldState state) {
    return state == FieldState::unknown || (state == FieldState::none && info.none) ||
           (state == FieldState::off && info.off);
}

/// ", or unknown or none": the answers that a field takes instead of a value. An essential field takes `unknown` too,
/// but nothing is printed then, so it is not offered.
std::string or_answers(const FieldInfo& info) {
    std::vector<std::string> words;
    if (info.grade != Grade::essential) words.emplace_back("unknown");
    if (info.none) words.emplace_back("none");
    if (info.off) words.emplace_back("off");
    return words.empty() ? "" : ", or " + listed(words, " or ");
}

/// Where each key of a profile belongs: key to the names of the groups that have it.
class KeyPlaces final : public Visitor {
  public:
    void leaf(const FieldInfo& info, FieldBase&) override { note(info); }
    void group(const FieldInfo& info, GroupBase& group) override {
        note(info);
        within(info, [&] { group.describe(*this); });
    }
    void list(const FieldInfo& info, ListBase& list) override {
        note(info);
        within(info, [&] { list.describe_element(*this); });
    }
    const std::set<std::string>& parents_of(const std::string& key) { return parents_[key]; }

  private:
    void note(const FieldInfo& info) { parents_[std::string{info.key}].insert(parent_); }
    template <class Walk>
    void within(const FieldInfo& info, Walk walk) {
        const std::string outer = std::exchange(parent_, std::string{info.key});
        walk();
        parent_ = outer;
    }

    std::string parent_;
    std::map<std::string, std::set<std::string>> parents_;
};

/// The visitor that fills fields from a YAML tree.
class Reader final : public Visitor {
  public:
    Reader(FindingList& findings, const Describe& blank) : findings_{findings}, blank_{blank} {}

    /// Reads one map; `walk` describes what belongs in it.
    template <class Walk>
    void read_map(const YamlNode& map, std::string_view name, std::string path, Place owner, Walk walk) {
        Level level{map, name, std::move(path), owner, {}, {}};
        Level* outer = std::exchange(level_, &level);
        walk();
        report_unknown_keys();
        report_missing();
        level_ = outer;
    }

    void leaf(const FieldInfo& info, FieldBase& field) override;
    void group(const FieldInfo& info, GroupBase& group) override;
    void list(const FieldInfo& info, ListBase& list) override;

  private:
    struct Missing {
        FieldInfo info;
        Place place;  ///< of the answer `unknown`; nowhere when the key is not there
    };
    /// The map that is being read.
    struct Level {
        const YamlNode& map;
        std::string_view name;  ///< key that it stands under; empty at the top
        std::string path;
        Place owner;  ///< where a message about something missing points
        std::vector<std::string> keys;
        std::vector<Missing> missing;
    };

    std::string path_of(const FieldInfo& info) const {
        return level_->path.empty() ? std::string{info.key} : fmt::format("{}.{}", level_->path, info.key);
    }
    void refuse(const FieldInfo& info, Place place, ValueRemark remark) {
        findings_.refuse({std::move(remark.rule), place, path_of(info), std::move(remark.message),
                          std::move(remark.label), std::move(remark.to_do)});
    }
    const YamlNode* node_for(const FieldInfo& info, FieldState& state, Place& place,
                             bool plain_words_are_states = true);
    bool answer(const YamlNode& node, const FieldInfo& info, FieldState& state);
    void read_scalar(const YamlNode& node, const FieldInfo& info, FieldBase& field);
    void read_range(const YamlNode& node, const FieldInfo& info, FieldBase& field);
    std::optional<Measure> read_range_end(const YamlNode& node, std::string_view end, const FieldInfo& info,
                                          Dimension dimension);
    void read_text_list(const YamlNode& node, const FieldInfo& info, FieldBase& field);
    void refuse_scalar_for_group(const YamlNode& node, const FieldInfo& info, GroupBase& group);
    void report_unknown_keys();
    void report_unknown_key(const YamlEntry& entry);
    void report_missing();
    std::string where_else(const std::string& key);

    FindingList& findings_;
    const Describe& blank_;
    Level* level_ = nullptr;
    std::optional<KeyPlaces> key_places_;
    std::set<std::string> taken_for_;  ///< paths of fields that a misspelt key was probably meant for
};

// --- finding the node of a field, and the answers that are not values

/// The node to read, or null when the key is absent, empty, broken or answered by a state; all but absent are settled
/// then.
const YamlNode* Reader::node_for(const FieldInfo& info, FieldState& state, Place& place, bool plain_words_are_states) {
    level_->keys.emplace_back(info.key);
    state = FieldState::absent;
    place = level_->owner;
    const YamlEntry* entry = level_->map.find(info.key);
    if (!entry) {
        level_->missing.push_back({info, {}});
        return nullptr;
    }
    const YamlNode& node = entry->value;
    place = node.kind == Kind::empty && node.text.empty() ? entry->key_place : node.place;
    if (node.kind == Kind::broken) return nullptr;
    if (node.kind == Kind::empty) {
        const std::string how = fmt::format("Write the value{}{}.", with_example(info), or_answers(info));
        refuse(info, place,
               {"value-empty", fmt::format("{} has no value.", quoted(info.key)), "nothing here",
                node.text.empty() || node.text == "~"
                    ? how
                    : fmt::format("{} If the word itself is meant, put it in quotation marks.", how)});
        return nullptr;
    }
    if (node.kind == Kind::scalar && node.plain && plain_words_are_states && answer(node, info, state)) return nullptr;
    return &node;
}

/// Whether a plain scalar is an answer such as `unknown`, or tries to be one.
bool Reader::answer(const YamlNode& node, const FieldInfo& info, FieldState& state) {
    const std::string small = lower_ascii(node.text);
    const auto word = state_word(small);
    if (!word) return false;
    if (!allows(info, *word)) {
        refuse(info, node.place,
               {"answer-not-possible-here",
                fmt::format("{} is not an answer to {}.", quoted(node.text), quoted(info.key)), "not possible here",
                fmt::format("Write the value{}{}. If the word itself is meant, put it in quotation marks.",
                            with_example(info), or_answers(info))});
    } else if (small != node.text) {
        refuse(info, node.place,
               {"answer-in-capitals", fmt::format("{} is written in small letters.", quoted(small)),
                "small letters are due",
                fmt::format("Write {}. If the word itself is meant, put it in quotation marks.", small)});
    } else {
        state = *word;
        if (*word == FieldState::unknown) level_->missing.push_back({info, node.place});
    }
    return true;
}

// --- fields

void Reader::leaf(const FieldInfo& info, FieldBase& field) {
    const YamlEntry* entry = level_->map.find(info.key);
    const bool is_choice = entry && std::ranges::find(field.choices(), entry->value.text) != field.choices().end();
    const bool off_means_no =
        field.kind() == ValueKind::flag && entry && state_word(entry->value.text) == FieldState::off;
    const YamlNode* node = node_for(info, field.state, field.place, !is_choice && !(off_means_no && !info.off));
    if (!node) return;
    if (field.kind() == ValueKind::text_list) return read_text_list(*node, info, field);
    if (field.kind() == ValueKind::range) return read_range(*node, info, field);
    read_scalar(*node, info, field);
}

std::string_view without_last_line_break(const YamlNode& node) {
    std::string_view text = node.text;
    while (text.ends_with('\n')) text.remove_suffix(1);
    return text;
}

void Reader::read_scalar(const YamlNode& node, const FieldInfo& info, FieldBase& field) {
    if (node.kind != Kind::scalar) {
        refuse(
            info, node.place,
            {"one-value-expected",
             fmt::format("{} takes one value, not a {}.", quoted(info.key), node.kind == Kind::map ? "group" : "list"),
             "one value is due", fmt::format("Write the value behind the colon{}.", with_example(info))});
        return;
    }
    ValueOrRemark read = read_value(without_last_line_break(node), node.plain, info, field);
    if (auto* remark = std::get_if<ValueRemark>(&read)) return refuse(info, node.place, std::move(*remark));
    field.give(std::get<Value>(std::move(read)), node.place);
}

std::string range_example(const YamlNode& node, const FieldInfo& info, Dimension dimension) {
    const std::vector<Unit> accepted = accepted_units(info, dimension);
    const auto to = node.text.find(" to ");
    if (to != std::string::npos) {
        const auto high = meant_measure(trimmed(std::string_view{node.text}.substr(to + 4)), accepted);
        std::string low_text{trimmed(std::string_view{node.text}.substr(0, to))};
        auto low = meant_measure(low_text, accepted);
        if (!low && high) low = meant_measure(low_text + high->substr(high->find(' ')), accepted);
        if (low && high) return fmt::format("{{from: {}, to: {}}}", *low, *high);
    }
    if (const auto one = meant_measure(node.text, accepted)) return fmt::format("{{from: {0}, to: {0}}}", *one);
    if (!info.example.empty()) return std::string{info.example};
    return fmt::format("{{from: 1 {0}, to: 2 {0}}}", accepted.front().symbol);
}

void Reader::read_range(const YamlNode& node, const FieldInfo& info, FieldBase& field) {
    const Dimension dimension = *field.dimension();
    if (node.kind != Kind::map) {
        refuse(info, node.place,
               {"range-expected", fmt::format("{} takes two values, from and to.", quoted(info.key)), "a range is due",
                fmt::format("Write {}.", range_example(node, info, dimension))});
        return;
    }
    bool known_keys = true;
    for (const YamlEntry& entry : node.entries) {
        if (entry.key == "from" || entry.key == "to") continue;
        known_keys = false;
        refuse(info, entry.key_place,
               {"unknown-key", fmt::format("{} is not a key of a range.", quoted(entry.key)), "from or to is due",
                fmt::format("Write {}.", range_example({}, info, dimension))});
    }
    const auto from = read_range_end(node, "from", info, dimension);
    const auto to = read_range_end(node, "to", info, dimension);
    if (!from || !to || !known_keys) return;
    if (from->unit.symbol != to->unit.symbol) {
        refuse(info, node.place,
               {"range-in-two-units",
                fmt::format("{} begins in {} and ends in {}.", quoted(info.key), from->unit.symbol, to->unit.symbol),
                "two units", "Write both ends in the unit that the device shows."});
        return;
    }
    if (from->canonical() > to->canonical()) {
        refuse(
            info, node.place,
            {"range-upside-down",
             fmt::format("{} begins at {} and ends at {}, which is less.", quoted(info.key), from->text(), to->text()),
             "from is more than to", "Write the smaller value behind from."});
        return;
    }
    field.give(MeasureRange{*from, *to}, node.place);
}

std::optional<Measure> Reader::read_range_end(const YamlNode& node, std::string_view end, const FieldInfo& info,
                                              Dimension dimension) {
    const YamlEntry* entry = node.find(end);
    if (!entry || entry->value.kind == Kind::empty) {
        refuse(info, entry ? entry->key_place : node.place,
               {"range-end-missing", fmt::format("The range {} has no {} value.", quoted(info.key), quoted(end)),
                "not complete", fmt::format("Write {}.", range_example({}, info, dimension))});
        return std::nullopt;
    }
    if (entry->value.kind == Kind::broken) return std::nullopt;
    if (entry->value.kind != Kind::scalar) {
        refuse(info, entry->value.place,
               {"one-value-expected", fmt::format("{} takes one value.", quoted(end)), "one value is due",
                fmt::format("Write {}.", range_example({}, info, dimension))});
        return std::nullopt;
    }
    ValueOrRemark read = read_measure(without_last_line_break(entry->value), info, dimension);
    if (auto* remark = std::get_if<ValueRemark>(&read)) {
        refuse(info, entry->value.place, std::move(*remark));
        return std::nullopt;
    }
    return std::get<Measure>(std::get<Value>(read));
}

void Reader::read_text_list(const YamlNode& node, const FieldInfo& info, FieldBase& field) {
    if (node.kind != Kind::sequence) {
        refuse(info, node.place,
               {"list-expected", fmt::format("{} takes a list.", quoted(info.key)), "a list is due",
                "Write each item on a line of its own below the key, with a dash and a blank in front."});
        return;
    }
    if (node.items.empty()) {
        refuse(info, node.place,
               {"list-empty", fmt::format("The list {} has no items.", quoted(info.key)), "nothing in it",
                fmt::format("Write the items{}.", or_answers(info))});
        return;
    }
    TextList texts;
    for (const YamlNode& item : node.items) {
        if (item.kind == Kind::broken) continue;
        if (item.kind != Kind::scalar) {
            refuse(info, item.kind == Kind::empty ? node.place : item.place,
                   {"list-item-not-a-text", fmt::format("Each item of {} is one text.", quoted(info.key)),
                    "one text is due",
                    "Write a dash, a blank and the text; put a text that holds a colon in quotation marks."});
            continue;
        }
        ValueOrRemark read = read_text(without_last_line_break(item), item.plain, info);
        if (auto* remark = std::get_if<ValueRemark>(&read))
            refuse(info, item.place, std::move(*remark));
        else
            texts.push_back(std::get<std::string>(std::get<Value>(std::move(read))));
    }
    if (texts.size() == node.items.size()) field.give(std::move(texts), node.place);
}

// --- groups and lists

/// The keys that belong in a group.
class KeysOnly final : public Visitor {
  public:
    void leaf(const FieldInfo& info, FieldBase&) override { keys.emplace_back(info.key); }
    void group(const FieldInfo& info, GroupBase&) override { keys.emplace_back(info.key); }
    void list(const FieldInfo& info, ListBase&) override { keys.emplace_back(info.key); }
    std::vector<std::string> keys;
};

void Reader::refuse_scalar_for_group(const YamlNode& node, const FieldInfo& info, GroupBase& group) {
    KeysOnly below;
    group.describe(below);
    refuse(info, node.place,
           {"group-expected", fmt::format("{} takes a group of keys.", quoted(info.key)), "a group is due",
            fmt::format("Write the keys on lines of their own below it, indented by two blanks: {}.",
                        joined(below.keys, ", "))});
}

void Reader::group(const FieldInfo& info, GroupBase& group) {
    const YamlNode* node = node_for(info, group.state, group.place);
    if (!node) return;
    if (node->kind != Kind::map) return refuse_scalar_for_group(*node, info, group);
    group.state = FieldState::given;
    const Place key_place = level_->map.find(info.key)->key_place;
    group.place = key_place;
    read_map(*node, info.key, path_of(info), key_place, [&] { group.describe(*this); });
}

void Reader::list(const FieldInfo& info, ListBase& list) {
    const YamlNode* node = node_for(info, list.state, list.place);
    if (!node) return;
    if (node->kind != Kind::sequence) {
        refuse(info, node->place,
               {"list-expected", fmt::format("{} takes a list of groups.", quoted(info.key)), "a list is due",
                "Begin each group on a new line with a dash and a blank, and align its keys behind it."});
        return;
    }
    if (node->items.empty()) {
        refuse(info, node->place,
               {"list-empty", fmt::format("The list {} has no items.", quoted(info.key)), "nothing in it",
                fmt::format("Write the items{}.", or_answers(info))});
        return;
    }
    list.state = FieldState::given;
    const Place key_place = level_->map.find(info.key)->key_place;
    list.place = key_place;
    for (const YamlNode& item : node->items) {
        if (item.kind == Kind::broken) continue;
        if (item.kind != Kind::map || item.entries.empty()) {
            refuse(
                info, item.kind == Kind::empty ? key_place : item.place,
                {"list-item-not-a-group", fmt::format("Each item of {} is a group of keys.", quoted(info.key)),
                 "a group is due", "Write the keys of the item behind its dash, one on each line, all in one column."});
            continue;
        }
        const Place place = item.entries.front().key_place;
        const std::size_t index = list.size();
        list.add(place);
        read_map(item, info.key, fmt::format("{}.{}", path_of(info), index), place,
                 [&] { list.describe(index, *this); });
    }
}

// --- keys that do not belong, and fields that are not there

std::string Reader::where_else(const std::string& key) {
    if (!key_places_) {
        key_places_.emplace();
        blank_(*key_places_);
    }
    constexpr std::size_t kMostPlaces = 3;  // a key such as "name" stands nearly everywhere: that says nothing
    std::vector<std::string> places;
    for (const std::string& parent : key_places_->parents_of(key))
        if (parent != level_->name) places.push_back(parent.empty() ? "the top level" : quoted(parent));
    return places.size() > kMostPlaces ? "" : listed(places, " or ");
}

void Reader::report_unknown_keys() {
    for (const YamlEntry& entry : level_->map.entries) {
        if (std::ranges::find(level_->keys, entry.key) != level_->keys.end()) continue;
        if (findings_.full())
            findings_.leave_out();
        else
            report_unknown_key(entry);
    }
}

void Reader::report_unknown_key(const YamlEntry& entry) {
    const std::string here = level_->name.empty() ? "at the top level" : fmt::format("below {}", quoted(level_->name));
    Remark remark{"unknown-key",
                  entry.key_place,
                  level_->path.empty() ? entry.key : fmt::format("{}.{}", level_->path, entry.key),
                  fmt::format("{} is not a key that belongs {}.", quoted(entry.key), here),
                  "unknown key",
                  fmt::format("Keys that belong here: {}.", joined(level_->keys, ", "))};
    const auto near = nearest(with_replaced(entry.key, " ", "_"), level_->keys);
    const std::string elsewhere = where_else(entry.key);
    const auto colon = entry.key.find(':');
    if (!elsewhere.empty()) {
        remark.label = "belongs elsewhere";
        remark.to_do = fmt::format("Move it: it belongs below {}.", elsewhere);
        if (elsewhere == "the top level") remark.to_do = "Move it to the top level, without indentation.";
    } else if (colon != std::string::npos && entry.value.kind == Kind::empty) {
        remark.label = "a blank is due after the colon";
        remark.to_do = fmt::format("Write {}: {}", entry.key.substr(0, colon), entry.key.substr(colon + 1));
    } else if (near) {
        remark.label = fmt::format("did you mean \"{}\"?", *near);
        const YamlEntry* given = level_->map.find(*near);
        remark.to_do =
            given ? fmt::format("{} already stands on line {}. {}", quoted(*near), given->key_place.line, remark.to_do)
                  : fmt::format("Write {}.", *near);
        if (!given) taken_for_.insert(level_->path + "." + *near);
    }
    findings_.refuse(std::move(remark));
}

void Reader::report_missing() {
    for (const Missing& missing : level_->missing) {
        const FieldInfo& info = missing.info;
        if (info.grade == Grade::optional || taken_for_.contains(level_->path + "." + std::string{info.key})) continue;
        const bool essential = info.grade == Grade::essential;
        const bool unknown = missing.place.known();
        const std::string help =
            info.help.empty() ? "" : fmt::format(": {}", info.help.substr(0, info.help.find_last_not_of('.') + 1));
        const std::string where =
            level_->name.empty() ? "at the top level" : fmt::format("below {}", quoted(level_->name));
        Remark remark{
            essential ? "essential-field-missing" : "expected-field-missing",
            unknown ? missing.place : level_->owner,
            path_of(info),
            fmt::format("{} is {}{}.", quoted(in_words(info.key)), unknown ? "written as unknown" : "missing", help),
            unknown ? "nobody knows it yet" : fmt::format("\"{}\" is missing", info.key),
            unknown     ? "Find out and write it here."
            : essential ? fmt::format("Write {} {}{}.", quoted(info.key), where, with_example(info))
                        : fmt::format("Write {} {}{}. Until then paper says NOT RECORDED.", quoted(info.key), where,
                                      with_example(info))};
        if (essential)
            findings_.refuse(std::move(remark));
        else
            findings_.warn(std::move(remark));
    }
}

Place first_line(const SourceText& source) {
    const std::size_t begin = length_of_byte_order_mark(source.text);
    return source.place(begin, std::min(source.text.find_first_of("\r\n", begin), source.text.size()));
}

void read_tree(const SourceText& source, const Describe& described, const Describe& blank, FindingList& findings) {
    const YamlNode root = parse_yaml(source, findings);
    if (root.kind == Kind::map) {
        Reader reader{findings, blank};
        reader.read_map(root, "", "", first_line(source), [&] { described(reader); });
        return;
    }
    if (!findings.empty()) return;
    if (root.kind == Kind::empty)
        findings.refuse({"file-empty", first_line(source), "", "The file holds no profile.", "nothing in it",
                         "Begin with a starter profile: ventfolio new."});
    else
        findings.refuse({"profile-without-keys", first_line(source), "", "A profile begins with a key and a colon.",
                         "no key here", "Begin with a starter profile: ventfolio new."});
}

}  // namespace

std::vector<Finding> read_described(const SourceText& source, const Describe& described, const Describe& blank) {
    FindingList findings{source.name};
    guard_text(source, findings);
    if (findings.empty()) read_tree(source, described, blank, findings);
    return std::move(findings).sorted();
}

}  // namespace ventfolio
