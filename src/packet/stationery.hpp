#pragma once

#include <map>
#include <string>
#include <vector>

#include "markup/template.hpp"
#include "sheets/checks/phrases.hpp"
#include "sheets/word_book.hpp"

namespace ventfolio {

/// What all homes share: the templates of one language, its words, and the ways of a region. Read once per process and
/// then only looked at.
struct Stationery {
    std::map<std::string, Template, std::less<>> sheets;  ///< by sheet name, "bedside-card"
    WordBook words;
    PhraseBook phrases;
    Region region;
    std::vector<SourceText> sources;  ///< of templates and word files, so that messages can quote them

    /// Sheet names in the order of the folder.
    std::vector<std::string> in_order() const;
};

/// The built-in stationery. Faults of its files are appended to `findings`.
///
/// Throws std::invalid_argument for a language or region that the program does not have; the message lists those it
/// has.
Stationery built_in_stationery(std::string_view language, std::string_view region, std::vector<Finding>& findings);

}  // namespace ventfolio
