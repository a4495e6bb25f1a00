#pragma once

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

#include "packet/folder_writer.hpp"

namespace ventfolio {

namespace fs = std::filesystem;

/// A folder of its own for one test, removed at the end.
class TemporaryFolder {
  public:
    TemporaryFolder() {
        std::string name = (fs::temp_directory_path() / "ventfolio-test-XXXXXX").string();
        REQUIRE(::mkdtemp(name.data()) != nullptr);
        path_ = name;
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    ~TemporaryFolder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }

    const fs::path& path() const { return path_; }
    fs::path operator/(const std::string& name) const { return path_ / name; }

  private:
    fs::path path_;
};

inline std::string bytes_of(const fs::path& file) {
    const std::ifstream stream{file, std::ios::binary};
    std::ostringstream bytes;
    bytes << stream.rdbuf();
    return bytes.str();
}

inline void put(const fs::path& file, const std::string& bytes) {
    fs::create_directories(file.parent_path());
    std::ofstream{file, std::ios::binary} << bytes;
}

inline mode_t mode_of(const fs::path& path) {
    struct stat status {};
    REQUIRE(::lstat(path.c_str(), &status) == 0);
    return status.st_mode & 07777;
}

inline ino_t number_of(const fs::path& path) {
    struct stat status {};
    REQUIRE(::lstat(path.c_str(), &status) == 0);
    return status.st_ino;
}

/// Everything below a folder: name to mode and bytes. Two equal snapshots, and nothing was touched.
inline std::map<std::string, std::string> snapshot(const fs::path& folder) {
    std::map<std::string, std::string> seen;
    for (const auto& entry : fs::recursive_directory_iterator{folder}) {
        const std::string kind = entry.is_symlink()     ? "link " + fs::read_symlink(entry).string()
                                 : entry.is_directory() ? "folder"
                                                        : "file " + bytes_of(entry);
        seen[fs::relative(entry, folder).string()] = fmt::format("{:o} {} {}", mode_of(entry), number_of(entry), kind);
    }
    return seen;
}

inline std::string manifest(const std::string& record_number, const std::string& revision) {
    return fmt::format(R"({{"record_number": "{}", "revision": "{}"}})", record_number, revision);
}

/// The packet of V-0412, revision R3, that the tests write.
inline const std::vector<FolderFile>& packet_files() {
    static const std::vector<FolderFile> files{
        {"packet.json", manifest("V-0412", "R3")}, {"packet.pdf", std::string(300'000, 'p')}, {"SHA256SUMS", ""}};
    return files;
}

inline FolderOrder order_for(const fs::path& target) {
    return {.target = target, .record_number = "V-0412", .revision = "R3", .files = packet_files()};
}

inline void check_written(const fs::path& target) {
    for (const FolderFile& file : packet_files()) {
        CAPTURE(file.name);
        CHECK(bytes_of(target / file.name) == file.bytes);
        CHECK(mode_of(target / file.name) == 0600);
    }
    CHECK(mode_of(target) == 0700);
}

}  // namespace ventfolio
