#pragma once

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "profile/place.hpp"

namespace ventfolio::bench {

/// Seconds of CPU that the rooms take over some homes, and the seconds of waiting for the disk, last.
std::vector<std::pair<std::string, double>> time_by_room(const std::vector<SourceText>& homes,
                                                         const std::filesystem::path& folder);

}  // namespace ventfolio::bench
