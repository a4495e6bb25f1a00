#include "packet/single_sheet.hpp"

#include "pdf/write_pdf.hpp"
#include "profile/refusal.hpp"

namespace ventfolio {

std::string single_sheet(const Document& document, const Furniture& furniture, Paper paper, Measurer& measurer,
                         std::vector<Finding>& findings) {
    std::vector<Finding> faults;
    const PlacedSheet placed = lay_out(document, furniture, {paper, 1.0}, measurer, faults);
    const bool refused = any_refuses(faults);
    findings.insert(findings.end(), faults.begin(), faults.end());
    if (refused) return {};
    PdfRequest request;
    request.title = placed.title;
    request.language = document.language;
    request.sheets.push_back({&placed, placed.title + " ", nullptr});
    return write_pdf(request);
}

}  // namespace ventfolio
