#pragma once

#include <vector>

#include "calc/reading_grade.hpp"
#include "sheets/checks/passages.hpp"

/// What counts in the reading grade of a sheet: words of the template in sentences, items and closed lines of tables.
/// Names, telephone numbers, values, units and headings do not.
namespace ventfolio::sheet_check {

bool counts_as_word(const Sentence& sentence, const Token& token);
bool is_running_text(const Sentence& sentence);
calc::TextCounts text_counts(const std::vector<Sentence>& sentences);

}  // namespace ventfolio::sheet_check
