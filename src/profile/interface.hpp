#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"
#include "profile/orders.hpp"

namespace ventfolio {

/// How the hose meets the person.
enum class InterfaceKind : std::uint8_t { neck_tube, mask, mouthpiece };
template <>
struct Words<InterfaceKind> {
    static constexpr std::array<std::string_view, 3> words{"neck_tube", "mask", "mouthpiece"};
};

/// What a mask covers.
enum class MaskType : std::uint8_t { nasal, pillows, oronasal, total_face };
template <>
struct Words<MaskType> {
    static constexpr std::array<std::string_view, 4> words{"nasal", "pillows", "oronasal", "total_face"};
};

/// Shape of a mouthpiece; a flanged one has a lip seal.
enum class MouthpieceType : std::uint8_t { straw, angled, flanged };
template <>
struct Words<MouthpieceType> {
    static constexpr std::array<std::string_view, 3> words{"straw", "angled", "flanged"};
};

/// A mask for breathing. A vented mask has the exhalation port in it.
struct Mask {
    Field<MaskType> type;
    Field<std::string> size;
    Field<bool> vented;
    Field<bool> anti_asphyxia_valve;
    Field<std::string> spare;
    Field<std::string> skin;

    void describe(Visitor& visitor);
};

/// A mouthpiece to sip breaths from.
struct Mouthpiece {
    Field<MouthpieceType> type;
    Field<std::string> arm;
    Group<OrderedException> sleep_order;

    void describe(Visitor& visitor);
};

/// How the hose meets the person in one prescription.
struct Interface {
    Field<InterfaceKind> kind;
    Group<Mask> mask;
    Group<Mouthpiece> mouthpiece;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
