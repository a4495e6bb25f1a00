#include "sheets/printer.hpp"

#include <fmt/format.h>
#include <array>

#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::array<std::string_view, 13> kMonths{"",        "january",  "february", "march",  "april",
                                                   "may",     "june",     "july",     "august", "september",
                                                   "october", "november", "december"};

PrintedPart word(std::string text) { return {PrintedPart::Kind::word, std::move(text)}; }

/// Blanks inside a date, a time or a phone number may not become line ends.
std::string unbroken(std::string text) { return with_replaced(std::move(text), " ", kNoBreakSpace); }

}  // namespace

Printer::Parts plain_parts(std::string text) { return {word(std::move(text))}; }

PrintedValue calculated(std::string name, Audiences audiences, Printer::Parts parts) {
    PrintedValue value;
    value.field = "calc." + std::move(name);
    value.audiences = audiences;
    value.parts = std::move(parts);
    return value;
}

std::string Printer::unit_word(std::string_view symbol, bool one, UnitForm form) const {
    const std::string key{symbol};
    if (form == UnitForm::brief)
        if (const auto brief = words_.find("units_brief." + key)) return std::string{*brief};
    if (form == UnitForm::spoken)
        if (const auto spoken = words_.find("units_spoken." + key)) return std::string{*spoken};
    if (one)
        if (const auto single = words_.find("units_one." + key)) return std::string{*single};
    return std::string{words_.at("units." + key)};
}

Printer::Parts Printer::number(const Decimal& number, std::string_view unit, Zeros zeros, UnitForm form) const {
    Parts parts{{PrintedPart::Kind::number, printed(number, region_.numbers, zeros)}};
    if (form == UnitForm::number_only || unit.empty()) return parts;
    parts.push_back(
        {PrintedPart::Kind::unit, std::string{kNoBreakSpace} + unit_word(unit, number.plain() == "1", form)});
    return parts;
}

Printer::Parts Printer::measure(const Measure& measure, Zeros zeros, UnitForm form) const {
    return number(measure.number, measure.unit.symbol, zeros, form);
}

Printer::Parts Printer::range(const MeasureRange& range, Zeros zeros, UnitForm form) const {
    if (range.from == range.to) return measure(range.to, zeros, form);
    const bool one_unit = range.from.unit.symbol == range.to.unit.symbol;
    Parts parts = measure(range.from, zeros, one_unit ? UnitForm::number_only : form);
    // A range does not end a line in its middle.
    parts.push_back(word(fmt::format("{0}{1}{0}", kNoBreakSpace, words_.at("range.to"))));
    for (PrintedPart& part : measure(range.to, zeros, form)) parts.push_back(std::move(part));
    return parts;
}

std::string Printer::date(Date date, UnitForm form) const {
    const bool brief = form == UnitForm::brief;
    const bool month_first = region_.date_order == Region::DateOrder::month_day_year;
    const std::string_view month =
        words_.at(fmt::format("{}.{}", brief ? "months_brief" : "months", kMonths[date.month()]));
    std::string text{words_.at(
        fmt::format("{}.{}", brief ? "dates_brief" : "dates", month_first ? "month_day_year" : "day_month_year"))};
    text = with_replaced(std::move(text), "{day}", std::to_string(date.day()));
    text = with_replaced(std::move(text), "{month}", month);
    return with_replaced(std::move(text), "{year}", std::to_string(date.year()));
}

std::string Printer::time(ClockTime time) const {
    if (region_.clock == Region::Clock::twenty_four_hours) return time.iso();
    if (time.minutes == 12 * 60) return std::string{words_.at("clock.noon")};
    if (time.minutes == 0) return std::string{words_.at("clock.midnight")};
    const int hour = (time.minutes / 60 + 11) % 12 + 1;
    const int minute = time.minutes % 60;
    const std::string_view half = words_.at(time.minutes < 12 * 60 ? "clock.morning" : "clock.afternoon");
    return unbroken(minute == 0 ? fmt::format("{} {}", hour, half) : fmt::format("{}:{:02} {}", hour, minute, half));
}

std::string Printer::span(ClockSpan span) const {
    return unbroken(fmt::format("{} {} {}", time(span.from), words_.at("range.to"), time(span.to)));
}

Printer::Parts Printer::hours_and_minutes(long long minutes) const {
    Parts parts;
    if (minutes >= 60) parts = number(Decimal::whole(minutes / 60), "h");
    if (minutes % 60 != 0 || minutes < 60) {
        if (!parts.empty()) parts.push_back(word(" "));
        for (PrintedPart& part : number(Decimal::whole(minutes % 60), "min")) parts.push_back(std::move(part));
    }
    return parts;
}

std::string Printer::choice(std::string_view key, std::string_view word) const {
    if (const auto own = words_.find(fmt::format("choices.{}.{}", key, word))) return std::string{*own};
    return std::string{words_.at(fmt::format("choices.{}", word))};
}

Printer::Parts Printer::parts(const FieldBase& field, const FieldInfo& info, UnitForm form) const {
    const Value& value = field.value();
    switch (field.kind()) {
        case ValueKind::measure:
            return measure(std::get<Measure>(value), info.zeros, form);
        case ValueKind::range:
            return range(std::get<MeasureRange>(value), info.zeros, form);
        case ValueKind::date:
            return {word(date(std::get<Date>(value), form))};
        case ValueKind::moment:
            return {word(moment(std::get<Moment>(value)))};
        case ValueKind::clock_span:
            return {word(span(std::get<ClockSpan>(value)))};
        case ValueKind::revision:
            return {word(std::get<Revision>(value).text())};
        case ValueKind::choice:
            return {word(choice(info.key, std::get<Choice>(value).word))};
        case ValueKind::text_list:
            return {word(joined(std::get<TextList>(value), ", "))};
        case ValueKind::flag:
            return {word(std::string{words_.at(std::get<bool>(value) ? "flag.true" : "flag.false")})};
        case ValueKind::interval: {
            const Interval& interval = std::get<Interval>(value);
            constexpr std::array<std::string_view, 4> kSteps{"days", "weeks", "months", "years"};
            return number(Decimal::whole(interval.count), kSteps[static_cast<std::size_t>(interval.step)]);
        }
        case ValueKind::text:
            break;
    }
    const std::string& text = std::get<std::string>(value);
    if (info.shape == TextShape::phone) return {{PrintedPart::Kind::number, unbroken(text)}};
    return {word(text)};
}

PrintedValue Printer::print(const FieldBase& field, const FieldInfo& info, std::string path, UnitForm form) const {
    PrintedValue value;
    value.field = std::move(path);
    value.audiences = info.on;
    switch (field.state) {
        case FieldState::given:
            value.parts = parts(field, info, form);
            break;
        case FieldState::off:
            value.parts = {word(std::string{words_.at("state.off")})};
            break;
        case FieldState::none:
            value.parts = {word(std::string{words_.at("state.none")})};
            break;
        case FieldState::absent:
        case FieldState::unknown:
            return not_recorded(info, value.field);
    }
    return value;
}

PrintedValue Printer::not_recorded(const FieldInfo& info, std::string path) const {
    PrintedValue value;
    value.field = std::move(path);
    value.audiences = info.on;
    value.not_recorded = true;
    const std::string_view role = words_.at(fmt::format("roles.{}", info.ask.empty() ? "clinic" : info.ask));
    value.parts = {word(with_replaced(std::string{words_.at("not_recorded")}, "{role}", role))};
    return value;
}

}  // namespace ventfolio
