#include <algorithm>
#include <array>

#include "sheets/checks/checks.hpp"
#include "sheets/home_parts.hpp"

/// Checks of what a sheet tells its reader to do.
namespace ventfolio::sheet_check {
namespace {

/// The prescriber wants an alarm off that the sentence names.
bool off_by_order(const JudgedDocument& sheet, const Sentence& sentence) {
    for (const DerivedPrescription& one : sheet.home.prescriptions)
        for (const AlarmOffByOrder& order : one.order->alarms_off_by_order)
            if (order.alarm.given() && sheet.phrases.names_alarm(std::get<Choice>(order.alarm.value()).word, sentence))
                return true;
    return false;
}

/// Reports every sentence that says it.
void report_each(const JudgedDocument& sheet, Saying saying, DocumentReport& report,
                 const DocumentReport::Numbers& numbers = {}) {
    for (const Sentence& sentence : sheet.sentences)
        if (const auto said = sheet.phrases.find(saying, sentence)) report.at(sentence, said->begin, numbers);
}

struct Part {
    Saying saying;
    bool (*lacks)(const Household&);
    std::string_view name;
};
constexpr std::array kParts{
    Part{Saying::fill_cuff, lacks_cuff, "a cuff"},
    Part{Saying::change_inner_tube, lacks_inner_tube, "an inner tube"},
    Part{Saying::suction_neck_tube, lacks_neck_tube, "a neck tube"},
    Part{Saying::turn_on_oxygen, lacks_oxygen, "oxygen"},
    Part{Saying::uncover_port, lacks_exhalation_port, "an exhalation port"},
    Part{Saying::plug_small_lines, lacks_small_lines, "small lines"},
    Part{Saying::fit_exchanger, lacks_exchanger, "a heat and moisture exchanger"},
    Part{Saying::start_second_ventilator, lacks_second_ventilator, "a second ventilator"},
};

}  // namespace

void alarm_off_as_instruction(const JudgedDocument& sheet, DocumentReport& report) {
    for (const Sentence& sentence : sheet.sentences)
        if (const auto said = sheet.phrases.find(Saying::alarm_off, sentence))
            if (!off_by_order(sheet, sentence)) report.at(sentence, said->begin);
}

void mouth_step_without_mouth_route(const JudgedDocument& sheet, DocumentReport& report) {
    const auto& upper = sheet.home.profile.airway->upper;
    if (upper.is(UpperAirway::blocked) || upper.is(UpperAirway::laryngectomy))
        report_each(sheet, Saying::mouth_breaths, report);
}

void reinsertion_step_for_fresh_opening(const JudgedDocument& sheet, DocumentReport& report) {
    if (!opening_is_fresh(sheet.home)) return;
    const auto& made_on = sheet.home.neck_tube->opening_made_on;
    const std::string age = made_on ? std::to_string(days_between(*made_on, sheet.home.on)) + " days"
                                    : std::string{"an age that is not recorded"};
    report_each(sheet, Saying::tube_back_in, report, {{"days", age}});
}

void step_does_not_fit_home(const JudgedDocument& sheet, DocumentReport& report) {
    for (const Part& part : kParts)
        if (part.lacks(sheet.home))
            report_each(sheet, part.saying, report, {{"part", std::string{part.name}}, {"name", sheet.home.name()}});
}

}  // namespace ventfolio::sheet_check
