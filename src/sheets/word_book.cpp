#include "sheets/word_book.hpp"

#include <fmt/format.h>
#include <yaml-cpp/yaml.h>

namespace ventfolio {
namespace {

Finding unreadable(const SourceText& source, const YAML::Mark& mark, std::string message) {
    Finding finding;
    finding.rule = "words-file-unreadable";
    finding.message = std::move(message);
    Mark at;
    at.file = source.name;
    at.place.line = static_cast<std::size_t>(mark.line) + 1;
    at.place.column = static_cast<std::size_t>(mark.column) + 1;
    finding.marks.push_back(std::move(at));
    return finding;
}

void flatten(const YAML::Node& node, const std::string& prefix,
             std::map<std::string, std::string, std::less<>>& words) {
    for (const auto& entry : node) {
        const std::string key = prefix.empty() ? entry.first.Scalar() : prefix + "." + entry.first.Scalar();
        if (entry.second.IsMap())
            flatten(entry.second, key, words);
        else if (entry.second.IsSequence())
            for (std::size_t at = 0; at < entry.second.size(); ++at)
                words[fmt::format("{}.{}", key, at)] = entry.second[at].Scalar();
        else
            words[key] = entry.second.Scalar();
    }
}

std::map<std::string, std::string, std::less<>> read_words(const SourceText& source, std::vector<Finding>& findings) {
    std::map<std::string, std::string, std::less<>> words;
    try {
        const YAML::Node root = YAML::Load(source.text);
        if (root.IsMap())
            flatten(root, "", words);
        else
            findings.push_back(unreadable(source, root.Mark(), "The file of words is not a list of `key: word`."));
    } catch (const YAML::Exception& fault) {
        findings.push_back(unreadable(source, fault.mark, "The file of words cannot be read: " + fault.msg + "."));
    }
    return words;
}

}  // namespace

WordBook WordBook::read(const SourceText& source, std::vector<Finding>& findings) {
    WordBook book;
    book.words_ = read_words(source, findings);
    book.file_ = source.name;
    book.language_ = std::string{book.find("language").value_or("en")};
    return book;
}

std::optional<std::string_view> WordBook::find(std::string_view key) const {
    const auto found = words_.find(key);
    if (found == words_.end()) return std::nullopt;
    return found->second;
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
        return found == words.end() ? std::string{fallback} : found->second;
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
