#include <algorithm>
#include <cmath>

#include "ask.hpp"
#include "rules/tolerances.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// All sentences about what is wrong, a line each; empty when the arguments can be read.
std::string faults_of(std::string_view calculator, std::string_view arguments) {
    const auto inputs = read(calculator, shell_words(arguments));
    std::string text;
    if (const auto* faults = std::get_if<ArgumentFaults>(&inputs))
        for (const std::string& sentence : faults->sentences) text += sentence + "\n";
    return text;
}

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

double exact(std::string_view calculator, std::string_view arguments, std::string_view result) {
    const auto outcome = asked(calculator, arguments);
    CAPTURE(std::string{arguments});
    REQUIRE(std::holds_alternative<Calculation>(outcome));
    return found(std::get<Calculation>(outcome), result).exact;
}

}  // namespace

TEST_CASE("any unit of the right kind gives the same result") {
    struct Row {
        const char* calculator;
        const char* one;
        const char* other;
        const char* result;
    };
    constexpr Row rows[] = {
        {"cylinder-time", "--size E --gauge \"2000 psi\" --flow \"2 L/min\"",
         "--size E --gauge \"137.895145863 bar\" --flow \"2000 mL/min\"", "time"},
        {"cylinder-time", "--size E --gauge \"2000 psi\" --flow \"2 L/min\"",
         "--size E --gauge \"13789.5145863 kPa\" --flow \"2 L/min\"", "time"},
        {"cylinder-time", "--factor \"0.28 L/psi\" --gauge \"2000 psi\" --flow \"2 L/min\"",
         "--factor \"4.06105664 L/bar\" --gauge \"2000 psi\" --flow \"2 L/min\"", "time"},
        {"body-mass-index", "--weight \"68.0388555 kg\" --height \"165.1 cm\"",
         "--weight \"150 lb\" --height \"65 in\"", "index"},
        {"absolute-humidity", "--temperature \"37 °C\"", "--temperature \"98.6 °F\"", "water"},
        {"absolute-humidity", "--temperature \"37 °C\"", "--temperature \"98.6 F\"", "water"},
        {"starting-gauge", "--flow \"2 L/min\" --time \"210 min\" --factor \"0.28 L/psi\"",
         "--flow \"2 L/min\" --time \"3.5 h\" --factor \"0.28 L/psi\"", "gauge"},
        {"suction-pressure", "--age \"24 months\"", "--age \"2 years\"", "never"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.other});
        const double one = exact(row.calculator, row.one, row.result);
        CHECK(std::abs(exact(row.calculator, row.other, row.result) - one) <= 1e-6 * one);
    }
}

TEST_CASE("a value may stand in several words, behind an equals sign, or come by default") {
    const double quoted = exact("cylinder-time", "--size E --gauge \"2000 psi\" --flow \"2 L/min\"", "time");
    CHECK(exact("cylinder-time", "--size E --gauge 2000 psi --flow 2 L/min", "time") == quoted);
    CHECK(exact("cylinder-time", "--size=E \"--gauge=2000 psi\" --flow=2 L/min", "time") == quoted);
    CHECK(exact("cylinder-time", "--size E --country US --gauge 2000 psi --residual 500 psi --flow 2 L/min", "time") ==
          quoted);
    CHECK(exact("days-overdue", "--due 2026-02-01", "late") == 2);  // today is 3 February here
    CHECK(exact("cough-pressures", "--in 40 cmH2O --out -40 cmH2O", "swing") == doctest::Approx(80));
}

TEST_CASE("a wrong argument is named with the right ones") {
    struct Row {
        const char* calculator;
        const char* arguments;
        const char* says;
    };
    constexpr Row rows[] = {
        {"minute-ventilation", "--rat \"14 breaths/min\" --volume \"450 mL\"",
         "there is no argument --rat; did you mean --rate?"},
        {"minute-ventilation", "--volume \"450 mL\"", "--rate is missing"},
        {"minute-ventilation", "--rate 14 --volume \"450 mL\"", "write it with a unit, as \"14 breaths/min\""},
        {"minute-ventilation", "--rate \"14 breaths/min\" --volume \"450 ml\"", "did you mean \"mL\"?"},
        {"minute-ventilation", "--rate \"14 breaths/min\" --volume \"450 cmH2O\"", "units accepted here: mL, L"},
        {"minute-ventilation", "--rate \"14 breaths/min\" --volume \"450mL\"", "a blank is due before the unit"},
        {"minute-ventilation", "--rate \"fast\" --volume \"450 mL\"", "write a number and a unit"},
        {"minute-ventilation", "--rate \"nan breaths/min\" --volume \"450 mL\"", "write a number and a unit"},
        {"minute-ventilation", "--rate \"inf breaths/min\" --volume \"450 mL\"", "write a number and a unit"},
        {"minute-ventilation", "--rate \"1e3 breaths/min\" --volume \"450 mL\"", "is no unit of it"},
        {"minute-ventilation", "--rate --volume \"450 mL\"", "--rate has no value"},
        {"minute-ventilation", "--rate \"14 breaths/min\" --rate \"15 breaths/min\" --volume \"450 mL\"", "twice"},
        {"minute-ventilation", "14 --rate \"14 breaths/min\" --volume \"450 mL\"", "stands before any argument"},
        {"cylinder-time", "--size e --gauge \"2000 psi\" --flow \"2 L/min\"", "it is one of: M4"},
        {"predicted-weight", "--height \"178 cm\" --sex mal --years 40", "did you mean \"male\"?"},
        {"predicted-weight", "--height \"178 cm\" --sex male --years 40.5", "write a whole number"},
        {"reading-grade", "--words many --sentences 5 --syllables 150", "write a whole number"},
        {"age-in-years", "--born 2026-02-30", "which is no day; write it as 2026-02-03"},
        {"next-due-date", "--last 2026-01-31 --every monthly", "\"2 weeks\""},
        {"unit-conversion", "--measure 2000 --to bar", "write a number and a unit"},
        {"unit-conversion", "--measure \"2000 psi\" --to pounds", "no unit known here"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.arguments});
        const std::string faults = faults_of(row.calculator, row.arguments);
        CHECK_MESSAGE(holds(faults, row.says), faults);
    }
    CHECK(faults_of("minute-ventilation", "--rate \"14 breaths/min\" --volume \"450 mL\"") == "");
}

TEST_CASE("outside the range no number is given, and the range is told") {
    struct Row {
        const char* calculator;
        const char* arguments;
        const char* says;
    };
    constexpr Row rows[] = {
        {"cylinder-time", "--size E --gauge \"6000 psi\" --flow \"2 L/min\"", "--gauge is 6,000 psi"},
        {"cylinder-time", "--size E --gauge \"6000 psi\" --flow \"2 L/min\"", "0 psi to 5,000 psi"},
        {"cylinder-time", "--size E --gauge \"400 bar\" --flow \"2 L/min\"", "0 psi to 5,000 psi"},
        {"cylinder-time", "--size E --gauge \"2000 psi\" --flow \"0 L/min\"", "0.01 L/min to 25 L/min"},
        {"cylinder-time", "--size E --gauge \"2500 psi\" --flow \"2 L/min\"", "a tenth above a full cylinder"},
        {"cylinder-time", "--size H --country GB --gauge \"1000 psi\" --flow \"2 L/min\"", "country does not know"},
        {"cylinder-time", "--gauge \"1000 psi\" --flow \"2 L/min\"", "without a size or a factor"},
        {"predicted-weight", "--height \"178 cm\" --sex male --years 17", "18 to 120"},
        {"predicted-weight", "--height \"110 cm\" --sex male --years 30", "130 cm to 213.4 cm"},
        {"breath-timing", "--rate \"60 breaths/min\" --time-in \"1 s\"", "no time is left to breathe out"},
        {"outage-timeline", "--power \"800 h\" --travel \"1 h\"", "0 min to 43,200 min"},
        {"unit-conversion", "--measure \"2000 psi\" --to kg", "measure different things"},
        {"age-in-years", "--born 2030-01-01 --on 2026-01-01", "a birth after the day"},
        {"cough-pressures", "--in \"40 cmH2O\" --out \"40 cmH2O\"", "-70 cmH2O to -1 cmH2O"},
        {"safe-minutes", "--free \"1 min\"", "below 2 min"},
        {"absolute-humidity", "--temperature \"130 °F\"", "0 °C to 50 °C"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.arguments});
        const auto outcome = asked(row.calculator, row.arguments);
        REQUIRE(std::holds_alternative<OutsideRange>(outcome));
        const auto& sentences = std::get<OutsideRange>(outcome).sentences;
        CHECK_MESSAGE(std::ranges::any_of(sentences, [&](const auto& one) { return holds(one, row.says); }),
                      sentences.front());
    }
}

TEST_CASE("times that run out are rounded down, and what must be there is rounded up") {
    const auto text = [](std::string_view calculator, std::string_view arguments, std::string_view result) {
        return found(std::get<Calculation>(asked(calculator, arguments)), result).text;
    };
    CHECK(text("cylinder-time", "--size E --gauge \"750 psi\" --residual \"200 psi\" --flow \"10 L/min\"", "time") ==
          "15 min");  // 15.4
    CHECK(text("cylinder-time", "--size E --gauge \"2200 psi\" --residual \"0 psi\" --flow \"2 L/min\"", "time") ==
          "5 h 8 min");  // 0.28 x 2200 is 616.0000000000001 in binary
    CHECK(text("cylinder-time", "--size E --gauge \"300 psi\" --flow \"2 L/min\"", "time") == "0 min");
    CHECK(text("cylinder-time", "--size E --gauge \"929 psi\" --flow \"2 L/min\"", "time") == "1 h");        // 60.06
    CHECK(text("cylinder-time", "--size E --gauge \"936 psi\" --flow \"2 L/min\"", "time") == "1 h 1 min");  // 61.04
    CHECK(text("cylinder-time", "--size E --gauge \"928 psi\" --flow \"2 L/min\"", "time") == "59 min");     // 59.92
    CHECK(text("cylinder-time", "--size E --gauge \"1358 psi\" --flow \"2 L/min\"", "time") == "2 h");       // 120.1
    CHECK(text("supply-quantity", "--days \"30 days\" --use \"1 pieces/week\"", "pieces") == "5 pieces");    // 4.29
    CHECK(text("supply-quantity", "--days \"30 days\" --use \"3 pieces/day\" --spare \"10 %\"", "pieces") ==
          "99 pieces");  // 90 x 1.1 is 99.00000000000001 in binary
    CHECK(text("days-of-supply", "--pieces 11 --use \"2 pieces/day\"", "days") == "5 days");
    CHECK(text("starting-gauge", "--flow \"3 L/min\" --time \"100 min\" --factor \"0.28 L/psi\"", "gauge") ==
          "1,572 psi");  // 1571.43
}

TEST_CASE("numbers keep six digits, and nothing is nothing") {
    const auto converted = [](std::string_view measure, std::string_view to) {
        const std::string arguments = "--measure \"" + std::string{measure} + "\" --to \"" + std::string{to} + "\"";
        return found(std::get<Calculation>(asked("unit-conversion", arguments)), "converted").text;
    };
    // A thousand millilitres are a litre.
    CHECK(converted("0 mL", "L") == "0 L");
    CHECK(converted("1000 mL", "L") == "1 L");
    CHECK(converted("1234567 mL", "L") == "1,234.57 L");
    CHECK(converted("123456.7 L", "L") == "123,457 L");
    CHECK(converted("0.0123456 mL", "L") == "0.000012346 L");
    CHECK(range_of(the_calculator("cylinder-time")) ==
          "factor 0.01 to 10 L/psi; gauge 0 to 5,000 psi; residual 0 to 5,000 psi; flow 0.01 to 25 L/min");
}

TEST_CASE("the calculators use the shares that the plan and the rules use") {
    // Common practice, no source; the book of the calculators says them in words, too.
    CHECK(exact("battery-time", "--tested \"100 min\"", "time.low") ==
          doctest::Approx(100 * threshold::kBatteryDerating));
    struct Row {
        const char* arguments;
        const char* low;
        double expected;
    };
    const Row rows[] = {
        {"--volume \"450 mL\"", "volume-band.low", 450 * (1 - threshold::kToleranceVolumeShare)},
        {"--volume \"120 mL\"", "volume-band.low", 120 - threshold::kToleranceVolumeLeast.in(unit::mL)},
        {"--volume \"50 mL\"", "volume-band.low", 50 * (1 - threshold::kToleranceVolumeMostShare)},
        {"--minute-volume \"6 L/min\"", "minute-volume-band.low", 6 * (1 - threshold::kToleranceMinuteVolume)},
        {"--rate \"14 breaths/min\"", "rate-band.low", 14 - 1},
        {"--pressure \"30 cmH2O\"", "pressure-band.low", 30 * (1 - threshold::kTolerancePressureShare)},
        {"--pressure \"10 cmH2O\"", "pressure-band.low", 10 - threshold::kTolerancePressureLeast.in(unit::cmH2O)},
    };
    for (const Row& row : rows) CHECK(exact("tolerance-band", row.arguments, row.low) == doctest::Approx(row.expected));
}

TEST_CASE("an argument reaches the sum that it is meant for") {
    struct Row {
        const char* calculator;
        const char* arguments;
        const char* result;
        double expected;
        const char* source;
    };
    constexpr Row rows[] = {
        {"catheter-size", "--inner-diameter \"7.8 mm\"", "half", 10, "half of 23.4 Fr is 11.7: 10 is stocked"},
        {"catheter-size", "--inner-diameter \"7.0 mm\"", "two-thirds", 12,
         "two thirds of 21 Fr is 14, which is not below"},
        {"catheter-size", "--inner-diameter \"7.5 mm\"", "seven-tenths", 14, "0.7 of 22.5 Fr is 15.75"},
        {"dead-space", "--breath \"500 mL\" --body \"150 mL\" --equipment \"50 mL\" --rate \"12 breaths/min\"",
         "equipment-share", 10, "50 / 500"},
        {"dead-space", "--breath \"500 mL\" --body \"150 mL\" --equipment \"50 mL\" --rate \"12 breaths/min\"",
         "total-share", 40, "200 / 500"},
        {"vital-sign-band", "--age \"27 days\"", "systolic.low", 67, "PALS 2015: a newborn, to 28 days"},
        {"vital-sign-band", "--age \"28 days\"", "systolic.low", 72, "PALS 2015: an infant"},
        {"squeeze-interval", "--group adult", "interval.low", 6, "AHA 2020 (training copies)"},
        {"squeeze-interval", "--group child", "interval.low", 2, "AHA 2020 (training copies)"},
        {"squeeze-interval", "--group infant", "interval.low", 2, "AHA 2020 (training copies)"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.source});
        CHECK(exact(row.calculator, row.arguments, row.result) == doctest::Approx(row.expected));
    }
}
