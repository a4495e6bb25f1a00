#include <cmath>

#include "calc/catheter_size.hpp"
#include "calc/suction.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

// AARC, Artificial Airway Suctioning, 2022: the ceilings themselves; 0.70 of the tube; 15 s.
constexpr Pressure kCeilingAdult = Pressure::of(200, unit::mmHg);
constexpr Pressure kCeilingChild = Pressure::of(120, unit::mmHg);
constexpr double kCatheterLarge = 0.70;
constexpr Duration kLongestPass = Duration::of(15, unit::s);
// AARC suctioning guideline, 2010, and National Tracheostomy Safety Project (UK): half of the tube.
constexpr double kCatheterHalf = 0.50;
// American Thoracic Society, 2000 (from memory): 0.5 to 1 cm past the tip.
constexpr Length kPastTipChild = Length::of(0.5, unit::cm);

/// What the catheter has to pass: the inner tube where one narrows the way.
const Field<Length>& bore_of(const NeckTube& tube) {
    return tube.inner_tube_diameter ? tube.inner_tube_diameter : tube.inner_diameter;
}

struct CatheterInTube {
    const Field<Length>* catheter;
    const Field<Length>* bore;
    double ratio;
};

std::optional<CatheterInTube> catheter_in_tube(const Household& home) {
    if (home.neck_tube == nullptr) return std::nullopt;
    const auto& catheter = home.profile.suction->catheter_size;
    const auto& bore = bore_of(*home.neck_tube);
    if (!catheter || !bore) return std::nullopt;
    return CatheterInTube{&catheter, &bore, *catheter / *bore};
}

void report_catheter(Report& report, const CatheterInTube& fit, std::string label) {
    auto finding = report.at(*fit.catheter, std::move(label));
    finding.also(*fit.bore).with("fr", *fit.catheter).with("od", shown_length(**fit.catheter));
    finding.with("id_mm", *fit.bore).with("ratio", shown_share(fit.ratio));
    const auto half = calc::largest_catheter(**fit.bore, kCatheterHalf, calc::RatioLimit::up_to);
    finding.with("suggestion", half ? shown(half->in(unit::Fr), 0) + " Fr" : std::string{"no stocked size"});
}

std::optional<Length> deepest(const Household& home) {
    const auto& length = home.neck_tube->length;
    if (!length) return std::nullopt;
    const auto& connector = home.profile.suction->connector_length;
    const auto depth = calc::suction_depth({.tube = *length,
                                            .connector = connector ? *connector : threshold::kSuctionConnectorLength,
                                            .past_tip = home.child ? kPastTipChild : threshold::kSuctionPastTipAdult});
    return depth ? std::optional{depth->deepest} : std::nullopt;
}

bool suction_dangerous(const Household& home) {
    const auto& pressure = home.profile.suction->pressure;
    return pressure && above(*pressure, home.child ? kCeilingChild : kCeilingAdult);
}

/// Upper end of the usual band: 150 (adult), 100 (28 days to 11 years), 80 (under 28 days), 120 (12 to 17 years) mmHg.
std::optional<Pressure> usual_suction(const Household& home) {
    const auto band = home.age ? calc::suction_pressure_band(*home.age) : std::nullopt;
    return band ? std::optional{band->usual_high} : std::nullopt;
}

bool cough_impossible(const Field<Pressure>& in, const Field<Pressure>& out) {
    const Pressure most = threshold::kCoughPressureHighest;
    return (in && (below(*in, Pressure{}) || above(*in, most))) ||
           (out && (above(*out, Pressure{}) || below(*out, most * -1)));
}

bool cough_unusual(Pressure magnitude) {
    return below(magnitude, threshold::kCoughPressureLowest) || above(magnitude, threshold::kCoughPressureUsualMost);
}

}  // namespace

namespace check {

void suction_depth_missing(const Household& home, Report& report) {
    if (home.neck_tube != nullptr && !home.profile.suction->depth)
        report.at(home.profile.suction->depth, "no depth is recorded");
}

void suction_depth_too_deep(const Household& home, Report& report) {
    const auto& depth = home.profile.suction->depth;
    if (home.neck_tube == nullptr || !depth) return;
    const auto most = deepest(home);
    if (!most || !above(*depth, *most)) return;
    const auto& connector = home.profile.suction->connector_length;
    const Length past =
        *depth - *home.neck_tube->length - (connector ? *connector : threshold::kSuctionConnectorLength);
    report.at(depth, shown(past.in(unit::cm), 1) + " cm past the tip")
        .also(home.neck_tube->length)
        .with("depth", depth)
        .with("excess", shown(past.in(unit::cm), 1) + " cm")
        .with("length", home.neck_tube->length);
}

void suction_pressure_dangerous(const Household& home, Report& report) {
    if (!suction_dangerous(home)) return;
    const auto& pressure = home.profile.suction->pressure;
    report.at(pressure, "too strong").with("pressure", pressure).with("limit", home.child ? "120 mmHg" : "200 mmHg");
}

void suction_pressure_above_band(const Household& home, Report& report) {
    const auto& pressure = home.profile.suction->pressure;
    const auto most = usual_suction(home);
    if (!pressure || !most || suction_dangerous(home) || !above(*pressure, *most)) return;
    report.at(pressure, "above the usual")
        .with("pressure", pressure)
        .with("limit", shown(most->in(unit::mmHg), 0) + " mmHg");
}

void catheter_will_not_pass(const Household& home, Report& report) {
    const auto fit = catheter_in_tube(home);
    if (fit && !below(fit->ratio, 1)) report_catheter(report, *fit, "does not pass");
}

void catheter_large_for_tube(const Household& home, Report& report) {
    const auto fit = catheter_in_tube(home);
    if (fit && below(fit->ratio, 1) && !below(fit->ratio, kCatheterLarge)) report_catheter(report, *fit, "large");
}

void catheter_above_half_tube(const Household& home, Report& report) {
    const auto fit = catheter_in_tube(home);
    if (fit && above(fit->ratio, kCatheterHalf) && below(fit->ratio, kCatheterLarge))
        report_catheter(report, *fit, "above half");
}

void suction_time_long(const Household& home, Report& report) {
    const auto& seconds = home.profile.suction->longest_pass;
    if (seconds && above(*seconds, kLongestPass)) report.at(seconds, "long").with("seconds", seconds);
}

void portable_suction_missing(const Household& home, Report& report) {
    const Suction& suction = *home.profile.suction;
    if (home.neck_tube != nullptr && !suction.portable_time && !suction.hand_device.is(true))
        report.at(home.profile.suction);
}

void cough_pressure_impossible(const Household& home, Report& report) {
    const CoughDevice& device = *home.profile.cough_device;
    if (!cough_impossible(device.pressure_in, device.pressure_out)) return;
    report.at(device.pressure_in)
        .also(device.pressure_out)
        .with("in", device.pressure_in)
        .with("out", device.pressure_out);
}

void cough_pressure_unusual(const Household& home, Report& report) {
    const CoughDevice& device = *home.profile.cough_device;
    if (cough_impossible(device.pressure_in, device.pressure_out)) return;
    const bool in = device.pressure_in && cough_unusual(*device.pressure_in);
    const bool out = device.pressure_out && cough_unusual(*device.pressure_out * -1);
    if (in || out)
        report.at(device.pressure_in)
            .also(device.pressure_out)
            .with("in", device.pressure_in)
            .with("out", device.pressure_out);
}

void cough_device_with_lung_risk(const Household& home, Report& report) {
    const auto& leak = home.profile.special_risks->lung_leak;
    if (!leak.is(true)) return;
    const auto& stacking = home.profile.airway_clearance->air_stacking;
    if (home.profile.cough_device.given())
        report.at(home.profile.cough_device).also(leak);
    else if (stacking)
        report.at(stacking).also(leak);
}

}  // namespace check
}  // namespace ventfolio
