#include "sheets/checks/spanish_syllables.hpp"

#include <algorithm>
#include <string>

#include "units/text.hpp"

namespace ventfolio::sheet_check {
namespace {

constexpr std::u32string_view kStrong = U"AEOÁÉÓ";
constexpr std::u32string_view kWeak = U"IUÜ";
constexpr std::u32string_view kWeakWithAccent = U"ÍÚ";

bool is_one_of(std::u32string_view letters, char32_t letter) {
    return letters.find(letter) != std::u32string_view::npos;
}

bool is_vowel(char32_t letter) {
    return is_one_of(kStrong, letter) || is_one_of(kWeak, letter) || is_one_of(kWeakWithAccent, letter);
}

/// The sounds that decide: no silent u, no silent h, y as I where it is a vowel.
std::u32string sounds_of(std::string_view word) {
    const std::u32string letters = code_points(capitals(word));
    std::u32string sounds;
    for (std::size_t at = 0; at < letters.size(); ++at) {
        const char32_t letter = letters[at];
        const char32_t before = at > 0 ? letters[at - 1] : U' ';
        const char32_t after = at + 1 < letters.size() ? letters[at + 1] : U' ';
        if (letter == U'H' && before != U'C') continue;
        if (letter == U'U' && before == U'Q') continue;
        if (letter == U'U' && before == U'G' && is_one_of(U"EIÉÍ", after)) continue;
        sounds += letter == U'Y' && !is_vowel(after) ? U'I' : letter;
    }
    return sounds;
}

/// Whether a new syllable begins between two vowels.
bool apart(char32_t first, char32_t second) {
    if (is_one_of(kStrong, first) && is_one_of(kStrong, second)) return true;
    if (first == second) return true;  // "chiita"
    const auto strong_and_accent = [](char32_t one, char32_t other) {
        return is_one_of(kStrong, one) && is_one_of(kWeakWithAccent, other);
    };
    return strong_and_accent(first, second) || strong_and_accent(second, first);
}

}  // namespace

int spanish_syllables(std::string_view word) {
    const std::u32string sounds = sounds_of(word);
    int count = 0;
    for (std::size_t at = 0; at < sounds.size(); ++at) {
        if (!is_vowel(sounds[at])) continue;
        if (at == 0 || !is_vowel(sounds[at - 1]) || apart(sounds[at - 1], sounds[at])) ++count;
    }
    return std::max(1, count);
}

}  // namespace ventfolio::sheet_check
