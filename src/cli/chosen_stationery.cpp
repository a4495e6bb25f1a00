#include "cli/chosen_stationery.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <cstdio>

#include "cli/messages.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// "es, en": what there is, the nearest to a misspelt word first.
std::string nearest_first(std::string_view word, std::vector<std::string> names) {
    std::ranges::stable_sort(names, {}, [&](const std::string& name) { return edit_distance(word, name); });
    return joined(names, ", ");
}

}  // namespace

StationeryShelf open_shelf(const StationeryOptions& options) {
    if (options.templates.empty()) return StationeryShelf{built_in_files()};
    return StationeryShelf{built_in_files(), read_template_folder(options.templates)};
}

std::optional<StationeryChoice> chosen_stationery(const StationeryOptions& options, const StationeryShelf& shelf) {
    StationeryChoice choice;
    if (!options.language.empty()) {
        choice.language = shelf.find_language(options.language);
        if (!choice.language) {
            fmt::print(stderr, "ventfolio: there is no language \"{}\"; the languages are: {}\n", options.language,
                       nearest_first(options.language, shelf.languages()));
            return std::nullopt;
        }
    }
    if (!options.region.empty()) {
        const std::vector<std::string> regions = shelf.regions();
        if (std::ranges::find(regions, options.region) == regions.end()) {
            fmt::print(stderr, "ventfolio: there is no region \"{}\"; the regions are: {}\n", options.region,
                       nearest_first(options.region, regions));
            return std::nullopt;
        }
        choice.region = options.region;
    }
    return choice;
}

const ShelvedStationery& at_choice(const StationeryShelf& shelf, const StationeryChoice& choice) {
    return shelf.for_home(Profile{}, choice);
}

const Stationery* without_faults(const ShelvedStationery& shelved, bool quiet) {
    if (shelved.faults.empty()) return &shelved.stationery;
    print_findings(shelved.faults, nullptr, shelved.stationery.sources, quiet);
    return nullptr;
}

}  // namespace ventfolio
