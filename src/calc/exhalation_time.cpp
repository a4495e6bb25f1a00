#include "calc/exhalation_time.hpp"

#include "calc/circuit_loss.hpp"

namespace ventfolio::calc {
namespace {

bool is_resistance(AirwayResistance resistance) { return within(resistance.cmH2O_s_per_L, 2, 100); }
bool is_compliance(LungCompliance compliance) { return within(compliance.mL_per_cmH2O, 5, 200); }
double litres_per_cmH2O(LungCompliance compliance) { return compliance.mL_per_cmH2O / 1000; }

}  // namespace

std::optional<ExhalationTime> exhalation_time(AirwayResistance resistance, LungCompliance compliance) {
    if (!is_resistance(resistance) || !is_compliance(compliance)) return std::nullopt;
    const Duration constant = Duration::of(resistance.cmH2O_s_per_L * litres_per_cmH2O(compliance), unit::s);
    return ExhalationTime{.constant = constant, .needed = constant * 3};
}

std::optional<Fraction> breathed_out(Duration time_out, AirwayResistance resistance, LungCompliance compliance) {
    const auto share = share_breathed_out(time_out, resistance.cmH2O_s_per_L, litres_per_cmH2O(compliance));
    if (!share) return std::nullopt;
    return Fraction::of(100 * *share, unit::percent);
}

std::optional<LungStretch> lung_stretch(Volume breath, Pressure plateau, Pressure baseline) {
    const bool usable = within(breath, 10, 2500, unit::mL) && within(plateau, 0, 60, unit::cmH2O) &&
                        within(baseline, 0, 60, unit::cmH2O) && at_least((plateau - baseline).in(unit::cmH2O), 1);
    if (!usable) return std::nullopt;
    const Pressure driving = plateau - baseline;
    return LungStretch{.driving = driving, .compliance = {breath.in(unit::mL) / driving.in(unit::cmH2O)}};
}

}  // namespace ventfolio::calc
