#pragma once

#include <string>
#include <vector>

#include "layout/drawing.hpp"
#include "layout/rich_text.hpp"
#include "profile/finding.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

enum class Paper { letter, a4 };

/// What stands on every page beside the sheet's own words. It comes in words of the sheet's language.
struct Furniture {
    Inlines who;                ///< the name for the sheet's audience
    Inlines identifier;         ///< the second identifier
    std::string page_of;        ///< "Page {page} of {pages}"
    Inlines revision;           ///< "R1  from 12 January 2026"
    std::vector<Inlines> foot;  ///< lines of the footer
    std::string code;           ///< the sheet code; in the footer, large enough to be read over the phone
    Inlines mark;               ///< "Not yet checked …"; empty on a checked sheet

    friend bool operator==(const Furniture&, const Furniture&) = default;
};

struct PageSetup {
    Paper paper = Paper::letter;
    double scale = 1;  ///< of all type: 1.5 for large print
};

/// Sets a document on pages. What does not fit goes on to the next page, and what cannot go on is a finding. The page
/// budget (`pages:` of the front matter) is a finding too.
///
/// What holds for the pages, unless a finding refuses them:
///   - each item lies inside the margins, and no text lies over another;
///   - each word of the document is there once, in its order; only headings of sections and heads of tables come again
///     where what they head goes on overleaf, and for each row of a table that is too wide for its page;
///   - no text of the body is smaller than kSmallestText, and each of its characters has a glyph;
///   - a page holds as much on Letter as on A4, so that a sheet breaks alike on both;
///   - the same document, furniture and setup give the same numbers, whatever the measurer has seen before.
///
/// The document must outlive the call only; the pages hold copies.
PlacedSheet lay_out(const Document& document, const Furniture& furniture, const PageSetup& setup, Measurer& measurer,
                    std::vector<Finding>& findings);

/// The placed drawing as text, one item a line, for looking at and for comparing.
std::string dump(const PlacedSheet& sheet);

}  // namespace ventfolio
