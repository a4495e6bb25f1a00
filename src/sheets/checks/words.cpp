#include <algorithm>
#include <array>

#include "sheets/checks/checks.hpp"
#include "units/text.hpp"

namespace ventfolio::sheet_check {
namespace {

/// Names, addresses and what a machine's own screen says stand as they are.
bool stands_as_it_is(const PrintedValue& value) {
    constexpr std::array<std::string_view, 6> kNames{"person.",  "contacts.",   "home.",
                                                     "devices.", "escalation.", "caregivers."};
    constexpr std::array<std::string_view, 2> kScreens{"mode_on_screen", "mode_standard_label"};
    return std::ranges::any_of(kNames, [&](std::string_view one) { return value.field.starts_with(one); }) ||
           std::ranges::any_of(kScreens, [&](std::string_view one) { return value.field.ends_with(one); });
}

bool in_the_same_letters(const ErrorProneWord& word, const Sentence& sentence, Phrase::Found found) {
    const std::vector<std::string> letters = split(word.text, ' ');
    for (std::size_t at = 0; at < letters.size(); ++at) {
        if (letters[at].find('<') != std::string::npos) continue;
        const Token& token = sentence.tokens[found.first + at];
        if (sentence.text.substr(token.begin, token.end - token.begin) != letters[at]) return false;
    }
    return true;
}

void look_for(const ErrorProneWord& word, const Sentence& sentence, DocumentReport& report) {
    for (auto found = word.phrase.find(sentence.tokens); found;
         found = word.phrase.find(sentence.tokens, found->first + 1)) {
        if (word.as_written && !in_the_same_letters(word, sentence, *found)) continue;
        const std::size_t begin = sentence.tokens[found->first].begin;
        const std::size_t end = sentence.tokens[found->last].end;
        const PrintedValue* value = value_at(sentence.values, begin);
        if (value && stands_as_it_is(*value)) continue;
        report.at(sentence, begin, {{"text", sentence.text.substr(begin, end - begin)}, {"instead", word.instead}});
    }
}

}  // namespace

void error_prone_words(const JudgedDocument& sheet, DocumentReport& report) {
    for (const Sentence& sentence : sheet.sentences)
        for (const ErrorProneWord& word : sheet.phrases.error_prone())
            if (word.phrase.possible(sentence.letters)) look_for(word, sentence, report);
}

}  // namespace ventfolio::sheet_check
