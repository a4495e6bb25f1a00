#include "packet/replaceable.hpp"

#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <algorithm>
#include <cerrno>
#include <memory>
#include <nlohmann/json.hpp>
#include <system_error>

#include "packet/folder_writer.hpp"
#include "units/ascii.hpp"

namespace ventfolio {
namespace {

namespace fs = std::filesystem;

constexpr const char* kManifest = "packet.json";
constexpr std::size_t kManifestMost = 16 * 1024 * 1024;

struct CloseFolder {
    void operator()(DIR* stream) const { ::closedir(stream); }
};

[[noreturn]] void fail(const fs::path& path) { throw FolderError{path, std::generic_category().message(errno)}; }

/// The manifest's text; nothing if the folder has none that is a plain file.
std::optional<std::string> manifest_of(const Descriptor& folder, const fs::path& target) {
    try {
        return FileSystem{}.read_file(folder, kManifest, kManifestMost);
    } catch (const std::system_error& error) {
        const bool is_something_else =
            error.code() == std::errc::invalid_argument || error.code() == std::errc::too_many_symbolic_link_levels;
        if (is_something_else) return std::nullopt;
        throw FolderError{target / kManifest, error.code().message()};
    }
}

std::optional<std::string> member(const nlohmann::json& manifest, const char* key) {
    if (!manifest.is_object()) return std::nullopt;
    const auto found = manifest.find(key);
    if (found == manifest.end() || !found->is_string()) return std::nullopt;
    return found->get<std::string>();
}

/// Names a revision read from a file, which may hold anything, in a message for a terminal.
std::string named_revision(const std::string& revision) {
    const bool plain = !revision.empty() && revision.size() <= 16 && std::ranges::all_of(revision, is_letter_or_digit);
    return plain ? "revision " + revision : "another revision";
}

void require_same_packet(const Descriptor& folder, const fs::path& target, std::string_view record_number,
                         std::string_view revision) {
    const auto text = manifest_of(folder, target);
    if (!text) throw FolderError{target, "is not empty and holds no packet; choose another folder"};
    const auto manifest = nlohmann::json::parse(*text, nullptr, false);
    const auto its_record = member(manifest, "record_number");
    const auto its_revision = member(manifest, "revision");
    if (!its_record || !its_revision)
        throw FolderError{target / kManifest, "cannot be read as a packet; choose another folder"};
    if (*its_record != record_number) throw FolderError{target, "holds the packet of another record number"};
    if (*its_revision != revision)
        throw FolderError{target, "holds " + named_revision(*its_revision) + "; use update to replace it with " +
                                      std::string{revision}};
}

}  // namespace

std::vector<std::string> entries_of(const Descriptor& folder, const fs::path& path) {
    // The stream closes its descriptor and moves its place, so it gets one of its own.
    const int own = ::openat(folder.number(), ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (own < 0) fail(path);
    const std::unique_ptr<DIR, CloseFolder> stream{::fdopendir(own)};
    if (!stream) {
        ::close(own);
        fail(path);
    }
    std::vector<std::string> names;
    for (errno = 0; const dirent* entry = ::readdir(stream.get()); errno = 0) {
        const std::string name{static_cast<const char*>(entry->d_name)};
        if (name != "." && name != "..") names.push_back(name);
    }
    if (errno != 0) fail(path);
    std::ranges::sort(names);
    return names;
}

std::optional<Descriptor> replaceable_folder(const fs::path& target, std::string_view record_number,
                                             std::string_view revision) {
    struct stat status {};
    if (::lstat(target.c_str(), &status) != 0) {
        if (errno == ENOENT || errno == ENOTDIR) return std::nullopt;
        fail(target);
    }
    if (S_ISLNK(status.st_mode)) throw FolderError{target, "is a link; name the folder itself"};
    if (!S_ISDIR(status.st_mode)) throw FolderError{target, "is a file, not a folder"};
    Descriptor folder;
    try {
        folder = open_folder(target);
    } catch (const std::system_error& error) {
        throw FolderError{target, error.code().message()};
    }
    if (!entries_of(folder, target).empty()) require_same_packet(folder, target, record_number, revision);
    return folder;
}

}  // namespace ventfolio
