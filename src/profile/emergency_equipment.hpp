#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Size of a breathing bag.
enum class BagSize : std::uint8_t { adult, child, infant };
template <>
struct Words<BagSize> {
    static constexpr std::array<std::string_view, 3> words{"adult", "child", "infant"};
};

/// Where a breathing bag is kept.
enum class BagPlace : std::uint8_t { bed, chair, go_bag, elsewhere };
template <>
struct Words<BagPlace> {
    static constexpr std::array<std::string_view, 4> words{"bed", "chair", "go_bag", "elsewhere"};
};

/// A bag to give breaths by hand (manual resuscitation bag).
struct BreathingBag {
    Field<BagPlace> at;
    Field<std::string> place;
    Field<BagSize> size;
    Field<bool> tube_connector;
    Field<bool> face_mask;
    Field<bool> oxygen_tube;
    Field<bool> pressure_valve;
    Field<Date> checked_on;

    void describe(Visitor& visitor);
};

/// What is at hand when the machine or the tube fails.
struct EmergencyEquipment {
    List<BreathingBag> breathing_bags;
    Field<bool> pressure_valve_ordered;
    Field<bool> oxygen_for_bag;
    Field<bool> spare_hose_assembled;
    Field<std::string> kept_at;
    Field<TextList> items;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
