#pragma once

#include <optional>

namespace ventfolio::calc {

/// What was counted in a text. An item of a list counts as a sentence.
struct TextCounts {
    int words = 0;
    int sentences = 0;
    int syllables = 0;
};

/// The US school grade that a text asks for (Flesch-Kincaid).
///
/// Formula  0.39 x words / sentences + 11.8 x syllables / words - 15.59
/// Units    school years; the smallest possible is -3.40
/// Range    1 or more of each, sentences <= words <= syllables. Below 100 words the figure means little
/// Source   Kincaid 1975 (from memory); readability page of the US Department of Veterans Affairs
/// Example  100 words, 5 sentences, 150 syllables: 9.91
/// Nothing  is returned outside the range.
std::optional<double> reading_grade(const TextCounts& counts);

/// How easy a text is to read, 100 easy to 0 hard (Flesch).
///
/// Formula  206.835 - 1.015 x words / sentences - 84.6 x syllables / words
/// Units    none
/// Range    as for reading_grade
/// Source   Flesch 1948 (from memory); the same page
/// Example  100 words, 5 sentences, 150 syllables: 59.6
/// Nothing  is returned outside the range.
std::optional<double> reading_ease(const TextCounts& counts);

/// The school grade by long words (SMOG), a second opinion on the same text.
///
/// Formula  3.1291 + 1.0430 x sqrt(words of three syllables or more x 30 / sentences)
/// Units    school years
/// Range    30 sentences or more; 0 or more long words
/// Source   McLaughlin, J Reading 1969;12:639
/// Example  36 long words in 30 sentences: 9.4
/// Nothing  is returned outside the range: below 30 sentences the figure was never validated.
std::optional<double> smog_grade(int long_words, int sentences);

/// How easy a Spanish text is to read, 100 easy to 0 hard (Szigriszt-Pazos, on the INFLESZ scale). English formulas
/// call Spanish hard, because its words have more syllables.
///
/// Formula  206.835 - 62.3 x syllables / words - words / sentences
/// Units    none. INFLESZ: below 40 very hard, 40 to 55 rather hard, 55 to 65 normal, 65 to 80 quite easy, above 80
/// very
///          easy
/// Range    as for reading_grade
/// Source   Szigriszt Pazos 1993; Barrio-Cantalejo et al., An Sist Sanit Navar 2008;31:135 (both from memory)
/// Example  100 words, 10 sentences, 200 syllables: 72.2
/// Nothing  is returned outside the range.
std::optional<double> spanish_reading_ease(const TextCounts& counts);

}  // namespace ventfolio::calc
