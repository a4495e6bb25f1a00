#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/lay_out.hpp"
#include "packet/folder_writer.hpp"
#include "packet/packet_folder.hpp"
#include "packet/stationery.hpp"
#include "profile/finding.hpp"
#include "profile/profile.hpp"
#include "profile/read_profile.hpp"
#include "record/packet_record.hpp"

namespace ventfolio {

/// What is to be printed, and how.
struct PrintOrder {
    std::vector<std::string> sheets;  ///< by name; empty: the whole packet
    bool separate = false;            ///< a file for each sheet, no packet.pdf
    std::optional<Paper> paper;       ///< else the region's
    bool large_print = false;
    std::optional<Moment> outage_start;  ///< the outage plan then prints hours of the clock
    bool dump_layout = false;            ///< the placed drawing as text, beside each PDF

    /// Names of the sheets, in the order in which they are printed.
    std::vector<std::string> names(const Stationery& stationery) const;
    PageSetup setup(const Stationery& stationery) const;
    /// All sheets go into packet.pdf.
    bool in_one_file() const { return sheets.empty() && !separate; }
    /// The file, without its ending, in which a sheet is printed.
    std::string stem_of(const std::string& sheet) const { return in_one_file() ? "packet" : sheet; }
};

/// A home from its profile to the files of its folder, still in memory.
struct PrintedHome {
    std::vector<Finding> findings;  ///< of the profile, the templates and the finished sheets
    bool refused = false;           ///< something stops these sheets: `drawings` is then empty
    /// Asked for by name, and this home has none: a letter without its permission. Nothing is printed then.
    std::vector<std::string> missing_sheets;
    std::vector<FolderFile> drawings;  ///< PDFs, and layouts as text where they were asked for
    PacketRecord record;
    std::size_t pages = 0;
};

/// Reads, checks, words, lays out and draws one home. Nothing is written.
///
/// The same profile, templates, order and date give the same bytes.
PrintedHome print_home(const SourceText& profile, Date on, const PrintOrder& order, const Stationery& stationery,
                       Measurer& measurer);

/// The same of a home that has been read and checked: its stationery can be chosen by what its profile says.
struct CheckedHome;
PrintedHome print_home(CheckedHome home, Date on, const PrintOrder& order, const Stationery& stationery,
                       Measurer& measurer);

/// The files of the folder: the drawings, the record, the profile as it is, the checksums of all. `before` is the
/// packet in the folder that is to be replaced. Of the same home and revision, its earlier codes and the packet that it
/// follows stay known, and single sheets join those that are there.
///
/// Throws FolderError if single sheets would go beside a whole packet that says something else.
std::vector<FolderFile> folder_files(PrintedHome home, const SourceText& profile, const PacketFolder* before = nullptr);

/// Reads and checks only: the findings of the reader and of the rules, in the order of the file.
struct CheckedHome {
    Profile profile;
    std::vector<Finding> findings;
    bool readable = false;  ///< the reader refused nothing, so the rules have judged it
};
/// `region` gives the number for emergencies where the profile has none; null: the home is only judged, not worded.
CheckedHome check_home(const SourceText& profile, Date on, const Region* region = nullptr);
/// The same of a profile that has been read: its region can be chosen by what it says.
CheckedHome check_home(ReadResult read, const SourceText& profile, Date on, const Region* region);

/// What the templates and the checks over finished sheets say about a home: of each sheet that its profile does not
/// stop. Nothing is laid out.
std::vector<Finding> check_sheets(const CheckedHome& home, Date on, const Stationery& stationery);

}  // namespace ventfolio
