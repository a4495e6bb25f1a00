#pragma once

#include <memory>

namespace CLI {  // NOLINT(readability-identifier-naming): the library's name
class App;
}  // namespace CLI

namespace ventfolio {

/// The commands of the program with their options, declared once: what is typed, `--help`, the manual page and the
/// completions of the shells all follow from them.
class CommandLine {
  public:
    CommandLine();
    CommandLine(const CommandLine&) = delete;
    CommandLine& operator=(const CommandLine&) = delete;
    ~CommandLine();

    /// Carries out what was typed. Returns the exit status (cli/commands.hpp).
    int run(int count, char** words);

    const CLI::App& app() const;

  private:
    class Commands;
    std::unique_ptr<Commands> commands_;
};

}  // namespace ventfolio
