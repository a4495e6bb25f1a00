#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "ask.hpp"
#include "rules/calculators/report.hpp"
#include "rules/rule_book.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

Calculation example_of(const CalculatorText& calculator) {
    auto outcome = asked(calculator.name, calculator.example);
    if (const auto* outside = std::get_if<OutsideRange>(&outcome)) FAIL(outside->sentences.front());
    return std::get<Calculation>(std::move(outcome));
}

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

}  // namespace

TEST_CASE("thirty calculators and more, each with a name of two small words or more that no rule has") {
    CHECK(calculator_book().size() >= 30);
    std::set<std::string_view> names;
    for (const CalculatorText& calculator : calculator_book()) {
        CAPTURE(std::string{calculator.name});
        CHECK(names.insert(calculator.name).second);
        CHECK(calculator.name.find('-') != std::string_view::npos);
        CHECK(find_rule(calculator.name) == nullptr);
        CHECK(find_calculator(calculator.name) == &calculator);
    }
    CHECK(find_calculator("no-such-calculator") == nullptr);
}

TEST_CASE("every calculator has its texts") {
    for (const CalculatorText& calculator : calculator_book()) {
        CAPTURE(std::string{calculator.name});
        CHECK(calculator.purpose.ends_with('.'));
        CHECK(calculator.formula.size() > 5);
        CHECK(calculator.source.size() >= 8);
        CHECK_MESSAGE(!holds(calculator.source, "[mem]"), calculator.source);
        CHECK(!calculator.example.empty());
        CHECK(!calculator.prints.empty());
        for (const ArgumentText& argument : calculator.arguments) CHECK(argument.help.size() > 2);
    }
}

TEST_CASE("every example prints what the book says, with all numbers put into the formula") {
    for (const CalculatorText& calculator : calculator_book()) {
        CAPTURE(std::string{calculator.name});
        const Calculation calculation = example_of(calculator);
        std::string expected{calculator.prints};
        while (expected.ends_with('\n')) expected.pop_back();
        CHECK(result_lines(calculation) == expected + "\n");
        CHECK(!holds(calculation.worked, "{"));
        for (const Input& input : calculation.inputs.all()) {
            const bool counted = input.argument->takes == Takes::quantity || input.argument->takes == Takes::whole;
            // Years only decide whether the two weights of a height may be asked for.
            const bool only_decides = input.argument->name == "years" && holds(calculator.name, "-weight");
            if (counted && !only_decides)
                CHECK_MESSAGE(holds(calculation.worked, in_book_unit(input)), input.argument->name);
        }
    }
}

TEST_CASE("a calculation shows formula, source and the limits, and fire codes where gas or power is at work") {
    for (const CalculatorText& calculator : calculator_book()) {
        CAPTURE(std::string{calculator.name});
        const std::string text = calculation_text(example_of(calculator), 10'000);
        CHECK(holds(text, calculator.formula));
        CHECK(holds(text, calculator.source));
        CHECK(holds(text, "The prescriber's orders, the device's instructions and local protocol come first."));
        CHECK(holds(text, "Local fire and electrical codes come first.") == calculator.fire);
        const bool gas_or_power = calculator.subject == "power" || holds(calculator.name, "cylinder") ||
                                  holds(calculator.name, "liquid") || calculator.name == "oxygen-fraction" ||
                                  calculator.name == "blender-oxygen";
        if (gas_or_power) CHECK(calculator.fire);
    }
}

TEST_CASE("the same as data holds every input and result") {
    for (const CalculatorText& calculator : calculator_book()) {
        CAPTURE(std::string{calculator.name});
        const Calculation calculation = example_of(calculator);
        const nlohmann::json json = nlohmann::json::parse(calculation_json(calculation).dump());
        CHECK(json.at("calculator") == std::string{calculator.name});
        for (const ShownResult& shown : calculation.results)
            CHECK(json.at("results").at(std::string{shown.result->name}).at("text") == shown.text);
        for (const Input& input : calculation.inputs.all())
            CHECK(json.at("inputs").contains(std::string{input.argument->name}));
    }
}

TEST_CASE("explain and list show every calculator, and a misspelt name finds the nearest") {
    const std::string list = list_calculators();
    for (const CalculatorText& calculator : calculator_book()) {
        CAPTURE(std::string{calculator.name});
        const auto text = explain_calculator(calculator.name, 10'000);
        REQUIRE(text);
        CHECK(text->starts_with(calculator.name));
        CHECK(holds(*text, calculator.example));
        CHECK(holds(*text, calculator.fire ? "electrical codes come" : "device's instructions"));
        CHECK(holds("\n" + list, "\n" + std::string{calculator.name} + " "));
        const std::string usage = calculator_usage(calculator);
        for (const ArgumentText& argument : calculator.arguments)
            CHECK(holds(usage, "--" + std::string{argument.name} + " "));
        CHECK(holds(usage, calculator.example));
    }
    CHECK(!explain_calculator("cylinder"));
    CHECK(nearest_calculator("cilinder-time") == "cylinder-time");
}

TEST_CASE("an estimate has two ends and says which one paper plans on") {
    for (const CalculatorText& calculator : calculator_book())
        for (const ShownResult& shown : example_of(calculator).results) {
            CAPTURE(std::string{calculator.name});
            const bool plans = shown.result->plan == PlanOn::low || shown.result->plan == PlanOn::high;
            if (plans && shown.numbers.size() == 2) CHECK(holds(shown.text, "; paper plans on the "));
        }
    for (const char* estimate : {"oxygen-fraction", "battery-time", "port-leak", "mean-port-leak"})
        CHECK(holds(the_calculator(estimate).prints, "paper plans on the "));
}

TEST_CASE("a calculation reads as a page of its own") {
    // The texts are those of the book; the sum by hand: 280 min, and four fifths of them.
    const auto outcome = asked("battery-time", "--tested \"220 min\" --tested \"1 h\"");
    REQUIRE(std::holds_alternative<Calculation>(outcome));
    CHECK(
        calculation_text(std::get<Calculation>(outcome)) ==
        R"(battery-time: How long batteries last one after the other, from times tested on this machine with these settings.
  lasts: 3 h 44 min to 4 h 40 min; paper plans on the low end, 3 h 44 min

  given:    tested 220 min; tested 1 h, which is 60 min
  assumed:  derating 80 %
  formula:  low: sum of tested times x derating; high: sum of tested times
  here:     low: (220 min + 60 min) x 80 % = 3 h 44 min; high: 220 min + 60 min = 4 h 40 min
  range:    tested 1 to 10,080 min; derating 1 to 100 %
  source:   derating 80 %: common practice, no source; twice the rate cut battery life by 18 -/+ 11
            %: Falaize et al., Respir Care 2013 (abstract)
  caution:  Never the time on the label; test again as batteries age. The prescriber's orders, the
            device's instructions and local protocol come first. Local fire and electrical codes
            come first.
)");
    CHECK(explain_calculator("lowest-systolic").value_or("") ==
          R"(lowest-systolic: The systolic pressure below which a child's blood pressure is low.
  formula:  70 mmHg + 2 x years; 90 mmHg from 10 years on
  range:    age 1 to 18 years; 1 to 17 years
  nothing:  from the 18th birthday on
  source:   PALS 2015 as reprinted in a paediatric reference chart
  arguments:
    --age               age of the child; an age, 1 to 18 years, in years, year, months, month,
                        weeks, week, days, day
  example:  ventfolio calc lowest-systolic --age "4 years"
    gives
      low below: 78 mmHg
  caution:  Never a diagnosis. The prescriber's orders, the device's instructions and local protocol
            come first.
)");
    CHECK(calculator_usage(the_calculator("lowest-systolic")) ==
          R"(lowest-systolic: The systolic pressure below which a child's blood pressure is low.
  arguments:
    --age               age of the child; an age, 1 to 18 years, in years, year, months, month,
                        weeks, week, days, day
    --format            text or json

Example: ventfolio calc lowest-systolic --age "4 years"
)");
}

TEST_CASE("a quantity in another unit than the book's is told in both") {
    const auto given = [](const char* arguments) {
        const auto outcome = asked("cylinder-time", arguments);
        REQUIRE(std::holds_alternative<Calculation>(outcome));
        const std::string text = calculation_text(std::get<Calculation>(outcome), 10'000);
        const auto from = text.find("given:");
        return text.substr(from, text.find('\n', from) - from);
    };
    // NIST SP 811: 1 psi is 6894.757 Pa
    CHECK(given("--size E --gauge \"100 bar\" --flow \"2 L/min\"") ==
          "given:    size E; gauge 100 bar, which is 1,450.38 psi; flow 2 L/min");
    CHECK(given("--size E --gauge \"1500 psi\" --flow \"2 L/min\"") ==
          "given:    size E; gauge 1,500 psi; flow 2 L/min");
}

TEST_CASE("a calculation as data has numbers, and says which end paper plans on") {
    const auto json = [](std::string_view calculator, std::string_view arguments) {
        const auto outcome = asked(calculator, arguments);
        REQUIRE(std::holds_alternative<Calculation>(outcome));
        return nlohmann::json::parse(calculation_json(std::get<Calculation>(outcome)).dump());
    };
    const auto battery = json("battery-time", "--tested \"300 min\"");
    CHECK(battery["results"]["time"]["low"] == 240);  // four fifths
    CHECK(battery["results"]["time"]["high"] == 300);
    CHECK(battery["results"]["time"]["plan_on"] == "low");
    CHECK(battery["inputs"]["tested"][0]["value"] == 300);
    CHECK(battery["inputs"]["tested"][0]["unit"] == "min");
    CHECK_FALSE(battery["inputs"]["tested"][0]["by_default"]);
    CHECK(battery["inputs"]["derating"]["by_default"]);
    const auto leak = json("mean-port-leak", the_calculator("mean-port-leak").example);
    CHECK(leak["results"]["leak"]["plan_on"] == "high");
    const auto band = json("tolerance-band", "--volume \"450 mL\"");
    CHECK(band["results"]["volume-band"]["low"] == 405);  // a tenth
    CHECK_FALSE(band["results"]["volume-band"].contains("plan_on"));
    const auto space = json("airway-dead-space", "--years 1 --weight \"10 kg\"");
    CHECK(space["inputs"]["years"]["value"] == 1);
    CHECK_FALSE(space["inputs"]["years"].contains("unit"));
    const auto size = json("cylinder-time", "--size E --gauge \"2000 psi\" --flow \"2 L/min\"");
    CHECK_FALSE(size["inputs"]["size"].contains("value"));
    CHECK(size["results"]["time"]["value"] == 210);  // (2000 - 500) x 0.28 / 2
    CHECK(size["results"]["time"]["unit"] == "min");
}

TEST_CASE("the worked formula is the one that holds for the age") {
    struct Row {
        const char* calculator;
        const char* arguments;
        const char* worked;
    };
    constexpr Row rows[] = {
        {"lowest-systolic", "--age \"9 years\"", "70 mmHg + 2 x completed years of 9 years = 88 mmHg"},
        {"lowest-systolic", "--age \"10 years\"", "from 10 years on: 90 mmHg"},
        {"airway-dead-space", "--years 17 --weight \"50 kg\"", "(3.28 - 0.56 x ln(1 + 17)) mL/kg x 50 kg"},
        {"airway-dead-space", "--years 18 --weight \"50 kg\"", "2.2 mL/kg x 50 kg = 110 mL"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.arguments});
        const auto outcome = asked(row.calculator, row.arguments);
        REQUIRE(std::holds_alternative<Calculation>(outcome));
        CHECK_MESSAGE(std::get<Calculation>(outcome).worked.starts_with(row.worked),
                      std::get<Calculation>(outcome).worked);
    }
}
