#pragma once

#include <string>
#include <vector>

#include "layout/drawing.hpp"
#include "pdf/pdf_error.hpp"

namespace ventfolio {

/// One sheet of a document.
struct PdfSheet {
    const PlacedSheet* placed = nullptr;
    /// What a reader shows before the page number, which starts again at 1 with each sheet: "Bedside card " gives
    /// "Bedside card 1". May be empty.
    std::string page_label;
    /// A side after the last page that says nothing of the sheet, so that the next one starts on a front side. May be
    /// null.
    const PlacedPage* blank_back = nullptr;
};

/// What a PDF file is made from.
struct PdfRequest {
    std::string title;     ///< shown in the title bar and kept in the file: the name of a paper, never of a person
    std::string language;  ///< BCP 47, of the document as a whole: "en-US"
    std::vector<PdfSheet> sheets;  ///< in print order; each becomes a bookmark
};

/// Draws sheets into a PDF file (ISO 32000-1, header 1.6) and returns its bytes.
///
/// The same request gives the same bytes: the file holds no date, no path and nothing of the machine. Fonts are
/// embedded with just the letters that are drawn. Items are drawn in the order in which they stand on the page.
///
/// Throws PdfError, and std::logic_error for a drawing that should never have been placed: a letter that its face does
/// not have, a coordinate that is not a number, a sheet without pages, no sheet at all.
///
///     write_pdf({.title = "Bedside card", .language = "en-US", .sheets = {{&placed, ""}}})
std::string write_pdf(const PdfRequest& request);

}  // namespace ventfolio
