#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "caseload/homes.hpp"
#include "caseload/outage_report.hpp"
#include "caseload/print_summary.hpp"
#include "cli/chosen_stationery.hpp"
#include "packet/print_home.hpp"
#include "units/calendar.hpp"

namespace ventfolio {

struct CheckOptions {
    std::vector<std::string> profiles{};
    Date on;
    bool strict = false;  ///< an acknowledge that nobody has accepted counts as a stop
    bool json = false;
    bool quiet = false;
    bool unmasked = false;  ///< values of private fields are shown, wherever the messages go
    StationeryOptions stationery{};
};
/// Findings of the profiles and of the sheets that they would be printed on, by file name, then a summary line for
/// each. To standard error; as JSON to standard output. A file that cannot be used does not keep the others from being
/// checked.
int check_command(const CheckOptions& options);

struct PrintOptions {
    std::vector<std::string> profiles{};
    std::string folder{};
    Date on;
    PrintOrder order{};
    bool quiet = false;
    bool resume = false;                   ///< packets that are current are left alone
    std::size_t jobs = 1;                  ///< homes at the same time
    std::optional<Shard> shard{};          ///< only this part of the homes
    std::optional<SummaryForm> summary{};  ///< what is told on standard output; else as suits one home or many
    StationeryOptions stationery{};
};
/// The papers of one home into the folder, of several into a folder below it each. One that cannot be printed does not
/// keep the others from it.
int print_command(const PrintOptions& options);

struct UpdateOptions {
    std::string profile{};
    std::string from{};    ///< folder of the packet before
    std::string folder{};  ///< of the new packet
    Date on;
    bool dry_run = false;
    bool quiet = false;
    bool unmasked = false;
    StationeryOptions stationery{};
};
/// What changed, what follows from it and what becomes of each sheet, to standard output; the new packet to its folder.
int update_command(const UpdateOptions& options);

struct MatchOptions {
    std::string folder{};
    std::string code{};  ///< as somebody read it out
    Moment at;
};
/// One line: whether a paper with this code may stay up. Status 0 if it may, 1 if not.
int match_command(const MatchOptions& options);

struct OutageOptions {
    std::vector<std::string> profiles{};
    OutageQuestion question;
    bool csv = false;
    bool paper = false;           ///< the list as PDF, with room to write
    std::optional<Paper> size{};  ///< else the region's
    std::string output{};         ///< empty: standard output
    StationeryOptions stationery{};
};
/// The homes in an outage of an area in the order of calling. A profile that is refused or cannot be used stands at the
/// head, and does not stop the others.
int outage_command(const OutageOptions& options);

struct DueOptions {
    enum class Format { text, csv, ics };
    std::vector<std::string> profiles{};
    Date on;
    int within = 0;  ///< days
    Format format = Format::text;
    bool names = false;
    std::string packets{};  ///< folder with a packet folder for each record number; empty: packets are not looked at
    std::string output{};   ///< empty: standard output
};
/// What is overdue, due now, or due within some days, over many homes.
int due_command(const DueOptions& options);

/// The words behind `calc`: the name of a calculator and its arguments, or nothing for the list of all. `on` stands for
/// days that are not given.
int calc_command(const std::vector<std::string>& words, Date on);
/// A line to type, as the help of the others has it.
std::string_view calc_example();

/// A rule, a calculator or a field, by name.
int explain_command(const std::string& name);

enum class ListOf { sheets, rules, fields, calculators };
int list_command(ListOf what);

struct TemplatesOptions {
    std::string folder{};                 ///< of the clinic's templates
    std::vector<std::string> profiles{};  ///< to check with; empty: the demo homes
    Date on;
    bool quiet = false;
    StationeryOptions stationery{};  ///< language: that alone, else each; region: that, else one of the language
    PrintOrder order{};              ///< paper and type
};
/// Says what is wrong with a clinic's templates and translations. Status 1 for faults, 3 for a file that cannot be
/// used.
int templates_check_command(const TemplatesOptions& options);
/// Writes the built-in templates into a new folder.
int templates_export_command(const TemplatesOptions& options);

enum class SchemaOf { profile, check, packet, print };
int schema_command(SchemaOf what);
/// A commented profile to standard output; with `paper` the blank form as PDF, to `output` or, if that is empty, to
/// standard output.
struct NewOptions {
    bool paper = false;
    std::string output;
    StationeryOptions stationery{};
};
int new_command(const NewOptions& options);

}  // namespace ventfolio
