#include "cli/command_line.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <CLI/CLI.hpp>
#include <cmath>
#include <cstdio>
#include <functional>
#include <initializer_list>
#include <map>

#include "cli/commands.hpp"
#include "cli/world.hpp"
#include "packet/version.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// Stands in the options until the words of the command line are read: a day has no empty value.
const Date kNotRead = *Date::of(2000, 1, 1);

/// A date of the command line; CLI11 reports what this does not read.
struct DateArgument {
    std::string text;
    Date date() const { return text.empty() ? today() : *Date::parse(text); }
};

void add_date(CLI::App& command, DateArgument& argument) {
    command.add_option("--on", argument.text, "Print date, as 2026-02-03 (default: SOURCE_DATE_EPOCH, else today)")
        ->check([](const std::string& text) {
            return Date::parse(text) ? std::string{} : "\"" + text + "\" is no date; write it as 2026-02-03";
        });
}

void add_stationery(CLI::App& command, StationeryOptions& options) {
    command.add_option("--lang", options.language,
                       "Language of the papers, as es or Spanish (default: what the home reads)");
    command.add_option("--templates", options.templates, "Folder of a clinic's own templates, over the built-in ones");
    command.add_option("--region", options.region,
                       "Emergency number, paper, dates and decimals as there (default: the home's, else us)");
}

/// What stands below the options of a command: how it may end, and lines to type. The manual takes both from here.
void end_help(CLI::App& command, std::initializer_list<int> statuses, const std::string& examples) {
    command.footer(fmt::format("Exit status: {}\n{}", fmt::join(statuses, ", "), examples));
}

}  // namespace

class CommandLine::Commands {
  public:
    Commands() {
        app_.set_version_flag("--version", fmt::format("ventfolio {}", program_version()));
        app_.require_subcommand(1);
        app_.footer("The prescriber's orders, the device's instructions and local protocol come first.");
        add_check();
        add_print();
        add_update();
        add_match();
        add_outage();
        add_due();
        add_calc();
        add_explain();
        add_list();
        add_templates();
        add_writers();
    }

    int run(int count, char** words) {
        if (count > 1 && !known_command(words[1])) return kUsage;
        try {
            app_.parse(count, words);
        } catch (const CLI::ParseError& fault) {
            const int status = app_.exit(fault);
            return status == 0 ? kDone : kUsage;
        }
        return action_();
    }

    const CLI::App& app() const { return app_; }

  private:
    /// CLI11 would say only that a command is missing, not that it does not know this one.
    bool known_command(const std::string& word) const {
        if (word.starts_with('-')) return true;
        std::vector<std::string> names;
        for (const CLI::App* command : app_.get_subcommands({})) names.push_back(command->get_name());
        if (std::ranges::find(names, word) != names.end()) return true;
        const auto near = nearest(word, names);
        fmt::print(stderr, "ventfolio: there is no command \"{}\"{}; the commands are: {}\n", word,
                   near ? fmt::format(", did you mean \"{}\"?", *near) : "", joined(names, ", "));
        return false;
    }

    void add_check() {
        CLI::App* command = app_.add_subcommand("check", "Check profiles and say what does not agree");
        command->add_option("profile", check_.profiles, "YAML profiles of homes")->required();
        add_date(*command, date_);
        add_stationery(*command, check_.stationery);
        command->add_flag("--strict", check_.strict, "Stop at an acknowledge that nobody has accepted, too");
        command->add_option("--format", format_, "text or json")->check(CLI::IsMember({"text", "json"}));
        command->add_flag("--quiet", check_.quiet, "Findings without why, what to do and source");
        command->add_flag("--unmasked", check_.unmasked,
                          "Show values of private fields in JSON, and where standard error is no terminal");
        end_help(*command, {kDone, kFindings, kUsage, kUnusable},
                 "Example: ventfolio check profiles/adult-tracheostomy.yaml --on 2026-02-03");
        command->callback([this] {
            action_ = [this] {
                check_.on = date_.date();
                check_.json = format_ == "json";
                return check_command(check_);
            };
        });
    }

    void add_print() {
        CLI::App* command = app_.add_subcommand("print", "Print the papers of homes as PDF");
        command->add_option("profile", print_.profiles, "YAML profiles of homes, folders of them, or - for a list")
            ->required();
        command->add_option("-o,--output", print_.folder, "Folder for the papers; several homes get one below it each")
            ->required();
        add_date(*command, date_);
        add_stationery(*command, print_.stationery);
        command->add_option("--sheet", print_.order.sheets, "Only this sheet; may be repeated")
            ->allow_extra_args(false);
        command->add_flag("--separate", print_.order.separate, "A file for each sheet instead of packet.pdf");
        add_paper(*command, print_.order);
        add_outage_start(*command);
        command->add_flag("--dump-layout", print_.order.dump_layout, "Also write where everything stands, as text");
        add_caseload(*command);
        command->add_flag("--quiet", print_.quiet, "Say only what is wrong");
        end_help(*command, {kDone, kFindings, kUsage, kUnusable},
                 "Example: ventfolio print profiles/adult-tracheostomy.yaml --on 2026-02-03 -o papers");
        command->callback([this] {
            action_ = [this] {
                print_.on = date_.date();
                if (!outage_start_.empty()) print_.order.outage_start = Moment::parse(outage_start_);
                print_.jobs = jobs_ > 0 ? jobs_ : cores();
                print_.summary = summary_form();
                if (!shard_.empty()) print_.shard = Shard::parse(shard_);
                print_.order.paper = chosen_paper();
                return print_command(print_);
            };
        });
    }

    void add_paper(CLI::App& command, PrintOrder& order) {
        command.add_option("--paper", paper_, "letter or a4 (default: the region's)")
            ->check(CLI::IsMember({"letter", "a4"}));
        command.add_flag("--large-print", order.large_print, "All type one and a half times as large");
    }

    std::optional<Paper> chosen_paper() const {
        if (paper_.empty()) return std::nullopt;
        return paper_ == "a4" ? Paper::a4 : Paper::letter;
    }

    void add_caseload(CLI::App& command) {
        command.add_flag("--resume", print_.resume, "Leave packets alone that are what would be printed");
        command.add_option("--jobs", jobs_, "Homes at the same time (default: one for each core)")
            ->check(CLI::Range(1, 512));
        command.add_option("--shard", shard_, "Only this part of the homes, as 2/8: the second of eight")
            ->check([](const std::string& text) {
                return Shard::parse(text) ? std::string{} : "\"" + text + "\" is no part; write it as 2/8";
            });
        command.add_option("--summary", summary_, "What became of each home, as text, json or csv")
            ->check(CLI::IsMember({"text", "json", "csv"}));
    }

    std::optional<SummaryForm> summary_form() const {
        if (summary_.empty()) return std::nullopt;
        if (summary_ == "text") return SummaryForm::text;
        return summary_ == "json" ? SummaryForm::json : SummaryForm::csv;
    }

    void add_update() {
        CLI::App* command = app_.add_subcommand("update", "Print what is no longer true after a change of the profile");
        command->add_option("profile", update_.profile, "YAML profile of the home, with its new revision")->required();
        command->add_option("--from", update_.from, "Folder of the packet that hangs in the home")->required();
        command->add_option("-o,--output", update_.folder, "Folder for the new packet");
        add_date(*command, date_);
        add_stationery(*command, update_.stationery);
        command->add_flag("--dry-run", update_.dry_run, "Say what would change, and write nothing");
        command->add_flag("--quiet", update_.quiet, "Say only what is wrong");
        command->add_flag("--unmasked", update_.unmasked, "Show values of private fields where no terminal reads");
        end_help(*command, {kDone, kFindings, kUsage, kUnusable},
                 "Example: ventfolio update profiles/adult-tracheostomy-revision-2.yaml --from papers --on 2026-03-17 "
                 "-o papers-2");
        command->callback([this] {
            action_ = [this] {
                update_.on = date_.date();
                return update_command(update_);
            };
        });
    }

    void add_match() {
        CLI::App* command = app_.add_subcommand("match", "Say whether a paper with this code may stay up");
        command->add_option("folder", match_.folder, "Folder of the newest packet of the home")->required();
        command->add_option("code", code_, "Code at the foot of the paper, as it was read out; in groups if you like")
            ->required();
        command
            ->add_option("--on", moment_,
                         "When, as 2026-03-16 or \"2026-03-16 13:30\" (default: SOURCE_DATE_EPOCH, else now)")
            ->check([](const std::string& text) {
                return read_moment(text) ? std::string{}
                                         : "\"" + text + "\" is no time; write it as \"2026-03-16 13:30\"";
            });
        end_help(*command, {kDone, kFindings, kUsage, kUnusable}, "Example: ventfolio match papers K7M-2QD");
        command->callback([this] {
            action_ = [this] {
                match_.code = joined(code_, "");
                match_.at = moment_.empty() ? now() : *read_moment(moment_);
                return match_command(match_);
            };
        });
    }

    void add_outage() {
        CLI::App* command = app_.add_subcommand("outage", "List whom to call in a power outage, shortest time first");
        command->add_option("profile", outage_.profiles, "YAML profiles of homes, folders of them, or - for a list")
            ->required();
        command->add_option("--hours", hours_, "How long the power may be out, in hours")
            ->required()
            ->check(CLI::Range(0.25, 720.0));
        command
            ->add_option("--starting", starting_,
                         "When the power fails, as \"2026-02-03 22:30\": leave-by is then a time of the clock")
            ->check(is_moment);
        add_date(*command, date_);
        add_stationery(*command, outage_.stationery);
        command->add_option("--format", format_, "text or csv")->check(CLI::IsMember({"text", "csv"}));
        command->add_flag("--paper", outage_.paper, "Instead, the list as PDF, with room to write");
        command->add_option("--paper-size", paper_, "letter or a4 (default: the region's)")
            ->check(CLI::IsMember({"letter", "a4"}));
        command->add_flag("--names", outage_.question.names, "Names beside record numbers and phone numbers");
        command->add_option("-o,--output", outage_.output, "File to write (default: standard output)");
        end_help(*command, {kDone, kFindings, kUsage, kUnusable},
                 "Example: ventfolio outage profiles/adult-tracheostomy.yaml profiles/adult-mask.yaml --hours 8");
        command->callback([this] {
            action_ = [this] {
                outage_.question.on = date_.date();
                outage_.question.needed = static_cast<PlanMinutes>(std::ceil(60 * hours_));
                if (!starting_.empty()) outage_.question.starting = Moment::parse(starting_);
                outage_.csv = format_ == "csv";
                outage_.size = chosen_paper();
                return outage_command(outage_);
            };
        });
    }

    void add_due() {
        CLI::App* command = app_.add_subcommand("due", "List what is overdue or due soon");
        command->add_option("profile", due_.profiles, "YAML profiles of homes, folders of them, or - for a list")
            ->required();
        command->add_option("--within", due_.within, "Days to look ahead (default: 30)")->check(CLI::Range(0, 3660));
        add_date(*command, date_);
        command->add_option("--format", format_, "text, csv or ics (a calendar)")
            ->check(CLI::IsMember({"text", "csv", "ics"}));
        command->add_option("--packets", due_.packets,
                            "Folder with the printed packets, by record number: lists stale ones, too");
        command->add_flag("--names", due_.names, "Names beside record numbers");
        command->add_option("-o,--output", due_.output, "File to write (default: standard output)");
        end_help(*command, {kDone, kFindings, kUsage, kUnusable},
                 "Example: ventfolio due profiles/adult-tracheostomy.yaml --on 2026-02-03 --within 60");
        command->callback([this] {
            action_ = [this] {
                due_.on = date_.date();
                due_.format = format_ == "csv"   ? DueOptions::Format::csv
                              : format_ == "ics" ? DueOptions::Format::ics
                                                 : DueOptions::Format::text;
                return due_command(due_);
            };
        });
    }

    /// A day alone begins at midnight.
    static std::optional<Moment> read_moment(const std::string& text) {
        if (const auto date = Date::parse(text)) return Moment{*date, {}};
        return Moment::parse(text);
    }

    static std::string is_moment(const std::string& text) {
        return Moment::parse(text) ? std::string{} : "\"" + text + "\" is no time; write it as \"2026-02-03 22:30\"";
    }

    void add_outage_start(CLI::App& command) {
        command
            .add_option("--outage-start", outage_start_,
                        "When the power failed, as \"2026-02-03 22:30\": --sheet outage-plan prints hours of the clock")
            ->check(is_moment);
    }

    /// The arguments differ from calculator to calculator: the command reads them itself, help among them.
    void add_calc() {
        CLI::App* command = app_.add_subcommand("calc", "Run a calculator by hand, with formula and source");
        command->prefix_command();
        command->set_help_flag();
        end_help(*command, {kDone, kFindings, kUsage, kUnusable}, std::string{calc_example()});
        command->callback(
            [this, command] { action_ = [command] { return calc_command(command->remaining(), today()); }; });
    }

    void add_explain() {
        CLI::App* command = app_.add_subcommand("explain", "Explain a rule, a calculator or a field");
        command->add_option("name", name_, "Name of a rule or calculator, or path of a field")->required();
        end_help(*command, {kDone, kUsage, kUnusable}, "Example: ventfolio explain high-pressure-alarm-below-peak");
        command->callback([this] { action_ = [this] { return explain_command(name_); }; });
    }

    void add_list() {
        CLI::App* command = app_.add_subcommand("list", "List what the program knows, name first");
        static const std::map<std::string, ListOf> kinds{{"sheets", ListOf::sheets},
                                                         {"rules", ListOf::rules},
                                                         {"fields", ListOf::fields},
                                                         {"calculators", ListOf::calculators}};
        command->add_option("what", list_, "sheets, rules, fields or calculators")
            ->required()
            ->transform(CLI::CheckedTransformer(kinds).description("{sheets,rules,fields,calculators}"))
            ->type_name("TEXT");
        end_help(*command, {kDone, kUsage, kUnusable}, "Example: ventfolio list rules");
        command->callback([this] { action_ = [this] { return list_command(list_); }; });
    }

    void add_templates() {
        CLI::App* templates = app_.add_subcommand("templates", "Write the built-in templates, or check a clinic's own");
        templates->require_subcommand(1);
        CLI::App* write = templates->add_subcommand("export", "Write the built-in templates into a new folder");
        write->add_option("folder", templates_.folder, "Folder that is not there yet, or is empty")->required();
        write->add_flag("--quiet", templates_.quiet, "Say only what is wrong");
        end_help(*write, {kDone, kUsage, kUnusable}, "Example: ventfolio templates export clinic");
        write->callback([this] { action_ = [this] { return templates_export_command(templates_); }; });
        CLI::App* check = templates->add_subcommand("check", "Say what is wrong with a clinic's templates");
        check->add_option("folder", templates_.folder, "Folder of the clinic's templates")->required();
        check->add_option("profile", templates_.profiles, "YAML profiles to check with (default: the demo homes)");
        add_date(*check, date_);
        check->add_option("--lang", templates_.stationery.language,
                          "Only this language, as es or Spanish, or two as en+es (default: each language)");
        check->add_option("--region", templates_.stationery.region,
                          "Emergency number, paper, dates and decimals as there (default: a region of the language)");
        add_paper(*check, templates_.order);
        check->add_flag("--quiet", templates_.quiet, "Findings without why, what to do and source");
        end_help(*check, {kDone, kFindings, kUsage, kUnusable}, "Example: ventfolio templates check clinic");
        check->callback([this] {
            action_ = [this] {
                templates_.on = date_.date();
                templates_.order.paper = chosen_paper();
                return templates_check_command(templates_);
            };
        });
        templates->footer("Example: ventfolio templates export clinic\nExample: ventfolio templates check clinic");
    }

    void add_writers() {
        CLI::App* starter = app_.add_subcommand("new", "Write a commented profile to start from");
        starter->add_flag("--paper", new_.paper, "Instead, a blank form to fill in by hand, as PDF");
        starter->add_option("-o,--output", new_.output, "File to write (default: standard output)");
        add_stationery(*starter, new_.stationery);
        end_help(*starter, {kDone, kUsage, kUnusable},
                 "Example: ventfolio new > home.yaml\nExample: ventfolio new --paper -o intake.pdf");
        starter->callback([this] { action_ = [this] { return new_command(new_); }; });
        CLI::App* schema = app_.add_subcommand(
            "schema", "Write the JSON Schema of a profile, for editors, or of what the program writes");
        static const std::map<std::string, SchemaOf> kinds{{"profile", SchemaOf::profile},
                                                           {"check", SchemaOf::check},
                                                           {"packet", SchemaOf::packet},
                                                           {"print", SchemaOf::print}};
        schema
            ->add_option("--of", schema_,
                         "profile, check: what `check --format json` writes, packet: packet.json, or print: what "
                         "`print --summary json` writes")
            ->transform(CLI::CheckedTransformer(kinds).description("{profile,check,packet,print}"))
            ->type_name("TEXT");
        end_help(*schema, {kDone, kUsage, kUnusable}, "Example: ventfolio schema > profile.schema.json");
        schema->callback([this] { action_ = [this] { return schema_command(schema_); }; });
    }

    CLI::App app_{"Bedside papers for people who live on a ventilator at home"};
    DateArgument date_;
    CheckOptions check_{.on = kNotRead};
    PrintOptions print_{.on = kNotRead};
    UpdateOptions update_{.on = kNotRead};
    MatchOptions match_{.at = {kNotRead, {}}};
    OutageOptions outage_{.question = {.needed = 0, .starting = {}, .on = kNotRead, .names = false}};
    DueOptions due_{.on = kNotRead, .within = 30};
    NewOptions new_;
    TemplatesOptions templates_{.on = kNotRead};
    std::string format_ = "text";
    std::string paper_;
    std::size_t jobs_ = 0;
    std::string shard_;
    std::string summary_;
    std::string outage_start_;
    std::string moment_;
    std::string starting_;
    double hours_ = 0;
    std::vector<std::string> code_;
    std::string name_;
    ListOf list_ = ListOf::sheets;
    SchemaOf schema_ = SchemaOf::profile;
    std::function<int()> action_;
};

CommandLine::CommandLine() : commands_{std::make_unique<Commands>()} {}
CommandLine::~CommandLine() = default;
int CommandLine::run(int count, char** words) { return commands_->run(count, words); }
const CLI::App& CommandLine::app() const { return commands_->app(); }

}  // namespace ventfolio
