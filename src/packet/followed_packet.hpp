#pragma once

#include <string>
#include <vector>

#include "record/packet_record.hpp"
#include "rules/household.hpp"
#include "sheets/document.hpp"
#include "sheets/listed_change.hpp"

namespace ventfolio {

/// One sheet of a home when one packet follows another.
struct SheetChange {
    enum class State {
        kept,       ///< the paper in the home still says the same
        replaced,   ///< it says something else now
        added,      ///< the home had none
        withdrawn,  ///< the home needs none any more
    };
    State state = State::kept;
    std::string name;                       ///< "bedside-card/bed"
    std::string title;                      ///< as it stands on the new paper, or on the old one that is withdrawn
    const Document* document = nullptr;     ///< the new one; none where it is withdrawn
    const RecordedSheet* before = nullptr;  ///< none where it is added
};

/// The packet that the one to be printed follows.
struct FollowedPacket {
    const PacketRecord* record = nullptr;
    const Household* home = nullptr;  ///< as it was
    std::vector<ListedChange> edited;
    std::vector<ListedChange> derived;
};

/// How the sheets of a home stand to those of the packet before, in the order of the folder; what is withdrawn comes
/// last. A sheet that lists others (`lists` in its front matter) is never kept.
std::vector<SheetChange> sheet_changes(const FollowedPacket& followed, const std::vector<const Document*>& documents);

}  // namespace ventfolio
