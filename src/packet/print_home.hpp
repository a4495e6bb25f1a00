#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/lay_out.hpp"
#include "packet/folder_writer.hpp"
#include "packet/stationery.hpp"
#include "profile/finding.hpp"
#include "profile/profile.hpp"

namespace ventfolio {

/// What is to be printed, and how.
struct PrintOrder {
    std::vector<std::string> sheets;  ///< by name; empty: the whole packet
    bool separate = false;            ///< a file for each sheet, no packet.pdf
    std::optional<Paper> paper;       ///< else the region's
    bool large_print = false;
    std::optional<Moment> outage_start;  ///< the outage plan then prints hours of the clock
    bool dump_layout = false;            ///< the placed drawing as text, beside each PDF
};

/// A home from its profile to the files of its folder, still in memory.
struct PrintedHome {
    std::vector<Finding> findings;  ///< of the profile, the templates and the finished sheets
    bool refused = false;           ///< something stops these sheets: `files` is then empty
    /// Asked for by name, and this home has none: a letter without its permission. Nothing is printed then.
    std::vector<std::string> missing_sheets;
    std::string record_number;
    std::string revision;
    std::vector<FolderFile> files;
    std::size_t pages = 0;
    std::vector<std::string> sheet_names;  ///< of what was printed, in folder order
};

/// Reads, checks, words, lays out and draws one home. Nothing is written.
///
/// The same profile, templates, order and date give the same bytes.
PrintedHome print_home(const SourceText& profile, Date on, const PrintOrder& order, const Stationery& stationery,
                       Measurer& measurer);

/// Reads and checks only: the findings of the reader and of the rules, in the order of the file.
struct CheckedHome {
    Profile profile;
    std::vector<Finding> findings;
    bool readable = false;  ///< the reader refused nothing, so the rules have judged it
};
CheckedHome check_home(const SourceText& profile, Date on);

/// What the templates and the checks over finished sheets say about a home: of each sheet that its profile does not
/// stop. Nothing is laid out.
std::vector<Finding> check_sheets(const CheckedHome& home, Date on, const Stationery& stationery);

}  // namespace ventfolio
