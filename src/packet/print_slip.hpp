#pragma once

#include <span>
#include <vector>

#include "layout/lay_out.hpp"
#include "packet/stationery.hpp"
#include "rules/household.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// A sheet of a packet and how many pages it has.
struct SlipEntry {
    const Document* document = nullptr;
    std::size_t pages = 0;
};

/// The first leaf of a packet, for whoever prints it: which pages of the file are which sheet, on how many sides, how
/// many copies (`copies` of the profile; one where none is recorded) and on which paper. It guides no act at the bed,
/// has no code and is thrown away. Parts of one sheet that are many, such as the charts, have one line.
///
/// Pages count from 1 with the slip itself; each sheet begins on a front side. Words come from `slip:` of words.yaml.
PlacedSheet print_slip(std::span<const SlipEntry> sheets, const Household& home, const Stationery& stationery,
                       const PageSetup& setup, Measurer& measurer, std::vector<Finding>& findings);

}  // namespace ventfolio
