#pragma once

#include <compare>
#include <string>
#include <string_view>
#include <vector>

#include "profile/profile.hpp"

namespace ventfolio {

/// Where a copy of a sheet is kept.
struct PaperPlace {
    enum class Kind {
        recorded,  ///< at `words`
        folder,    ///< in the folder: nothing else is recorded, and it is paper for a folder
        unknown,   ///< it hangs or is carried somewhere that nobody wrote down
    };
    Kind kind = Kind::recorded;
    std::string words;
    friend bool operator==(const PaperPlace&, const PaperPlace&) = default;
};

/// Numbers, in `copies` of a profile, of those that are of a sheet; `name` is its own ("bedside-card/bed"), or that of
/// the sheet ("setting-check") or of all its leaves.
std::vector<std::size_t> recorded_copies(const Profile& profile, const std::vector<std::string>& names);
/// How many papers a recorded copy stands for.
std::size_t number_of_papers(const PaperCopy& copy);
/// Where the paper of a sheet belongs if no copy is recorded, by the audience of its template.
PaperPlace usual_place(std::string_view audience);

/// Each copy of a sheet, in the order of the profile; where none is recorded, the one that there must be.
std::vector<PaperPlace> places_of_copies(const Profile& profile, const std::vector<std::string>& names,
                                         std::string_view audience);

}  // namespace ventfolio
