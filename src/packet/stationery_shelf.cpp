#include "packet/stationery_shelf.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <set>

#include "record/sha256.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::string_view kWords = "/words.yaml";
constexpr std::string_view kPhrases = "/phrases.yaml";
constexpr std::string_view kRegions = "regions/";

std::string as_compared(std::string_view name) { return lower_ascii(without_accents(name)); }

/// A file of words is long, and its names are wanted of every language: the head alone is read.
std::vector<std::string> names_in_head_of(const std::string& words) {
    std::vector<Finding> told_when_it_is_used;
    const WordBook head = WordBook::read({"", words.substr(0, words.find("\n\n"))}, told_when_it_is_used);
    std::vector<std::string> names;
    while (const auto name = head.find(fmt::format("names.{}", names.size()))) names.emplace_back(*name);
    return names;
}

bool is_sheet(std::string_view file) { return file.ends_with(".md") && file.find("partials/") == file.npos; }

/// Paths of a language's files without its folder.
std::set<std::string> files_in(const TemplateFiles& files, const std::string& language) {
    std::set<std::string> names;
    for (const auto& [path, text] : files)
        if (path.starts_with(language + "/")) names.insert(path.substr(language.size() + 1));
    return names;
}

std::vector<std::string> missing_sheets(const TemplateFiles& files, const std::string& language) {
    const std::set<std::string> own = files_in(files, language);
    std::vector<std::string> missing;
    for (const std::string& name : files_in(files, std::string{kFirstLanguage}))
        if (is_sheet(name) && !own.contains(name)) missing.push_back(name);
    return missing;
}

[[noreturn]] void incomplete(const std::string& language, const std::vector<std::string>& missing) {
    throw IncompleteLanguage{
        fmt::format("templates/{} is not complete; it has no {}", language, joined(missing, ", "))};
}

void require_words(const TemplateFiles& files, const std::string& language) {
    std::vector<std::string> missing;
    for (const std::string_view name : {kWords, kPhrases})
        if (!files.contains(language + std::string{name})) missing.emplace_back(name.substr(1));
    if (!missing.empty()) incomplete(language, missing);
}

}  // namespace

std::vector<std::string> StationeryShelf::languages() const {
    std::vector<std::string> names;
    for (const auto& [path, text] : files_)
        if (path.ends_with(kWords)) names.push_back(path.substr(0, path.size() - kWords.size()));
    std::ranges::stable_partition(names, [](const std::string& name) { return name == kFirstLanguage; });
    return names;
}

std::vector<std::string> StationeryShelf::regions() const {
    std::vector<std::string> names;
    for (const auto& [path, text] : files_)
        if (path.starts_with(kRegions))
            names.push_back(path.substr(kRegions.size(), path.rfind('.') - kRegions.size()));
    return names;
}

std::vector<std::string> StationeryShelf::sheets() const {
    std::set<std::string> names;
    for (const std::string& file : files_in(files_, std::string{kFirstLanguage}))
        if (is_sheet(file)) names.insert(file.substr(0, std::min(file.find('/'), file.rfind('.'))));
    return {names.begin(), names.end()};
}

std::optional<std::string> StationeryShelf::find_language(std::string_view name) const {
    const std::string wanted = as_compared(name);
    for (const std::string& language : languages()) {
        if (language == wanted) return language;
        for (const std::string& known : names_in_head_of(files_.at(language + std::string{kWords})))
            if (as_compared(known) == wanted) return language;
    }
    return std::nullopt;
}

std::string StationeryShelf::language_for(const Profile& profile, std::string_view region) const {
    const auto& read = profile.person->languages->read;
    if (read.given())
        for (const std::string& name : *read)
            if (auto language = find_language(name)) return *language;
    std::vector<Finding> told_when_it_is_used;
    const auto file = files_.find(fmt::format("{}{}.yaml", kRegions, region));
    if (file == files_.end()) return std::string{kFirstLanguage};
    return Region::read({file->first, file->second}, told_when_it_is_used).language;
}

const ShelvedStationery& StationeryShelf::at(const std::string& language, const std::string& region) const {
    const std::lock_guard lock{mutex_};
    return read(language, region);
}

const ShelvedStationery& StationeryShelf::read(const std::string& language, const std::string& region) const {
    if (const auto known = read_.find({language, region}); known != read_.end()) return *known->second;
    require_words(files_, language);
    auto fresh = std::make_unique<ShelvedStationery>();
    Stationery& stationery = fresh->stationery;
    stationery = read_stationery(files_, language, region, fresh->faults);
    stationery.missing = missing_sheets(files_, language);
    if (stationery.region.language != language) {
        const ShelvedStationery& strangers = read(stationery.region.language, region);
        stationery.for_strangers = &strangers.stationery;
        stationery.digest = sha256_hex(stationery.digest + strangers.stationery.digest);
        stationery.sources.insert(stationery.sources.end(), strangers.stationery.sources.begin(),
                                  strangers.stationery.sources.end());
        fresh->faults.insert(fresh->faults.end(), strangers.faults.begin(), strangers.faults.end());
    }
    return *read_.emplace(std::pair{language, region}, std::move(fresh)).first->second;
}

const ShelvedStationery& StationeryShelf::for_home(const Profile& profile, const StationeryChoice& choice) const {
    const std::string region = choice.region.value_or(std::string{kFirstRegion});
    return at(choice.language ? *choice.language : language_for(profile, region), region);
}

const ShelvedStationery& StationeryShelf::like(const PacketRecord& packet, const StationeryChoice& choice) const {
    return at(choice.language.value_or(packet.made.language), choice.region.value_or(packet.made.region));
}

void require_translated(const Stationery& stationery, const std::vector<std::string>& sheets) {
    std::vector<std::string> missing;
    for (const std::string& file : stationery.missing) {
        const std::string sheet = file.substr(0, std::min(file.find('/'), file.rfind('.')));
        const bool elsewhere = &stationery.of(sheet) != &stationery;
        if (!elsewhere && std::ranges::find(sheets, sheet) != sheets.end()) missing.push_back(file);
    }
    if (!missing.empty()) incomplete(stationery.words.language(), missing);
}

}  // namespace ventfolio
