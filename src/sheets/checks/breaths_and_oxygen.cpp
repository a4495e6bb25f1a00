#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "calc/squeeze_interval.hpp"
#include "sheets/checks/checks.hpp"
#include "units/decimal.hpp"

namespace ventfolio::sheet_check {
namespace {

/// Somebody ordered oxygen that a caregiver may turn on, or turn up, when it is needed.
bool oxygen_may_be_raised(const Household& home) {
    const Oxygen& oxygen = *home.profile.oxygen;
    return home.profile.oxygen.given() && oxygen.use.given();
}

/// What a squeeze interval may be, from the calculator that the sheets use.
struct Limits {
    int least = 0;
    int most = 0;
};
std::optional<Limits> limits_for(const calc::Age& age) {
    const calc::AgeGroup group = calc::age_group(age);
    const auto fastest = calc::squeeze_interval(group, BreathRate::of(80, unit::breaths_per_min));
    const auto slowest = calc::squeeze_interval(group, BreathRate::of(2, unit::breaths_per_min));
    if (!fastest || !slowest) return std::nullopt;
    return Limits{fastest->from, slowest->to};
}

/// The numbers of a value that a calculator made.
std::vector<double> numbers_of(const PrintedValue& value) {
    std::vector<double> numbers;
    for (const Token& token : tokens_of(value.text()))
        if (token.folded.find_first_not_of("0123456789.") == std::string::npos) {
            if (const auto number = Decimal::parse(token.folded)) numbers.push_back(number->value());
        }
    return numbers;
}

bool outside(const std::vector<double>& numbers, Limits limits) {
    return std::ranges::any_of(numbers, [&](double one) { return one < limits.least || one > limits.most; });
}

}  // namespace

void oxygen_before_breaths(const JudgedDocument& sheet, DocumentReport& report) {
    const bool weak = sheet.home.profile.diagnosis->why_ventilated.is(WhyVentilated::weak_muscles);
    const bool ordered = oxygen_may_be_raised(sheet.home);
    if (!weak && ordered) return;
    std::set<std::size_t> helped;  // sections in which breaths, cough help or suction already stand
    for (const Sentence& sentence : sheet.sentences) {
        const auto raised = sheet.phrases.find(Saying::raise_oxygen, sentence);
        const auto help = sheet.phrases.find(Saying::help_breathing, sentence);
        const bool after_help =
            helped.contains(sentence.passage->section) || (help && raised && help->begin < raised->begin);
        if (raised && (!ordered || !after_help)) report.at(sentence, raised->begin);
        if (help) helped.insert(sentence.passage->section);
    }
}

void squeeze_interval_out_of_range(const JudgedDocument& sheet, DocumentReport& report) {
    if (!sheet.home.age) return;
    const auto limits = limits_for(*sheet.home.age);
    if (!limits) return;
    const std::string group = sheet.home.child ? "a child" : "an adult";
    const auto found = [&](const Sentence& sentence, std::size_t begin, std::string seconds) {
        report.at(sentence, begin, {{"seconds", std::move(seconds)}, {"age_group", group}});
    };
    for (const Sentence& sentence : sheet.sentences) {
        const auto said = sheet.phrases.find(Saying::squeeze_interval, sentence);
        if (said && outside(said->numbers, *limits)) {
            found(sentence, said->begin, sentence.text.substr(said->begin, said->end - said->begin));
            continue;
        }
        for (const ValueSpan& span : sentence.values)
            if (span.value->field == "calc.squeeze-interval" && outside(numbers_of(*span.value), *limits))
                found(sentence, span.begin, span.value->text());
    }
}

}  // namespace ventfolio::sheet_check
