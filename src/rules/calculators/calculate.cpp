#include "rules/calculators/calculate.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "units/print.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// To six digits: more than any gauge gives, and none of the dust of binary.
Decimal to_six_digits(double value) {
    constexpr int kDigits = 6;
    if (value == 0) return Decimal::whole(0);
    const int whole_digits = static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
    return Decimal::rounded(value, std::clamp(kDigits - whole_digits, 0, 9));
}

std::string with_unit(std::string_view number, std::string_view unit) {
    return unit.empty() ? std::string{number} : fmt::format("{} {}", number, unit);
}

double in_argument_unit(const Input& input) {
    const Scale scale = scale_of(*input.argument);
    return (input.value - scale.offset) / scale.factor;
}

bool is_counted(const ArgumentText& argument) {
    return argument.takes == Takes::quantity || argument.takes == Takes::whole || argument.takes == Takes::number;
}

std::string shown_limit(double limit, const ArgumentText& argument) {
    return with_unit(printed(to_six_digits(limit), {}), argument.unit);
}

void check_range(const Input& input, std::vector<std::string>& faults) {
    const ArgumentText& argument = *input.argument;
    if (!is_counted(argument) || !argument.from || !argument.to) return;
    if (calc::within(in_argument_unit(input), *argument.from, *argument.to)) return;
    faults.push_back(fmt::format("--{} is {}; this calculator holds from {} to {}", argument.name, in_book_unit(input),
                                 shown_limit(*argument.from, argument), shown_limit(*argument.to, argument)));
}

double rounded(double value, const ResultText& result) {
    const double scale = std::pow(10.0, result.places);
    const double slack = calc::kTolerance * std::max(1.0, std::abs(value * scale));
    switch (result.round) {
        case Rounding::up:
            return std::ceil(value * scale - slack) / scale;
        case Rounding::down:
            return std::floor(value * scale + slack) / scale;
        case Rounding::nearest:
            break;
    }
    return std::round(value * scale) / scale;
}

/// In minutes for hours and minutes; in the result's unit else.
double in_result_unit(const Amount& amount, const ResultText& result) {
    if (!amount.dimension) return amount.value;
    if (result.form == Form::hours) return amount.value / unit::min.unit.factor;
    const Unit* unit = find_unit(result.unit);
    if (unit == nullptr || unit->dimension != *amount.dimension)
        throw std::logic_error{fmt::format("the result {} has a unit of another kind", result.name)};
    return (amount.value - unit->offset) / unit->factor;
}

double as_shown(double exact, const ResultText& result) {
    if (result.form != Form::hours) return rounded(exact, result);
    return static_cast<double>(floor_minutes(Duration::of(exact, unit::min)));
}

std::string hours_and_minutes(double minutes) {
    const auto whole = static_cast<long long>(minutes);
    const std::string hours = printed(Decimal::whole(whole / 60), {});
    if (whole < 60) return fmt::format("{} min", whole);
    return whole % 60 == 0 ? fmt::format("{} h", hours) : fmt::format("{} h {} min", hours, whole % 60);
}

std::string number_text(double shown, const ResultText& result) {
    if (result.form == Form::hours) return hours_and_minutes(shown);
    return with_unit(printed(Decimal::rounded(shown, result.places), {}), result.unit);
}

std::string band_text(const ShownResult& shown) {
    const ResultText& result = *shown.result;
    const std::string low = number_text(shown.numbers.front(), result);
    const std::string high = number_text(shown.numbers.back(), result);
    if (low == high) return low;
    const std::string range =
        result.form == Form::hours
            ? fmt::format("{} to {}", low, high)
            : fmt::format("{} to {}", printed(Decimal::rounded(shown.numbers.front(), result.places), {}), high);
    if (result.plan == PlanOn::both || result.plan == PlanOn::value) return range;
    const bool on_low = result.plan == PlanOn::low;
    return fmt::format("{}; paper plans on the {} end, {}", range, on_low ? "low" : "high", on_low ? low : high);
}

std::string ratio_text(const ShownResult& shown) {
    const auto part = [&](double number) { return printed(Decimal::rounded(number, shown.result->places), {}); };
    return fmt::format("{}:{}", part(shown.numbers.front()), part(shown.numbers.back()));
}

std::string word_text(const ResultText& result, std::string_view word) {
    const auto found = std::ranges::find(result.words, word, &NamedText::name);
    if (found == result.words.end())
        throw std::logic_error{fmt::format("the result {} has no words for {}", result.name, word)};
    return std::string{found->text};
}

ShownResult shown_result(const ResultText& result, const Given& given) {
    ShownResult shown{.result = &result};
    for (const Amount& amount : given.amounts) {
        shown.exact.push_back(in_result_unit(amount, result));
        shown.numbers.push_back(as_shown(shown.exact.back(), result));
    }
    shown.unit = result.form == Form::hours ? "min" : std::string{result.unit};
    switch (result.form) {
        case Form::measure:
            shown.unit = given.text;
            shown.text = with_unit(printed(to_six_digits(shown.exact.front()), {}), shown.unit);
            shown.numbers = shown.exact;
            break;
        case Form::word:
            shown.text = word_text(result, given.text);
            break;
        case Form::date:
            shown.text = given.text;
            break;
        case Form::ratio:
            shown.text = ratio_text(shown);
            break;
        case Form::number:
        case Form::hours:
            shown.text = band_text(shown);
            break;
    }
    return shown;
}

std::vector<ShownResult> shown_results(const CalculatorText& calculator, const Answer& answer) {
    std::vector<ShownResult> results;
    for (const ResultText& result : calculator.results)
        for (const Given& given : answer.all())
            if (given.name == result.name) results.push_back(shown_result(result, given));
    if (results.size() != answer.all().size())
        throw std::logic_error{fmt::format("{} gives a result that the book does not name", calculator.name)};
    return results;
}

std::string part_of_formula(const Calculation& calculation, std::string_view name) {
    std::vector<std::string> inputs;
    for (const Input& input : calculation.inputs.all())
        if (input.argument->name == name) inputs.push_back(in_book_unit(input));
    if (!inputs.empty()) return joined(inputs, " + ");
    const std::size_t dot = name.find('.');
    for (const ShownResult& shown : calculation.results) {
        if (shown.result->name != name.substr(0, dot)) continue;
        if (dot == std::string_view::npos) return shown.text;
        return number_text(name.ends_with(".low") ? shown.numbers.front() : shown.numbers.back(), *shown.result);
    }
    throw std::logic_error{
        fmt::format("the worked formula of {} needs {}, which is not there", calculation.calculator->name, name)};
}

std::string worked_formula(const Calculation& calculation, std::string_view way) {
    const auto& works = calculation.calculator->works;
    const auto found = std::ranges::find(works, way, &NamedText::name);
    if (found == works.end())
        throw std::logic_error{fmt::format("{} has no worked formula for '{}'", calculation.calculator->name, way)};
    std::string out;
    std::string_view rest = found->text;
    for (auto open = rest.find('{'); open != std::string_view::npos; open = rest.find('{')) {
        const auto close = rest.find('}', open);
        out += rest.substr(0, open);
        out += part_of_formula(calculation, rest.substr(open + 1, close - open - 1));
        rest.remove_prefix(close + 1);
    }
    return out + std::string{rest};
}

}  // namespace

std::string range_of(const CalculatorText& calculator) {
    std::vector<std::string> parts;
    for (const ArgumentText& argument : calculator.arguments)
        if (is_counted(argument))
            parts.push_back(fmt::format("{} {} to {}", argument.name, printed(to_six_digits(*argument.from), {}),
                                        shown_limit(*argument.to, argument)));
    if (!calculator.range.empty()) parts.emplace_back(calculator.range);
    return joined(parts, "; ");
}

std::string in_book_unit(const Input& input) {
    if (!is_counted(*input.argument)) return input.written;
    return with_unit(printed(to_six_digits(in_argument_unit(input)), {}), input.argument->unit);
}

std::variant<Calculation, OutsideRange> calculate(const CalculatorText& calculator, Inputs inputs) {
    OutsideRange outside;
    for (const Input& input : inputs.all()) check_range(input, outside.sentences);
    if (!outside.sentences.empty()) return outside;
    const auto answer = calculator.run(inputs);
    if (!answer) {
        const std::string_view why = calculator.nothing.empty() ? calculator.range : calculator.nothing;
        return OutsideRange{{fmt::format("no number is given {}", why)}};
    }
    Calculation calculation{.calculator = &calculator, .inputs = std::move(inputs), .results = {}, .worked = {}};
    calculation.results = shown_results(calculator, *answer);
    calculation.worked = worked_formula(calculation, answer->way());
    return calculation;
}

}  // namespace ventfolio
