#include <fmt/format.h>

#include <vector>

#include "rules/breath_ratio.hpp"
#include "rules/checks.hpp"
#include "rules/compare.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

// American Academy of Sleep Medicine, titration task force, 2010 (as quoted); the range of support from memory.
constexpr Pressure kMaskTop = Pressure::of(30, unit::cmH2O);
constexpr Pressure kMaskTopUnderTwelve = Pressure::of(20, unit::cmH2O);
constexpr Pressure kMaskHelpLeast = Pressure::of(4, unit::cmH2O);
constexpr Pressure kMaskHelpMost = Pressure::of(20, unit::cmH2O);

/// Collects the pressures that are dialled on a machine, with their units.
class PressureUnits final : public ConstVisitor {
  public:
    struct Found {
        const FieldBase* field;
        std::string_view symbol;
    };
    std::vector<Found> found;

    void leaf(const FieldInfo& info, const FieldBase& field) override {
        if (!info.setting || !field.given() || field.dimension() != Dimension::pressure) return;
        if (const auto* measure = std::get_if<Measure>(&field.value())) found.push_back({&field, measure->unit.symbol});
        if (const auto* range = std::get_if<MeasureRange>(&field.value()))
            found.push_back({&field, range->from.unit.symbol});
    }
    void group(const FieldInfo&, const GroupBase& group) override {
        ConstView view{*this};
        const_cast<GroupBase&>(group).describe(view);
    }
    void list(const FieldInfo&, const ListBase&) override {}
};

bool too_high(const DerivedPrescription& rx) {
    return rx.closed && rx.top && above(*rx.top, threshold::kPeakHighClosed);
}
bool too_small(const DerivedPrescription& rx) {
    return rx.closed && rx.dependent && rx.help && below(*rx.help, threshold::kSupportSmallDependent);
}

void wrong_order(Report& report, const DerivedPrescription& rx, const FieldBase& lower, const FieldBase& upper,
                 std::string lower_text, std::string upper_text) {
    report.at(upper, "should be the higher")
        .also(lower)
        .with("rx", rx.name)
        .with("lower", std::move(lower_text))
        .with("upper", std::move(upper_text));
}

/// A pressure of a breath must lie above the baseline, counted as the order counts it.
void check_breath_pressure(Report& report, const DerivedPrescription& rx, const Field<Pressure>& stated) {
    const auto& reference = rx.order->pressure_reference;
    if (!stated || !reference) return;
    if (*reference == PressureReference::above_baseline) {
        if (at_or_below(*stated, Pressure{}))
            wrong_order(report, rx, stated, stated, "0", written(stated) + " above the baseline");
    } else if (rx.baseline && at_or_below(*stated, *rx.baseline)) {
        wrong_order(report, rx, rx.order->baseline_pressure, stated,
                    "the baseline of " + written(rx.order->baseline_pressure),
                    "the whole pressure of " + written(stated));
    }
}

void differs(Report& report, const DerivedPrescription& rx, const FieldBase& stated, const FieldBase& other,
             std::string first, std::string second) {
    report.at(stated, "does not fit")
        .also(other)
        .with("rx", rx.name)
        .with("first", std::move(first))
        .with("second", std::move(second));
}

bool far_apart(Pressure a, Pressure b) {
    const Pressure gap = a > b ? a - b : b - a;
    return above(gap, threshold::kPressureStatedDifference);
}

const FieldBase& source_of_top(const DerivedPrescription& rx) {
    if (rx.volume_assured) return rx.order->volume_assured->pressure_most;
    if (rx.volume_mode) return rx.order->expected->peak_pressure;
    return rx.order->inspiratory_pressure ? rx.order->inspiratory_pressure : rx.order->support_pressure;
}

}  // namespace

namespace check {

void pressure_reference_missing(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const Prescription& order = *rx.order;
        if (!order.pressure_reference.missing()) continue;
        const Field<Pressure>* stated[] = {&order.inspiratory_pressure, &order.volume_assured->pressure_most,
                                           &order.volume_assured->pressure_least};
        for (const Field<Pressure>* pressure : stated) {
            if (!pressure->given()) continue;
            report.at(*pressure, "total, or above the baseline?")
                .also(order.pressure_reference)
                .also(order.baseline_pressure)
                .with("rx", rx.name)
                .with("value", *pressure)
                .with("baseline", order.baseline_pressure ? "the baseline of " + written(order.baseline_pressure)
                                                          : std::string{"the baseline"});
            break;
        }
    }
}

void mixed_pressure_units(const Household& home, Report& report) {
    for (const Device& unit : home.profile.devices) {
        PressureUnits pressures;
        for (const DerivedPrescription& rx : home.prescriptions)
            if (Household::runs(unit, *rx.order)) visit(*rx.order, pressures);
        for (const auto& one : pressures.found) {
            const auto& first = pressures.found.front();
            if (one.symbol == first.symbol) continue;
            report.at(*one.field, "another unit")
                .also(*first.field)
                .with("device", unit.label)
                .with("unit", std::string{first.symbol})
                .with("other", std::string{one.symbol});
            break;
        }
    }
}

void pressures_in_wrong_order(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const VolumeAssured& assured = *rx.order->volume_assured;
        check_breath_pressure(report, rx, rx.order->inspiratory_pressure);
        check_breath_pressure(report, rx, assured.pressure_least);
        if (assured.pressure_least && assured.pressure_most &&
            at_or_above(*assured.pressure_least, *assured.pressure_most))
            wrong_order(report, rx, assured.pressure_least, assured.pressure_most,
                        "the lowest pressure of " + written(assured.pressure_least),
                        "the highest pressure of " + written(assured.pressure_most));
    }
}

void setting_given_twice_differently(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions) {
        const Prescription& order = *rx.order;
        if (order.peak_pressure && rx.top && !rx.volume_mode && far_apart(*order.peak_pressure, *rx.top))
            differs(report, rx, order.peak_pressure, source_of_top(rx), "a peak of " + written(order.peak_pressure),
                    "a computed peak of " + shown_pressure(*rx.top, order));
        const auto& range = order.peak_pressure_range;
        if (range && rx.volume_assured && rx.top && rx.bottom &&
            (far_apart(range.high(), *rx.top) || far_apart(range.low(), *rx.bottom)))
            differs(report, rx, range, source_of_top(rx), "a peak of " + written(range),
                    fmt::format("a computed peak of {} to {}", shown_pressure(*rx.bottom, order),
                                shown_pressure(*rx.top, order)));
        const bool support_repeats_pressure = order.mode.is(Mode::st_bilevel) || order.mode.is(Mode::psv);
        if (!support_repeats_pressure || !order.support_pressure || !order.inspiratory_pressure ||
            !order.pressure_reference || !rx.baseline)
            continue;
        const bool total = *order.pressure_reference == PressureReference::total;
        const Pressure help = total ? *order.inspiratory_pressure - *rx.baseline : *order.inspiratory_pressure;
        if (far_apart(*order.support_pressure, help))
            differs(report, rx, order.support_pressure, order.inspiratory_pressure,
                    "a support of " + written(order.support_pressure),
                    "a computed support of " + shown_pressure(help, order));
    }
    report_breath_ratio_differences(home, report);
}

void peak_pressure_unusually_high(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        if (too_high(rx))
            report.at(source_of_top(rx), "high").with("rx", rx.name).with("top", shown_pressure(*rx.top, *rx.order));
}

void mask_pressure_unusual(const Household& home, Report& report) {
    constexpr int kGrown = 12;
    const bool small = home.age && home.age->years < kGrown;
    for (const DerivedPrescription& rx : home.prescriptions) {
        if (!rx.mask || too_high(rx) || too_small(rx)) continue;
        const bool supported = rx.order->mode.is(Mode::psv) || rx.order->mode.is(Mode::st_bilevel);
        if (rx.top && above(*rx.top, small ? kMaskTopUnderTwelve : kMaskTop))
            report.at(source_of_top(rx), "high for a mask")
                .with("rx", rx.name)
                .with("value", "a pressure of " + shown_pressure(*rx.top, *rx.order));
        else if (supported && rx.help && (below(*rx.help, kMaskHelpLeast) || above(*rx.help, kMaskHelpMost)))
            report.at(source_of_top(rx), "unusual for a mask")
                .also(rx.order->baseline_pressure)
                .with("rx", rx.name)
                .with("value", "a support of " + shown_pressure(*rx.help, *rx.order));
    }
}

void pressure_help_very_small(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        if (too_small(rx))
            report.at(source_of_top(rx), "hardly above the baseline")
                .also(rx.order->baseline_pressure)
                .with("rx", rx.name)
                .with("support", shown_pressure(*rx.help, *rx.order));
}

void mouthpiece_baseline_above_zero(const Household& home, Report& report) {
    for (const DerivedPrescription& rx : home.prescriptions)
        if (rx.mouthpiece_mode && rx.baseline && above(*rx.baseline, Pressure{}))
            report.at(rx.order->baseline_pressure, "usually 0")
                .with("rx", rx.name)
                .with("baseline", rx.order->baseline_pressure);
}

}  // namespace check
}  // namespace ventfolio
