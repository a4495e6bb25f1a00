#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

#include "profile/place.hpp"
#include "units/calendar.hpp"

/// The only place that looks at the clock, the environment and the terminal.
namespace ventfolio {

// Exit statuses of the program.
inline constexpr int kDone = 0;
inline constexpr int kFindings = 1;  ///< findings stop it
inline constexpr int kUsage = 2;     ///< the command line is wrong
inline constexpr int kUnusable = 3;  ///< a file, template or font cannot be used

/// A file cannot be used. The message names it and says why.
class UnusableFile : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// A file's text under the name that it was given by. Reads no more than a profile may have, and one byte.
SourceText read_file(const std::string& name);

/// Everything that comes on standard input. Throws UnusableFile.
std::string read_standard_input();

/// Writes a file whole or not at all, for its owner only (0600): beside its place, then renamed. Throws UnusableFile.
void write_file(const std::string& name, std::string_view bytes);
/// The same; to standard output where the name is empty.
void write_output(const std::string& name, std::string_view bytes);

/// The print date: SOURCE_DATE_EPOCH (reproducible-builds.org) if it is set, else today in local time.
Date today();
/// The same with the time of day.
Moment now();

/// A file that grows over the user's limit is an error with a message, not the end of the program in mid-write.
void report_files_that_grow_too_large();

/// Of this machine that the program may use; at least one.
std::size_t cores();

bool standard_error_is_terminal();
bool standard_output_is_terminal();

}  // namespace ventfolio
