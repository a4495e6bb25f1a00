#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace ventfolio {

/// What a hook-up can be made of. A template names them by `hookup_part`: `figure:water-trap`.
enum class HookupPart : std::uint8_t {
    wall_power,
    ventilator,
    built_in_humidifier,  ///< in the ventilator
    air_filter,           ///< where the ventilator takes in air
    concentrator,
    cylinder,
    liquid_oxygen,
    oxygen_to_inlet,   ///< tubing from the source to the inlet of the ventilator
    oxygen_to_outlet,  ///< to an adapter at its outlet
    oxygen_to_mask,
    outlet_filter,
    short_hose,  ///< from the ventilator to the humidifier
    humidifier,
    hose,
    heated_hose,
    water_trap,  ///< in the hose to the person
    exhalation_port,
    exhalation_valve,
    y_piece,
    pressure_line,
    valve_line,
    person_filter,
    moisture_exchanger,
    flexible_adapter,
    in_line_suction,
    neck_tube,
    mask,
    vented_mask,
    mouthpiece,
    return_hose,
    heated_return_hose,
    return_trap,
    return_filter,
};

std::optional<HookupPart> hookup_part(std::string_view name);
std::string_view name_of(HookupPart part);

/// How the person is drawn.
enum class Posture : std::uint8_t { lying, seated, in_chair };
std::optional<Posture> posture_from(std::string_view word);

/// Why a list of parts cannot be drawn as something that works, and the part that it is about.
struct HookupFault {
    std::string why;        ///< a sentence
    std::size_t place = 0;  ///< in the list
};

/// The first fault of a list: parts of two kinds of hose set mixed, one that needs another, one that is there twice.
/// What passes has one way for the breath from the ventilator to the person, and one way out.
std::optional<HookupFault> fault_in(std::span<const HookupPart> parts);

/// Between hose and person, one after the other.
bool is_at_person(HookupPart part);
/// How the hose meets the person.
bool is_interface(HookupPart part);
bool is_oxygen_source(HookupPart part);
bool is_oxygen_tubing(HookupPart part);

}  // namespace ventfolio
