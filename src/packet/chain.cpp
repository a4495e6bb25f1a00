#include "packet/chain.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <system_error>

namespace ventfolio {
namespace {

namespace fs = std::filesystem;

/// Nobody has so many orders; a longer chain goes round in a circle.
constexpr std::size_t kLongestChain = 10000;

void compare(const PacketRecord::Link& link, const PacketFolder& later, const PacketFolder& before,
             std::vector<FolderError>& faults) {
    if (before.record.record_number != later.record.record_number)
        faults.emplace_back(before.path, "holds the packet of another record number");
    else if (before.checksums != link.checksums)
        faults.emplace_back(before.path / kChecksumFile,
                            fmt::format("was changed after {} was made from it", later.record.revision));
    faults.insert(faults.end(), before.faults.begin(), before.faults.end());
}

constexpr std::size_t kRecordMost = std::size_t{16} * 1024 * 1024;

/// Whether the packet in a folder, if there is one, was made from this one.
bool follows(const fs::path& path, const PacketFolder& packet) {
    try {
        const auto text = FileSystem{}.read_file(open_folder(path), std::string{kRecordFile}, kRecordMost);
        // Among thousands of homes only one in the whole folder is read further.
        if (!text || text->find(packet.checksums) == std::string::npos) return false;
        const ReadPacket read = read_packet_json(*text);
        return read.record && read.record->follows && read.record->follows->checksums == packet.checksums;
    } catch (const std::system_error&) {
        return false;  // it is not the folder that was asked about
    }
}

}  // namespace

std::vector<FolderError> chain_faults(const PacketFolder& newest, FileSystem& files) {
    std::vector<FolderError> faults;
    PacketFolder later = newest;
    for (std::size_t length = 0; later.record.follows && length < kLongestChain; ++length) {
        const PacketRecord::Link link = *later.record.follows;
        try {
            PacketFolder before = read_packet_folder((later.path / link.folder).lexically_normal(), files);
            compare(link, later, before, faults);
            later = std::move(before);
        } catch (const FolderError& fault) {
            faults.emplace_back(fault.path(), fmt::format("{} ({} was made from {}, which is in it)", fault.cause(),
                                                          later.record.revision, link.revision));
            break;
        }
    }
    return faults;
}

std::vector<FolderError> chain_faults(const PacketFolder& newest) {
    FileSystem files;
    return chain_faults(newest, files);
}

std::vector<fs::path> successors(const PacketFolder& packet) {
    std::vector<fs::path> found;
    std::error_code error;
    const fs::path own = fs::canonical(packet.path, error);
    for (fs::directory_iterator entry{own.parent_path(), error}; !error && entry != fs::directory_iterator{};
         entry.increment(error)) {
        if (follows(entry->path(), packet)) found.push_back(entry->path());
    }
    std::ranges::sort(found);
    return found;
}

std::string seen_from(const fs::path& folder, const fs::path& from) {
    // A path of which nothing exists yet would stay relative.
    const fs::path there = fs::weakly_canonical(fs::absolute(folder));
    const fs::path here = fs::weakly_canonical(fs::absolute(from));
    const fs::path relative = there.lexically_relative(here);
    return relative.empty() ? there.string() : relative.generic_string();
}

}  // namespace ventfolio
