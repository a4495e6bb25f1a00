#include "cli/manual/command_tree.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <CLI/CLI.hpp>

#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::string_view kExample = "Example: ";
constexpr std::string_view kStatus = "Exit status: ";

std::vector<std::string> parts(std::string_view text, char between) {
    std::vector<std::string> all;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(between), text.size());
        all.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return all;
}

/// CLI11 tells choices only within the name of the type: "TEXT:{text,json}".
std::vector<std::string> choices_in(std::string_view type) {
    const std::size_t begin = type.find('{');
    const std::size_t end = type.find('}', begin);
    if (begin == std::string_view::npos || end == std::string_view::npos) return {};
    return parts(type.substr(begin + 1, end - begin - 1), ',');
}

TypedOption typed(const CLI::Option& option) {
    TypedOption out;
    out.positional = option.get_positional() && option.get_lnames().empty();
    if (!option.get_snames().empty()) out.short_name = "-" + option.get_snames().front();
    if (out.positional)
        out.long_name = option.get_name(true);
    else if (!option.get_lnames().empty())
        out.long_name = "--" + option.get_lnames().front();
    out.description = option.get_description();
    out.takes_value = option.get_items_expected_max() > 0;
    out.choices = choices_in(option.get_type_name());
    out.required = option.get_required();
    out.several = option.get_expected_max() > 1;
    return out;
}

/// `calc` reads what follows it itself (calc_command.cpp): the arguments differ from one calculator to the next.
std::vector<TypedOption> options_of_calculators() {
    return {{"", "calculator", "Name of a calculator", {}, true, true, true, false},
            {"",
             "argument",
             "Its numbers as --name \"VALUE UNIT\"; calc NAME --help lists them",
             {},
             true,
             false,
             true,
             true},
            {"", "--format", "text or json", {"text", "json"}, false, false, true, false}};
}

std::vector<TypedOption> options_of(const CLI::App& command) {
    if (command.get_prefix_command()) return options_of_calculators();
    std::vector<TypedOption> all;
    for (const CLI::Option* option : command.get_options())
        if (option != command.get_help_ptr()) all.push_back(typed(*option));
    std::ranges::stable_sort(all,
                             [](const TypedOption& a, const TypedOption& b) { return a.positional && !b.positional; });
    return all;
}

/// The lines below the options of a command that begin so.
std::vector<std::string> lines_after(std::string_view beginning, const CLI::App& command) {
    std::vector<std::string> lines;
    for (const std::string& line : parts(command.get_footer(), '\n'))
        if (line.starts_with(beginning)) lines.push_back(line.substr(beginning.size()));
    return lines;
}

void add_commands(const CLI::App& parent, const std::string& before, std::vector<TypedCommand>& all) {
    for (const CLI::App* command : parent.get_subcommands([](const CLI::App*) { return true; })) {
        const std::string name = before + command->get_name();
        if (command->get_subcommands([](const CLI::App*) { return true; }).empty())
            all.push_back({name, command->get_description(), options_of(*command),
                           joined(lines_after(kStatus, *command), ", "), lines_after(kExample, *command)});
        else
            add_commands(*command, name + " ", all);
    }
}

}  // namespace

std::vector<TypedCommand> typed_commands(const CLI::App& program) {
    std::vector<TypedCommand> all;
    add_commands(program, "", all);
    return all;
}

std::string value_shown(const TypedOption& option) {
    std::string value = option.choices.empty() ? "VALUE" : joined(option.choices, "|");
    if (option.positional && option.choices.empty()) {
        value = option.long_name;
        std::ranges::transform(value, value.begin(), [](char letter) {
            return letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
        });
    }
    return option.positional && option.several ? value + "..." : value;
}

std::string spelling(const TypedOption& option) {
    if (option.positional) return value_shown(option);
    std::string all = option.short_name;
    if (!option.long_name.empty()) all += (all.empty() ? "" : ", ") + option.long_name;
    return option.takes_value ? all + " " + value_shown(option) : all;
}

}  // namespace ventfolio
