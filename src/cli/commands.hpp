#pragma once

#include <optional>
#include <string>
#include <vector>

#include "packet/print_home.hpp"
#include "units/calendar.hpp"

namespace ventfolio {

struct CheckOptions {
    std::vector<std::string> profiles;
    Date on;
    bool strict = false;  ///< an acknowledge that nobody has accepted counts as a stop
    bool json = false;
    bool quiet = false;
};
/// Findings to standard error; as JSON to standard output.
int check_command(const CheckOptions& options);

struct PrintOptions {
    std::vector<std::string> profiles;
    std::string folder;
    Date on;
    PrintOrder order;
    bool quiet = false;
};
int print_command(const PrintOptions& options);

/// A rule or a field, by name.
int explain_command(const std::string& name);

enum class ListOf { sheets, rules, fields };
int list_command(ListOf what);

int schema_command();
int new_command();

}  // namespace ventfolio
