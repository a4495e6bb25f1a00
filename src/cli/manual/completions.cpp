#include "cli/manual/completions.hpp"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "cli/manual/command_tree.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// What follows an option or a command can be asked of the program: the first words of its lists.
constexpr std::string_view kSheets = "$(ventfolio list sheets | cut -d' ' -f1)";
constexpr std::string_view kNames =
    "$(for what in rules calculators fields; do ventfolio list $what; done | cut -d' ' -f1)";

std::vector<std::string> long_names(const TypedCommand& command) {
    std::vector<std::string> names;
    for (const TypedOption& option : command.options)
        if (!option.positional) names.push_back(option.long_name);
    names.emplace_back("--help");
    return names;
}

/// Choices of the arguments: "sheets rules fields calculators".
std::string argument_choices(const TypedCommand& command) {
    if (command.name == "explain") return std::string{kNames};
    for (const TypedOption& option : command.options)
        if (option.positional && !option.choices.empty()) return joined(option.choices, " ");
    return {};
}

/// The words that may stand at a place of the line: of the program, or below a command such as `templates`.
std::vector<std::string> words_after(const std::vector<TypedCommand>& commands, std::string_view before) {
    std::vector<std::string> words;
    for (const TypedCommand& command : commands) {
        if (!std::string_view{command.name}.starts_with(before)) continue;
        const std::string word =
            command.name.substr(before.size(), command.name.find(' ', before.size()) - before.size());
        if (words.empty() || words.back() != word) words.push_back(word);
    }
    return words;
}

std::string bash_case(std::string_view pattern, std::string_view words) {
    return fmt::format("    '{}') words=\"{}\" ;;\n", pattern, words);
}

std::string choices_of_options(const std::vector<TypedCommand>& commands) {
    std::string cases;
    for (const TypedCommand& command : commands)
        for (const TypedOption& option : command.options) {
            if (option.positional) continue;
            const std::string place = command.name + " " + option.long_name;
            if (!option.choices.empty()) cases += bash_case(place, joined(option.choices, " "));
            if (option.long_name == "--sheet") cases += bash_case(place, kSheets);
        }
    return cases;
}

/// Without a space, an apostrophe or a colon: zsh reads these in a description.
std::string zsh_text(std::string_view text) {
    std::string out;
    for (const char letter : text) {
        if (letter == '\'')
            out += "'\\''";
        else if (letter == '[' || letter == ']' || letter == ':')
            out += std::string{"\\"} + letter;
        else
            out += letter;
    }
    return out;
}

std::string zsh_value(const TypedOption& option) {
    if (option.long_name == "--sheet") return fmt::format("sheet:({})", kSheets);
    if (!option.choices.empty()) return fmt::format("value:({})", joined(option.choices, " "));
    return "value:_files";
}

std::string zsh_options(const TypedCommand& command) {
    std::string lines;
    for (const TypedOption& option : command.options) {
        if (option.positional) continue;
        const std::string value = option.takes_value ? ":" + zsh_value(option) : "";
        lines += fmt::format(" \\\n        '*{}[{}]{}'", option.long_name, zsh_text(option.description), value);
    }
    const std::string choices = argument_choices(command);
    return lines +
           (choices.empty() ? " \\\n        '*:file:_files'" : fmt::format(" \\\n        \"*:name:({})\"", choices));
}

}  // namespace

std::string bash_completion(const CLI::App& program) {
    const std::vector<TypedCommand> commands = typed_commands(program);
    std::string script =
        "# bash completion of ventfolio, written by the build\n"
        "_ventfolio() {\n"
        "  local current=${COMP_WORDS[COMP_CWORD]} previous=${COMP_WORDS[COMP_CWORD-1]} command=${COMP_WORDS[1]} "
        "words=\n"
        "  COMPREPLY=()\n";
    script += fmt::format("  [ \"$COMP_CWORD\" = 1 ] && words=\"{} --help --version\"\n",
                          joined(words_after(commands, ""), " "));
    script += fmt::format(
        "  if [ \"$command\" = templates ]; then\n    [ \"$COMP_CWORD\" = 2 ] && words=\"{}\"\n"
        "    command=\"$command ${{COMP_WORDS[2]}}\"\n  fi\n",
        joined(words_after(commands, "templates "), " "));
    script += "  [ -n \"$words\" ] || case \"$command $previous\" in\n" + choices_of_options(commands) + "  esac\n";
    script += "  [ -n \"$words\" ] || case \"$command:$current\" in\n";
    for (const TypedCommand& command : commands)
        script += fmt::format("    '{}':-*) words=\"{}\" ;;\n", command.name, joined(long_names(command), " "));
    for (const TypedCommand& command : commands)
        if (const std::string choices = argument_choices(command); !choices.empty())
            script += fmt::format("    '{}':*) words=\"{}\" ;;\n", command.name, choices);
    script +=
        "  esac\n"
        "  if [ -n \"$words\" ]; then\n"
        "    mapfile -t COMPREPLY < <(compgen -W \"$words\" -- \"$current\")\n"
        "  else\n"
        "    mapfile -t COMPREPLY < <(compgen -f -- \"$current\")\n"
        "    compopt -o filenames 2>/dev/null\n"
        "  fi\n"
        "  return 0\n"
        "}\n"
        "complete -F _ventfolio ventfolio\n";
    return script;
}

std::string zsh_completion(const CLI::App& program) {
    const std::vector<TypedCommand> commands = typed_commands(program);
    std::string script = "#compdef ventfolio\n# zsh completion of ventfolio, written by the build\n\n";
    script += fmt::format("if (( CURRENT == 2 )); then\n  compadd -- {} --help --version\n  return\nfi\n",
                          joined(words_after(commands, ""), " "));
    script += "local command=$words[2]\nshift words; (( CURRENT-- ))\n";
    script += fmt::format(
        "if [[ $command == templates ]]; then\n  if (( CURRENT == 2 )); then\n    compadd -- {}\n    return\n  fi\n"
        "  command=\"templates $words[2]\"\n  shift words; (( CURRENT-- ))\nfi\n",
        joined(words_after(commands, "templates "), " "));
    script += "case $command in\n";
    for (const TypedCommand& command : commands)
        script += fmt::format("    '{}')\n      _arguments{} ;;\n", command.name, zsh_options(command));
    return script + "esac\n";
}

}  // namespace ventfolio
