#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "packet/file_system.hpp"

namespace ventfolio {

/// Judges the folder that a packet would replace: opened if it is empty or holds the same revision of the same record,
/// nothing if there is none. Throws FolderError, with the reason, for everything else.
std::optional<Descriptor> replaceable_folder(const std::filesystem::path& target, std::string_view record_number,
                                             std::string_view revision);

/// Names in an open folder, sorted, without `.` and `..`. Throws FolderError.
std::vector<std::string> entries_of(const Descriptor& folder, const std::filesystem::path& path);

}  // namespace ventfolio
