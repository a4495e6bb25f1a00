#include <fmt/format.h>

#include <sstream>

#include "ask.hpp"
#include "units/oracle.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// What python3-dateutil prints for a program of a few lines. The interpreter is the system's own: another one does not
/// know Debian's packages.
std::istringstream printed(const std::string& program) {
    return std::istringstream{oracle::printed_by(fmt::format(
        "/usr/bin/python3 -c 'from datetime import date, timedelta\nfrom dateutil.relativedelta import relativedelta\n"
        "{}' 2>&1",
        program))};
}

Calculation calculation(std::string_view name, const std::string& arguments) {
    const auto outcome = asked(name, arguments);
    CAPTURE(arguments);
    REQUIRE(std::holds_alternative<Calculation>(outcome));
    return std::get<Calculation>(outcome);
}

}  // namespace

TEST_CASE("an age agrees with an independent calendar") {
    // Births up to the 28th: from the 29th on calendars differ in what a month after 31 January is.
    std::istringstream rows = printed(
        "for n in range(240):\n"
        "    born = date(1931 + 7 * n % 90, 1 + n % 12, 1 + 5 * n % 28)\n"
        "    on = born + timedelta(days=1 + 131 * n + n * n % 29)\n"
        "    age = relativedelta(on, born)\n"
        "    print(born, on, age.years, age.months, age.days, (on - born).days)");
    std::string born;
    std::string on;
    double years = 0;
    double months = 0;
    double days = 0;
    double total = 0;
    int seen = 0;
    for (; rows >> born >> on >> years >> months >> days >> total; ++seen) {
        const Calculation age = calculation("age-in-years", fmt::format("--born {} --on {}", born, on));
        CAPTURE(born);
        CAPTURE(on);
        CHECK(found(age, "years").exact == years);
        CHECK(found(age, "months").exact == months);
        CHECK(found(age, "days").exact == days);
        CHECK(found(age, "total").exact == total);
    }
    CHECK(seen == 240);
}

TEST_CASE("a due date and the days past it agree with an independent calendar, at month ends too") {
    std::istringstream rows = printed(
        "for last in (date(2023, 12, 31), date(2024, 1, 31), date(2024, 2, 29), date(2025, 5, 30), date(2026, 1, "
        "15)):\n"
        "    for unit in (\"days\", \"weeks\", \"months\", \"years\"):\n"
        "        for n in (2, 3, 5, 6, 7, 12, 13, 30):\n"
        "            due = last + relativedelta(**{unit: n})\n"
        "            on = due + timedelta(days=n * n)\n"
        "            print(last, n, unit, due, on, (on - due).days)");
    std::string last;
    std::string number;
    std::string unit;
    std::string due;
    std::string on;
    double late = 0;
    int seen = 0;
    for (; rows >> last >> number >> unit >> due >> on >> late; ++seen) {
        const std::string arguments = fmt::format("--last {} --every \"{} {}\"", last, number, unit);
        CAPTURE(arguments);
        CHECK(found(calculation("next-due-date", arguments), "due").text == due);
        CHECK(found(calculation("days-overdue", fmt::format("--due {} --on {}", due, on)), "late").exact == late);
    }
    CHECK(seen == 160);
}
