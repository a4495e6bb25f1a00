#pragma once

#include <vector>

#include "packet/packet_folder.hpp"

namespace ventfolio {

/// Follows a packet back to the first one of the home and says which of the folders is missing, was changed after the
/// next one was made from it, or belongs to another home. Empty if all links hold. Behind a folder that cannot be read
/// nothing is known, so the walk ends there.
std::vector<FolderError> chain_faults(const PacketFolder& newest, FileSystem& files);
std::vector<FolderError> chain_faults(const PacketFolder& newest);

/// Folders beside this one that hold a packet of the same home that follows it: then the question was asked of an old
/// packet.
std::vector<std::filesystem::path> successors(const PacketFolder& packet);

/// Where a folder is, seen from another one: "../R1".
std::string seen_from(const std::filesystem::path& folder, const std::filesystem::path& from);

}  // namespace ventfolio
