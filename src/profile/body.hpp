#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// How food gets in.
enum class FeedingRoute : std::uint8_t { mouth, stomach_tube, bowel_tube, mouth_and_tube };
template <>
struct Words<FeedingRoute> {
    static constexpr std::array<std::string_view, 4> words{"mouth", "stomach_tube", "bowel_tube", "mouth_and_tube"};
};

/// How the person gets about.
enum class MovesBy : std::uint8_t { walking, chair, bed };
template <>
struct Words<MovesBy> {
    static constexpr std::array<std::string_view, 3> words{"walking", "chair", "bed"};
};

/// Swallowing and food.
struct Feeding {
    Field<std::string> swallow;
    Field<FeedingRoute> route;
    Field<std::string> pump;
    Field<std::string> precautions;

    void describe(Visitor& visitor);
};

/// Moving and lifting.
struct Mobility {
    Field<MovesBy> moves_by;
    Field<std::string> lift_method;
    Field<bool> spine_curve;
    Field<bool> contractures;
    Field<bool> amputation;
    Field<std::string> cannot_lie_flat;
    Field<std::string> positioning;

    void describe(Visitor& visitor);
};

/// Something built into the body.
struct Implant {
    Field<std::string> what;
    Field<std::string> note;

    void describe(Visitor& visitor);
};

/// Risks that change what a crew does.
struct SpecialRisks {
    Field<bool> autonomic_dysreflexia;
    Field<std::string> seizures;
    Field<std::string> bleeding;
    Field<std::string> infection_precautions;
    Field<std::string> muscle_relaxant_caution;
    Field<bool> lung_leak;
    Field<std::string> other;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
