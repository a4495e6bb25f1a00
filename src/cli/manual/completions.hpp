#pragma once

#include <string>

namespace CLI {  // NOLINT(readability-identifier-naming): the library's name
class App;
}  // namespace CLI

/// What a shell offers when the tab key is pressed.
namespace ventfolio {

/// For bash: commands, options, choices, and the names of rules, fields, calculators and sheets, which are asked of the
/// program; else files.
std::string bash_completion(const CLI::App& program);
/// The same for zsh.
std::string zsh_completion(const CLI::App& program);

}  // namespace ventfolio
