#pragma once

#include <span>
#include <string>
#include <vector>

#include "packet/drawn_sheets.hpp"
#include "packet/packet_folder.hpp"
#include "packet/stationery.hpp"
#include "profile/finding.hpp"
#include "record/packet_record.hpp"
#include "rules/household.hpp"

namespace ventfolio {

/// What words and pages are made with: packets that were made with another one may say things otherwise.
PacketRecord::Made made_with(const Stationery& stationery, const PageSetup& setup);

/// What a packet records of a home, all but its sheets: who and when, what it was made with, what was found and what
/// the numbers rest on.
PacketRecord record_of(const Household& household, std::span<const Finding> findings, const Stationery& stationery,
                       const PageSetup& setup);

/// A sheet that this packet prints into `file`.
RecordedSheet recorded(const DrawnSheet& sheet, std::string file, const PacketRecord& packet);

/// Adds the list of checksums, which names all files; `others` stay in the folder beside them.
void add_checksums(std::vector<FolderFile>& files, std::span<const Checksum> others = {});

/// What makes a packet of the drawings: the record, the profile as it is, and the checksums of all.
void add_record(std::vector<FolderFile>& files, const PacketRecord& record, const SourceText& profile,
                std::span<const Checksum> others = {});

}  // namespace ventfolio
