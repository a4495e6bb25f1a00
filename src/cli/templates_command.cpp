#include <unistd.h>

#include <fmt/format.h>
#include <algorithm>
#include <filesystem>
#include <map>

#include "cli/commands.hpp"
#include "cli/given_homes.hpp"
#include "cli/messages.hpp"
#include "cli/world.hpp"
#include "packet/documents.hpp"
#include "packet/reading_limits.hpp"
#include "packet/template_check.hpp"
#include "packet/translation.hpp"
#include "profile/refusal.hpp"
#include "rules/report_text.hpp"

namespace ventfolio {
namespace {

namespace fs = std::filesystem;

/// The demo homes: installed beside the program, wherever its prefix was moved, or, in a build, linked there.
std::vector<std::string> demo_homes() {
    constexpr std::string_view kHomes = "share/ventfolio/profiles";
    std::error_code error;
    const fs::path program = fs::canonical("/proc/self/exe", error).parent_path();
    for (const fs::path& prefix : {program.parent_path(), program}) {
        const fs::path folder = fs::canonical(prefix / kHomes, error);
        if (!error && fs::is_directory(folder)) return {folder.string()};
    }
    throw UnusableFile{fmt::format("the demo homes are not installed in {}; name profiles to check with",
                                   (program.parent_path() / kHomes).string())};
}

/// Everything that was said, each once.
class Check {
  public:
    explicit Check(const TemplatesOptions& options) : options_{options} {}

    int run() {
        StationeryOptions stationery = options_.stationery;
        stationery.templates = options_.folder;
        const StationeryShelf shelf = open_shelf(stationery);
        const auto choice = chosen_stationery(stationery, shelf);
        if (!choice) return kUsage;
        const std::vector<std::string> languages =
            choice->language ? std::vector{*choice->language} : shelf.languages();
        const FoundHomes homes = given_homes(options_.profiles.empty() ? demo_homes() : options_.profiles);
        for (const std::string& language : languages)
            check_language(shelf, language, choice->region.value_or(shelf.region_for(first_of(language))), homes);
        for (const UnusableName& name : homes.unusable) {
            fmt::print(stderr, "{}: {}\n", name.name, name.reason);
            status_ = kUnusable;
        }
        if (!options_.quiet) tell(languages.size(), homes.files.size());
        return status_;
    }

  private:
    void check_language(const StationeryShelf& shelf, const std::string& language, const std::string& region,
                        const FoundHomes& homes) {
        try {
            const ShelvedStationery& chosen = shelf.at(language, {region});
            std::vector<Finding> findings = chosen.faults;
            std::vector<SourceText> sources = chosen.stationery.sources;
            for (const Stationery* one : {&chosen.stationery, chosen.stationery.second})
                if (one != nullptr) check_alone(shelf, *one, findings, sources);
            if (chosen.faults.empty())
                for (const std::string& file : homes.files) check_home_in(shelf, {language, region}, file, findings);
            leave_one_of_each(findings);
            count(findings);
            print_findings(findings, nullptr, sources, options_.quiet);
        } catch (const IncompleteLanguage& fault) {
            fmt::print(stderr, "ventfolio: {}\n", fault.what());
            status_ = kUnusable;
        }
    }

    /// What can be said of a language before there is a home.
    void check_alone(const StationeryShelf& shelf, const Stationery& stationery, std::vector<Finding>& findings,
                     std::vector<SourceText>& sources) {
        const std::string language = stationery.words.language();
        if (language != kFirstLanguage) {
            const Stationery& first = shelf.at(std::string{kFirstLanguage}, {std::string{kFirstRegion}}).stationery;
            compare_translation(first, stationery, findings);
            sources.insert(sources.end(), first.sources.begin(), first.sources.end());
        }
        const std::vector<std::string> built_in = built_in_.languages();
        if (std::ranges::find(built_in, language) != built_in.end())
            compare_reading_limits(stationery, built_in_.at(language, {std::string{kFirstRegion}}).stationery,
                                   findings);
        check_plain_words(stationery, findings);
    }

    void check_home_in(const StationeryShelf& shelf, const StationeryChoice& choice, const std::string& file,
                       std::vector<Finding>& findings) {
        const SourceText profile = read_file(file);
        const ReadResult read = read_profile(profile);
        const ShelvedStationery& chosen = shelf.for_home(read.profile, choice);
        try {
            TemplateCheck check =
                check_templates_with(profile, options_.on, chosen.stationery, options_.order, measurer_);
            std::ranges::move(check.findings, std::back_inserter(findings));
            for (const auto& [sheet, figure] : check.figures) {
                double& hardest = figures_.try_emplace(sheet, figure).first->second;
                hardest = is_grade(sheet) ? std::max(hardest, figure) : std::min(hardest, figure);
            }
        } catch (const MissingWord& fault) {
            fmt::print(stderr, "ventfolio: {}\n", fault.what());
            status_ = std::max(status_, kFindings);
        }
    }

    /// "en" of "en+es": in a region of it, its sheets for strangers are in it, too.
    static std::string first_of(const std::string& language) { return language.substr(0, language.find('+')); }

    /// More is harder; of ease less is.
    static bool is_grade(const ReadSheet& sheet) { return sheet.first.starts_with("en"); }

    void count(const std::vector<Finding>& findings) {
        for (const Finding& finding : findings) {
            refuses(finding) ? ++refused_ : ++others_;
            if (refuses(finding)) status_ = std::max(status_, kFindings);
        }
    }

    void tell(std::size_t languages, std::size_t homes) const {
        if (!figures_.empty())
            fmt::print(
                "How hard to read, the hardest of all homes: en, school grade (Flesch-Kincaid); es, ease (INFLESZ)\n");
        for (const auto& [sheet, figure] : figures_)
            fmt::print("  {}  {:<18} {:.{}f}\n", sheet.first, sheet.second, figure, is_grade(sheet) ? 1 : 0);
        fmt::print("{} languages with {} homes: {} faults, {} remarks\n", languages, homes, refused_, others_);
    }

    const TemplatesOptions& options_;
    const StationeryShelf built_in_{built_in_files()};
    Measurer measurer_;
    std::map<ReadSheet, double> figures_;
    std::size_t refused_ = 0;
    std::size_t others_ = 0;
    int status_ = kDone;
};

}  // namespace

int templates_check_command(const TemplatesOptions& options) { return Check{options}.run(); }

int templates_export_command(const TemplatesOptions& options) {
    const fs::path folder{options.folder};
    std::error_code error;
    if (fs::exists(folder, error) && !fs::is_empty(folder, error)) {
        fmt::print(stderr, "ventfolio: {} is not empty; nothing was written. Name a new folder\n", options.folder);
        return kUnusable;
    }
    for (const auto& [path, text] : built_in_files()) {
        const fs::path file = folder / path;
        fs::create_directories(file.parent_path());
        write_file(file.string(), text);
    }
    if (!options.quiet) fmt::print("{} files in {}\n", built_in_files().size(), options.folder);
    return kDone;
}

}  // namespace ventfolio
