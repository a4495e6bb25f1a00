#pragma once

#include <string>
#include <vector>

#include "packet/followed_packet.hpp"
#include "packet/paper_places.hpp"
#include "packet/stationery.hpp"
#include "sheets/printed_value.hpp"

namespace ventfolio {

/// One paper at its place, when one packet follows another: the old one comes down, the new one goes up.
struct PaperSwap {
    enum class New {
        none,         ///< nothing goes up
        coded,        ///< with `new_code`
        at_its_foot,  ///< a sheet that lists the code of the notice: its own cannot stand on the notice
        the_notice,   ///< the paper that tells all this
    };
    PrintedValue title;
    std::string old_code;  ///< empty where nothing comes down
    New arrives = New::none;
    std::string new_code;
    bool filed = false;  ///< the old one has been written on: it is kept in a file (`when_replaced: file`)
};

/// All that is done at one place of the home.
struct PaperStop {
    PaperPlace place;
    std::vector<PaperSwap> swaps;
};

/// What the papers of a home become when a packet is followed.
struct PaperWalk {
    std::vector<PaperStop> stops;        ///< places in the order of the profile, then the folder, then those not known
    std::vector<SheetChange> staying;    ///< sheets whose paper still says the same
    std::vector<SheetChange> to_others;  ///< letters that say something new
    std::size_t down = 0;                ///< papers
    std::size_t up = 0;
};

/// The sheets that are made when the walk is: the notice itself, and those made after it.
struct LaterSheets {
    std::string notice;
    std::vector<std::string> after;
};

/// One walk through the home: a row for each paper that goes or comes. A paper that stays has none, unless it moves: it
/// then leaves its old place and comes to its new one, under one code.
///
/// Old papers are looked for where the profile before says that they are.
PaperWalk paper_walk(const FollowedPacket& followed, const Profile& now, const std::vector<const Document*>& made,
                     const LaterSheets& later, const Stationery& stationery);

}  // namespace ventfolio
