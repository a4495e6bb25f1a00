#pragma once

#include <span>
#include <string_view>

#include "sheets/checks/judged_document.hpp"

/// The checks over finished sheets, one small function each, named after their rules in the book.
namespace ventfolio::sheet_check {

void alarm_off_as_instruction(const JudgedDocument& sheet, DocumentReport& report);
void mouth_step_without_mouth_route(const JudgedDocument& sheet, DocumentReport& report);
void reinsertion_step_for_fresh_opening(const JudgedDocument& sheet, DocumentReport& report);
void step_does_not_fit_home(const JudgedDocument& sheet, DocumentReport& report);
void oxygen_before_breaths(const JudgedDocument& sheet, DocumentReport& report);
void rated_battery_time_printed(const JudgedDocument& sheet, DocumentReport& report);
void squeeze_interval_out_of_range(const JudgedDocument& sheet, DocumentReport& report);
void treatment_limit_restated(const JudgedDocument& sheet, DocumentReport& report);
void private_fact_in_wrong_place(const JudgedDocument& sheet, DocumentReport& report);
void misreadable_number(const JudgedDocument& sheet, DocumentReport& report);
void error_prone_words(const JudgedDocument& sheet, DocumentReport& report);
void emergency_sentence_too_long(const JudgedDocument& sheet, DocumentReport& report);
void family_text_hard_to_read(const JudgedDocument& sheet, DocumentReport& report);

struct NamedCheck {
    std::string_view rule;
    DocumentCheck check;
};
/// In the order of the book.
std::span<const NamedCheck> all_checks();

}  // namespace ventfolio::sheet_check
