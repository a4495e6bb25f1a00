#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "record/packet_record.hpp"
#include "units/calendar.hpp"

namespace ventfolio {

/// What a packet's record says about the code on a paper at a moment.
struct CodeMatch {
    enum class Answer {
        current,    ///< leave the paper up
        until,      ///< right until the next revision counts: `until`
        not_yet,    ///< the paper of a revision that does not count yet: `until` is when it does
        replaced,   ///< take it down; `sheet` has the code that counts
        withdrawn,  ///< take it down; the home needs no such sheet any more
        unknown,    ///< no paper of this home has or had this code
    };
    Answer answer = Answer::unknown;
    const RecordedSheet* sheet = nullptr;    ///< of the record; none where the code is unknown
    const EarlierCode* earlier = nullptr;    ///< the code as it was, where it is not the current one
    std::string until;                       ///< "2026-03-16 14:00"
    const RecordedSheet* nearest = nullptr;  ///< of an unknown code: a current one that differs in one character
};

/// `code` as read_sheet_code gives it. A code that is current and was used before is current.
CodeMatch match_code(const PacketRecord& record, std::string_view code, const Moment& at);

}  // namespace ventfolio
