#include "sheets/word_book.hpp"

#include <fmt/format.h>
#include <yaml-cpp/yaml.h>
#include <algorithm>
#include <array>

#include "sheets/word_fault.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

struct Word {
    std::string text;
    YAML::Mark place;
};
using Words = std::map<std::string, Word, std::less<>>;

void flatten(const YAML::Node& node, const std::string& prefix, Words& words) {
    for (const auto& entry : node) {
        const std::string key = prefix.empty() ? entry.first.Scalar() : prefix + "." + entry.first.Scalar();
        if (entry.second.IsMap())
            flatten(entry.second, key, words);
        else if (entry.second.IsSequence())
            for (std::size_t at = 0; at < entry.second.size(); ++at)
                words[fmt::format("{}.{}", key, at)] = {entry.second[at].Scalar(), entry.first.Mark()};
        else
            words[key] = {entry.second.Scalar(), entry.first.Mark()};
    }
}

Words read_words(const SourceText& source, std::vector<Finding>& findings) {
    Words words;
    try {
        const YAML::Node root = YAML::Load(source.text);
        if (root.IsMap())
            flatten(root, "", words);
        else
            findings.push_back(word_fault(source, root.Mark(), "The file of words is not a list of `key: word`."));
    } catch (const YAML::Exception& fault) {
        findings.push_back(word_fault(source, fault.mark, "The file of words cannot be read: " + fault.msg + "."));
    }
    return words;
}

/// What every page says of its own limits is not a clinic's to change.
constexpr std::array<std::string_view, 6> kCautions{"limits",          "limits_with_oxygen", "letter_says",
                                                    "not_yet_checked", "current_only",       "not_recorded"};

}  // namespace

WordBook WordBook::read(const SourceText& source, std::vector<Finding>& findings) {
    WordBook book;
    for (auto& [key, word] : read_words(source, findings)) book.words_.emplace(key, std::move(word.text));
    book.file_ = source.name;
    book.language_ = std::string{book.find("language").value_or("en")};
    return book;
}

void WordBook::lay_over(const SourceText& source, std::vector<Finding>& findings) {
    std::vector<std::string> known;
    for (const auto& [key, word] : words_) known.push_back(key);
    for (auto& [key, word] : read_words(source, findings)) {
        if (!words_.contains(key) && !key.starts_with("sheets.")) {
            const auto near = nearest(key, known);
            findings.push_back(word_fault(
                source, word.place,
                fmt::format("There is no word `{}`{}.", key, near ? fmt::format("; the nearest is `{}`", *near) : "")));
        } else if (std::ranges::find(kCautions, key) != kCautions.end() && words_[key] != word.text) {
            findings.push_back(word_fault(source, word.place, fmt::format("The words of `{}` are a caution.", key)));
            findings.back().rule = "template-caution-dropped";
        } else {
            words_[key] = std::move(word.text);
        }
    }
}

std::optional<std::string_view> WordBook::find(std::string_view key) const {
    const auto found = words_.find(key);
    if (found == words_.end()) return std::nullopt;
    return found->second;
}

std::vector<std::string> WordBook::keys() const {
    std::vector<std::string> keys;
    for (const auto& [key, word] : words_) keys.push_back(key);
    return keys;
}

std::string_view WordBook::at(std::string_view key) const {
    const auto word = find(key);
    if (!word) throw MissingWord{fmt::format("{}: the word `{}` is missing", file_, key)};
    return *word;
}

Region Region::read(const SourceText& source, std::vector<Finding>& findings) {
    const auto words = read_words(source, findings);
    const auto get = [&](std::string_view key, std::string_view fallback) {
        const auto found = words.find(key);
        return found == words.end() ? std::string{fallback} : found->second.text;
    };
    Region region;
    region.numbers = {get("decimal_sign", "."), get("group_sign", ",")};
    region.date_order =
        get("date_order", "day month year") == "month day year" ? DateOrder::month_day_year : DateOrder::day_month_year;
    region.clock = get("clock", "12 hours") == "24 hours" ? Clock::twenty_four_hours : Clock::twelve_hours;
    region.paper = get("paper", "letter");
    region.emergency_number = get("emergency_number", "");
    region.language = get("language", "en");
    return region;
}

}  // namespace ventfolio
