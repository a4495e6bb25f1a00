#include "packet/stationery_shelf.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <set>

#include "packet/cautions.hpp"
#include "record/sha256.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::string_view kWords = "/words.yaml";
constexpr std::string_view kPhrases = "/phrases.yaml";
constexpr std::string_view kRegions = "regions/";

/// Between the two languages of a sheet that is printed in both.
constexpr std::string_view kBoth = "+";

std::pair<std::string, std::string> two_of(const std::string& languages) {
    const auto between = languages.find(kBoth);
    return {languages.substr(0, between), languages.substr(between + kBoth.size())};
}

std::string as_compared(std::string_view name) { return lower_ascii(without_accents(name)); }

/// A file of words is long, and its names are wanted of every language: the head alone is read.
std::vector<std::string> names_in_head_of(const std::string& words) {
    std::vector<Finding> told_when_it_is_used;
    const WordBook head = WordBook::read({"", words.substr(0, words.find("\n\n"))}, told_when_it_is_used);
    std::vector<std::string> names;
    while (const auto name = head.find(fmt::format("names.{}", names.size()))) names.emplace_back(*name);
    return names;
}

std::string region_file(std::string_view name) { return fmt::format("{}{}.yaml", kRegions, name); }

template <class E>
std::optional<E> given(const Field<E>& field) {
    return field.given() ? std::optional<E>{*field} : std::nullopt;
}

/// The ways of a region as one home wants them.
void change(Region& region, const RegionChoice& choice) {
    if (choice.paper) region.paper = Words<PaperSize>::words[static_cast<std::size_t>(*choice.paper)];
    if (choice.date_order)
        region.date_order = *choice.date_order == DateOrder::month_day_year ? Region::DateOrder::month_day_year
                                                                            : Region::DateOrder::day_month_year;
    if (choice.decimal_sign == DecimalSign::point && region.numbers.decimal_sign != ".") region.numbers = {".", ","};
    if (choice.decimal_sign == DecimalSign::comma && region.numbers.decimal_sign != ",")
        region.numbers = {",", std::string{kNoBreakSpace}};
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

StationeryShelf::StationeryShelf(TemplateFiles built_in, const TemplateOverlay& clinic) : files_{std::move(built_in)} {
    if (clinic.files.empty()) return;
    built_in_ = files_;
    if (!clinic.pictures.empty()) own_.pictures = std::make_shared<const Pictures>(clinic.pictures);
    for (const auto& [path, text] : clinic.files) {
        own_.names[path] = (clinic.folder / path).string();
        const bool adds_words = path.ends_with(kWords) && files_.contains(path);
        if (path.ends_with(kPhrases) && files_.contains(path) && files_.at(path) != text)
            throw FolderError{clinic.folder / path, "the phrases by which sheets are checked are not a clinic's"};
        (adds_words ? own_.words : files_)[path] = text;
    }
}

std::vector<std::string> StationeryShelf::languages() const {
    std::vector<std::string> names;
    for (const auto& [path, text] : files_)
        if (path.ends_with(kWords)) names.push_back(path.substr(0, path.size() - kWords.size()));
    std::stable_partition(names.begin(), names.end(), [](const std::string& name) { return name == kFirstLanguage; });
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
    for (const std::string& language : languages())
        for (const std::string& file : files_in(files_, language))
            if (is_sheet(file)) names.insert(file.substr(0, std::min(file.find('/'), file.rfind('.'))));
    return {names.begin(), names.end()};
}

std::optional<std::string> StationeryShelf::find_language(std::string_view name) const {
    const std::string wanted = as_compared(name);
    if (wanted.find(kBoth) != wanted.npos) {
        const auto [first, second] = two_of(wanted);
        const auto one = find_language(first);
        const auto other = find_language(second);
        if (!one || !other) return std::nullopt;
        return *one == *other ? *one : *one + std::string{kBoth} + *other;
    }
    for (const std::string& language : languages()) {
        if (language == wanted) return language;
        for (const std::string& known : names_in_head_of(files_.at(language + std::string{kWords})))
            if (as_compared(known) == wanted) return language;
    }
    return std::nullopt;
}

std::string StationeryShelf::language_for(const Profile& profile, std::string_view region) const {
    const std::string first = first_language_for(profile, region);
    const auto& second = profile.person->languages->second_on_paper;
    const auto under = second.given() ? find_language(*second) : std::nullopt;
    return under && *under != first ? first + std::string{kBoth} + *under : first;
}

std::string StationeryShelf::first_language_for(const Profile& profile, std::string_view region) const {
    const auto& read = profile.person->languages->read;
    if (read.given())
        for (const std::string& name : *read)
            if (auto language = find_language(name)) return *language;
    return language_of_region(region);
}

std::string StationeryShelf::language_of_region(std::string_view region) const {
    std::vector<Finding> told_when_it_is_used;
    const auto file = files_.find(region_file(region));
    if (file == files_.end()) return std::string{kFirstLanguage};
    return Region::read({file->first, file->second}, told_when_it_is_used).language;
}

std::string StationeryShelf::region_for(std::string_view language) const {
    if (language != kFirstLanguage)
        for (const std::string& region : regions())
            if (language_of_region(region) == language) return region;
    return std::string{kFirstRegion};
}

const ShelvedStationery& StationeryShelf::at(const std::string& language, const RegionChoice& region) const {
    const std::lock_guard lock{mutex_};
    return read(language, region);
}

const ShelvedStationery& StationeryShelf::read(const std::string& language, const RegionChoice& region) const {
    if (const auto known = read_.find({language, region}); known != read_.end()) return *known->second;
    if (language.find(kBoth) != language.npos) return read_two(language, region);
    require_words(files_, language);
    auto fresh = std::make_unique<ShelvedStationery>();
    Stationery& stationery = fresh->stationery;
    stationery = read_stationery(files_, language, region.name, fresh->faults, own_);
    compare_with_built_in(*fresh, language, region);
    stationery.missing = missing_sheets(files_, language);
    change(stationery.region, region);
    const std::string& strangers_read = stationery.region.language;
    // In a region whose language nobody has translated yet, strangers get what the family gets.
    if (strangers_read != language && files_.contains(strangers_read + std::string{kWords})) {
        const ShelvedStationery& strangers = read(strangers_read, region);
        stationery.for_strangers = &strangers.stationery;
        stationery.digest = sha256_hex(stationery.digest + strangers.stationery.digest);
        stationery.sources.insert(stationery.sources.end(), strangers.stationery.sources.begin(),
                                  strangers.stationery.sources.end());
        fresh->faults.insert(fresh->faults.end(), strangers.faults.begin(), strangers.faults.end());
    }
    return *read_.emplace(std::pair{language, region}, std::move(fresh)).first->second;
}

const ShelvedStationery& StationeryShelf::read_two(const std::string& languages, const RegionChoice& region) const {
    const auto [first, second] = two_of(languages);
    const ShelvedStationery& under = read(second, region);
    auto fresh = std::make_unique<ShelvedStationery>(read(first, region));
    Stationery& stationery = fresh->stationery;
    stationery.second = &under.stationery;
    stationery.digest = sha256_hex(stationery.digest + under.stationery.digest);
    stationery.sources.insert(stationery.sources.end(), under.stationery.sources.begin(),
                              under.stationery.sources.end());
    fresh->faults.insert(fresh->faults.end(), under.faults.begin(), under.faults.end());
    return *read_.emplace(std::pair{languages, region}, std::move(fresh)).first->second;
}

void StationeryShelf::compare_with_built_in(ShelvedStationery& clinic, const std::string& language,
                                            const RegionChoice& region) const {
    if (!built_in_.contains(language + std::string{kWords}) || !clinic.faults.empty()) return;
    const std::string known = built_in_.contains(region_file(region.name)) ? region.name : std::string{kFirstRegion};
    std::vector<Finding> none;
    const Stationery built_in = read_stationery(built_in_, language, known, none);
    check_cautions(clinic.stationery, built_in, clinic.faults);
    for (const SourceText& source : built_in.sources) clinic.stationery.sources.push_back(source);
}

const ShelvedStationery& StationeryShelf::for_home(const Profile& profile, const StationeryChoice& choice,
                                                   const PacketRecord* before) const {
    const Home& home = *profile.home;
    RegionChoice region;
    region.name = choice.region        ? *choice.region
                  : names_region(home) ? *home.region
                  : before != nullptr  ? before->made.region
                                       : std::string{kFirstRegion};
    region.paper = given(home.paper);
    region.date_order = given(home.date_order);
    region.decimal_sign = given(home.decimal_sign);
    const std::string language = choice.language     ? *choice.language
                                 : before != nullptr ? before->made.language
                                                     : language_for(profile, region.name);
    return at(language, region);
}

bool StationeryShelf::names_region(const Home& home) const {
    return home.region.given() && files_.contains(region_file(*home.region));
}

std::optional<Finding> StationeryShelf::fault_of_region(const Profile& profile, const SourceText& source) const {
    const auto& region = profile.home->region;
    if (!region.given() || names_region(*profile.home)) return std::nullopt;
    Finding finding;
    finding.rule = "word-not-in-list";
    finding.message = fmt::format("There is no region \"{}\"; the regions are: {}.", *region, joined(regions(), ", "));
    Mark mark;
    mark.file = source.name;
    mark.place = region.place;
    mark.field = "home.region";
    finding.marks.push_back(std::move(mark));
    return finding;
}

void require_translated(const Stationery& stationery, const std::vector<std::string>& sheets) {
    std::vector<std::string> missing;
    for (const std::string& file : stationery.missing) {
        const std::string sheet = file.substr(0, std::min(file.find('/'), file.rfind('.')));
        const bool elsewhere = &stationery.of(sheet) != &stationery && stationery.under(sheet) != &stationery;
        if (!elsewhere && std::ranges::find(sheets, sheet) != sheets.end()) missing.push_back(file);
    }
    if (!missing.empty()) incomplete(stationery.words.language(), missing);
    if (stationery.second == nullptr) return;
    std::vector<std::string> twice;
    for (const std::string& sheet : sheets)
        if (stationery.under(sheet) == stationery.second) twice.push_back(sheet);
    require_translated(*stationery.second, twice);
}

}  // namespace ventfolio
