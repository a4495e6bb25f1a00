#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "caseload/homes.hpp"
#include "caseload/record_numbers.hpp"
#include "packet/print_home.hpp"
#include "packet/stationery_shelf.hpp"
#include "profile/finding.hpp"
#include "units/calendar.hpp"

namespace ventfolio {

enum class Outcome {
    printed,
    current,   ///< the packet in its folder is what would be printed; it was left alone
    refused,   ///< findings stop it, or another profile has its record number
    unusable,  ///< a file or a folder cannot be used
};
std::string_view name_of(Outcome outcome);

/// One home in the summary of a run. Says nothing about a person but the record number.
struct HomeOutcome {
    std::string file;
    Outcome outcome = Outcome::unusable;
    std::string record_number;  ///< empty where it is not known
    std::string revision;       ///< of printed and current, as all below
    std::size_t sheets = 0;
    std::size_t pages = 0;
    std::string folder;
    std::string reason;  ///< of refused and unusable: "stopped by high-pressure-alarm-below-peak"
};

/// What became of one home, with all that there is to say about it.
struct HomeResult {
    HomeOutcome outcome;
    SourceText profile;                      ///< for quoting it
    const Stationery* stationery = nullptr;  ///< for quoting its templates; null where none was chosen
    std::vector<Finding> findings;
    std::vector<std::string> missing_sheets;  ///< asked for by name, and this home has none
    std::string fault;                        ///< of what is unusable: the reason, with the file that it is about
};

/// How homes are printed.
struct CaseloadOrder {
    FoundHomes homes;
    std::optional<Shard> shard;  ///< only the homes of this part
    Date on;
    PrintOrder sheets;
    StationeryChoice stationery;
    std::filesystem::path folder;
    bool by_record_number = true;  ///< each into a folder below that one, named after its record number
    bool resume = false;           ///< packets that are current are left alone
    std::size_t jobs = 1;          ///< threads
    ReadProfileFile read_file;
};

/// Whom to tell. Both are called in the calling thread; `read` may be empty.
struct CaseloadListener {
    std::function<void(const HomeResult&)> home;  ///< in the order of the homes, whatever is finished first
    std::function<void(std::size_t done, std::size_t of)> read;
};

/// The homes of the order's part of the caseload.
FoundHomes homes_of(const CaseloadOrder& order);

/// Prints homes. What happens to one never stops the others: each is told as what it became. Two profiles with one
/// record number, wherever in the caseload they are, are both refused, before anything of them is written. The same
/// homes, templates and day give the same bytes and the same results with any number of jobs; nothing of a home is
/// kept once it is told.
///
/// Throws FolderError if the folder cannot be made.
void print_homes(const CaseloadOrder& order, const StationeryShelf& shelf, const CaseloadListener& listener);

}  // namespace ventfolio
