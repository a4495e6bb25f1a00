#include "packet/packet_folder.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <system_error>

#include "record/sha256.hpp"

namespace ventfolio {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kFileMost = std::size_t{256} * 1024 * 1024;

class FolderReader {
  public:
    FolderReader(const fs::path& path, FileSystem& files) : path_{path}, files_{files} {
        try {
            folder_ = open_folder(fs::canonical(path));
        } catch (const std::system_error& error) {
            throw FolderError{path, error.code().message()};
        }
    }

    PacketFolder read() {
        PacketFolder packet;
        packet.path = path_;
        const std::string list = required(
            kChecksumFile, "is missing, so this is no whole packet; restore it from a copy, or name another folder");
        packet.checksums = sha256_hex(list);
        const auto files = read_checksum_list(list);
        if (!files) throw FolderError{path_ / kChecksumFile, "is not a list of checksums; restore it from a copy"};
        packet.files = *files;
        packet.record = record(*files);
        packet.profile = {(path_ / kProfileFile).string(), {}};
        for (const Checksum& file : *files)
            if (file.name != kRecordFile) compare(file, packet);
        for (const RecordedSheet& sheet : packet.record.sheets) require_listed(sheet, packet);
        require_listed(std::string{kProfileFile}, packet);
        return packet;
    }

  private:
    std::optional<std::string> bytes_of(std::string_view name) {
        try {
            return files_.read_file(folder_, std::string{name}, kFileMost);
        } catch (const std::system_error& error) {
            throw FolderError{path_ / name, error.code().message()};
        }
    }

    std::string required(std::string_view name, const char* otherwise) {
        auto bytes = bytes_of(name);
        if (!bytes) throw FolderError{path_ / name, otherwise};
        return *std::move(bytes);
    }

    PacketRecord record(const std::vector<Checksum>& files) {
        const std::string text =
            required(kRecordFile, "is missing, so nothing says what this packet holds; restore it from a copy");
        const auto listed = std::ranges::find(files, kRecordFile, &Checksum::name);
        if (listed == files.end())
            throw FolderError{path_ / kChecksumFile, fmt::format("does not name {}", kRecordFile)};
        if (listed->digest != sha256_hex(text))
            throw FolderError{
                path_ / kRecordFile,
                "was changed after it was written, so its codes cannot be relied on; restore it from a copy"};
        ReadPacket read = read_packet_json(text);
        if (!read.record) throw FolderError{path_ / kRecordFile, "cannot be read as a packet: " + read.fault.what};
        return *std::move(read.record);
    }

    void compare(const Checksum& file, PacketFolder& packet) {
        auto bytes = bytes_of(file.name);
        if (!bytes)
            packet.faults.emplace_back(path_ / file.name, "is missing");
        else if (sha256_hex(*bytes) != file.digest)
            packet.faults.emplace_back(path_ / file.name, "was changed after it was written");
        if (bytes && file.name == kProfileFile) packet.profile.text = *std::move(bytes);
    }

    void require_listed(const std::string& name, PacketFolder& packet) const {
        if (std::ranges::find(packet.files, name, &Checksum::name) != packet.files.end()) return;
        const auto known = std::ranges::find(packet.faults, path_ / name, &FolderError::path);
        if (known == packet.faults.end())
            packet.faults.emplace_back(path_ / name, fmt::format("does not stand in {}", kChecksumFile));
    }

    void require_listed(const RecordedSheet& sheet, PacketFolder& packet) const {
        if (sheet.state == RecordedSheet::State::printed) require_listed(sheet.file, packet);
    }

    const fs::path path_;
    FileSystem& files_;
    Descriptor folder_;
};

bool holds_record(const fs::path& path) {
    std::error_code ignored;  // what cannot be looked at is judged when it is to be replaced
    return fs::exists(fs::symlink_status(path / kRecordFile, ignored));
}

}  // namespace

PacketFolder read_packet_folder(const fs::path& path, FileSystem& files) { return FolderReader{path, files}.read(); }

PacketFolder read_packet_folder(const fs::path& path) {
    FileSystem files;
    return read_packet_folder(path, files);
}

std::optional<PacketFolder> packet_to_replace(const fs::path& path) {
    if (!holds_record(path)) return std::nullopt;
    return read_packet_folder(path);
}

}  // namespace ventfolio
