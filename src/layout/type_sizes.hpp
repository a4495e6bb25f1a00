#pragma once

#include "layout/measures.hpp"
#include "layout/rich_text.hpp"

namespace ventfolio {

/// The type sizes of a passage, chosen by the distance from which it is read. All in points unless said.
///
/// Digits of 24 pt stand 6.05 mm high, 20.8 minutes of arc at 1 m; 48 pt the same at 2 m; 12 pt text 19.5 minutes at
/// 0.4 m. Source: 20 to 22 minutes of arc preferred for reading, ISO 9241-3 as quoted, and a human-factors guide of
/// the US aviation authority; 16 is the least.
struct TypeSizes {
    double heading;
    double aside;
    double body;
    double label;
    double number;
    double unit;
    double answer;    ///< a value in words
    double verb;      ///< first line of a step
    double result;    ///< what follows it
    double step_box;  ///< side of the number's box
};

/// Read at 1 m, standing by the bed.
inline TypeSizes at_one_metre(double scale) {
    return {.heading = 18 * scale,
            .aside = 14 * scale,
            .body = 14 * scale,
            .label = 12 * scale,
            .number = 24 * scale,
            .unit = 12 * scale,
            .answer = 18 * scale,
            .verb = 24 * scale,
            .result = 14 * scale,
            .step_box = mm(11) * scale};
}

/// Read at arm's length or in the hand.
inline TypeSizes at_arms_length(double scale) {
    return {.heading = 14 * scale,
            .aside = 10 * scale,
            .body = 12 * scale,
            .label = 12 * scale,
            .number = 14 * scale,
            .unit = 11 * scale,
            .answer = 11 * scale,
            .verb = 16 * scale,
            .result = 12 * scale,
            .step_box = mm(9) * scale};
}

/// In a narrow box beside other things, in the hand.
inline TypeSizes tight(double scale) {
    return {.heading = 13 * scale,
            .aside = 10 * scale,
            .body = 11 * scale,
            .label = 11 * scale,
            .number = 12 * scale,
            .unit = 10 * scale,
            .answer = 11 * scale,
            .verb = 16 * scale,
            .result = 11 * scale,
            .step_box = mm(9) * scale};
}

/// What is read once, at leisure, or ticked off: the back of a sheet that is full.
inline TypeSizes small(double scale) {
    TypeSizes sizes = tight(scale);
    sizes.heading = 12 * scale;
    sizes.body = sizes.label = sizes.result = 10 * scale;
    return sizes;
}

/// Rescue steps in half the width, read at arm's length.
inline TypeSizes rescue_box(double scale) {
    return {.heading = 14 * scale,
            .aside = 10 * scale,
            .body = 11.5 * scale,
            .label = 11 * scale,
            .number = 13 * scale,
            .unit = 10 * scale,
            .answer = 11.5 * scale,
            .verb = 14 * scale,
            .result = 11.5 * scale,
            .step_box = mm(9) * scale};
}

/// On a card of ID-1 size, in the hand.
inline TypeSizes on_card() {
    return {.heading = 11,
            .aside = 9,
            .body = 9,
            .label = 9,
            .number = 9,
            .unit = 9,
            .answer = 9,
            .verb = 11,
            .result = 9,
            .step_box = mm(5)};
}

/// Nothing is set smaller than this, footer excepted.
inline constexpr double kSmallestText = 9;
inline constexpr double kFooterText = 8;

/// Label and value rows: number bold, unit light, an answer in words bold.
inline TextStyle value_style(const TypeSizes& sizes) {
    TextStyle style = plain_style(sizes.unit);
    style.number = TextStyle::Look{sizes.number, Face::bold};
    style.unit = TextStyle::Look{sizes.unit, Face::regular};
    style.answer = TextStyle::Look{sizes.answer, Face::bold};
    style.leading = 1.15;
    return style;
}

}  // namespace ventfolio
