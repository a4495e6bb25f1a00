#include <fmt/format.h>

#include "cli/manual/pages.hpp"
#include "cli/manual/roff.hpp"
#include "rules/calculators/calculator_book.hpp"
#include "rules/rule_book.hpp"

namespace ventfolio {
namespace {

/// The book writes thoughts that go on with line breaks of its own; a manual sets its own.
std::string one_line(std::string_view text) {
    std::string line{text};
    for (char& letter : line)
        if (letter == '\n') letter = ' ';
    return line;
}

std::string about(const RuleText& rule) {
    std::string text = fmt::format("{}: {}\n{}\nTo do: {}\nSource: {}", name_of(rule.severity), one_line(rule.says),
                                   one_line(rule.why), one_line(rule.to_do), one_line(rule.source));
    if (!rule.formula.empty()) text += fmt::format("\nFormula: {}", one_line(rule.formula));
    return text;
}

std::string about(const CalculatorText& calculator) {
    return fmt::format("{}\nFormula: {}\nSource: {}", one_line(calculator.purpose), one_line(calculator.formula),
                       one_line(calculator.source));
}

}  // namespace

std::string manual_of_rules() {
    std::string page = roff::head("VENTFOLIO-RULES", "7", "What is checked and worked out");
    page += roff::section("NAME") + roff::text("ventfolio-rules - rules and calculators of ventfolio") + "\n";
    page += roff::section("DESCRIPTION");
    page += roff::paragraph(
        "A rule says what disagrees with what, and whom to ask; it never decides treatment. refuse: nothing of what it "
        "stops is printed. acknowledge: printed as not yet checked until somebody who may accept it has done so. warn: "
        "printed, and told on the record of checks. note: told on the terminal only. `ventfolio explain NAME` shows "
        "the "
        "example that the tests run.");
    page += roff::section("RULES");
    for (const RuleText& rule : rule_book()) page += roff::item(rule.name, about(rule));
    page += roff::section("CALCULATORS");
    for (const CalculatorText& calculator : calculator_book()) page += roff::item(calculator.name, about(calculator));
    page += roff::section("SEE ALSO") + ".BR ventfolio (1),\n.BR ventfolio\\-profile (5)\n";
    return page;
}

}  // namespace ventfolio
