#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/age.hpp"
#include "calc/band.hpp"
#include "profile/profile.hpp"
#include "rules/outage.hpp"

namespace ventfolio {

/// A prescription with the numbers that follow from it. A number is absent when something that it needs is.
struct DerivedPrescription {
    const Prescription* order = nullptr;
    std::string name;  ///< for messages: id and label

    bool covers_awake = false;
    bool covers_asleep = false;
    bool neck_tube = false;
    bool mask = false;
    bool mouthpiece = false;
    bool closed = false;  ///< neck tube or mask
    bool mouthpiece_mode = false;
    bool volume_mode = false;             ///< a set volume
    bool volume_assured = false;          ///< a pressure that moves towards a volume
    bool pressure_mode = false;           ///< a set pressure
    bool dependent = false;               ///< free breathing none or minutes in a state that this prescription covers
    bool without_free_breathing = false;  ///< none in such a state
    bool heavy_user = false;              ///< neck tube, dependent, or above 16 h a day

    std::optional<Pressure> baseline;
    std::optional<Pressure> top;     ///< highest pressure that the order allows, total
    std::optional<Pressure> bottom;  ///< lowest pressure of a breath, total
    std::optional<Pressure> help;    ///< top less baseline
    std::optional<BreathRate> rate;  ///< set or backup rate, above 0
    std::optional<Duration> cycle;   ///< 60 / rate
    std::optional<Duration> time_in;
    std::optional<Volume> ordered_volume;  ///< set or target volume
    std::optional<Volume> usual_volume;    ///< ordered, else the middle of what is expected
    std::optional<Flow> usual_minute_volume;
    std::optional<double> ordered_per_weight;  ///< mL/kg of reference weight
    std::optional<double> usual_per_weight;
    std::optional<calc::Band<Volume>> accepted_volume;  ///< what the setting check accepts
    std::optional<calc::Band<Flow>> accepted_minute_volume;
    std::optional<calc::Band<Pressure>> accepted_peak_pressure;
    std::optional<Flow> oxygen_flow;  ///< above 0
};

/// One home on one day, with everything that rules and sheets derive from the profile. The profile must outlive it.
struct Household {
    Household(const Profile& profile, Date on);

    const Profile& profile;
    Date on;
    std::optional<calc::Age> age;
    bool child = false;   ///< under 18 years
    bool infant = false;  ///< under 1 year
    bool dependent_awake = false;
    bool dependent_asleep = false;
    bool dependent = false;  ///< in either state
    const NeckTube* neck_tube = nullptr;
    std::optional<Mass> reference_weight;  ///< adult: predicted; child: actual; a clinician's choice before both
    std::vector<DerivedPrescription> prescriptions;
    OutageFacts outage;
    std::optional<Moment> outage_start;  ///< when the power failed, for the plan of one outage

    /// "Toby", or "the person".
    std::string name() const;
    const Device* unit_at_bed() const;
    /// Any prescription with this kind of interface.
    bool uses(InterfaceKind kind) const;
    /// The prescription with this id; null when there is none.
    const DerivedPrescription* prescription(std::string_view id) const;
    /// The unit has a slot with this prescription.
    static bool runs(const Device& unit, const Prescription& order);
};

/// Free breathing none or minutes.
bool needs_every_breath(const Group<FreeBreathing>& free);
bool in_waking_hours(WakingState state);
bool in_sleeping_hours(WakingState state);

}  // namespace ventfolio
