#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ventfolio {

/// A code that a sheet had before.
struct EarlierCode {
    std::string code;       ///< "K7M-2QD"
    std::string revision;   ///< that it was printed with
    std::string effective;  ///< from when that revision counted
    std::string until;      ///< from when the next one counted
    friend bool operator==(const EarlierCode&, const EarlierCode&) = default;
};

/// One sheet of a home, and the paper that shows it.
struct RecordedSheet {
    enum class State {
        printed,  ///< by this packet
        kept,     ///< the paper of an earlier packet still says the same
    };
    std::string name;   ///< "bedside-card"
    std::string place;  ///< "bed"; empty where the sheet has none
    std::string title;  ///< as it stands on the paper
    std::string code;   ///< "K7M-2QD"
    // As they stand on the paper: of the packet that printed it.
    std::string revision;
    std::string effective;
    std::string printed_on;
    std::size_t pages = 0;
    State state = State::printed;
    std::string file;                  ///< the PDF that it stands in
    std::string folder;                ///< that holds the file, seen from this packet's folder; "." is this one
    std::vector<EarlierCode> earlier;  ///< the last one first

    /// "bedside-card/bed": the name of its document.
    std::string full_name() const { return place.empty() ? name : name + "/" + place; }
    friend bool operator==(const RecordedSheet&, const RecordedSheet&) = default;
};

/// What a packet says of itself in packet.json. Its form is published: packet_schema.json, printed by
/// `ventfolio schema --of packet`.
struct PacketRecord {
    /// The packet before, and the SHA-256 of its list of checksums, which names every file of it.
    struct Link {
        std::string folder;  ///< seen from this packet's folder: "../R1"
        std::string revision;
        std::string checksums;  ///< 64 digits
        friend bool operator==(const Link&, const Link&) = default;
    };
    /// What the words and the pages were made with.
    struct Made {
        std::string version;    ///< of ventfolio
        std::string templates;  ///< SHA-256 over the templates and word files
        std::string language;   ///< "en"
        std::string region;     ///< "us"
        std::string paper;      ///< "letter" or "a4"
        bool large_print = false;
        friend bool operator==(const Made&, const Made&) = default;
    };
    struct Found {
        std::string rule;
        std::string severity;
        bool accepted = false;
        std::string message;
        friend bool operator==(const Found&, const Found&) = default;
    };
    struct Accepted {
        std::string rule;
        std::string by;
        std::string date;
        std::string reason;
        friend bool operator==(const Accepted&, const Accepted&) = default;
    };
    /// What a number on the paper rests on.
    struct Source {
        std::string about;  ///< rule or calculator
        std::string source;
        friend bool operator==(const Source&, const Source&) = default;
    };

    std::string record_number;
    std::string revision;
    std::string effective;   ///< "2026-01-12 10:00"
    std::string printed_on;  ///< "2026-02-03"
    bool whole = true;       ///< all sheets of the home, not a few by name
    Made made;
    std::optional<Link> follows;
    std::vector<RecordedSheet> sheets;     ///< all that are current, in the order of the folder
    std::vector<RecordedSheet> withdrawn;  ///< that the home had and does not need any more; `code` is empty
    std::vector<Found> findings;
    std::vector<Accepted> acceptances;
    std::vector<Source> sources;

    const RecordedSheet* find(std::string_view full_name) const;
    friend bool operator==(const PacketRecord&, const PacketRecord&) = default;
};

/// As JSON, keys in a fixed order, with a line end.
std::string packet_json(const PacketRecord& record);

/// Why a text is no packet.json, in words for a terminal: "sheets.3.code is not a sheet code".
struct PacketFault {
    std::string what;
};

/// Reads what packet_json wrote. Everything must be there and of its kind: half a record would give wrong answers.
struct ReadPacket {
    std::optional<PacketRecord> record;
    PacketFault fault;  ///< where there is no record
};
ReadPacket read_packet_json(std::string_view text);

}  // namespace ventfolio
