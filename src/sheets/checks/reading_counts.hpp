#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "calc/reading_grade.hpp"
#include "sheets/checks/judged_document.hpp"
#include "sheets/checks/passages.hpp"
#include "sheets/checks/syllables.hpp"

/// What counts in the reading grade of a sheet: words of the template in sentences, items and closed lines of tables.
/// Names, telephone numbers, values, units and headings do not.
namespace ventfolio::sheet_check {

bool counts_as_word(const Sentence& sentence, const Token& token);
bool is_running_text(const Sentence& sentence);

/// Counts the syllables of a word.
using SyllableCounter = int (*)(std::string_view);
calc::TextCounts text_counts(const std::vector<Sentence>& sentences, SyllableCounter syllables_of = syllables);

/// How hard a sheet is to read, by the formula of its language: the school grade in English (more is harder), the ease
/// on the INFLESZ scale in Spanish (less is harder). Nothing for other languages, and for too few words.
struct ReadingFigure {
    double value = 0;
    double limit = 0;   ///< that of the sheet (`reading` in its front matter), else what a family is given
    bool hard = false;  ///< beyond the limit
};
std::optional<ReadingFigure> reading_figure(const JudgedDocument& sheet);

}  // namespace ventfolio::sheet_check
