#include <fmt/format.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <set>
#include <string_view>

#include "book.hpp"
#include "source.hpp"

namespace bake {
namespace {

Sheets read_sheets(const std::filesystem::path& path) {
    const Source source{path};
    Sheets sheets;
    for (const auto& name : source.root()["sheets"]) sheets.names.push_back(name.Scalar());
    for (const auto& group : source.root()["groups"])
        for (const auto& name : group.second) {
            if (std::ranges::find(sheets.names, name.Scalar()) == sheets.names.end())
                source.fail(name, fmt::format("there is no sheet '{}'", name.Scalar()));
            sheets.groups[group.first.Scalar()].push_back(name.Scalar());
        }
    return sheets;
}

std::vector<Threshold> read_thresholds(const std::filesystem::path& path) {
    const Source source{path};
    std::vector<Threshold> all;
    for (const auto& node : source.root()["thresholds"]) {
        source.only_keys(node, {"name", "value", "unit", "source", "rules"});
        Threshold one{source.text(node, "name"),
                      source.text(node, "value"),
                      source.text(node, "unit"),
                      source.text(node, "source"),
                      {}};
        for (const auto& rule : node["rules"]) one.rules.push_back(rule.Scalar());
        if (one.rules.empty()) source.fail(node, fmt::format("no rule uses '{}'", one.name));
        if (std::ranges::find(all, one.name, &Threshold::name) != all.end())
            source.fail(node, fmt::format("'{}' stands here twice", one.name));
        all.push_back(std::move(one));
    }
    return all;
}

bool well_formed_name(std::string_view name) {
    const auto small = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
    return !name.empty() && std::ranges::all_of(name, small) && name.front() != '-' && name.back() != '-' &&
           name.find("--") == std::string_view::npos;
}

void read_stops(const Source& source, const YAML::Node& node, const Sheets& sheets, Rule& rule) {
    std::set<std::string> stopped;
    for (const auto& entry : node["stops"]) {
        const std::string& word = entry.Scalar();
        if (word == "all") {
            stopped.insert(sheets.names.begin(), sheets.names.end());
        } else if (word == "that sheet") {
            rule.stops_judged_sheet = true;
        } else if (const auto group = sheets.groups.find(word); group != sheets.groups.end()) {
            stopped.insert(group->second.begin(), group->second.end());
        } else if (std::ranges::find(sheets.names, word) != sheets.names.end()) {
            stopped.insert(word);
        } else {
            source.fail(entry, fmt::format("there is no sheet or group of sheets '{}'", word));
        }
    }
    for (const std::string& name : sheets.names)
        if (stopped.contains(name)) rule.stops.push_back(name);
    const bool stops_something = rule.stops_judged_sheet || !rule.stops.empty();
    if (stops_something != (rule.severity == "refuse"))
        source.fail(node, fmt::format("'{}': a refusal stops sheets, and nothing else does", rule.name));
}

std::string one_line(const YAML::Node& value) {
    YAML::Emitter out;
    out.SetMapFormat(YAML::Flow);
    out.SetSeqFormat(YAML::Flow);
    out << value;
    std::string text = out.c_str();
    std::ranges::replace(text, '\n', ' ');
    return text;
}

std::string read_edits(const Source& source, const YAML::Node& edits) {
    if (!edits || !edits.IsSequence() || edits.size() == 0) source.fail(edits, "an example needs a list of edits");
    std::string lines;
    for (const auto& edit : edits) {
        if (!edit.IsMap() || edit.size() != 1) source.fail(edit, "an edit is one 'path: value' or 'remove: path'");
        const auto pair = *edit.begin();
        lines += fmt::format("{}: {}\n", pair.first.Scalar(), one_line(pair.second));
    }
    return lines;
}

/// A whole number that is the whole text; nothing for any other.
std::optional<std::size_t> whole_number(std::string_view text, int base) {
    std::size_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number, base);
    if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    return number;
}

std::string read_bytes(const Source& source, const YAML::Node& node) {
    const std::string& digits = node.Scalar();
    std::string bytes;
    for (std::size_t at = 0; at < digits.size(); at += 2) {
        const auto byte = whole_number(std::string_view{digits}.substr(at, 2), 16);
        if (!byte || digits.size() % 2 != 0) source.fail(node, "bytes are pairs of hexadecimal digits");
        bytes += static_cast<char>(*byte);
    }
    return bytes;
}

/// A text, or a map of `text` or `bytes` and how many `times` it is written.
ExamplePart read_part(const Source& source, const YAML::Node& node) {
    if (node.IsScalar() && !node.Scalar().empty()) return {node.Scalar(), 1};
    if (!node.IsMap()) source.fail(node, "a part of an example is a text, or 'text' or 'bytes' with 'times'");
    source.only_keys(node, {"text", "bytes", "times"});
    ExamplePart part;
    part.text = node["bytes"] ? read_bytes(source, node["bytes"]) : source.text(node, "text");
    if (!node["times"]) return part;
    const auto times = whole_number(source.text(node, "times"), 10);
    if (!times) source.fail(node["times"], "'times' is a whole number");
    part.times = *times;
    return part;
}

/// One text, or a list of parts that follow each other.
std::vector<ExamplePart> read_fragment(const Source& source, const YAML::Node& example, const char* key) {
    const YAML::Node node = example[key];
    if (!node) source.fail(example, fmt::format("an example needs '{}'", key));
    if (!node.IsSequence()) return {read_part(source, node)};
    std::vector<ExamplePart> parts;
    for (const auto& part : node) parts.push_back(read_part(source, part));
    if (parts.empty()) source.fail(node, fmt::format("'{}' is empty", key));
    return parts;
}

/// Which form an example has follows from its keys.
std::string form_of(const YAML::Node& example) {
    return example["sheet"] ? "words" : example["file"] ? "template_file" : example["home"] ? "edits" : "profile";
}

void check_form(const Source& source, const YAML::Node& example, const Rule& rule) {
    const std::string& form = rule.example.form;
    const bool of_template = rule.judges == "markup" || rule.judges == "layout" || rule.judges == "overlay";
    const bool fits = rule.judges == "document" ? form == "words"
                      : of_template             ? form == "words" || form == "template_file"
                                                : form == "edits" || (form == "profile" && rule.judges == "reading");
    if (!fits)
        source.fail(example, fmt::format("'{}' judges {} and cannot have such an example", rule.name, rule.judges));
}

void read_fragments(const Source& source, const YAML::Node& node, Example& example) {
    if (example.form == "edits") {
        source.only_keys(node, {"home", "on", "fires", "silent"});
        example.fires = {{read_edits(source, node["fires"]), 1}};
        example.silent = {{read_edits(source, node["silent"]), 1}};
        return;
    }
    if (example.form == "profile") source.only_keys(node, {"on", "fires", "silent"});
    if (example.form == "words")
        source.only_keys(node, {"home", "on", "sheet", "audience", "edits", "fires", "silent"});
    if (example.form == "template_file") source.only_keys(node, {"home", "on", "file", "edits", "fires", "silent"});
    example.fires = read_fragment(source, node, "fires");
    example.silent = read_fragment(source, node, "silent");
}

void read_example(const Source& source, const YAML::Node& node, const Sheets& sheets, Rule& rule) {
    const YAML::Node from = node["example"];
    if (!from || !from.IsMap()) source.fail(node, fmt::format("'{}' has no example", rule.name));
    Example& example = rule.example;
    example.form = form_of(from);
    check_form(source, from, rule);
    if (example.form != "profile") example.home = source.text(from, "home");
    example.on = from["on"] ? source.text(from, "on") : "2026-02-03";
    if (example.form == "words") {
        example.sheet = source.text(from, "sheet");
        example.audience = source.text(from, "audience");
        if (std::ranges::find(sheets.names, example.sheet) == sheets.names.end())
            source.fail(from["sheet"], fmt::format("there is no sheet '{}'", example.sheet));
    }
    if (example.form == "template_file") example.file = source.text(from, "file");
    read_fragments(source, from, example);
    if (from["edits"]) example.edits = read_edits(source, from["edits"]);
    if (example.fires == example.silent) source.fail(from, "what fires is also what must be silent");
}

Rule read_rule(const Source& source, const YAML::Node& node, const std::string& judges, const Sheets& sheets) {
    source.only_keys(node,
                     {"name", "severity", "stops", "bold_on", "says", "why", "to_do", "source", "formula", "example"});
    Rule rule;
    rule.name = source.text(node, "name");
    rule.subject = source.stem();
    rule.judges = judges;
    if (!well_formed_name(rule.name)) source.fail(node["name"], "a rule is named in small letters, digits and hyphens");
    rule.severity = source.text(node, "severity");
    constexpr std::array<std::string_view, 4> kSeverities{"note", "warn", "acknowledge", "refuse"};
    if (std::ranges::find(kSeverities, rule.severity) == kSeverities.end())
        source.fail(node["severity"], "severity is refuse, acknowledge, warn or note");
    read_stops(source, node, sheets, rule);
    for (const auto& sheet : node["bold_on"]) {
        if (std::ranges::find(sheets.names, sheet.Scalar()) == sheets.names.end())
            source.fail(sheet, fmt::format("there is no sheet '{}'", sheet.Scalar()));
        rule.bold_on.push_back(sheet.Scalar());
    }
    rule.says = source.text(node, "says");
    rule.why = source.text(node, "why");
    rule.to_do = source.text(node, "to_do");
    rule.source = source.text(node, "source");
    rule.formula = source.optional_text(node, "formula");
    read_example(source, node, sheets, rule);
    return rule;
}

void check_threshold_rules(const std::filesystem::path& path, const Book& book) {
    for (const Threshold& threshold : book.thresholds)
        for (const std::string& rule : threshold.rules)
            if (std::ranges::find(book.rules, rule, &Rule::name) == book.rules.end())
                throw BookError{fmt::format("{}: error: '{}' names a rule that the book does not have: '{}'",
                                            path.string(), threshold.name, rule)};
}

}  // namespace

Book read_book(const std::filesystem::path& sheets, const std::filesystem::path& thresholds,
               const std::vector<std::filesystem::path>& subjects) {
    Book book;
    book.sheets = read_sheets(sheets);
    book.thresholds = read_thresholds(thresholds);
    for (const std::filesystem::path& path : subjects) {
        const Source source{path};
        source.only_keys(source.root(), {"judges", "rules"});
        const std::string judges = source.text(source.root(), "judges");
        constexpr std::array<std::string_view, 8> kKinds{"reading",  "profile", "markup",     "overlay",
                                                         "document", "layout",  "acceptance", "update"};
        if (std::ranges::find(kKinds, judges) == kKinds.end())
            source.fail(source.root()["judges"],
                        "judges is reading, profile, markup, overlay, document, layout, acceptance or update");
        for (const auto& node : source.root()["rules"]) {
            Rule rule = read_rule(source, node, judges, book.sheets);
            if (std::ranges::find(book.rules, rule.name, &Rule::name) != book.rules.end())
                source.fail(node, fmt::format("the book already has a rule '{}'", rule.name));
            book.rules.push_back(std::move(rule));
        }
    }
    check_threshold_rules(thresholds, book);
    return book;
}

}  // namespace bake
