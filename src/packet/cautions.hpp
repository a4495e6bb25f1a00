#pragma once

#include <string>
#include <vector>

#include "packet/stationery.hpp"

namespace ventfolio {

/// A line of a template that no clinic may leave out: a call-out, the head of a strip, and every line of a section with
/// the class `.act` or `.banner`, which are the rescue steps and the warnings. Of a partial with the comment `{{!
/// caution }}` each line is one.
struct Caution {
    std::string text;        ///< as written, tags included, one blank where there are more
    std::string conditions;  ///< the sections that it stands in: "#is_child ^uses_mask"
    std::string file;
    Place place;
};

/// In the order of the template; lines of partials with their own place.
std::vector<Caution> cautions_of(const Template& sheet);

/// Each caution of a built-in sheet must stand in the sheet of the same name, as it is and under the same conditions.
/// Of each sheet, the first that is missing is a finding: it points at the changed sheet, then at the caution.
void check_cautions(const Stationery& changed, const Stationery& built_in, std::vector<Finding>& findings);

}  // namespace ventfolio
