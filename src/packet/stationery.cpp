#include "packet/stationery.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <charconv>
#include <span>
#include <stdexcept>

#include "packet/reading_limits.hpp"
#include "record/sha256.hpp"
#include "units/embedded_file.hpp"

namespace ventfolio {

std::span<const EmbeddedFile> embedded_templates();

namespace {

/// "alarm-response/high-pressure" is a leaf of "alarm-response".
std::string_view sheet_of(std::string_view name) { return name.substr(0, name.find('/')); }

std::string without_extension(std::string_view path) { return std::string{path.substr(0, path.rfind('.'))}; }

std::string stem_of(std::string_view path) {
    const auto slash = path.rfind('/');
    path.remove_prefix(slash == std::string_view::npos ? 0 : slash + 1);
    return without_extension(path);
}

int order_of(const Template& sheet) {
    int order = 1000;
    if (const FrontMatterLine* line = sheet.front("order"))
        std::from_chars(line->value.data(), line->value.data() + line->value.size(), order);
    return order;
}

using TemplateFile = TemplateFiles::value_type;

SourceText source_of(const TemplateFile& file, const OwnFiles& own) {
    const auto shown = own.names.find(file.first);
    return {shown == own.names.end() ? "templates/" + file.first : shown->second, file.second};
}

SourceText source_named(const TemplateFiles& files, const std::string& name, const OwnFiles& own) {
    const auto file = files.find(name);
    if (file == files.end()) throw std::invalid_argument{fmt::format("there is no built-in file templates/{}", name)};
    return source_of(*file, own);
}

/// The files of one language and region, each with its length, so that no word can pass from one to the next.
std::string digest_of(const TemplateFiles& files, const std::string& folder, const std::string& region) {
    std::string all;
    for (const auto& [name, text] : files)
        if (name.starts_with(folder) || name == region) all += fmt::format("{}\n{}\n{}", name, text.size(), text);
    return sha256_hex(all);
}

std::string digest_of(const Pictures& pictures) {
    std::string all;
    for (const auto& [name, file] : pictures)
        all += fmt::format("{}\n{}\n", name, file.picture ? file.picture->digest : file.fault);
    return sha256_hex(all);
}

}  // namespace

const Stationery& Stationery::of(std::string_view sheet) const {
    if (for_strangers == nullptr) return *this;
    const std::vector<Part> parts = for_strangers->own_parts_of(sheet);
    if (parts.empty()) return *this;
    const FrontMatterLine* readers = parts.front().from->front("for");
    return readers != nullptr && readers->value == "strangers" ? *for_strangers : *this;
}

const Stationery* Stationery::under(std::string_view sheet) const {
    if (second == nullptr) return nullptr;
    const std::vector<Part> parts = parts_of(sheet);
    const FrontMatterLine* wanted = parts.empty() ? nullptr : parts.front().from->front("two_languages");
    if (wanted != nullptr && wanted->value == "no") return nullptr;
    return of(sheet).words.language() == second->words.language() ? this : second;
}

std::string Stationery::languages() const {
    return second == nullptr ? words.language() : words.language() + "+" + second->words.language();
}

std::vector<std::string> Stationery::in_order() const {
    std::vector<std::string> names;
    const auto add = [&](std::string_view sheet) {
        if (std::ranges::find(names, sheet) == names.end()) names.emplace_back(sheet);
    };
    for (const auto& [name, sheet] : sheets) add(sheet_of(name));
    if (for_strangers != nullptr)
        for (const auto& [name, sheet] : for_strangers->sheets)
            if (&of(sheet_of(name)) == for_strangers) add(sheet_of(name));
    std::ranges::sort(names);
    std::ranges::stable_sort(names, {},
                             [&](const std::string& name) { return order_of(*parts_of(name).front().from); });
    return names;
}

std::vector<Stationery::Part> Stationery::parts_of(std::string_view sheet) const {
    return of(sheet).own_parts_of(sheet);
}

std::vector<Stationery::Part> Stationery::own_parts_of(std::string_view sheet) const {
    std::vector<Part> parts;
    for (const auto& [name, from] : sheets) {
        if (sheet_of(name) != sheet) continue;
        const bool leaf = name.size() > sheet.size();
        parts.push_back({leaf ? name.substr(sheet.size() + 1) : std::string{}, &from});
    }
    std::ranges::stable_sort(parts, {}, [](const Part& part) { return order_of(*part.from); });
    return parts;
}

TemplateFiles built_in_files() {
    TemplateFiles files;
    for (const EmbeddedFile& file : embedded_templates()) files.emplace(file.name, file.contents);
    return files;
}

Stationery read_stationery(const TemplateFiles& files, std::string_view language, std::string_view region,
                           std::vector<Finding>& findings, const OwnFiles& own) {
    Stationery stationery;
    const std::string folder = std::string{language} + "/";
    const SourceText words = source_named(files, folder + "words.yaml", own);
    const SourceText ways = source_named(files, fmt::format("regions/{}.yaml", region), own);
    const SourceText phrases = source_named(files, folder + "phrases.yaml", own);
    stationery.words = WordBook::read(words, findings);
    const auto own_words = own.words.find(folder + "words.yaml");
    if (own_words != own.words.end()) {
        stationery.sources.push_back({own.names.at(own_words->first), own_words->second});
        stationery.words.lay_over(stationery.sources.back(), findings);
    }
    stationery.phrases = PhraseBook::read(phrases, findings);
    // Only `templates check` looks for hard words; a language may do without a list of them.
    if (const auto plain = files.find(folder + "plain.yaml"); plain != files.end()) {
        stationery.sources.push_back(source_of(*plain, own));
        stationery.plain = PlainWords::read(stationery.sources.back(), findings);
    }
    stationery.region = Region::read(ways, findings);
    stationery.region_name = region;
    stationery.sources.insert(stationery.sources.end(), {words, phrases, ways});
    stationery.digest = digest_of(files, folder, fmt::format("regions/{}.yaml", region));
    if (own_words != own.words.end()) stationery.digest = sha256_hex(stationery.digest + own_words->second);
    if (own.pictures != nullptr) stationery.digest = sha256_hex(stationery.digest + digest_of(*own.pictures));
    Partials partials;
    for (const TemplateFile& file : files)
        if (file.first.starts_with(folder + "partials/")) partials.emplace(stem_of(file.first), source_of(file, own));
    for (const TemplateFile& file : files) {
        const bool partial = file.first.starts_with(folder + "partials/");
        if (!file.first.starts_with(folder) || !file.first.ends_with(".md") || partial) continue;
        Template parsed = parse_template(source_of(file, own), partials, own.pictures);
        findings.insert(findings.end(), parsed.findings.begin(), parsed.findings.end());
        check_reading_limit(parsed, language, findings);
        stationery.sources.insert(stationery.sources.end(), parsed.files.begin(), parsed.files.end());
        stationery.sheets.emplace(without_extension(file.first.substr(folder.size())), std::move(parsed));
    }
    return stationery;
}

Stationery built_in_stationery(std::string_view language, std::string_view region, std::vector<Finding>& findings) {
    return read_stationery(built_in_files(), language, region, findings);
}

}  // namespace ventfolio
