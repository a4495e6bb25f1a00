#pragma once

#include <span>
#include <string>
#include <vector>

#include "caseload/outage_report.hpp"
#include "layout/lay_out.hpp"
#include "packet/stationery.hpp"

namespace ventfolio {

/// The list of homes in an outage on paper: who is called, in which order, with room to write down when, with whom and
/// what came of it. `homes` are sorted (sort_for_calls).
Document outage_document(std::span<const HomeInOutage> homes, const OutageQuestion& question,
                         const Stationery& stationery);

/// The same as a PDF. Faults of the words are appended to `findings`; the bytes are then empty.
std::string outage_paper(std::span<const HomeInOutage> homes, const OutageQuestion& question,
                         const Stationery& stationery, Paper paper, Measurer& measurer, std::vector<Finding>& findings);

}  // namespace ventfolio
