#include <fmt/format.h>

#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/world.hpp"
#include "packet/chain.hpp"
#include "packet/stationery.hpp"
#include "record/match_code.hpp"
#include "record/sheet_code.hpp"
#include "sheets/printer.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

using Answer = CodeMatch::Answer;

/// A moment of the record as the home writes it.
class Clock {
  public:
    explicit Clock(const Stationery& stationery) : printer_{stationery.words, stationery.region} {}

    std::string said(const std::string& time) const {
        const auto moment = Moment::parse(time);
        return moment ? with_replaced(printer_.moment(*moment), kNoBreakSpace, " ") : time;
    }

  private:
    Printer printer_;
};

std::string from_when(const std::string& revision, const std::string& effective, const Clock& clock) {
    return effective.empty() ? revision : fmt::format("{}, in force from {}", revision, clock.said(effective));
}

std::string unknown(const CodeMatch& match, const PacketRecord& record) {
    const std::string hint = match.nearest ? fmt::format(" One character away is {}, {}: have it read out again.",
                                                         match.nearest->code, match.nearest->full_name())
                                           : "";
    return fmt::format("unknown; no paper of {} has this code, take it down.{}", record.record_number, hint);
}

std::string answer_line(const CodeMatch& match, const PacketRecord& record, const Clock& clock) {
    if (match.answer == Answer::unknown) return unknown(match, record);
    const RecordedSheet& sheet = *match.sheet;
    const std::string name = sheet.full_name();
    const std::string now = fmt::format("{} of {}", sheet.code, from_when(sheet.revision, sheet.effective, clock));
    switch (match.answer) {
        case Answer::current:
            return fmt::format("current; {}, {}.", name, from_when(sheet.revision, sheet.effective, clock));
        case Answer::not_yet:
            return fmt::format("not yet; {}, {}: until then the old one stays up.", name,
                               from_when(sheet.revision, sheet.effective, clock));
        case Answer::until:
            return fmt::format("right until {}; {}, {}{}.", clock.said(match.until), name, match.earlier->revision,
                               sheet.code.empty() ? ", then no such sheet" : ", then " + now);
        case Answer::replaced:
            return fmt::format("replaced; {} of {}, take it down: the right one is {}.", name, match.earlier->revision,
                               now);
        case Answer::withdrawn:
            return fmt::format("withdrawn; {} of {}, take it down: this home needs no such sheet any more.", name,
                               match.earlier->revision);
        case Answer::unknown:
            break;
    }
    return {};
}

}  // namespace

int match_command(const MatchOptions& options) {
    const auto code = read_sheet_code(options.code);
    if (!code) {
        fmt::print(stderr,
                   "ventfolio: \"{}\" is no sheet code; it is six digits and letters, without U, as K7M-2QD: have it "
                   "read out again\n",
                   options.code);
        return kUsage;
    }
    const PacketFolder packet = read_packet_folder(options.folder);
    const StationeryShelf shelf = open_shelf();
    const Stationery* stationery = without_faults(shelf.for_home(Profile{}, {}, &packet.record), true);
    if (stationery == nullptr) return kUnusable;
    for (const FolderError& fault : packet.faults)
        fmt::print(stderr, "ventfolio: {}; restore it from a copy\n", fault.what());
    print_chain_faults(packet);
    if (const auto newer = successors(packet); !newer.empty()) {
        fmt::print("{}: not asked of the newest packet; {} in {} is followed by {}: ask there.\n", *code,
                   packet.record.revision, packet.path.string(), newer.front().string());
        return kFindings;
    }
    const CodeMatch match = match_code(packet.record, *code, options.at);
    fmt::print("{}: {}\n", *code, answer_line(match, packet.record, Clock{*stationery}));
    const bool right = match.answer == Answer::current || match.answer == Answer::until;
    return right ? kDone : kFindings;
}

}  // namespace ventfolio
