#pragma once

#include <string>
#include <vector>

#include "layout/lay_out.hpp"

namespace ventfolio {

/// A sheet that is no part of a home's packet, as a PDF of its own in type of the usual size. What the layout finds is
/// appended to `findings`; where it refuses, the bytes are empty.
std::string single_sheet(const Document& document, const Furniture& furniture, Paper paper, Measurer& measurer,
                         std::vector<Finding>& findings);

}  // namespace ventfolio
