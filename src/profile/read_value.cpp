#include "profile/read_value.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "profile/read_measure.hpp"
#include "units/ascii.hpp"
#include "units/ink.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

// --- texts with a shape of their own

/// Letters, digits and hyphens, 1 to 32 of them; `letter` says which letters.
bool is_name(std::string_view text, bool (*letter)(char)) {
    return !text.empty() && text.size() <= 32 &&
           std::ranges::all_of(text, [&](char c) { return letter(c) || is_digit(c) || c == '-'; });
}

bool is_phone(std::string_view text) {
    const bool right_letters =
        std::ranges::all_of(text, [](char c) { return is_digit(c) || c == ' ' || c == '-' || c == '+'; });
    return right_letters && text.size() <= 20 && std::ranges::count_if(text, is_digit) >= 2 &&
           text.find('+', 1) == std::string_view::npos && text == trimmed(text);
}

std::optional<ValueRemark> wrong_shape(std::string_view text, const FieldInfo& info) {
    switch (info.shape) {
        case TextShape::free:
            return std::nullopt;
        case TextShape::record_number:
            if (is_name(text, is_capital_letter)) return std::nullopt;
            return ValueRemark{
                "record-number-unusable",
                fmt::format("{} may hold capital letters, digits and hyphens only, at most 32, because it "
                            "names folders.",
                            quoted(info.key)),
                "A to Z, 0 to 9 and -", fmt::format("Write it without other characters{}.", with_example(info))};
        case TextShape::identifier:
            if (is_name(text, is_small_letter)) return std::nullopt;
            return ValueRemark{
                "identifier-unusable",
                fmt::format("{} may hold small letters, digits and hyphens only, at most 32.", quoted(info.key)),
                "a to z, 0 to 9 and -", fmt::format("Write it without other characters{}.", with_example(info))};
        case TextShape::phone:
            if (is_phone(text)) return std::nullopt;
            return ValueRemark{
                "phone-number-unreadable",
                fmt::format("{} is not a number that can be dialled as it stands.", quoted(info.key)),
                "digits, blanks, hyphens",
                fmt::format("Write 2 to 20 digits, blanks and hyphens, with a plus only in front{}; put other "
                            "words into another field.",
                            with_example(info))};
    }
    return std::nullopt;
}

// --- dates and times

int days_in_month(int year, unsigned month) {
    for (unsigned day = 31; day > 28; --day)
        if (Date::of(year, month, day)) return static_cast<int>(day);
    return 28;
}

bool has_form(std::string_view text, std::string_view form) {
    return text.size() == form.size() &&
           std::ranges::equal(text, form, [](char c, char f) { return f == '0' ? is_digit(c) : c == f; });
}

int number_at(std::string_view text, std::size_t at, std::size_t length) {
    int value = 0;
    for (const char digit : text.substr(at, length)) value = value * 10 + (digit - '0');
    return value;
}

ValueRemark explain_date(std::string_view text, const FieldInfo& info) {
    const std::string example{info.example.empty() ? "2026-02-03" : info.example};
    if (!has_form(text, "0000-00-00"))
        return {"date-unreadable", fmt::format("{} is not written as a date.", quoted(info.key)),
                "year-month-day is due",
                fmt::format("Write the year with four digits, the month and the day with two, hyphens between: {}.",
                            example)};
    const int year = number_at(text, 0, 4);
    const auto month = static_cast<unsigned>(number_at(text, 5, 2));
    if (year < 1900 || year > 2199)
        return {"date-unreadable", fmt::format("{} has a year that is not possible.", quoted(info.key)), "1900 to 2199",
                "Check the year."};
    const std::string why = month < 1 || month > 12 ? fmt::format("there is no month {}", month)
                                                    : fmt::format("that month has {} days", days_in_month(year, month));
    return {"date-that-does-not-exist", fmt::format("{} names a day that does not exist: {}.", quoted(info.key), why),
            why, "Check the day and the month: the order is year-month-day."};
}

ValueRemark explain_moment(std::string_view text, const FieldInfo& info) {
    const auto blank = text.find(' ');
    if (blank != std::string_view::npos && has_form(text.substr(0, blank), "0000-00-00") &&
        !Date::parse(text.substr(0, blank)))
        return explain_date(text.substr(0, blank), info);
    const std::string example{info.example.empty() ? "2026-01-12 10:00" : info.example};
    if (Date::parse(text))
        return {"time-missing", fmt::format("{} has a day but no time.", quoted(info.key)), "the time is due too",
                fmt::format("Write both, a blank between: {}.", example)};
    return {"time-unreadable", fmt::format("{} is not written as a day and a time.", quoted(info.key)),
            "day and time are due", fmt::format("Write year-month-day, a blank and the time: {}.", example)};
}

// --- words

std::vector<std::string> words_of(const FieldBase& field) { return {field.choices().begin(), field.choices().end()}; }

ValueOrRemark read_choice(std::string_view text, const FieldInfo& info, const FieldBase& field) {
    const auto words = field.choices();
    const auto found = std::ranges::find(words, text);
    if (found != words.end()) return Value{Choice{static_cast<std::size_t>(found - words.begin()), *found}};
    const std::vector<std::string> known = words_of(field);
    const auto near = nearest(with_replaced(std::string{text}, " ", "_"), known);
    const std::string all = fmt::format("Words accepted here: {}.", joined(known, ", "));
    return ValueRemark{"word-not-in-list",
                       fmt::format("{} is not one of the words for {}.", quoted(text), quoted(info.key)),
                       near ? fmt::format("did you mean \"{}\"?", *near) : "not in the list",
                       near ? fmt::format("Write {}. {}", *near, all) : all};
}

ValueOrRemark read_flag(std::string_view text, bool plain, const FieldInfo& info) {
    // The spellings of YAML 1.2, core schema, section 10.3.2.
    for (const std::string_view yes : {"true", "True", "TRUE"})
        if (plain && text == yes) return Value{true};
    for (const std::string_view no : {"false", "False", "FALSE"})
        if (plain && text == no) return Value{false};
    const std::string small = lower_ascii(text);
    const bool means_yes = small == "yes" || small == "y" || small == "on" || small == "true" || small == "1";
    const bool means_no = small == "no" || small == "n" || small == "off" || small == "false" || small == "0";
    return ValueRemark{"flag-not-true-or-false", fmt::format("{} is answered by true or false.", quoted(info.key)),
                       "true or false is due",
                       means_yes  ? "Write true, without quotation marks."
                       : means_no ? "Write false, without quotation marks."
                                  : "Write true or false, or unknown if nobody knows."};
}

template <class T>
ValueOrRemark parsed_or(std::string_view text, ValueRemark remark) {
    if (auto parsed = T::parse(text)) return Value{std::move(*parsed)};
    return remark;
}

ValueRemark explain_form(std::string_view rule, std::string_view what, std::string_view how, const FieldInfo& info) {
    return {std::string{rule}, fmt::format("{} is not written as {}.", quoted(info.key), what),
            fmt::format("{} is due", what),
            fmt::format("Write it like {}.", info.example.empty() ? how : info.example)};
}

}  // namespace

ValueOrRemark read_text(std::string_view text, bool plain, const FieldInfo& info) {
    if (!has_ink(text))
        return ValueRemark{"text-empty",
                           fmt::format("{} is a text without letters; paper would show a blank.", quoted(info.key)),
                           "nothing in it", "Write the text, or unknown if nobody knows it."};
    if (plain && text.find('\n') != std::string_view::npos)
        return ValueRemark{"line-break-in-plain-text", fmt::format("{} holds an empty line.", quoted(info.key)),
                           "an empty line in it", "Put the text in quotation marks, or take the empty line out."};
    const std::size_t letters = code_points(text).size();
    if (letters > info.longest)
        return ValueRemark{
            "text-too-long",
            fmt::format("{} holds {} letters; there is room for {}.", quoted(info.key), letters, info.longest),
            fmt::format("{} too many", letters - info.longest), "Say it in fewer words."};
    if (auto remark = wrong_shape(text, info)) return *std::move(remark);
    return Value{std::string{text}};
}

ValueOrRemark read_value(std::string_view text, bool plain, const FieldInfo& info, const FieldBase& field) {
    switch (field.kind()) {
        case ValueKind::text:
            return read_text(text, plain, info);
        case ValueKind::flag:
            return read_flag(text, plain, info);
        case ValueKind::choice:
            return read_choice(text, info, field);
        case ValueKind::date:
            return parsed_or<Date>(text, explain_date(text, info));
        case ValueKind::moment:
            return parsed_or<Moment>(text, explain_moment(text, info));
        case ValueKind::clock_span:
            return parsed_or<ClockSpan>(
                text, explain_form("clock-span-unreadable", "from one time to another", "8 PM to 9 AM", info));
        case ValueKind::interval:
            return parsed_or<Interval>(
                text, explain_form("interval-unreadable", "a number of days, weeks, months or years", "30 days", info));
        case ValueKind::revision:
            return parsed_or<Revision>(text, explain_form("revision-unreadable", "a revision", "R1", info));
        case ValueKind::measure:
            return read_measure(text, info, *field.dimension());
        case ValueKind::range:
        case ValueKind::text_list:
            break;
    }
    return read_text(text, plain, info);
}

}  // namespace ventfolio
