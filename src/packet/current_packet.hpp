#pragma once

#include "packet/packet_folder.hpp"
#include "packet/print_home.hpp"
#include "packet/stationery.hpp"

namespace ventfolio {

/// Whether a packet holds what print_home and folder_files would put into its folder, so that nothing need be printed.
///
/// Times of files say nothing: a folder is copied, a template is corrected. What counts is
///   - the profile, byte for byte: copies to print and the foot of a page follow from it, and have no code;
///   - what the packet was made with: version, templates, language, region, paper, size of type;
///   - the sheets as they would read on this day, each with its code, and none beside them. The code tells whether a
///     sheet is marked "not yet checked";
///   - every file, by its checksum.
///
/// `on` may be another day than that of the packet: most days change nothing that stands on paper, a birthday does.
bool is_current(const PacketFolder& packet, const SourceText& profile, Date on, const PrintOrder& order,
                const Stationery& stationery);

}  // namespace ventfolio
