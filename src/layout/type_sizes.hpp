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
    return {18 * scale, 14 * scale, 14 * scale, 12 * scale, 24 * scale,
            12 * scale, 18 * scale, 24 * scale, 14 * scale, mm(11) * scale};
}

/// Read at arm's length or in the hand.
inline TypeSizes at_arms_length(double scale) {
    return {14 * scale, 10 * scale, 12 * scale, 12 * scale, 14 * scale,
            11 * scale, 11 * scale, 16 * scale, 12 * scale, mm(9) * scale};
}

/// In a narrow box beside other things, in the hand.
inline TypeSizes tight(double scale) {
    return {13 * scale, 10 * scale, 11 * scale, 11 * scale, 12 * scale,
            10 * scale, 11 * scale, 16 * scale, 11 * scale, mm(9) * scale};
}

/// Rescue steps in half the width, read at arm's length.
inline TypeSizes rescue_box(double scale) {
    return {14 * scale, 10 * scale,   11.5 * scale, 11 * scale,   13 * scale,
            10 * scale, 11.5 * scale, 14 * scale,   11.5 * scale, mm(9) * scale};
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
