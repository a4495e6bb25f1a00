#pragma once

#include <filesystem>
#include <span>
#include <stdexcept>
#include <string>

#include "packet/file_system.hpp"

namespace ventfolio {

/// A folder could not be written, or must not be. The folder that was there before is untouched.
class FolderError : public std::runtime_error {
  public:
    FolderError(std::filesystem::path path, std::string cause)
        : std::runtime_error{path.string() + ": " + cause}, path_{std::move(path)}, cause_{std::move(cause)} {}

    const std::filesystem::path& path() const { return path_; }
    const std::string& cause() const { return cause_; }

  private:
    std::filesystem::path path_;
    std::string cause_;
};

struct FolderFile {
    std::string name;  ///< letters, digits, `.`, `-` and `_`; not with a dot in front
    std::string bytes;
};

/// What becomes of files of the replaced folder that the new one does not bring.
enum class OtherFiles {
    leave_behind,
    carry_over,  ///< for printing one sheet into a folder that holds others
};

struct FolderOrder {
    std::filesystem::path target;
    std::string record_number;  ///< of the person whose packet this is
    std::string revision;
    std::span<const FolderFile> files;
    OtherFiles other_files = OtherFiles::leave_behind;
};

/// Writes a folder whole or not at all: beside the target, flushed to the disk, then put in its place in one step.
/// Files are for their owner only (0600), folders too (0700). Folders missing above the target are made.
///
/// A target that exists is replaced only if it is an empty folder, or if its packet.json names the same record number
/// and revision. Anything else refuses: another revision (that is what `update` is for), another person's packet, any
/// other folder that is not empty, a file, a link.
///
/// Throws FolderError; the target is then as it was, and nothing is left beside it. One exception: when only the
/// removal of the replaced folder fails, the new one stands, and the error names what is left.
void write_folder(const FolderOrder& order, FileSystem& files);
void write_folder(const FolderOrder& order);

}  // namespace ventfolio
