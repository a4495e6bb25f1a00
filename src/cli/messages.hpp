#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "packet/packet_folder.hpp"
#include "profile/finding.hpp"

namespace ventfolio {

/// Prints findings to standard error; values of private fields are masked unless that is a terminal or `unmasked`.
/// `profile` is null where only the program's own files are quoted, which hold nothing private.
void print_findings(const std::vector<Finding>& findings, const SourceText* profile,
                    std::span<const SourceText> stationery, bool quiet, bool unmasked = false);

/// Says on standard error which of the packets before this one is not as it was, and what that means.
void print_chain_faults(const PacketFolder& packet);

/// The value of this field may not be shown to whoever reads a log: it may not hang on the wall.
bool is_private_field(std::string_view path);

}  // namespace ventfolio
