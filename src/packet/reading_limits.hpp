#pragma once

#include <string_view>
#include <vector>

#include "markup/template.hpp"
#include "packet/stationery.hpp"

namespace ventfolio {

/// The limit that a sheet sets itself (`reading` in its front matter) has to be a number on the scale of its language:
/// a school grade from 1 to 12 in English, an ease from 40 to 100 in Spanish. Other languages have no formula here.
/// A fault is appended to `findings`, at the line.
void check_reading_limit(const Template& sheet, std::string_view language, std::vector<Finding>& findings);

/// Sheets of a clinic that may be harder to read than the built-in ones of the same name: their limit is gone or
/// looser.
void compare_reading_limits(const Stationery& clinic, const Stationery& built_in, std::vector<Finding>& findings);

}  // namespace ventfolio
