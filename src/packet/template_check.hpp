#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "packet/print_home.hpp"
#include "packet/stationery.hpp"

namespace ventfolio {

/// The hard words on the sheets for those at home, each with a plainer one.
void check_plain_words(const Stationery& stationery, std::vector<Finding>& findings);

/// Language and name of a sheet.
using ReadSheet = std::pair<std::string, std::string>;

/// What the templates make of one home: everything that names, layout and the checks over finished sheets say of its
/// sheets, and how hard they are to read.
struct TemplateCheck {
    std::vector<Finding> findings;        ///< of templates; what is said of the profile alone is left out
    std::map<ReadSheet, double> figures;  ///< the hardest of its leaves: grade in English, ease in Spanish;
                                          ///< of sheets in one language
};
/// The sheets are laid out on the paper and in the type of `order`.
TemplateCheck check_templates_with(const SourceText& profile, Date on, const Stationery& stationery,
                                   const PrintOrder& order, Measurer& measurer);

}  // namespace ventfolio
