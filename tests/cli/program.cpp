#include "program.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace ventfolio::testing {

namespace fs = std::filesystem;

Ran ventfolio_in(const Scratch& folder, std::string_view words, std::string_view environment) {
    return folder.run(fmt::format("{} '{}' {}", environment, VENTFOLIO_PROGRAM, words));
}

std::string profile_path(std::string_view home) {
    return fmt::format("{}/profiles/{}.yaml", VENTFOLIO_SOURCE_DIR, home);
}

std::string contents(const fs::path& file) {
    std::ifstream stream{file, std::ios::binary};
    REQUIRE_MESSAGE(stream.good(), file.string());
    return {std::istreambuf_iterator<char>{stream}, {}};
}

std::string state_of(const fs::path& folder) {
    std::vector<std::string> lines;
    for (const auto& entry : fs::recursive_directory_iterator{folder}) {
        struct stat status {};
        REQUIRE(::lstat(entry.path().c_str(), &status) == 0);
        lines.push_back(fmt::format("{} {:o} {} {}.{} {}", fs::relative(entry.path(), folder).string(), status.st_mode,
                                    status.st_ino, status.st_mtim.tv_sec, status.st_mtim.tv_nsec,
                                    entry.is_regular_file() ? contents(entry.path()) : std::string{}));
    }
    std::ranges::sort(lines);
    return fmt::format("{}", fmt::join(lines, "\n"));
}

std::string names_in(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator{folder}) names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return fmt::format("{}", fmt::join(names, " "));
}

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

}  // namespace ventfolio::testing
