#include "sheets/checks/phrases.hpp"

#include <algorithm>
#include <charconv>
#include <span>

#include "units/ascii.hpp"
#include "units/text.hpp"

namespace ventfolio {

using sheet_check::Sentence;
using sheet_check::Token;

namespace {

constexpr std::size_t kLongestGap = 3;

std::optional<double> number_in(std::string_view token) {
    if (token.empty() || !is_digit(token.front())) return std::nullopt;
    double number = 0.0;
    const auto [end, fault] = std::from_chars(token.data(), token.data() + token.size(), number);
    if (fault != std::errc{} || end != token.data() + token.size()) return std::nullopt;
    return number;
}

/// "Q<NUMBER>H" for "Q4H": digits between the letters of the choice.
bool fits_around(std::string_view choice, std::size_t slot, std::string_view token) {
    const std::string_view before = choice.substr(0, slot);
    const std::string_view after = choice.substr(slot + std::string_view{"<NUMBER>"}.size());
    if (token.size() <= before.size() + after.size() || !token.starts_with(before) || !token.ends_with(after))
        return false;
    return std::ranges::all_of(token.substr(before.size(), token.size() - before.size() - after.size()), is_digit);
}

std::vector<Token> without_stops(std::vector<Token> tokens) {
    for (Token& token : tokens) token.after_stop = false;
    return tokens;
}

bool any_in(const std::vector<Phrase>& phrases, const std::vector<Token>& tokens) {
    return std::ranges::any_of(phrases, [&](const Phrase& one) { return one.find(tokens).has_value(); });
}

}  // namespace

Phrase::Phrase(std::string_view text) {
    for (const std::string& word : split(capitals(text), ' ')) {
        if (word.empty()) continue;
        Word one{word == "...", {}, {}};
        if (!one.gap) one.choices = split(word, '|');
        for (const std::string& choice : one.choices) one.letters.add_start(choice);
        words_.push_back(std::move(one));
    }
}

bool Phrase::well_formed() const { return !words_.empty() && !words_.front().gap && !words_.back().gap; }

bool Phrase::possible(sheet_check::FirstLetters letters) const {
    return std::ranges::all_of(words_, [&](const Word& word) { return word.gap || word.letters.meets(letters); });
}

bool Phrase::fits(std::string_view choice, std::string_view token) {
    if (choice == "<NUMBER>") return number_in(token).has_value();
    if (choice == "<CODE>") return std::ranges::count_if(token, is_digit) >= 3;
    if (const auto slot = choice.find("<NUMBER>"); slot != std::string_view::npos)
        return fits_around(choice, slot, token);
    if (choice.ends_with('*')) return token.starts_with(choice.substr(0, choice.size() - 1));
    return choice == token;
}

bool Phrase::fits(const Word& word, std::string_view token) {
    return std::ranges::any_of(word.choices, [&](const std::string& choice) { return fits(choice, token); });
}

std::optional<std::size_t> Phrase::end_of(const std::vector<Token>& tokens, std::size_t at, std::size_t word) const {
    if (word == words_.size()) return at;
    const std::size_t most = words_[word].gap ? kLongestGap : 0;
    const std::size_t next = words_[word].gap ? word + 1 : word;
    for (std::size_t skipped = 0; skipped <= most && at + skipped < tokens.size(); ++skipped) {
        const Token& token = tokens[at + skipped];
        if (word > 0 && token.after_stop) return std::nullopt;
        if (!fits(words_[next], token.folded)) continue;
        if (const auto end = end_of(tokens, at + skipped + 1, next + 1)) return end;
    }
    return std::nullopt;
}

std::optional<Phrase::Found> Phrase::find(const std::vector<Token>& tokens, std::size_t from) const {
    if (!well_formed()) return std::nullopt;
    for (std::size_t first = from; first < tokens.size(); ++first)
        if (fits(words_.front(), tokens[first].folded))
            if (const auto end = end_of(tokens, first, 0)) return Found{first, *end - 1};
    return std::nullopt;
}

bool PhraseBook::forbidden(const std::vector<Token>& tokens, std::size_t first) const {
    // The thought goes back to a stop or to a word such as "then".
    std::size_t begin = first;
    while (begin > 0 && !tokens[begin].after_stop) --begin;
    for (const Phrase& phrase : new_thought_)
        for (auto found = phrase.find(tokens, begin); found && found->last < first;
             found = phrase.find(tokens, found->last + 1))
            begin = std::max(begin, found->last + 1);
    const auto before = [&](const Phrase& phrase, bool next_to) {
        const auto found = phrase.find(tokens, begin);
        return found && found->last < first && (!next_to || found->last + 1 == first);
    };
    return std::ranges::any_of(forbids_before_, [&](const Phrase& one) { return before(one, false); }) ||
           std::ranges::any_of(forbids_next_to_, [&](const Phrase& one) { return before(one, true); });
}

std::optional<Said> PhraseBook::find(const Entry& entry, const Sentence& sentence) const {
    std::vector<Token> joined;
    if (entry.over_stops) joined = without_stops(sentence.tokens);
    const std::vector<Token>& tokens = entry.over_stops ? joined : sentence.tokens;
    for (const Phrase& phrase : entry.phrases) {
        if (!phrase.possible(sentence.letters)) continue;
        for (auto found = phrase.find(tokens); found; found = phrase.find(tokens, found->first + 1)) {
            if (!entry.forbidding && forbidden(tokens, found->first)) continue;
            const std::vector<Token> inside{tokens.begin() + static_cast<std::ptrdiff_t>(found->first),
                                            tokens.begin() + static_cast<std::ptrdiff_t>(found->last + 1)};
            if (any_in(entry.unless, inside)) continue;
            if (any_in(entry.excused_by, tokens)) return std::nullopt;
            Said said{inside.front().begin, inside.back().end, {}};
            for (const Token& token : inside)
                if (const auto number = number_in(token.folded)) said.numbers.push_back(*number);
            return said;
        }
    }
    return std::nullopt;
}

std::optional<Said> PhraseBook::find(Saying saying, const Sentence& sentence) const {
    return find(entries_[static_cast<std::size_t>(saying)], sentence);
}

bool PhraseBook::names_alarm(std::string_view key, const Sentence& sentence) const {
    const auto found = alarms_.find(key);
    return found != alarms_.end() && any_in(found->second, sentence.tokens);
}

}  // namespace ventfolio
