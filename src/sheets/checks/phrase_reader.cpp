#include <fmt/format.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <initializer_list>

#include "sheets/checks/phrases.hpp"
#include "sheets/word_fault.hpp"
#include "units/text.hpp"

namespace ventfolio {

/// Reads `phrases.yaml`. A key that it does not know is a fault: a misspelt one would switch a check off.
class PhraseReader {
  public:
    PhraseReader(const SourceText& source, std::vector<Finding>& findings) : source_{source}, findings_{findings} {}

    PhraseBook book(const YAML::Node& root) {
        if (!known_keys(root, {"language", "abbreviations", "forbids", "alarms", "sayings", "error_prone"})) return {};
        for (const auto& word : root["abbreviations"]) book_.abbreviations_.push_back(capitals(word.Scalar()));
        const YAML::Node forbids = root["forbids"];
        if (known_keys(forbids, {"before", "next_to", "new_thought"})) {
            book_.forbids_before_ = phrases(forbids["before"]);
            book_.forbids_next_to_ = phrases(forbids["next_to"]);
            book_.new_thought_ = phrases(forbids["new_thought"]);
        }
        for (const auto& alarm : root["alarms"]) book_.alarms_[alarm.first.Scalar()] = phrases(alarm.second);
        sayings(root["sayings"]);
        for (const auto& word : root["error_prone"]) error_prone(word);
        return std::move(book_);
    }

    void fault(const YAML::Mark& mark, std::string message) {
        findings_.push_back(word_fault(source_, mark, std::move(message)));
    }

  private:
    bool known_keys(const YAML::Node& map, std::initializer_list<std::string_view> keys) {
        if (!map || !map.IsMap()) {
            fault(map ? map.Mark() : YAML::Mark{}, "The file of phrases lacks a list of `key: phrases`.");
            return false;
        }
        for (const auto& pair : map)
            if (std::ranges::find(keys, pair.first.Scalar()) == keys.end())
                fault(pair.first.Mark(), fmt::format("The file of phrases has no key `{}`.", pair.first.Scalar()));
        return true;
    }

    /// `yes` is a word in YAML 1.2: taken for false, it would switch a check off in silence.
    bool is_true(const YAML::Node& flag) {
        if (!flag) return false;
        const std::string word = flag.IsScalar() ? flag.Scalar() : "";
        if (word != "true" && word != "false") fault(flag.Mark(), "This is true or false.");
        return word == "true";
    }

    std::vector<Phrase> phrases(const YAML::Node& list) {
        std::vector<Phrase> all;
        for (const auto& phrase : list) {
            all.emplace_back(phrase.Scalar());
            if (!all.back().well_formed())
                fault(phrase.Mark(), fmt::format("A phrase begins and ends with a word: `{}`.", phrase.Scalar()));
        }
        return all;
    }

    void sayings(const YAML::Node& map) {
        if (!map || !map.IsMap()) return fault({}, "The file of phrases has no `sayings`.");
        for (std::size_t at = 0; at < kSayingNames.size(); ++at) {
            const YAML::Node node = map[std::string{kSayingNames[at]}];
            if (!node || !node.IsMap() || !node["phrases"] || node["phrases"].size() == 0) {
                fault(map.Mark(), fmt::format("The file of phrases has none for `{}`.", kSayingNames[at]));
                continue;
            }
            known_keys(node, {"phrases", "unless", "excused_by", "also_where_forbidden", "also_over_stops"});
            PhraseBook::Entry& entry = book_.entries_[at];
            entry.phrases = phrases(node["phrases"]);
            entry.unless = phrases(node["unless"]);
            entry.excused_by = phrases(node["excused_by"]);
            entry.forbidding = is_true(node["also_where_forbidden"]);
            entry.over_stops = is_true(node["also_over_stops"]);
        }
        for (const auto& pair : map)
            if (std::ranges::find(kSayingNames, pair.first.Scalar()) == kSayingNames.end())
                fault(pair.first.Mark(), fmt::format("The file of phrases has no key `{}`.", pair.first.Scalar()));
    }

    void error_prone(const YAML::Node& node) {
        if (!known_keys(node, {"words", "instead", "as_written"})) return;
        const std::string text = node["words"] ? node["words"].Scalar() : "";
        const std::string instead = node["instead"] ? node["instead"].Scalar() : "";
        if (text.empty() || instead.empty()) {
            fault(node.Mark(), "An error-prone word needs `words` and `instead`.");
            return;
        }
        const bool as_written = is_true(node["as_written"]);
        book_.error_prone_.push_back({Phrase{text}, text, instead, as_written});
    }

    const SourceText& source_;
    std::vector<Finding>& findings_;
    PhraseBook book_;
};

PhraseBook PhraseBook::read(const SourceText& source, std::vector<Finding>& findings) {
    PhraseReader reader{source, findings};
    try {
        return reader.book(YAML::Load(source.text));
    } catch (const YAML::Exception& fault) {
        reader.fault(fault.mark, "The file of phrases cannot be read: " + fault.msg + ".");
        return {};
    }
}

}  // namespace ventfolio
