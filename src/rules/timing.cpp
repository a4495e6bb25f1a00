#include <cmath>

#include "calc/breath_timing.hpp"
#include "calc/minute_ventilation.hpp"
#include "rules/breath_ratio.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

/// A neonatal ventilation guide asks for at least this to breathe out.
constexpr Duration kTimeOutLeast = Duration::of(0.5, unit::s);

bool fills_whole_breath(const DerivedPrescription& rx) {
    return rx.cycle && rx.time_in && at_or_above(*rx.time_in, *rx.cycle - threshold::kBreathOutLeast);
}

bool longer_than_out(const DerivedPrescription& rx) {
    return rx.cycle && rx.time_in && !fills_whole_breath(rx) && above(*rx.time_in, *rx.cycle / 2);
}

std::optional<calc::InToOut> parsed_ratio(std::string_view text) {
    const auto colon = text.find(':');
    if (colon == std::string_view::npos) return std::nullopt;
    const auto in = Decimal::parse(text.substr(0, colon));
    const auto out = Decimal::parse(text.substr(colon + 1));
    if (!in || !out) return std::nullopt;
    return calc::InToOut{in->value(), out->value()};
}

void unusual(Report& report, const DerivedPrescription& rx, const FieldBase& field, std::string what,
             std::string value) {
    report.at(field, value).with("rx", rx.name).with("what", std::move(what)).with("value", std::move(value));
}

void check_time_out(Report& report, const DerivedPrescription& rx) {
    if (!rx.time_in) return;
    if (rx.cycle && below(*rx.cycle - *rx.time_in, kTimeOutLeast))
        unusual(report, rx, rx.order->inspiratory_time, "the time to breathe out",
                shown_seconds(*rx.cycle - *rx.time_in));
    const auto& high_rate = rx.order->alarms->high_rate;
    if (!high_rate) return;
    const auto shortest = calc::breath_cycle(*high_rate);
    if (shortest && at_or_below(*shortest, *rx.time_in))
        unusual(report, rx, high_rate, "one breath at the high-rate alarm", shown_seconds(*shortest));
}

void check_mean_flow(Report& report, const DerivedPrescription& rx) {
    if (!rx.volume_mode || !rx.ordered_volume || !rx.time_in) return;
    const auto flow = calc::inspiratory_flow(*rx.ordered_volume, *rx.time_in);
    if (!flow) return;
    if (below(*flow, threshold::kInspiratoryFlowLowestAdult) || above(*flow, threshold::kInspiratoryFlowHighestAdult))
        unusual(report, rx, rx.order->tidal_volume, "the mean flow of a breath in", shown_flow(*flow));
}

}  // namespace

namespace check {

void report_breath_ratio_differences(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const auto& stated = rx.order->breathing_ratio;
        if (!stated || !rx.time_in || !rx.rate) continue;
        const auto ratio = parsed_ratio(*stated);
        const auto time = ratio ? calc::time_in_from_ratio(*rx.rate, *ratio) : std::nullopt;
        if (!time) continue;
        if (!above(std::abs(*time / *rx.time_in - 1), threshold::kInspiratoryTimeStatedDifference)) continue;
        report.at(stated, "means " + shown_seconds(*time))
            .also(rx.order->inspiratory_time)
            .with("rx", rx.name)
            .with("first", "a ratio of " + *stated + " (" + shown_seconds(*time) + ")")
            .with("second", "an inspiratory time of " + written(rx.order->inspiratory_time));
    }
}

void breath_in_fills_whole_breath(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!fills_whole_breath(rx)) continue;
        const Duration out = *rx.cycle > *rx.time_in ? *rx.cycle - *rx.time_in : Duration{};
        report.at(rx.order->inspiratory_time, "leaves " + shown_seconds(out))
            .also(rx.order->rate, "one breath in " + shown_seconds(*rx.cycle))
            .with("rx", rx.name)
            .with("insp_time", rx.order->inspiratory_time)
            .with("exp_time", shown_seconds(out))
            .with("cycle", shown_seconds(*rx.cycle));
    }
}

void breath_in_longer_than_out(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!longer_than_out(rx)) continue;
        report.at(rx.order->inspiratory_time, "more than half")
            .also(rx.order->rate, "one breath in " + shown_seconds(*rx.cycle))
            .with("rx", rx.name)
            .with("insp_time", rx.order->inspiratory_time)
            .with("cycle", shown_seconds(*rx.cycle));
    }
}

void breath_timing_unusual(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (fills_whole_breath(rx) || longer_than_out(rx)) continue;
        check_time_out(report, rx);
        if (!home.child) check_mean_flow(report, rx);
    }
}

}  // namespace check
}  // namespace ventfolio
