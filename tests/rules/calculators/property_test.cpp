#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include "ask.hpp"
#include "rules/calculators/report.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// Arguments by name; several values where an argument may stand several times.
using Arguments = std::map<std::string, std::vector<std::string>>;

std::vector<std::string> words_of(const Arguments& arguments) {
    std::vector<std::string> words;
    for (const auto& [name, values] : arguments)
        for (const std::string& value : values) {
            words.push_back("--" + name);
            words.push_back(value);
        }
    return words;
}

Arguments arguments_in(std::string_view line) {
    Arguments arguments;
    std::string name;
    for (const std::string& word : shell_words(line)) {
        if (word.starts_with("--"))
            name = word.substr(2);
        else
            arguments[name].push_back(word);
    }
    return arguments;
}

Arguments example_of(const CalculatorText& calculator) { return arguments_in(calculator.example); }

std::string typed(double value, const ArgumentText& argument) {
    const int places = argument.takes == Takes::whole ? 0 : 6;
    const std::string number = Decimal::rounded(value, places).plain();
    return argument.unit.empty() ? number : fmt::format("{} {}", number, argument.unit);
}

/// Numbers of the range, dense at its low end as well as over the whole.
std::vector<double> numbers_in(const ArgumentText& argument, int count) {
    std::vector<double> numbers;
    const double from = *argument.from;
    const double to = *argument.to;
    for (int step = 0; step <= count; ++step) {
        const double share = static_cast<double>(step) / count;
        numbers.push_back(from + (to - from) * share);
        numbers.push_back(from + (to - from) * std::pow(10.0, -6 * (1 - share)));
    }
    if (argument.takes == Takes::whole)
        for (double& number : numbers) number = std::round(number);
    std::ranges::sort(numbers);
    return numbers;
}

std::vector<std::string> values_of(const ArgumentText& argument) {
    switch (argument.takes) {
        case Takes::quantity:
        case Takes::whole:
        case Takes::number: {
            std::vector<std::string> values;
            for (const double number : numbers_in(argument, 6)) values.push_back(typed(number, argument));
            return values;
        }
        case Takes::word:
            return {argument.words.begin(), argument.words.end()};
        case Takes::date:
            return {"1900-01-01", "2007-11-30", "2024-02-29", "2026-02-03", "2027-12-31", "2199-12-31"};
        case Takes::interval:
            return {"1 day", "30 days", "2 weeks", "1 month", "6 months", "1 year", "3660 days"};
        case Takes::measure:
            return {"0 cmH2O", "35 cmH2O", "2000 psi", "98.6 °F", "-40 °C", "450 mL", "12 Fr", "21 %", "3 h"};
        case Takes::unit_name:
            return {"bar", "mmHg", "°C", "L", "mm", "%", "min", "kg"};
    }
    return {};
}

/// The same numbers on every machine and every run.
class Choices {
  public:
    std::size_t below(std::size_t count) {
        state_ = state_ * 6364136223846793005U + 1442695040888963407U;
        return static_cast<std::size_t>(state_ >> 33U) % count;
    }

  private:
    std::uint64_t state_ = 20260203;
};

Arguments any_arguments(const CalculatorText& calculator, Choices& choices) {
    Arguments arguments;
    for (const ArgumentText& argument : calculator.arguments) {
        if (!argument.needed() && choices.below(3) == 0) continue;
        const std::vector<std::string> values = values_of(argument);
        const std::size_t times = argument.many ? 1 + choices.below(3) : 1;
        for (std::size_t time = 0; time < times; ++time)
            arguments[std::string{argument.name}].push_back(values[choices.below(values.size())]);
    }
    return arguments;
}

/// Below zero by nature: very easy texts, and temperatures.
bool may_be_negative(std::string_view calculator) {
    constexpr std::array<std::string_view, 4> kNames{"reading-grade", "reading-ease", "spanish-reading-ease",
                                                     "unit-conversion"};
    return std::ranges::find(kNames, calculator) != kNames.end();
}

void check_sound(const Calculation& calculation) {
    CHECK(!calculation.results.empty());
    for (const ShownResult& shown : calculation.results) {
        CAPTURE(std::string{shown.result->name});
        CHECK(!shown.text.empty());
        for (const double number : shown.exact) {
            CHECK(std::isfinite(number));
            if (!may_be_negative(calculation.calculator->name)) CHECK(number >= 0);
        }
        if (shown.exact.size() == 2 && shown.result->form != Form::ratio)
            CHECK(shown.exact.front() <= shown.exact.back());
    }
    const std::string text = calculation_text(calculation);
    for (const char* wrong : {"nan", "inf ", "-0 ", "{", "}"})
        CHECK_MESSAGE(text.find(wrong) == std::string::npos, text);
}

std::set<std::string_view> bands_of(const CalculatorText& calculator) {
    std::set<std::string_view> bands;
    for (const ResultText& result : calculator.results)
        if (result.plan != PlanOn::value) bands.insert(result.name);
    return bands;
}

/// Where the calculator itself holds further than the book: an end against slips of the pen only.
bool ends_in_the_book_alone(std::string_view calculator, std::string_view argument) {
    struct Open {
        std::string_view calculator;
        std::string_view argument;
    };
    constexpr Open kOpen[] = {
        {"battery-time", "derating"},           {"socket-load", "draw"},
        {"volume-alarm-share", "limit"},        {"volume-alarm-share", "usual"},
        {"minute-volume-alarm-share", "limit"}, {"minute-volume-alarm-share", "usual"},
        {"reading-grade", "syllables"},         {"reading-ease", "syllables"},
        {"spanish-reading-ease", "syllables"},  {"long-word-grade", "long-words"},
        {"long-word-grade", "sentences"},       {"tolerance-band", "volume"},
    };
    return std::ranges::any_of(
        kOpen, [&](const Open& open) { return open.calculator == calculator && open.argument == argument; });
}

/// How one result follows one argument when the others stay as in the example, or as given here.
struct Trend {
    const char* calculator;
    const char* result;
    std::vector<const char*> rises_with;
    std::vector<const char*> falls_with;
    const char* arguments = nullptr;
};

const std::vector<Trend>& trends() {
    static const std::vector<Trend> rows{
        {"predicted-weight", "weight", {"height"}, {}},
        {"child-weight", "weight", {"height"}, {}},
        {"height-from-arm-span", "height", {"arm-span"}, {}},
        {"body-mass-index", "index", {"weight"}, {"height"}},
        {"volume-per-weight", "share", {"volume"}, {"weight"}},
        {"vital-sign-band", "breathing", {}, {"age"}},
        {"lowest-systolic", "lowest", {"age"}, {}},
        {"breath-timing", "out", {}, {"rate", "time-in"}},
        {"breath-timing", "share", {"rate", "time-in"}, {}},
        {"inspiratory-time", "time-in", {"in"}, {"rate", "out"}},
        {"minute-ventilation", "flow", {"rate", "volume"}, {}},
        {"inspiratory-flow", "flow", {"volume"}, {"time-in"}},
        {"pressure-sums", "peak", {"inspiratory", "baseline"}, {}},
        {"dead-space", "alveolar", {"breath", "rate"}, {"body", "equipment"}},
        {"dead-space", "total-share", {"body", "equipment"}, {"breath"}},
        {"airway-dead-space", "volume", {"weight"}, {}},
        {"chest-dead-space", "volume", {"weight"}, {}},
        {"tube-volume", "volume", {"bore", "length"}, {}},
        {"lung-stretch", "compliance", {"volume", "baseline"}, {"plateau"}},
        {"exhalation-time", "needed", {"resistance", "compliance"}, {}},
        {"breathed-out", "share", {"time-out"}, {"resistance", "compliance"}},
        {"circuit-loss", "lost", {"compliance", "peak"}, {"baseline"}},
        {"circuit-loss", "delivered", {"volume", "baseline"}, {"compliance", "peak"}},
        {"hose-compliance", "compliance", {"volume", "baseline"}, {"peak"}},
        {"gas-compliance", "compliance", {"gas"}, {"air-pressure"}},
        {"port-leak", "leak", {"known-flow"}, {}},
        {"mean-port-leak", "leak", {"known-flow", "share-in"}, {}},
        {"washout-need", "leak", {"volume"}, {"time-out"}},
        {"cylinder-time", "time", {"gauge"}, {"residual", "flow"}},
        {"cylinder-time", "time", {"factor"}, {}, "--factor \"0.28 L/psi\" --gauge \"2000 psi\" --flow \"2 L/min\""},
        {"cylinder-factor", "factor", {"contents"}, {"full"}},
        {"cylinder-contents", "contents", {"water-volume", "gauge"}, {}},
        {"starting-gauge", "gauge", {"flow", "time", "residual"}, {"factor"}},
        {"liquid-oxygen-time", "time", {"liquid"}, {"flow"}},
        {"liquid-oxygen-days", "time", {"liquid"}, {"flow", "hours-a-day", "lost-a-day"}},
        {"oxygen-fraction", "fraction", {"oxygen"}, {"minute-volume", "leak"}},
        {"blender-oxygen", "oxygen", {"fraction", "total"}, {"purity"}},
        {"air-pressure", "pressure", {}, {"height"}},
        {"inspired-oxygen", "oxygen", {"fraction", "air-pressure"}, {}},
        {"equivalent-fraction", "needed", {"fraction", "there"}, {"here"}},
        {"alveolar-oxygen", "oxygen", {"fraction", "air-pressure"}, {"carbon-dioxide"}},
        {"trapped-gas", "growth", {"here"}, {"there"}},
        {"battery-time", "time", {"tested", "derating"}, {}},
        {"labelled-battery-time",
         "time",
         {"volts", "capacity", "age-share", "temperature-share", "usable-share", "efficiency"},
         {"load"}},
        {"rated-battery-time", "time", {"capacity"}, {"current", "exponent", "rated-over"}},
        {"battery-exponent", "exponent", {"slow", "fast-time"}, {"fast", "slow-time"}},
        {"direct-current-draw", "draw", {"load"}, {"lowest-volts", "efficiency"}},
        {"generator-load", "needed", {"running"}, {}},
        {"generator-load", "sum", {"running"}, {}},
        {"generator-load", "needed", {"starting"}, {}, "--running \"350 W\" --starting \"800 W\""},
        {"outage-timeline", "leave-by", {"oxygen", "power"}, {"travel", "reserve"}},
        {"recharge-time", "time", {"energy"}, {"charger", "efficiency"}},
        {"fuel-time", "time", {"tank"}, {"use"}},
        {"supply-rating", "rating", {"load"}, {"power-factor"}},
        {"saturation-pressure", "pressure", {"temperature"}, {}},
        {"absolute-humidity", "water", {"temperature", "relative"}, {}},
        {"rain-out", "water", {"gas"}, {"wall"}},
        {"humidifier-water", "water", {"flow", "out"}, {"in"}},
        {"warmed-humidity", "relative", {"saturated-at"}, {"warmed-to"}},
        {"catheter-size", "half", {"inner-diameter"}, {}},
        {"catheter-fit", "ratio", {"catheter"}, {"inner-diameter"}},
        {"suction-depth", "deepest", {"tube", "connector", "past-tip"}, {}},
        {"suction-pressure", "never", {"age"}, {}},
        {"cuff-pressure", "mercury", {"pressure"}, {}},
        {"alarm-margins", "above-peak", {"high-limit"}, {"peak"}},
        {"alarm-margins", "below-peak", {"peak"}, {"low-limit"}},
        {"alarm-margins", "above-baseline", {"low-limit"}, {"baseline"}},
        {"no-breath-window", "delay", {}, {"backup-rate"}},
        {"volume-alarm-share", "share", {"limit"}, {"usual"}},
        {"minute-volume-alarm-share", "share", {"limit"}, {"usual"}},
        {"squeeze-interval", "interval", {}, {"rate"}},
        {"safe-minutes", "minutes", {"free"}, {}},
        {"cough-flow", "each-second", {"peak"}, {}},
        {"cough-pressures", "swing", {"in"}, {"out"}},
        {"reading-grade", "grade", {"syllables"}, {"sentences"}},
        {"reading-ease", "ease", {"sentences"}, {"syllables"}},
        {"spanish-reading-ease", "ease", {"sentences"}, {"syllables"}},
        {"long-word-grade", "grade", {"long-words"}, {"sentences"}},
        {"letter-height", "height", {"distance", "angle"}, {}},
        {"type-size", "size", {"capital"}, {"cap-height"}},
        {"tolerance-band", "volume-band", {"volume"}, {}},
        {"tolerance-band", "minute-volume-band", {"minute-volume"}, {}, "--minute-volume \"6 L/min\""},
        {"tolerance-band", "pressure-band", {"pressure"}, {}, "--pressure \"21 cmH2O\""},
        {"tolerance-band", "rate-band", {"rate"}, {}, "--rate \"14 breaths/min\""},
        {"supply-quantity", "pieces", {"days", "use", "spare"}, {}},
        {"supply-quantity", "packs", {"use"}, {"pack"}},
        {"days-of-supply", "days", {"pieces"}, {"use"}},
    };
    return rows;
}

/// Calculators whose arguments are no numbers, or whose answer is a word.
bool has_no_trend(std::string_view calculator) {
    constexpr std::array<std::string_view, 6> kNames{"age-in-years",    "next-due-date", "days-overdue",
                                                     "unit-conversion", "silent-tube",   "socket-load"};
    return std::ranges::find(kNames, calculator) != kNames.end();
}

/// Numbers that no result follows in one direction, and why.
struct Trendless {
    const char* calculator;
    const char* argument;
    const char* why;
};
constexpr Trendless kTrendless[] = {
    {"predicted-weight", "years", "only decides whether it may be asked for"},
    {"child-weight", "years", "only decides whether it may be asked for"},
    {"airway-dead-space", "years", "another formula from 18 years on"},
    {"port-leak", "pressure", "the band widens away from the known pressure"},
    {"port-leak", "known-pressure", "the same"},
    {"mean-port-leak", "peak", "the same"},
    {"mean-port-leak", "baseline", "the same"},
    {"mean-port-leak", "known-pressure", "the same"},
    {"reading-grade", "words", "lengthens sentences and shortens words"},
    {"reading-ease", "words", "lengthens sentences and shortens words"},
    {"spanish-reading-ease", "words", "lengthens sentences and shortens words"},
};

bool names(const std::vector<const char*>& arguments, std::string_view name) {
    return std::ranges::any_of(arguments, [&](const char* one) { return name == one; });
}

bool has_trend(std::string_view calculator, std::string_view argument) {
    return std::ranges::any_of(trends(), [&](const Trend& trend) {
        return trend.calculator == calculator &&
               (names(trend.rises_with, argument) || names(trend.falls_with, argument));
    });
}

bool is_trendless(std::string_view calculator, std::string_view argument) {
    return std::ranges::any_of(
        kTrendless, [&](const Trendless& one) { return one.calculator == calculator && one.argument == argument; });
}

Calculation answer_of(std::string_view calculator, const std::string& arguments) {
    CAPTURE(arguments);
    auto outcome = asked(calculator, arguments);
    REQUIRE(std::holds_alternative<Calculation>(outcome));
    return std::get<Calculation>(std::move(outcome));
}

void check_trend(const Trend& trend, const char* name, bool rises) {
    CAPTURE(std::string{trend.calculator});
    CAPTURE(std::string{trend.result});
    CAPTURE(std::string{name});
    const CalculatorText& calculator = the_calculator(trend.calculator);
    const auto argument = std::ranges::find(calculator.arguments, name, &ArgumentText::name);
    REQUIRE(argument != calculator.arguments.end());
    Arguments arguments = trend.arguments ? arguments_in(trend.arguments) : example_of(calculator);
    double first = std::numeric_limits<double>::quiet_NaN();
    double before = first;
    double input_before = first;
    for (const double number : numbers_in(*argument, 300)) {
        if (number == input_before) continue;
        arguments[name] = {typed(number, *argument)};
        const auto outcome = calculate(calculator, inputs_for(trend.calculator, words_of(arguments)));
        const auto* calculation = std::get_if<Calculation>(&outcome);
        if (calculation == nullptr) continue;
        const auto shown = std::ranges::find_if(
            calculation->results, [&](const ShownResult& one) { return one.result->name == trend.result; });
        if (shown == calculation->results.end()) continue;
        const double value = shown->exact.front();
        const double slack = 1e-9 * std::max(1.0, std::abs(value));
        if (!std::isnan(before)) CHECK((rises ? value >= before - slack : value <= before + slack));
        if (std::isnan(first)) first = value;
        before = value;
        input_before = number;
    }
    CHECK((rises ? before > first : before < first));
}

/// Where the end of what may be typed lies beyond the last number that a formula takes: at it there is nothing by
/// nature.
bool ends_before(std::string_view calculator, std::string_view argument, double end) {
    struct Open {
        std::string_view calculator;
        std::string_view argument;
        double end;
        const char* why;
    };
    constexpr Open kOpen[] = {
        {"vital-sign-band", "age", 18, "the table ends below 18 years"},
        {"lowest-systolic", "age", 18, "the formula ends below 18 years"},
        {"lung-stretch", "plateau", 0, "above the baseline"},
        {"lung-stretch", "baseline", 60, "below the plateau"},
        {"circuit-loss", "peak", 0, "above the baseline"},
        {"circuit-loss", "baseline", 100, "below the peak"},
        {"hose-compliance", "volume", 2500, "no hose is so soft"},
        {"hose-compliance", "peak", 0, "above the baseline"},
        {"hose-compliance", "baseline", 100, "below the peak"},
        {"battery-exponent", "slow-time", 0.1, "longer than the fast time"},
        {"battery-exponent", "fast-time", 100, "shorter than the slow time"},
        {"alarm-margins", "high-limit", 0, "above the peak"},
        {"alarm-margins", "low-limit", 0, "above the baseline"},
        {"alarm-margins", "low-limit", 100, "below the peak"},
        {"alarm-margins", "peak", 0, "above the low limit"},
        {"alarm-margins", "peak", 100, "below the high limit"},
        {"safe-minutes", "free", 0, "half a minute is no minute"},
        {"tolerance-band", "volume", 0, "no share of nothing"},
        {"tolerance-band", "minute-volume", 0, "no share of nothing"},
        {"tolerance-band", "pressure", 0, "no share of nothing"},
        {"tolerance-band", "rate", 0, "no share of nothing"},
    };
    return std::ranges::any_of(kOpen, [&](const Open& open) {
        return open.calculator == calculator && open.argument == argument && open.end == end;
    });
}

/// Whether there is a number at this end, with the other arguments of the example or with any others: a high baseline
/// needs a higher peak.
bool is_answered(const CalculatorText& calculator, const ArgumentText& argument, double end) {
    constexpr int kTries = 400;
    Choices choices;
    Arguments arguments = example_of(calculator);
    for (int tries = 0; tries < kTries; ++tries) {
        arguments[std::string{argument.name}] = {typed(end, argument)};
        if (calculator.run(inputs_for(calculator.name, words_of(arguments)))) return true;
        arguments = any_arguments(calculator, choices);
    }
    return false;
}

}  // namespace

TEST_CASE("no calculator gives a number that is not one, endless or below zero, anywhere in its range") {
    for (const CalculatorText& calculator : calculator_book()) {
        CAPTURE(std::string{calculator.name});
        Choices choices;
        int answered = 0;
        std::set<std::string_view> wide;
        constexpr int kRounds = 1500;
        for (int round = 0; round < kRounds; ++round) {
            const Arguments arguments = any_arguments(calculator, choices);
            const auto outcome = calculate(calculator, inputs_for(calculator.name, words_of(arguments)));
            const auto* calculation = std::get_if<Calculation>(&outcome);
            if (calculation == nullptr) continue;
            ++answered;
            check_sound(*calculation);
            for (const ShownResult& shown : calculation->results)
                if (shown.exact.size() == 2 && shown.exact.front() < shown.exact.back())
                    wide.insert(shown.result->name);
        }
        CHECK(answered >= 10);
        for (const std::string_view band : bands_of(calculator)) CHECK_MESSAGE(wide.contains(band), band);
    }
}

TEST_CASE("just outside an argument's range neither the book nor the calculator itself gives a number") {
    for (const CalculatorText& calculator : calculator_book())
        for (const ArgumentText& argument : calculator.arguments) {
            if (!argument.from || !argument.to) continue;
            const double step =
                argument.takes == Takes::whole ? 1 : std::max(0.01 * (*argument.to - *argument.from), 2e-6);
            for (const double number : {*argument.from - step, *argument.to + step}) {
                Arguments arguments = example_of(calculator);
                arguments[std::string{argument.name}] = {typed(number, argument)};
                CAPTURE(std::string{calculator.name});
                CAPTURE(arguments[std::string{argument.name}].front());
                const Inputs inputs = inputs_for(calculator.name, words_of(arguments));
                if (!ends_in_the_book_alone(calculator.name, argument.name))
                    CHECK_MESSAGE(!calculator.run(inputs), argument.name);
                const auto outcome = calculate(calculator, inputs);
                REQUIRE(std::holds_alternative<OutsideRange>(outcome));
                CHECK(
                    std::get<OutsideRange>(outcome).sentences.front().starts_with(fmt::format("--{} ", argument.name)));
            }
        }
}

TEST_CASE("at both ends of an argument's range the calculator itself gives a number") {
    for (const CalculatorText& calculator : calculator_book())
        for (const ArgumentText& argument : calculator.arguments) {
            if (!argument.from || !argument.to) continue;
            for (const double end : {*argument.from, *argument.to}) {
                CAPTURE(std::string{calculator.name});
                CAPTURE(std::string{argument.name});
                CAPTURE(end);
                CHECK(is_answered(calculator, argument, end) != ends_before(calculator.name, argument.name, end));
            }
        }
}

TEST_CASE("results rise and fall with their arguments as the physics says") {
    for (const Trend& trend : trends()) {
        for (const char* name : trend.rises_with) check_trend(trend, name, true);
        for (const char* name : trend.falls_with) check_trend(trend, name, false);
    }
    for (const CalculatorText& calculator : calculator_book()) {
        CAPTURE(std::string{calculator.name});
        const bool listed =
            std::ranges::any_of(trends(), [&](const Trend& trend) { return trend.calculator == calculator.name; });
        CHECK(listed != has_no_trend(calculator.name));
    }
}

TEST_CASE("every number that a calculator takes has a trend, or a reason why there is none") {
    for (const CalculatorText& calculator : calculator_book()) {
        if (has_no_trend(calculator.name)) continue;
        for (const ArgumentText& argument : calculator.arguments) {
            if (!argument.from) continue;
            CAPTURE(std::string{calculator.name});
            CAPTURE(std::string{argument.name});
            CHECK(has_trend(calculator.name, argument.name) != is_trendless(calculator.name, argument.name));
        }
    }
}

TEST_CASE("an answer in words changes once at most along each argument") {
    /// The word with which the row begins, and with which it ends.
    struct Row {
        const char* calculator;
        const char* result;
        const char* argument;
        const char* first;
        const char* last;
    };
    constexpr Row rows[] = {
        {"silent-tube", "silent", "inner-diameter", "yes", "no"},
        {"silent-tube", "silent", "below-peak", "no", "yes"},
        {"socket-load", "carries", "draw", "yes", "no"},
        {"socket-load", "carries", "rating", "no", "yes"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.calculator);
        CAPTURE(row.argument);
        const CalculatorText& calculator = the_calculator(row.calculator);
        const auto argument = std::ranges::find(calculator.arguments, row.argument, &ArgumentText::name);
        REQUIRE(argument != calculator.arguments.end());
        Arguments arguments = example_of(calculator);
        std::vector<std::string> answers;
        for (const double number : numbers_in(*argument, 100)) {
            arguments[row.argument] = {typed(number, *argument)};
            const auto outcome = calculate(calculator, inputs_for(row.calculator, words_of(arguments)));
            if (const auto* calculation = std::get_if<Calculation>(&outcome))
                answers.push_back(found(*calculation, row.result).text);
        }
        answers.erase(std::unique(answers.begin(), answers.end()), answers.end());
        CHECK(answers == std::vector<std::string>{row.first, row.last});
    }
}

TEST_CASE("days go forward: an age, a due date and what is late") {
    double age = found(answer_of("age-in-years", "--born 2019-05-31 --on 2023-11-30"), "total").exact;
    double parts = -1;
    double late = 0;
    std::string due;
    Date day = *Date::of(2023, 12, 1);
    for (int step = 0; step < 500; ++step, day = day.plus_days(1)) {
        const Calculation at = answer_of("age-in-years", "--born 2019-05-31 --on " + day.iso());
        CHECK(found(at, "total").exact == age + 1);
        age = found(at, "total").exact;
        // Years, months and days, each below the next: 31 days and 12 months are never reached.
        const double age_in_parts =
            found(at, "years").exact * 12 * 31 + found(at, "months").exact * 31 + found(at, "days").exact;
        CHECK(age_in_parts > parts);
        parts = age_in_parts;
        const std::string next =
            found(answer_of("next-due-date", "--last " + day.iso() + " --every \"1 month\""), "due").text;
        CHECK(next >= due);
        due = next;
        const double days = found(answer_of("days-overdue", "--due 2023-11-30 --on " + day.iso()), "late").exact;
        CHECK(days == late + 1);
        late = days;
    }
    std::string before;
    for (int months = 1; months < 60; ++months) {
        const std::string later =
            found(answer_of("next-due-date", fmt::format("--last 2024-01-31 --every \"{} months\"", months)), "due")
                .text;
        CHECK(later > before);
        before = later;
    }
}
