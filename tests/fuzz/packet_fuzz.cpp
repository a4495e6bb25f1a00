#include <cstddef>
#include <cstdint>

#include "promise.hpp"
#include "record/match_code.hpp"
#include "record/packet_record.hpp"

/// packet.json of a folder that somebody may have edited: a record is read whole or not at all, and what was read is
/// written and read again as the same.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace ventfolio;
    const std::string_view text{reinterpret_cast<const char*>(data), size};
    const ReadPacket read = read_packet_json(text);
    fuzz::promise(read.record.has_value() == read.fault.what.empty(), "a text is a record or has a fault", text);
    if (!read.record) return 0;
    const std::string written = packet_json(*read.record);
    const ReadPacket again = read_packet_json(written);
    fuzz::promise(again.record == read.record, "what was read reads back as the same", written);
    fuzz::promise(packet_json(*again.record) == written, "what was written is written again byte for byte", written);
    for (const RecordedSheet& sheet : read.record->sheets) {
        fuzz::promise(read.record->find(sheet.full_name()) != nullptr, "a sheet is found by its name", written);
        const CodeMatch match = match_code(*read.record, sheet.code, *Moment::parse("2026-02-03 12:00"));
        fuzz::promise(match.sheet != nullptr && match.answer != CodeMatch::Answer::unknown,
                      "the code of a sheet is known", written);
    }
    return 0;
}
