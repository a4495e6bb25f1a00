#pragma once

#include <string>
#include <vector>

namespace CLI {  // NOLINT(readability-identifier-naming): the library's name
class App;
}  // namespace CLI

namespace ventfolio {

/// An option or an argument as it is typed.
struct TypedOption {
    std::string short_name;  ///< "-o"; mostly empty
    std::string long_name;   ///< "--output"; of an argument its name, "profile"
    std::string description;
    std::vector<std::string> choices;  ///< "text", "json"; empty where any text may stand
    bool positional = false;
    bool required = false;
    bool takes_value = false;
    bool several = false;
};

/// A command that can be carried out, also one below another: "templates check".
struct TypedCommand {
    std::string name;
    std::string description;
    std::vector<TypedOption> options;   ///< arguments first
    std::string statuses;               ///< "0, 1, 2, 3": how it may end
    std::vector<std::string> examples;  ///< lines to type
};

/// All commands in the order of `--help`.
std::vector<TypedCommand> typed_commands(const CLI::App& program);

/// "-o, --output VALUE", "--quiet", "PROFILE..."; a choice spells out what may stand there: "--format text|json".
std::string spelling(const TypedOption& option);
/// "VALUE", "text|json", "PROFILE...": what stands for a value.
std::string value_shown(const TypedOption& option);

}  // namespace ventfolio
