#include <doctest/doctest.h>
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "program.hpp"
#include "rules/calculators/calculator_book.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr std::string_view kLimits =
    "The prescriber's orders, the device's instructions and local protocol come first.";

/// A text as one line, so that a sentence is found wherever it was wrapped.
std::string unwrapped(const std::string& text) {
    std::string line;
    for (const char c : text) {
        if (c != '\n' && c != ' ')
            line += c;
        else if (!line.ends_with(' '))
            line += ' ';
    }
    return line;
}

}  // namespace

TEST_CASE("calc prints result, formula with the numbers, range, source and caution") {
    const Scratch folder;
    const Ran ran =
        ventfolio_in(folder, "calc cylinder-time --size E --gauge '2000 psi' --residual '200 psi' --flow '2 L/min'");
    CHECK(ran.status == 0);
    CHECK(ran.err == "");
    CHECK(holds(ran.out, "  lasts: 4 h 12 min\n"));
    CHECK(holds(ran.out, "(2,000 psi - 200 psi) x 0.28 L/psi / 2 L/min = 4 h 12 min"));
    CHECK(holds(ran.out, "0 to 5,000 psi"));
    CHECK(holds(ran.out, "ambulance agency"));
    CHECK(holds(unwrapped(ran.out), kLimits));
    CHECK(holds(unwrapped(ran.out), "Local fire and electrical codes come first."));
    CHECK(holds(ran.out, "assumed:  country US"));
}

TEST_CASE("calc takes mixed units and words without quotes") {
    const Scratch folder;
    const Ran ran =
        ventfolio_in(folder, "calc cylinder-time --size E --gauge 138 bar --residual 200 psi --flow 2 L/min");
    CHECK(ran.status == 0);
    CHECK(holds(ran.out, "  lasts: 4 h 12 min\n"));
    CHECK(holds(unwrapped(ran.out), "gauge 138 bar, which is 2,001.52 psi"));
    const Ran fahrenheit = ventfolio_in(folder, "calc absolute-humidity --temperature 98.6 °F");
    CHECK(holds(fahrenheit.out, "water: 43.9 mg/L"));
    const Ran inches = ventfolio_in(folder, "calc body-mass-index --weight 150 lb --height 65 in");
    CHECK(holds(inches.out, "body mass index: 25 kg/m2"));
}

TEST_CASE("calc with --format json gives inputs and result as data") {
    const Scratch folder;
    const Ran ran = ventfolio_in(
        folder, "calc oxygen-fraction --oxygen '2 L/min' --minute-volume '8 L/min' --leak '30 L/min' --format json");
    CHECK(ran.status == 0);
    const nlohmann::json json = nlohmann::json::parse(ran.out, nullptr, false);
    REQUIRE(json.is_object());
    CHECK(json.at("calculator") == "oxygen-fraction");
    CHECK(json.at("inputs").at("oxygen").at("value") == 2);
    CHECK(json.at("inputs").at("oxygen").at("unit") == "L/min");
    CHECK(json.at("inputs").at("supply").at("by_default") == true);
    CHECK(json.at("results").at("fraction").at("low") == 25);
    CHECK(json.at("results").at("fraction").at("high") == 41);
    CHECK(json.at("results").at("fraction").at("plan_on") == "low");
    CHECK(holds(json.at("cautions").dump(), kLimits));
    const Ran outside =
        ventfolio_in(folder, "calc minute-ventilation --rate '90 breaths/min' --volume '450 mL' --format=json");
    CHECK(outside.status == 1);
    const nlohmann::json none = nlohmann::json::parse(outside.out, nullptr, false);
    REQUIRE(none.is_object());
    CHECK(none.contains("outside"));
    CHECK(!none.contains("results"));
}

TEST_CASE("outside its range calc gives no number, says where it ends, and stops with 1") {
    const Scratch folder;
    const Ran ran = ventfolio_in(folder, "calc cylinder-time --size E --gauge '6000 psi' --flow '2 L/min'");
    CHECK(ran.status == 1);
    CHECK(ran.out == "");
    CHECK(holds(ran.err, "--gauge is 6,000 psi; this calculator holds from 0 psi to 5,000 psi"));
    const Ran filled = ventfolio_in(folder, "calc breath-timing --rate '60 breaths/min' --time-in '1 s'");
    CHECK(filled.status == 1);
    CHECK(filled.out == "");
    CHECK(holds(filled.err, "no time is left to breathe out"));
    CHECK(holds(filled.err, "range: rate 2 to 80 breaths/min"));
}

TEST_CASE("a wrong calculator or argument stops with 2 and shows the right ones") {
    const Scratch folder;
    const Ran name = ventfolio_in(folder, "calc cylindr-time --size E");
    CHECK(name.status == 2);
    CHECK(name.out == "");
    CHECK(holds(name.err, "there is no calculator \"cylindr-time\"; did you mean \"cylinder-time\"?"));
    const Ran far = ventfolio_in(folder, "calc xyzzy");
    CHECK(far.status == 2);
    CHECK(holds(far.err, "ventfolio list calculators"));
    const Ran argument = ventfolio_in(folder, "calc cylinder-time --size E --guage '2000 psi' --flow '2 L/min'");
    CHECK(argument.status == 2);
    CHECK(argument.out == "");
    CHECK(holds(argument.err, "did you mean --gauge?"));
    CHECK(holds(argument.err, "--gauge is missing"));
    CHECK(holds(argument.err, "--residual "));
    CHECK(holds(argument.err, "Example: ventfolio calc cylinder-time "));
    CHECK(ventfolio_in(folder, "calc cylinder-time --format yaml").status == 2);
    CHECK(ventfolio_in(folder, "calc cylinder-time --format").status == 2);
    CHECK(ventfolio_in(folder, "calc cylinder-time").status == 2);
}

TEST_CASE("every calculator is listed, explained and helped, and its example runs and prints what the book says") {
    const Scratch folder;
    const Ran list = ventfolio_in(folder, "list calculators");
    CHECK(list.status == 0);
    CHECK(ventfolio_in(folder, "calc").out == list.out);
    CHECK(calculator_book().size() >= 30);
    for (const CalculatorText& calculator : calculator_book()) {
        const std::string name{calculator.name};
        CAPTURE(name);
        CHECK(holds("\n" + list.out, "\n" + name + " "));
        const Ran example = ventfolio_in(folder, fmt::format("calc {} {}", name, calculator.example));
        CHECK_MESSAGE(example.status == 0, example.err);
        for (const std::string& line : split(calculator.prints, '\n')) CHECK(holds(example.out, line));
        CHECK(holds(unwrapped(example.out), kLimits));
    }
    for (const char* name : {"battery-time", "predicted-weight", "next-due-date"}) {
        const Ran help = ventfolio_in(folder, fmt::format("calc {} --help", name));
        CHECK(help.status == 0);
        CHECK(help.err == "");
        CHECK(holds(help.out, fmt::format("Example: ventfolio calc {} ", name)));
        const Ran explained = ventfolio_in(folder, fmt::format("explain {}", name));
        CHECK(explained.status == 0);
        CHECK(holds(explained.out, "formula:"));
        CHECK(holds(explained.out, "source:"));
    }
    const Ran help = ventfolio_in(folder, "calc --help");
    CHECK(help.status == 0);
    CHECK(holds(help.out, "Example: ventfolio calc cylinder-time "));
    CHECK(holds(ventfolio_in(folder, "explain cilinder-time").err, "did you mean \"cylinder-time\"?"));
}

TEST_CASE("a day that is not given is the day that the environment names") {
    const Scratch folder;
    // 2026-02-03
    const Ran ran = ventfolio_in(folder, "calc days-overdue --due 2026-02-01", "SOURCE_DATE_EPOCH=1770076800");
    CHECK(ran.status == 0);
    CHECK(holds(ran.out, "late by: 2 days"));
}
