#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Where suction is used.
enum class SuctionUse : std::uint8_t { neck_tube, mouth_only };
template <>
struct Words<SuctionUse> {
    static constexpr std::array<std::string_view, 2> words{"neck_tube", "mouth_only"};
};

/// Salt water into the tube before suction.
enum class Saline : std::uint8_t { never, only_if_thick };
template <>
struct Words<Saline> {
    static constexpr std::array<std::string_view, 2> words{"never", "only_if_thick"};
};

/// Clearing the airway with a suction catheter.
struct Suction {
    Field<SuctionUse> use;
    Field<std::string> device;
    Field<Length> catheter_size;
    Field<bool> closed_system;
    Field<Length> depth;
    Field<std::string> depth_mark;
    Field<Length> connector_length;
    Field<Pressure> pressure;
    Field<Duration> longest_pass;
    Field<Saline> saline;
    Field<Volume> saline_volume;
    Field<Duration> portable_time;
    Field<bool> hand_device;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
