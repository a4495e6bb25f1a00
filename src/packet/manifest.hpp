#pragma once

#include <string>
#include <vector>

namespace ventfolio {

/// What a packet folder says of itself in packet.json.
struct Manifest {
    struct Sheet {
        std::string name;   ///< "bedside-card"
        std::string place;  ///< "bed"; empty where the sheet has none
        std::string code;   ///< "K7M-2QD"
        std::size_t pages = 0;
        std::string file;  ///< the PDF that it stands in
    };
    std::string record_number;
    std::string revision;
    std::string effective;   ///< "2026-01-12 10:00"
    std::string printed_on;  ///< "2026-02-03"
    std::vector<Sheet> sheets;
};

/// The manifest as JSON, keys in a fixed order, with a line end.
std::string manifest_json(const Manifest& manifest);

}  // namespace ventfolio
