#include "sheets/checks/syllables.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "units/text.hpp"

namespace ventfolio::sheet_check {
namespace {

bool is_vowel(char c) { return std::string_view{"aeiouy"}.find(c) != std::string_view::npos; }

/// Pairs of vowels that are two sounds: "via", "idea", "humidifier".
bool two_sounds(std::string_view word, std::size_t at) {
    constexpr std::array<std::string_view, 5> kPairs{"ia", "io", "iu", "ua", "uo"};
    constexpr std::array<std::string_view, 8> kOneSound{"cia", "tia", "cio", "tio", "sio", "gio", "qua", "gua"};
    const std::string_view pair = word.substr(at, 2);
    const std::string_view rest = word.substr(at);
    const bool first_vowels = std::ranges::none_of(word.substr(0, at), is_vowel);
    if (rest == "ea" || rest == "ier" || rest == "iers") return !first_vowels;  // not "sea", not "pier"
    if (pair == "eo") return !rest.starts_with("eop");                          // not "people"
    if (std::ranges::find(kPairs, pair) == kPairs.end()) return false;
    return at == 0 || std::ranges::find(kOneSound, word.substr(at - 1, 3)) == kOneSound.end();
}

int vowel_groups(std::string_view word) {
    int groups = 0;
    for (std::size_t at = 0; at < word.size(); ++at) {
        if (!is_vowel(word[at])) continue;
        const bool goes_on = at > 0 && is_vowel(word[at - 1]);
        if (!goes_on || (at > 0 && two_sounds(word, at - 1))) ++groups;
    }
    return groups;
}

/// A last "e", "es" or "ed" that is not heard: "take", "takes", "changed"; but "table", "catches", "suctioned" keep or
/// lose theirs by the letter before.
bool silent_ending(std::string_view word) {
    if (word.size() < 3) return false;
    const auto consonant = [&](std::size_t from_end) {
        return word.size() >= from_end && !is_vowel(word[word.size() - from_end]);
    };
    if (word.ends_with("e")) {
        const bool heard = word.ends_with("le") && word.size() > 3 && consonant(3);
        return consonant(2) && !heard;
    }
    if (word.ends_with("ed")) return consonant(3) && !word.ends_with("ted") && !word.ends_with("ded");
    if (word.ends_with("es")) {
        constexpr std::string_view kHissing = "cgsxz";
        const char before = word[word.size() - 3];
        const bool hissing =
            kHissing.find(before) != std::string_view::npos || word.ends_with("ches") || word.ends_with("shes");
        return consonant(3) && !hissing && !(word.ends_with("les") && word.size() > 4 && consonant(4));
    }
    return false;
}

}  // namespace

int syllables(std::string_view word) {
    std::string letters;
    for (const char c : lower_ascii(word))
        if (c >= 'a' && c <= 'z') letters += c;
    const int count = vowel_groups(letters) - (silent_ending(letters) ? 1 : 0);
    return std::max(1, count);
}

}  // namespace ventfolio::sheet_check
