#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "packet/file_system.hpp"
#include "packet/folder_writer.hpp"
#include "profile/place.hpp"
#include "record/checksums.hpp"
#include "record/packet_record.hpp"

namespace ventfolio {

// The files of a packet folder beside its PDFs.
inline constexpr std::string_view kRecordFile = "packet.json";
inline constexpr std::string_view kProfileFile = "profile.yaml";  ///< as it was
inline constexpr std::string_view kChecksumFile = "SHA256SUMS";   ///< of all others; `sha256sum -c` checks it

/// A packet as it was written to a folder.
struct PacketFolder {
    std::filesystem::path path;
    PacketRecord record;
    SourceText profile;
    std::vector<Checksum> files;
    std::string checksums;  ///< SHA-256 of the list of checksums: names all that the folder holds
    /// What is missing or was changed since, beside the record: then a PDF, say, is not what the record tells of.
    std::vector<FolderError> faults;
};

/// Reads the packet in a folder and compares every file with its checksum.
///
/// Throws FolderError if the record cannot be relied on: there is none, its checksum does not fit, it is only a half,
/// or the folder or its list cannot be read.
PacketFolder read_packet_folder(const std::filesystem::path& path, FileSystem& files);
PacketFolder read_packet_folder(const std::filesystem::path& path);

/// The same for a folder that a new packet is to replace; nothing where there is none, or no packet in it.
std::optional<PacketFolder> packet_to_replace(const std::filesystem::path& path);

}  // namespace ventfolio
