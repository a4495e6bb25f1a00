#include <doctest/doctest.h>
#include <fmt/format.h>
#include <yaml-cpp/yaml.h>

#include <set>
#include <string>
#include <vector>

#include "packet/stationery.hpp"
#include "units/text.hpp"

using namespace ventfolio;

namespace {

void add_keys(const YAML::Node& node, const std::string& prefix, std::set<std::string>& keys) {
    for (const auto& entry : node) {
        const std::string key = prefix + entry.first.Scalar();
        if (entry.second.IsMap())
            add_keys(entry.second, key + ".", keys);
        else
            keys.insert(key);
    }
}

std::set<std::string> keys_of(const std::string& yaml) {
    std::set<std::string> keys;
    add_keys(YAML::Load(yaml), "", keys);
    return keys;
}

std::string without(const std::set<std::string>& all, const std::set<std::string>& some) {
    std::string rest;
    for (const std::string& key : all)
        if (!some.contains(key)) rest += key + " ";
    return rest;
}

/// Reads on over what stands between `open` and `close`; empty where `at` is not at `open`.
std::string_view enclosed(std::string_view text, std::size_t at, std::string_view open, std::string_view close) {
    if (!text.substr(at).starts_with(open)) return {};
    const std::size_t end = text.find(close, at + open.size());
    return end == std::string_view::npos ? std::string_view{} : text.substr(at, end + close.size() - at);
}

/// What a heading's braces say but for words: classes and keys, and the tags inside the words. How many columns a
/// section takes follows from its words.
std::string bones_of_attributes(std::string_view braces) {
    std::string bones;
    bool words = false;
    for (std::size_t at = 0; at < braces.size();) {
        if (const auto tag = enclosed(braces, at, "{{", "}}"); !tag.empty()) {
            bones += tag;
            at += tag.size();
            continue;
        }
        if (braces[at] == '"') words = !words;
        if (!words) bones += braces[at];
        ++at;
        while (bones.ends_with("span=") && at < braces.size() && braces[at] >= '0' && braces[at] <= '9') ++at;
    }
    return bones;
}

std::string key_of(const std::string& line) { return line.substr(0, line.find(':')); }

/// A line without its words: marks at its start, cells, tags, figures, attributes and blanks to write on.
std::string bones_of(std::string_view line) {
    std::string bones;
    const std::size_t start = line.find_first_not_of(' ');
    if (start == std::string_view::npos) return bones;
    const std::string_view rest = line.substr(start);
    for (const std::string_view mark : {"###", "##", "- [ ]", "- ", "1. ", "2. ", "3. ", "4. ", "5. ", ">", "|", "---"})
        if (rest.starts_with(mark)) {
            bones += fmt::format("{}{} ", start, mark);
            break;
        }
    for (std::size_t at = start; at < line.size(); ++at) {
        if (const auto tag = enclosed(line, at, "{{", "}}"); !tag.empty()) {
            bones += tag;
            at += tag.size() - 1;
        } else if (const auto figure = enclosed(line, at, "](", ")"); !figure.empty()) {
            bones += figure;
            at += figure.size() - 1;
        } else if (const bool braces = line.substr(at).starts_with("{") && line.ends_with("}"); braces) {
            bones += bones_of_attributes(line.substr(at));
            break;
        } else if (line[at] == '|' || line[at] == '_' || line[at] == '\\') {
            bones += line[at];
        }
    }
    return bones;
}

}  // namespace

TEST_CASE("both languages have the same files, and their words the same keys") {
    const TemplateFiles files = built_in_files();
    for (const auto& [path, text] : files) {
        if (path.starts_with("en/")) CHECK_MESSAGE(files.contains("es/" + path.substr(3)), path);
        if (path.starts_with("es/")) CHECK_MESSAGE(files.contains("en/" + path.substr(3)), path);
    }
    const auto english = keys_of(files.at("en/words.yaml"));
    const auto spanish = keys_of(files.at("es/words.yaml"));
    CHECK(without(english, spanish) == "");
    CHECK(without(spanish, english) == "");
    // Sayings have other phrases in each language, but none may be forgotten.
    const YAML::Node sayings = YAML::Load(files.at("es/phrases.yaml"))["sayings"];
    for (const auto& saying : YAML::Load(files.at("en/phrases.yaml"))["sayings"])
        CHECK_MESSAGE(sayings[saying.first.Scalar()].IsDefined(), saying.first.Scalar());
}

TEST_CASE("each Spanish template has the tags, blocks and figures of its English twin, line by line") {
    const TemplateFiles files = built_in_files();
    std::size_t compared = 0;
    for (const auto& [path, text] : files) {
        if (!path.starts_with("es/") || !path.ends_with(".md")) continue;
        const std::vector<std::string> spanish = split(text, '\n');
        const std::vector<std::string> english = split(files.at("en/" + path.substr(3)), '\n');
        CAPTURE(path);
        REQUIRE(spanish.size() == english.size());
        bool front_matter = false;
        for (std::size_t at = 0; at < spanish.size(); ++at) {
            CAPTURE(at + 1);
            if (spanish[at] == "---" && (at == 0 || front_matter)) front_matter = !front_matter;
            // How hard to read, each language tells on a scale of its own; a limit in one has its twin in the other.
            const bool own = spanish[at].starts_with("title:") || spanish[at].starts_with("reading:");
            if (front_matter && own) CHECK(key_of(spanish[at]) == key_of(english[at]));
            if (front_matter && !own) CHECK(spanish[at] == english[at]);
            CHECK(bones_of(spanish[at]) == bones_of(english[at]));
            ++compared;
        }
    }
    CHECK(compared > 3000);
}

TEST_CASE("a line that lost a tag, a cell, a class or a figure is seen") {
    CHECK(bones_of("| Rate | {{rate}} |") != bones_of("| Frecuencia | |"));
    CHECK(bones_of("| Rate | {{rate}} |") != bones_of("| Frecuencia {{rate}} |"));
    CHECK(bones_of("## Call {.half .tight}") != bones_of("## Llame {.half}"));
    CHECK(bones_of("- ![A box](figure:action) do") != bones_of("- ![Una caja](figure:end) haga"));
    CHECK(bones_of("## Call {.half aside=\"now\"}") == bones_of("## Llame {.half aside=\"ahora\"}"));
    CHECK(bones_of("1. **Stay.** {{name}}") == bones_of("1. **Quédese.** {{name}}"));
}
