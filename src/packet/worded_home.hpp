#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "packet/followed_packet.hpp"
#include "packet/stationery.hpp"
#include "profile/finding.hpp"
#include "rules/household.hpp"
#include "sheets/document.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What a sheet lists of the others, and so after which it is made: `lists` in its front matter.
enum class Lists { nothing, findings, changes, codes };
Lists lists_of(const std::string& sheet, const Stationery& stationery);

/// All that the templates of one language can name for a home.
struct WordedHome {
    const Stationery* stationery;
    Printer printer;
    TemplateData data;
};

/// A home in each language in which its sheets are made: its own, that for strangers, and the one that stands under it.
class WordedHomes {
  public:
    /// `of_profile` are the rules' findings about the home; `followed` is null where no packet is followed. All of
    /// these must outlive it.
    WordedHomes(const Household& home, std::span<const Finding> of_profile, const Stationery& stationery,
                const FollowedPacket* followed);

    const WordedHome& of(const std::string& sheet) const { return in(stationery_.of(sheet)); }
    const WordedHome& in(const Stationery& language) const { return languages_[place_of(language)]; }

    /// Before a sheet is made that lists something of the others. `of_sheets` are the findings about these.
    void know(Lists what, const std::string& sheet, const std::vector<const Document*>& made,
              std::span<const Finding> of_sheets);

  private:
    WordedHome worded(const Stationery& stationery) const;
    void know(Lists what, const std::string& sheet, const std::vector<const Document*>& made,
              std::span<const Finding> of_sheets, WordedHome& worded);
    std::size_t place_of(const Stationery& language) const;
    void know_changes(WordedHome& worded, const std::string& notice, const std::vector<const Document*>& made);
    void number_leaves();

    const Household& home_;
    std::span<const Finding> of_profile_;
    const Stationery& stationery_;
    const FollowedPacket* followed_;
    std::vector<WordedHome> languages_;  ///< its own first
};

}  // namespace ventfolio
