#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "cli/commands.hpp"
#include "cli/manual/command_tree.hpp"
#include "cli/manual/pages.hpp"
#include "cli/manual/roff.hpp"
#include "cli/world.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

std::string usage_of(const TypedCommand& command) {
    std::string usage = "ventfolio " + command.name;
    for (const TypedOption& option : command.options)
        if (option.positional)
            usage += " " + value_shown(option);
        else if (option.required)
            usage += " " + option.long_name + " " + value_shown(option);
    return usage + " [options]";
}

std::string about(const TypedCommand& command) {
    std::string page = roff::subsection(command.name) + roff::paragraph(command.description + ".");
    page += roff::example(usage_of(command));
    for (const TypedOption& option : command.options) page += roff::item(spelling(option), option.description + ".");
    page += roff::paragraph("Exit status: " + command.statuses + ".");
    for (const std::string& example : command.examples) page += roff::paragraph("Example:") + roff::example(example);
    return page;
}

std::string exit_statuses() {
    return roff::section("EXIT STATUS") + roff::item(fmt::format("{}", kDone), "Done.") +
           roff::item(fmt::format("{}", kFindings),
                      "Findings stop it; match: that paper may not stay up; calc: a number outside the range of the "
                      "formula.") +
           roff::item(fmt::format("{}", kUsage), "The command line is wrong, or names what does not exist.") +
           roff::item(fmt::format("{}", kUnusable), "A file, folder, template or font cannot be used.");
}

}  // namespace

std::string manual_of_commands(const CLI::App& program) {
    std::string page = roff::head("VENTFOLIO", "1", "User commands");
    page += roff::section("NAME") +
            roff::text("ventfolio - bedside papers for people who live on a ventilator at home") + "\n";
    page += roff::section("SYNOPSIS") + ".B ventfolio\n.I command\n[options]\n";
    page += roff::section("DESCRIPTION");
    page += roff::paragraph(
        "Reads the profile of one person's home, checks it with calculators and rules, and lays out the papers that "
        "stay "
        "there as PDF. Where a finding says that paper could hurt, nothing is printed and the reason is told.");
    page += roff::paragraph(program.get_footer());
    page += roff::section("COMMANDS");
    for (const TypedCommand& command : typed_commands(program)) page += about(command);
    page += roff::section("OPTIONS") + roff::item("--help", "What can be typed, also behind a command.") +
            roff::item("--version", "The version.");
    page += exit_statuses();
    page += roff::section("ENVIRONMENT") +
            roff::item("SOURCE_DATE_EPOCH", "The print date in seconds, where no --on is given.");
    page += roff::section("FILES") + roff::item("packet.pdf", "The papers of a home, in the folder that print names.") +
            roff::item("packet.json",
                       "What is current in the home, with all codes: its form is told by schema --of packet.") +
            roff::item("profile.yaml", "The profile as it was.") +
            roff::item("SHA256SUMS", "Of the others; sha256sum --check tells whether they are as they were written.");
    page += roff::section("SEE ALSO") + ".BR ventfolio\\-profile (5),\n.BR ventfolio\\-rules (7)\n";
    return page;
}

}  // namespace ventfolio
