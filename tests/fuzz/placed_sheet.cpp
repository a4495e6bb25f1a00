#include "placed_sheet.hpp"

#include "layout/misplaced.hpp"
#include "promise.hpp"

namespace ventfolio::fuzz {
std::optional<PlacedSheet> check_placed(const Document& document, const Furniture& furniture, const PageSetup& setup) {
    Measurer measurer;  // of its own: one for all inputs would grow without end
    std::vector<Finding> findings;
    PlacedSheet sheet = lay_out(document, furniture, setup, measurer, findings);
    for (const Finding& finding : findings)
        promise(!finding.rule.empty() && !finding.message.empty() && !finding.marks.empty(),
                "a finding has a rule, words and a mark", finding.rule);
    if (any_refuses(findings)) return std::nullopt;
    const std::string fault = testing::misplaced(sheet);
    promise(fault.empty(), "text keeps to its place", fault);
    return sheet;
}

}  // namespace ventfolio::fuzz
