#pragma once

#include <functional>
#include <string>
#include <vector>

#include "layout/lay_out.hpp"
#include "packet/stationery.hpp"
#include "profile/field.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// The blank form with which a home is written down before anyone types: every field that a profile can hold, the
/// essential ones first, each with its unit and room to write, choices as boxes to tick. `show` describes an empty
/// profile to a visitor.
Document intake_document(const std::function<void(Visitor&)>& show, const Stationery& stationery);

/// The same as a PDF. Faults of the words are appended to `findings`; the bytes are then empty.
std::string intake_form(const std::function<void(Visitor&)>& show, const Stationery& stationery, Paper paper,
                        Measurer& measurer, std::vector<Finding>& findings);

}  // namespace ventfolio
