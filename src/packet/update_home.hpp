#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "layout/lay_out.hpp"
#include "packet/followed_packet.hpp"
#include "packet/packet_folder.hpp"
#include "packet/stationery.hpp"
#include "profile/finding.hpp"

namespace ventfolio {

/// What became of one sheet, and why.
struct UpdatedSheet {
    std::string name;  ///< "bedside-card/bed"
    SheetChange::State state = SheetChange::State::kept;
    std::string code_was;  ///< empty where the home had none
    std::string code_now;  ///< empty where it needs none any more
    // Why the paper in the home no longer holds; for what lists the other sheets, none of them.
    bool by_profile = false;  ///< somebody edited something that stands on it, or that a number on it rests on
    bool by_words = false;    ///< another version of the program or of the templates says it otherwise
    bool by_time = false;     ///< a day has come that it depends on, such as a birthday
};

/// A home from the packet before to the next one, still in memory.
struct UpdatedHome {
    std::vector<Finding> findings;
    bool refused = false;               ///< nothing is printed: `files` is then empty
    std::vector<ListedChange> edited;   ///< known as soon as the profile can be read, refused or not
    std::vector<ListedChange> derived;  ///< what follows from it
    std::vector<UpdatedSheet> sheets;   ///< in the order of the folder
    PacketRecord record;
    std::vector<FolderFile> files;
    std::size_t pages = 0;  ///< of the sheets that are printed
};

/// Compares a profile with the one that a packet was printed from, decides for each sheet whether the paper in the home
/// still says the same, and prints those that do not, with what lists the others: the change notice, the checking
/// record and the folder index. `target` is where the new folder will be; nothing is written. Language, region, paper
/// and size of type are those of the packet before.
///
/// Throws FolderError if the packet before is no ground to stand on: single sheets only, a file missing or changed, a
/// profile that cannot be read.
UpdatedHome update_home(const SourceText& profile, Date on, const PacketFolder& from,
                        const std::filesystem::path& target, const Stationery& stationery, Measurer& measurer);

}  // namespace ventfolio
