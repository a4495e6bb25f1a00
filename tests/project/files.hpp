#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// Looking at the project's own files.
namespace ventfolio::project {

/// The whole file. Throws std::runtime_error if it cannot be read.
std::string contents(const std::filesystem::path& file);
void save(const std::filesystem::path& file, std::string_view bytes);

/// All files below a folder with one of these endings (".hpp"), sorted.
std::vector<std::filesystem::path> files_below(const std::filesystem::path& folder,
                                               const std::vector<std::string>& endings);

std::vector<std::string> lines_of(std::string_view text);

/// A new folder that goes with all in it when the object does.
class Scratch {
  public:
    Scratch();
    ~Scratch();
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    const std::filesystem::path& folder() const { return folder_; }
    std::filesystem::path path(std::string_view name) const { return folder_ / name; }

  private:
    std::filesystem::path folder_;
};

}  // namespace ventfolio::project
