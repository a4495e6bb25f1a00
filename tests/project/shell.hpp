#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace ventfolio::project {

struct Ran {
    int status = -1;  ///< exit status; 127: there is no such program; -1: it was killed
    std::string out;
    std::string err;
};

/// Runs a command of the shell in a folder, without standard input.
Ran run_in(const std::filesystem::path& folder, std::string_view command);

/// The same where `ventfolio` is this program, and today 3 February 2026 if a command does not say the day.
Ran run_as_installed(const std::filesystem::path& program, const std::filesystem::path& folder,
                     std::string_view command);

/// The same, for commands that must succeed and have nothing to complain about: gives standard output. Throws
/// std::runtime_error with what went wrong.
std::string output_of(const std::filesystem::path& folder, std::string_view command);

/// A word for the shell, taken as it is.
std::string quoted(const std::filesystem::path& word);

}  // namespace ventfolio::project
