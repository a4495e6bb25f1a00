#include "packet/stationery.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <charconv>
#include <span>
#include <stdexcept>

#include "units/embedded_file.hpp"

namespace ventfolio {

std::span<const EmbeddedFile> embedded_templates();

namespace {

std::string stem_of(std::string_view path) {
    const auto slash = path.rfind('/');
    path.remove_prefix(slash == std::string_view::npos ? 0 : slash + 1);
    return std::string{path.substr(0, path.rfind('.'))};
}

int order_of(const Template& sheet) {
    int order = 1000;
    if (const FrontMatterLine* line = sheet.front("order"))
        std::from_chars(line->value.data(), line->value.data() + line->value.size(), order);
    return order;
}

SourceText source_of(const EmbeddedFile& file) {
    return {"templates/" + std::string{file.name}, std::string{file.contents}};
}

SourceText embedded(const std::string& name) {
    for (const EmbeddedFile& file : embedded_templates())
        if (file.name == name) return source_of(file);
    throw std::invalid_argument{fmt::format("there is no built-in file templates/{}", name)};
}

}  // namespace

std::vector<std::string> Stationery::in_order() const {
    std::vector<std::string> names;
    for (const auto& [name, sheet] : sheets) names.push_back(name);
    std::ranges::stable_sort(names, {}, [&](const std::string& name) { return order_of(sheets.at(name)); });
    return names;
}

Stationery built_in_stationery(std::string_view language, std::string_view region, std::vector<Finding>& findings) {
    Stationery stationery;
    const std::string folder = std::string{language} + "/";
    const SourceText words = embedded(folder + "words.yaml");
    const SourceText ways = embedded(fmt::format("regions/{}.yaml", region));
    const SourceText phrases = embedded(folder + "phrases.yaml");
    stationery.words = WordBook::read(words, findings);
    stationery.phrases = PhraseBook::read(phrases, findings);
    stationery.region = Region::read(ways, findings);
    stationery.sources = {words, phrases, ways};
    Partials partials;
    for (const EmbeddedFile& file : embedded_templates())
        if (file.name.starts_with(folder + "partials/")) partials.emplace(stem_of(file.name), source_of(file));
    for (const EmbeddedFile& file : embedded_templates()) {
        const bool sheet = file.name.starts_with(folder) && file.name.ends_with(".md") &&
                           file.name.find('/', folder.size()) == std::string_view::npos;
        if (!sheet) continue;
        Template parsed = parse_template(source_of(file), partials);
        findings.insert(findings.end(), parsed.findings.begin(), parsed.findings.end());
        stationery.sources.insert(stationery.sources.end(), parsed.files.begin(), parsed.files.end());
        stationery.sheets.emplace(stem_of(file.name), std::move(parsed));
    }
    return stationery;
}

}  // namespace ventfolio
