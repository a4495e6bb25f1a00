#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "profile/audience.hpp"
#include "profile/finding.hpp"
#include "rules/household.hpp"
#include "rules/rule_book.hpp"
#include "sheets/checks/passages.hpp"
#include "sheets/checks/phrases.hpp"
#include "sheets/document.hpp"

namespace ventfolio::sheet_check {

/// A finished sheet cut into sentences, the home it is for, and the phrases of its language.
struct JudgedDocument {
    JudgedDocument(const Document& document, Audience audience, const Household& home, const PhraseBook& phrases);

    const Document& document;
    Audience audience;
    const Household& home;
    const PhraseBook& phrases;
    std::vector<Passage> passages;
    std::vector<Sentence> sentences;  ///< in the order of reading
};

/// Where a check reports. Rule name, severity and sentence come from the book; the place is the template's.
class DocumentReport {
  public:
    using Numbers = std::vector<std::pair<std::string, std::string>>;

    DocumentReport(const RuleText& rule, const Document& document, std::vector<Finding>& findings)
        : rule_{rule}, document_{document}, findings_{findings} {}

    /// A finding at a line of the template; `numbers` fill the {names} of the rule's sentence.
    void at(std::size_t line, Numbers numbers, std::string field = {});
    /// A finding about a sentence, as {sentence}; what was said in it may be a value's own text.
    void at(const Sentence& sentence, std::size_t offset, Numbers numbers = {});

  private:
    const RuleText& rule_;
    const Document& document_;
    std::vector<Finding>& findings_;
};

using DocumentCheck = void (*)(const JudgedDocument&, DocumentReport&);

}  // namespace ventfolio::sheet_check
