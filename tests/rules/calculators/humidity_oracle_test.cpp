#include <cmath>
#include <sstream>

#include "ask.hpp"
#include "units/oracle.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// What the steam tables of IAPWS-IF97 say, real gas: pressure in hPa and water in mg/L of saturated vapour.
/// Debian package python3-iapws. The interpreter is the system's own: another one does not know Debian's packages.
struct Steam {
    double celsius = 0;
    double hpa = 0;
    double mg_per_l = 0;
};

std::vector<Steam> computed_tables() {
    const std::string text = oracle::printed_by(
        "/usr/bin/python3 -c 'from iapws import IAPWS97\n"
        "for t in range(1, 51):\n"
        "    steam = IAPWS97(T=t + 273.15, x=1)\n"
        "    print(t, steam.P * 1e4, steam.rho * 1e3)' 2>&1");
    std::istringstream lines{text};
    std::vector<Steam> rows;
    for (Steam row; lines >> row.celsius >> row.hpa >> row.mg_per_l;) rows.push_back(row);
    CAPTURE(text);
    REQUIRE(rows.size() == 50);
    return rows;
}

/// The tables, worked out once.
const std::vector<Steam>& steam_tables() {
    static const std::vector<Steam> tables = computed_tables();
    return tables;
}

double given(std::string_view calculator, const std::string& arguments, std::string_view result) {
    const auto outcome = asked(calculator, arguments);
    CAPTURE(arguments);
    REQUIRE(std::holds_alternative<Calculation>(outcome));
    return found(std::get<Calculation>(outcome), result).exact;
}

std::string celsius(double degrees) { return "\"" + std::to_string(degrees) + " °C\""; }

}  // namespace

TEST_CASE("water vapour agrees with an independent steam table at every degree") {
    const std::vector<Steam>& tables = steam_tables();
    for (const Steam& row : tables) {
        CAPTURE(row.celsius);
        // Buck's formula holds within 0.1 percent of vapour over water, the ideal gas within 0.5 percent of real steam.
        const double hpa = given("saturation-pressure", "--temperature " + celsius(row.celsius), "pressure");
        CHECK(std::abs(hpa - row.hpa) <= 0.001 * row.hpa);
        const double water = given("absolute-humidity", "--temperature " + celsius(row.celsius), "water");
        CHECK(std::abs(water - row.mg_per_l) <= 0.005 * row.mg_per_l);
    }
}

TEST_CASE("rain-out and warmed gas agree with the same table") {
    const std::vector<Steam>& tables = steam_tables();
    const auto at = [&](double degrees) { return tables[static_cast<std::size_t>(degrees) - 1].mg_per_l; };
    for (double gas = 30; gas <= 41; gas += 1)
        for (double wall = 15; wall <= gas; wall += 3) {
            CAPTURE(gas);
            CAPTURE(wall);
            const double water = given("rain-out", "--gas " + celsius(gas) + " --wall " + celsius(wall), "water");
            CHECK(std::abs(water - (at(gas) - at(wall))) <= 0.2);
            const double relative = given(
                "warmed-humidity", "--saturated-at " + celsius(wall) + " --warmed-to " + celsius(gas), "relative");
            CHECK(std::abs(relative - 100 * at(wall) / at(gas)) <= 0.5);
        }
}
