#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "sheets/document.hpp"

namespace ventfolio {

/// `{.act .half span=8 aside="Chest not moving"}` as it stands in a text.
struct AttributeGroup {
    Attributes attributes;  ///< without `aside`
    std::size_t begin = 0;  ///< of the opening brace
    std::size_t end = 0;    ///< behind the closing one
    bool has_aside = false;
    std::size_t aside_begin = 0;  ///< the words between the quotes of `aside`
    std::size_t aside_end = 0;
};

/// Reads the group that opens at `begin` of a flat text (see InlineRuns); nothing if it is not well formed. Class and
/// key names are small letters, digits and `-` or `_`; a value is a word, or stands in straight double quotes. Only
/// `aside` may hold values.
std::optional<AttributeGroup> attribute_group(std::string_view flat, std::size_t begin);

/// Where a group may open at the end of a text, and whether it does.
struct TrailingGroup {
    std::optional<AttributeGroup> group;
    std::optional<std::size_t> broken;  ///< an opening brace whose group cannot be read
};
TrailingGroup trailing_group(std::string_view flat);

}  // namespace ventfolio
