#pragma once

#include <string_view>

namespace ventfolio::sheet_check {

/// Syllables of a Spanish word, by its spelling, in capitals or not. 1 or more.
///
/// Two vowels are two syllables where both are strong (a, e, o: "a-é-re-o") or where the weak one (i, u) bears the
/// accent
/// ("dí-a"); else they are one ("rui-do", "des-pués"). An h between them changes nothing ("prohi-bir"). The u of que,
/// qui, gue, gui is silent, ü is not. A y is a vowel alone and at the end of a word ("muy"). Source: rules of spelling
/// of the Real Academia Española, 2010 (from memory).
///
/// Example: spanish_syllables("respiración") is 4.
int spanish_syllables(std::string_view word);

}  // namespace ventfolio::sheet_check
