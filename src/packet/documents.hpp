#pragma once

#include <span>
#include <string>
#include <vector>

#include "layout/lay_out.hpp"
#include "packet/stationery.hpp"
#include "rules/household.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// The sheets of one home as document trees: a sheet that is made for each place gives one for each, and so does a
/// sheet for each of its leaves that the home has (`only_if` in a template's front matter). `of_profile` are the rules'
/// findings about the home; some gaps stand on the paper. Faults of the templates, and what the checks over finished
/// sheets find, are appended to `findings`.
std::vector<Document> make_documents(const Household& home, std::span<const Finding> of_profile,
                                     const Stationery& stationery, const std::vector<std::string>& sheets,
                                     std::vector<Finding>& findings);

/// What stands on every page of a sheet beside its own words.
Furniture furniture_for(const Document& document, const Household& home, const Stationery& stationery,
                        const std::string& code, bool not_yet_checked);

/// The audience that a sheet's front matter names; nothing for a word that is none.
std::optional<Audience> audience_from(std::string_view word);

}  // namespace ventfolio
