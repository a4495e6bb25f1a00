#include "rules/household.hpp"

#include <algorithm>

#include "calc/breath_timing.hpp"
#include "calc/minute_ventilation.hpp"
#include "calc/predicted_weight.hpp"
#include "calc/pressure_sums.hpp"
#include "calc/volume_per_weight.hpp"
#include "rules/compare.hpp"
#include "rules/thresholds.hpp"
#include "rules/tolerances.hpp"

namespace ventfolio {
namespace {

std::optional<Mass> predicted(const Person& person, int years) {
    std::optional<calc::Sex> sex;
    if (person.sex_for_volume) sex = *person.sex_for_volume == Sex::male ? calc::Sex::male : calc::Sex::female;
    std::optional<Length> height;
    if (person.height)
        height = *person.height;
    else if (person.arm_span)
        height = calc::height_from_arm_span(*person.arm_span);
    if (!height) return std::nullopt;
    const auto weight = calc::predicted_weight(years, sex, *height);
    if (!weight) return std::nullopt;
    return weight->low;
}

std::optional<Mass> reference_weight_of(const Household& home) {
    const Person& person = *home.profile.person;
    if (person.reference_weight) return *person.reference_weight;
    if (!home.age) return std::nullopt;
    if (!home.child) return predicted(person, home.age->years);
    if (person.weight) return *person.weight;
    return std::nullopt;
}

void note_mode(DerivedPrescription& rx) {
    if (!rx.order->mode) return;
    switch (*rx.order->mode) {
        case Mode::vc_ac:
        case Mode::simv_vc:
            rx.volume_mode = true;
            break;
        case Mode::mpv_vc:
            rx.volume_mode = rx.mouthpiece_mode = true;
            break;
        case Mode::mpv_pc:
            rx.pressure_mode = rx.mouthpiece_mode = true;
            break;
        case Mode::va_ps:
        case Mode::va_ac:
            rx.volume_assured = true;
            break;
        case Mode::pc_ac:
        case Mode::simv_pc:
        case Mode::psv:
        case Mode::st_bilevel:
            rx.pressure_mode = true;
            break;
        case Mode::cpap:
            break;
    }
}

void note_interface(DerivedPrescription& rx) {
    const Field<InterfaceKind>& kind = rx.order->interface->kind;
    rx.neck_tube = kind.is(InterfaceKind::neck_tube);
    rx.mask = kind.is(InterfaceKind::mask);
    rx.mouthpiece = kind.is(InterfaceKind::mouthpiece);
    rx.closed = rx.neck_tube || rx.mask;
}

void note_dependence(DerivedPrescription& rx, const Dependence& dependence) {
    const auto& state = rx.order->state;
    rx.covers_awake = state && in_waking_hours(*state);
    rx.covers_asleep = state && in_sleeping_hours(*state);
    rx.dependent = (rx.covers_awake && needs_every_breath(dependence.unaided_awake)) ||
                   (rx.covers_asleep && needs_every_breath(dependence.unaided_asleep));
    rx.without_free_breathing = (rx.covers_awake && dependence.unaided_awake.is_none()) ||
                                (rx.covers_asleep && dependence.unaided_asleep.is_none());
    rx.heavy_user = rx.neck_tube || rx.dependent ||
                    (dependence.hours_per_day && above(*dependence.hours_per_day, threshold::kHeavyUserHoursAbove));
}

/// A pressure of the order as a total, by the order's reference.
std::optional<Pressure> total_of(const DerivedPrescription& rx, const Field<Pressure>& stated) {
    if (!stated || !rx.order->pressure_reference) return std::nullopt;
    if (*rx.order->pressure_reference == PressureReference::total) return *stated;
    if (!rx.baseline) return std::nullopt;
    return *rx.baseline + *stated;
}

void note_pressures(DerivedPrescription& rx) {
    const Prescription& order = *rx.order;
    if (order.baseline_pressure) rx.baseline = *order.baseline_pressure;
    if (rx.volume_mode) {
        if (order.expected->peak_pressure) {
            rx.top = order.expected->peak_pressure.high();
            rx.bottom = order.expected->peak_pressure.low();
        }
    } else if (rx.volume_assured) {
        rx.top = total_of(rx, order.volume_assured->pressure_most);
        rx.bottom = total_of(rx, order.volume_assured->pressure_least);
    } else if (rx.pressure_mode) {
        const auto breath = total_of(rx, order.inspiratory_pressure);
        std::optional<Pressure> supported;
        if (order.support_pressure && rx.baseline) supported = *rx.baseline + *order.support_pressure;
        if (breath && supported) {
            rx.top = std::max(*breath, *supported);
            rx.bottom = std::min(*breath, *supported);
        } else {
            rx.top = rx.bottom = breath ? breath : supported;
        }
    }
    if (rx.top && rx.baseline) rx.help = *rx.top - *rx.baseline;
}

void note_timing(DerivedPrescription& rx) {
    const Prescription& order = *rx.order;
    if (order.rate && above(*order.rate, BreathRate{})) rx.rate = *order.rate;
    if (rx.rate) rx.cycle = calc::breath_cycle(*rx.rate);
    if (order.inspiratory_time) rx.time_in = *order.inspiratory_time;
}

std::optional<double> per_weight(const std::optional<Volume>& volume, const std::optional<Mass>& weight) {
    if (!volume || !weight) return std::nullopt;
    const auto share = calc::volume_per_weight(*volume, *weight);
    return share ? std::optional{share->value} : std::nullopt;
}

void note_volumes(DerivedPrescription& rx, const Household& home) {
    const Prescription& order = *rx.order;
    const ExpectedValues& expected = *order.expected;
    if (rx.volume_mode && order.tidal_volume) rx.ordered_volume = *order.tidal_volume;
    if (rx.volume_assured && order.volume_assured->target_volume)
        rx.ordered_volume = *order.volume_assured->target_volume;
    rx.usual_volume = rx.ordered_volume;
    if (!rx.usual_volume && expected.tidal_volume) rx.usual_volume = expected.tidal_volume.middle();
    if (expected.minute_volume)
        rx.usual_minute_volume = expected.minute_volume.middle();
    else if (rx.rate && rx.usual_volume)
        rx.usual_minute_volume = calc::minute_ventilation(*rx.rate, *rx.usual_volume);
    rx.ordered_per_weight = per_weight(rx.ordered_volume, home.reference_weight);
    rx.usual_per_weight = per_weight(rx.usual_volume, home.reference_weight);
}

template <Dimension D>
std::optional<calc::Band<Quantity<D>>> accepted(const Field<Range<D>>& expected,
                                                const std::optional<Quantity<D>>& usual,
                                                const calc::Tolerance<D>& tolerance) {
    const auto tolerated = usual ? calc::tolerance_band(*usual, tolerance) : std::nullopt;
    if (!expected) return tolerated;
    const calc::Band<Quantity<D>> band{expected.low(), expected.high()};
    return tolerated ? calc::widened(band, *tolerated) : band;
}

void note_accepted(DerivedPrescription& rx) {
    const ExpectedValues& expected = *rx.order->expected;
    rx.accepted_volume = accepted(expected.tidal_volume, rx.usual_volume, kVolumeTolerance);
    std::optional<Pressure> usual_peak;
    if (expected.peak_pressure)
        usual_peak = expected.peak_pressure.middle();
    else if (!rx.volume_assured)
        usual_peak = rx.top;
    rx.accepted_peak_pressure = accepted(expected.peak_pressure, usual_peak, kPressureTolerance);
    rx.accepted_minute_volume = accepted(expected.minute_volume, rx.usual_minute_volume, kMinuteVolumeTolerance);
}

DerivedPrescription derived(const Prescription& order, const Household& home) {
    DerivedPrescription rx;
    rx.order = &order;
    rx.name = order.id.or_else("?");
    note_mode(rx);
    note_interface(rx);
    note_dependence(rx, *home.profile.dependence);
    note_pressures(rx);
    note_timing(rx);
    note_volumes(rx, home);
    note_accepted(rx);
    if (order.oxygen->flow && above(*order.oxygen->flow, Flow{})) rx.oxygen_flow = *order.oxygen->flow;
    return rx;
}

}  // namespace

bool needs_every_breath(const Group<FreeBreathing>& free) {
    return free.is_none() || (free.given() && free->kind.is(FreeTimeKind::minutes));
}

bool in_waking_hours(WakingState state) { return state != WakingState::asleep; }
bool in_sleeping_hours(WakingState state) { return state != WakingState::awake; }

Household::Household(const Profile& whose, Date day) : profile{whose}, on{day} {
    if (profile.person->birth_date) age = calc::age_on(*profile.person->birth_date, on);
    child = age && calc::age_group(*age) != calc::AgeGroup::adult;
    infant = age && calc::age_group(*age) == calc::AgeGroup::infant;
    dependent_awake = needs_every_breath(profile.dependence->unaided_awake);
    dependent_asleep = needs_every_breath(profile.dependence->unaided_asleep);
    dependent = dependent_awake || dependent_asleep;
    if (profile.airway->neck_tube.given()) neck_tube = &*profile.airway->neck_tube;
    reference_weight = reference_weight_of(*this);
    for (const Prescription& order : profile.prescriptions) prescriptions.push_back(derived(order, *this));
    outage = outage_facts(*this);
}

std::string Household::name() const { return profile.person->preferred_name.or_else("the person"); }

const Device* Household::unit_at_bed() const {
    for (const Device& unit : profile.devices)
        if (unit.at_bed.is(true)) return &unit;
    return profile.devices.empty() ? nullptr : &profile.devices[0];
}

bool Household::uses(InterfaceKind kind) const {
    return std::ranges::any_of(prescriptions, [&](const auto& rx) { return rx.order->interface->kind.is(kind); });
}

const DerivedPrescription* Household::prescription(std::string_view id) const {
    const auto found =
        std::ranges::find_if(prescriptions, [&](const auto& rx) { return rx.order->id.is(std::string{id}); });
    return found == prescriptions.end() ? nullptr : &*found;
}

bool Household::runs(const Device& unit, const Prescription& order) {
    return order.id &&
           std::ranges::any_of(unit.slots, [&](const Slot& slot) { return slot.prescription.is(*order.id); });
}

}  // namespace ventfolio
