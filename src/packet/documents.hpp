#pragma once

#include <span>
#include <string>
#include <vector>

#include "packet/followed_packet.hpp"
#include "packet/stationery.hpp"
#include "rules/household.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// The sheets of one home as document trees: a sheet that is made for each place gives one for each, and so does a
/// sheet for each of its leaves that the home has (`only_if` in a template's front matter). `of_profile` are the rules'
/// findings about the home; some gaps stand on the paper. Faults of the templates, and what the checks over finished
/// sheets find, are appended to `findings`.
///
/// A sheet that lists findings or codes of the others (`lists` in its front matter) is made after them: they are made
/// too, and only those in `sheets` are returned. With `followed`, sheets may tell what changes from that packet.
std::vector<Document> make_documents(const Household& home, std::span<const Finding> of_profile,
                                     const Stationery& stationery, const std::vector<std::string>& sheets,
                                     std::vector<Finding>& findings, const FollowedPacket* followed = nullptr);

/// The sheets that must be made so that these can be: all of them where one lists the others.
std::vector<std::string> needed_for(const std::vector<std::string>& sheets, const Stationery& stationery);

/// A sheet that is made for each place has each of its faults once for each place: one of each is left.
void leave_one_of_each(std::vector<Finding>& findings);

/// The audience that a sheet's front matter names; nothing for a word that is none.
std::optional<Audience> audience_from(std::string_view word);

}  // namespace ventfolio
