#include "sheets/document_checks.hpp"

#include <fmt/format.h>

#include <stdexcept>

#include "sheets/checks/checks.hpp"

namespace ventfolio {

void check_document(const Document& document, Audience audience, const Household& home, const PhraseBook& phrases,
                    std::vector<Finding>& findings) {
    const sheet_check::JudgedDocument judged{document, audience, home, phrases};
    for (const auto& [name, check] : sheet_check::all_checks()) {
        const RuleText* rule = find_rule(name);
        if (rule == nullptr) throw std::logic_error{fmt::format("the rule book has no rule {}", name)};
        sheet_check::DocumentReport report{*rule, document, findings};
        check(judged, report);
    }
}

}  // namespace ventfolio
