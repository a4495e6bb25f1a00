#pragma once

#include <filesystem>
#include <system_error>
#include <vector>

#include "packet/folder_writer.hpp"

namespace ventfolio {

/// Folders that had to be made for what is to be written below them. Those that are empty go again unless it was.
class NewFolders {
  public:
    explicit NewFolders(FileSystem& files) : files_{files} {}
    NewFolders(const NewFolders&) = delete;
    NewFolders& operator=(const NewFolders&) = delete;
    ~NewFolders();

    /// Makes a folder and those above it, for their owner only, where they are missing. A link in its place is
    /// followed: it is the user's own way to name a place. Throws FolderError.
    void make(const std::filesystem::path& folder);
    void keep() { kept_ = true; }

  private:
    FileSystem& files_;
    std::vector<std::filesystem::path> made_;
    bool kept_ = false;
};

/// "papers" is above "papers/DEMO-1", and "." above "papers".
std::filesystem::path folder_above(const std::filesystem::path& path);

/// Runs one step and gives a failure of the system the path it is about: a FolderError.
template <typename Step>
auto on_path(const std::filesystem::path& path, Step step) {
    try {
        return step();
    } catch (const std::system_error& error) {
        throw FolderError{path, error.code().message()};
    }
}

}  // namespace ventfolio
