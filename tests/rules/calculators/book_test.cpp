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
