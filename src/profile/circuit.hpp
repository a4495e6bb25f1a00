#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Passive: one hose with an exhalation port. Active single: one hose with a valve and two small lines. Dual: a hose
/// out and a hose back. Open mouthpiece: no port, no valve.
enum class CircuitKind : std::uint8_t { passive, active_single, dual, open_mouthpiece };
template <>
struct Words<CircuitKind> {
    static constexpr std::array<std::string_view, 4> words{"passive", "active_single", "dual", "open_mouthpiece"};
};

/// Whether a wire in the hose keeps it warm.
enum class LimbHeating : std::uint8_t { heated_wire, unheated };
template <>
struct Words<LimbHeating> {
    static constexpr std::array<std::string_view, 2> words{"heated_wire", "unheated"};
};

/// Where the exhalation port is.
enum class PortPlace : std::uint8_t { in_hose, in_mask };
template <>
struct Words<PortPlace> {
    static constexpr std::array<std::string_view, 2> words{"in_hose", "in_mask"};
};

/// What a small line does.
enum class SmallLineName : std::uint8_t { pressure_sense, valve_drive };
template <>
struct Words<SmallLineName> {
    static constexpr std::array<std::string_view, 2> words{"pressure_sense", "valve_drive"};
};

/// Where a filter sits. `person_side` is between humidifier and person.
enum class FilterPosition : std::uint8_t { machine_outlet, machine_return, machine_air_inlet, person_side };
template <>
struct Words<FilterPosition> {
    static constexpr std::array<std::string_view, 4> words{"machine_outlet", "machine_return", "machine_air_inlet",
                                                           "person_side"};
};

/// One hose of the circuit.
struct Limb {
    Field<LimbHeating> heating;
    Field<bool> water_trap;
    Field<std::string> water_trap_position;

    void describe(Visitor& visitor);
};

/// The fixed hole through which breath leaves a passive circuit.
struct ExhalationPort {
    Field<PortPlace> place;
    Field<std::string> position;

    void describe(Visitor& visitor);
};

/// One of the two thin tubes beside an active hose. They must not be swapped.
struct SmallLine {
    Field<SmallLineName> name;
    Field<Length> bore;
    Field<std::string> marking;
    Field<std::string> port;

    void describe(Visitor& visitor);
};

/// A filter in the hose or the machine.
struct Filter {
    Field<FilterPosition> position;
    Field<bool> made_for_wet_use;
    Field<Interval> change_interval;

    void describe(Visitor& visitor);
};

/// The hose set of one prescription.
struct Circuit {
    Field<CircuitKind> kind;
    Field<Length> bore;
    Group<Limb> inspiratory_limb;
    Group<Limb> expiratory_limb;
    Group<ExhalationPort> exhalation_port;
    Field<std::string> exhalation_valve;
    List<SmallLine> small_lines;
    Field<std::string> flexible_adapter;
    Field<std::string> in_line_suction;
    List<Filter> filters;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
