#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/lay_out.hpp"
#include "packet/folder_writer.hpp"
#include "packet/stationery.hpp"
#include "profile/finding.hpp"
#include "rules/household.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// A sheet from its tree to its pages.
struct DrawnSheet {
    Document document;
    std::string code;
    PlacedSheet placed;
};

/// Lays the sheets out, each with the furniture of this home. What does not fit is appended to `findings`.
std::vector<DrawnSheet> draw_sheets(std::vector<Document> documents, const Household& household,
                                    const Stationery& stationery, const PageSetup& setup, Measurer& measurer,
                                    std::vector<Finding>& findings);

/// What all files of a home are made with.
struct Printing {
    const Stationery& stationery;
    PlacedPage blank;                 ///< back of a sheet with an odd number of pages
    std::optional<PlacedSheet> slip;  ///< first leaf of a whole packet
    bool dump_layout = false;
};

/// What prints the sheets of a packet into one file begins with the slip. Its own faults are appended to `findings`.
Printing printing_for(const std::vector<DrawnSheet>& sheets, bool with_slip, const Household& household,
                      const Stationery& stationery, const PageSetup& setup, Measurer& measurer,
                      std::vector<Finding>& findings);

/// `stem`.pdf, and beside it the placed drawing as text if that was asked for.
std::vector<FolderFile> drawn_files(const std::string& stem, const std::vector<const DrawnSheet*>& sheets,
                                    const Printing& printing);

/// All sheets, or those of one name.
std::vector<const DrawnSheet*> all_of(const std::vector<DrawnSheet>& sheets, std::string_view name = {});

}  // namespace ventfolio
