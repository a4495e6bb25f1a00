#include "rules/workings.hpp"

#include <doctest/doctest.h>

#include "edited_home.hpp"

using namespace ventfolio;
using ventfolio::testing::judged_home;

namespace {

/// The worked formulas of one calculator, a line each.
std::string worked(std::string_view home, std::string_view edits, std::string_view calculator) {
    const auto judged = judged_home(home, edits);
    std::string out;
    for (const Working& one : workings(Household{judged.read.profile, *Date::parse("2026-02-03")}))
        if (one.calculation.calculator->name == calculator) out += one.calculation.worked + "\n";
    return out;
}

constexpr const char* kAdult = "adult-tracheostomy";

}  // namespace

// What the sums must be is written out by hand from the home; the formulas are those of the book.
TEST_CASE("a home's sums are worked out from its own numbers") {
    // The faster of two rates counts.
    CHECK(worked(kAdult, "", "squeeze-interval") == "60 s / 14 breaths/min: every 4 s\n");
    CHECK(worked(kAdult, "prescriptions.0.rate: 20 breaths/min", "squeeze-interval") ==
          "60 s / 20 breaths/min: every 3 s\n");
    CHECK(worked(kAdult, "prescriptions.1.rate: 20 breaths/min", "squeeze-interval") ==
          "60 s / 20 breaths/min: every 3 s\n");
    CHECK(worked(kAdult, "", "battery-time") ==
          "low: (220 min + 210 min + 480 min) x 80 % = 12 h 8 min; high: 220 min + 210 min + 480 min = 15 h 10 min\n"
          "low: (240 min + 200 min) x 80 % = 5 h 52 min; high: 240 min + 200 min = 7 h 20 min\n");
    CHECK(worked(kAdult, "", "pressure-sums") == "5 cmH2O + 16 cmH2O = 21 cmH2O\n");
    CHECK(worked(kAdult, "prescriptions.0.pressure_reference: total", "pressure-sums") ==
          "16 cmH2O - 5 cmH2O = 11 cmH2O\n");
    CHECK(worked(kAdult, "", "catheter-fit").find("50 %") != std::string::npos);  // 12 Fr of 24
    CHECK(worked("adult-mask", "", "catheter-fit").empty());
}
