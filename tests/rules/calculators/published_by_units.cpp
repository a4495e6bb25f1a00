#include <array>

#include "published.hpp"

namespace ventfolio::testing {
namespace {

/// What GNU units makes of the same quantities: it knows dimensions and units, and was told the formula only.
constexpr PublishedRow by_units(const char* calculator, const char* arguments, const char* result,
                                const char* expression, const char* in, double within) {
    return {calculator, arguments, result, 0, within, "lib: GNU units, asked by this test", nullptr, expression, in};
}

constexpr std::array kRows{
    by_units("body-mass-index", "--weight \"150 lb\" --height \"65 in\"", "index", "150 lb / (65 inch)^2", "kg/m^2",
             1e-6),
    by_units("volume-per-weight", "--volume \"1 L\" --weight \"154 lb\"", "share", "1 l / 154 lb", "ml/kg", 1e-6),
    by_units("minute-ventilation", "--rate \"14 breaths/min\" --volume \"450 mL\"", "flow", "14 / min * 450 ml",
             "l/min", 1e-9),
    by_units("inspiratory-flow", "--volume \"500 mL\" --time-in \"0.5 s\"", "flow", "500 ml / 0.5 s", "l/min", 1e-9),
    by_units("tube-volume", "--bore \"15 mm\" --length \"15 cm\"", "volume", "pi / 4 * (15 mm)^2 * 15 cm", "ml", 1e-6),
    by_units("lung-stretch", "--volume \"450 mL\" --plateau \"20 cmH2O\" --baseline \"5 hPa\"", "compliance",
             "450 ml / (20 cm water - 5 hPa)", "ml / (cm water)", 1e-6),
    by_units("gas-compliance", "--gas \"1 L\" --air-pressure \"1013.25 hPa\"", "compliance", "1 l / atm",
             "ml / (cm water)", 1e-6),
    by_units("washout-need", "--volume \"500 mL\" --time-out \"2.5 s\"", "leak", "500 ml / 2.5 s", "l/min", 1e-9),
    by_units("cylinder-time", "--factor \"0.28 L/psi\" --gauge \"120 bar\" --residual \"500 psi\" --flow \"2 L/min\"",
             "time", "(120 bar - 500 psi) * 0.28 l/psi / (2 l/min)", "min", 1e-5),
    by_units("cylinder-factor", "--contents \"680 L\" --full \"137 bar\"", "factor", "680 l / 137 bar", "l/psi", 1e-7),
    by_units("starting-gauge", "--flow \"2 L/min\" --time \"5 h\" --factor \"0.28 L/psi\" --residual \"35 bar\"",
             "gauge", "2 l/min * 5 hour / (0.28 l/psi) + 35 bar", "psi", 1e-4),
    by_units("liquid-oxygen-time", "--liquid \"2 kg\" --flow \"2 L/min\"", "time", "344 l/lb * 2 kg / (2 l/min)", "min",
             1e-5),
    by_units("liquid-oxygen-days", "--liquid \"100 lb\" --flow \"2 L/min\" --lost-a-day \"1.5 lb\"", "time",
             "100 lb / (2 l/min / (344 l/lb) + 1.5 lb/day)", "day", 1e-6),
    by_units("air-pressure", "--height \"8000 ft\"", "mercury", "stdatmPH(8000 ft)", "mmHg", 0.05),
    by_units("air-pressure", "--height \"1500 m\"", "mercury", "stdatmPH(1500 m)", "mmHg", 0.05),
    by_units("trapped-gas", "--there \"564.514 mmHg\"", "growth", "760 mmHg / stdatmPH(8000 ft)", "1", 1e-5),
    by_units("humidifier-water", "--flow \"8 L/min\" --in \"10.3 mg/L\" --out \"43.9 mg/L\"", "water",
             "8 l/min * (43.9 - 10.3) mg/l", "g/day", 1e-6),
    by_units("oxygen-fraction", "--oxygen \"2 L/min\" --minute-volume \"8 L/min\" --leak \"30 L/min\"", "fraction.low",
             "21 + 79 * 2 l/min / (8 l/min + 30 l/min)", "1", 1e-6),
    by_units("labelled-battery-time",
             "--volts \"12 V\" --capacity \"100 Ah\" --load \"60 W\" --temperature-share \"84 %\"", "time.low",
             "12 V * 100 A hour * 0.8 * 0.84 * 0.5 * 0.85 / 60 W", "min", 1e-6),
    by_units("labelled-battery-time", "--volts \"12 V\" --capacity \"100 Ah\" --load \"60 W\"", "time.high",
             "12 V * 100 A hour / 60 W", "min", 1e-6),
    by_units("direct-current-draw", "--load \"150 W\" --lowest-volts \"11 V\"", "draw", "150 W / (11 V * 0.85)", "A",
             1e-9),
    by_units("recharge-time", "--energy \"500 Wh\" --charger \"60 W\"", "time", "500 W hour / (60 W * 0.85)", "hour",
             1e-9),
    by_units("fuel-time", "--tank \"3 L\" --use \"0.35 L/h\"", "time", "3 l / (0.35 l/hour)", "min", 1e-6),
    by_units("supply-rating", "--load \"400 W\"", "rating", "1.25 * 400 W / 0.8", "V A", 1e-9),
    by_units("cough-flow", "--peak \"160 L/min\"", "each-second", "160 l/min", "l/s", 1e-9),
    by_units("catheter-fit", "--catheter \"12 Fr\" --inner-diameter \"8.0 mm\"", "ratio",
             "100 * 12 frenchcathetersize / 8 mm", "1", 1e-9),
    by_units("cuff-pressure", "--pressure \"30 cmH2O\"", "mercury", "30 cm water", "mmHg", 0.0001),
    by_units("cuff-pressure", "--pressure \"25 cmH2O\"", "mercury", "25 cm water", "mmHg", 0.0001),
    by_units("letter-height", "--distance \"1 m\" --angle \"22 arcmin\"", "height", "2 * 1 m * tan(11 arcmin)", "mm",
             1e-6),
    by_units("type-size", "--capital \"3 mm\"", "size", "72 * 3 mm / 0.7", "inch", 1e-6),
    by_units("unit-conversion", "--measure \"2000 psi\" --to bar", "converted", "2000 psi", "bar", 0.0001),
    by_units("unit-conversion", "--measure \"98.6 °F\" --to °C", "converted", "tempF(98.6)", "tempC", 1e-9),
    by_units("unit-conversion", "--measure \"30 cmH2O\" --to mmHg", "converted", "30 cm water", "mmHg", 0.0001),
};

}  // namespace

std::span<const PublishedRow> published_by_units() { return kRows; }

}  // namespace ventfolio::testing
