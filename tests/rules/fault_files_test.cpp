#include <doctest/doctest.h>
#include <fmt/format.h>

#include <fstream>
#include <iterator>

#include "edited_home.hpp"

using namespace ventfolio;
using ventfolio::testing::Judged;
using ventfolio::testing::summary;

namespace {

Judged fault_file(const std::string& name) {
    const std::string path = fmt::format("{}/tests/faults/{}.yaml", VENTFOLIO_SOURCE_DIR, name);
    std::ifstream file{path, std::ios::binary};
    REQUIRE_MESSAGE(file.good(), path);
    const std::string text{std::istreambuf_iterator<char>{file}, {}};
    return ventfolio::testing::judged(name + ".yaml", text, "2026-02-03");
}

}  // namespace

TEST_CASE("each profile with one fault is answered by the rule that names it, with line and column") {
    struct Row {
        const char* file;
        const char* rule;
        Severity severity;
        std::size_t line;
        std::size_t column;
    };
    const Row rows[] = {
        {"tidal-volume-4500", "outside-typing-range", Severity::refuse, 55, 19},
        {"high-pressure-alarm-below-peak", "high-pressure-alarm-below-peak", Severity::refuse, 63, 22},
        {"heated-wire-with-water-trap", "heated-wire-with-water-trap", Severity::refuse, 48, 60},
        {"heated-humidifier-with-exchanger", "heated-humidifier-with-moisture-exchanger", Severity::refuse, 53, 7},
        {"pulse-oxygen", "pulse-oxygen-on-ventilator", Severity::refuse, 72, 13},
        {"speaking-valve-with-filled-cuff", "speaking-valve-with-filled-cuff", Severity::refuse, 31, 31},
        {"essential-field-missing", "essential-field-missing", Severity::refuse, 26, 3},
        {"misspelt-key", "unknown-key", Severity::refuse, 63, 7},
        {"number-without-unit", "unit-missing", Severity::refuse, 63, 22},
        {"date-that-does-not-exist", "date-that-does-not-exist", Severity::refuse, 16, 16},
    };
    for (const Row& row : rows) {
        CAPTURE(row.file);
        const Judged judged = fault_file(row.file);
        const Finding* finding = judged.finding(row.rule);
        CAPTURE(summary(judged.findings));
        REQUIRE(finding != nullptr);
        CHECK(finding->severity == row.severity);
        CHECK(finding->marks.front().place.line == row.line);
        CHECK(finding->marks.front().place.column == row.column);
        CHECK(finding->marks.front().file == std::string{row.file} + ".yaml");
    }
}

TEST_CASE("the same profile without a fault is not refused") {
    const Judged judged = fault_file("no-fault");
    for (const Finding& finding : judged.findings) {
        CAPTURE(finding.message);
        CHECK(finding.severity != Severity::refuse);
    }
}
