#include "packet/reading_limits.hpp"

#include <fmt/format.h>
#include <charconv>
#include <optional>

namespace ventfolio {
namespace {

struct Scale {
    std::string_view language;
    std::string_view name;
    double least;
    double most;
    bool more_is_harder;
};
/// Beyond these a limit would be none. Source: common practice, no source.
constexpr Scale kScales[] = {{"en", "a school grade", 1, 12, true},
                             {"es", "an ease on the INFLESZ scale", 40, 100, false}};

const Scale* scale_of(std::string_view language) {
    for (const Scale& scale : kScales)
        if (language.starts_with(scale.language)) return &scale;
    return nullptr;
}

std::optional<double> number(std::string_view text) {
    double read = 0;
    const auto end = std::from_chars(text.data(), text.data() + text.size(), read);
    if (end.ec != std::errc{} || end.ptr != text.data() + text.size()) return std::nullopt;
    return read;
}

std::optional<double> limit_of(const Template& sheet) {
    const FrontMatterLine* line = sheet.front("reading");
    return line == nullptr ? std::nullopt : number(line->value);
}

Mark mark_at(const Template& sheet, std::string label) {
    const FrontMatterLine* line = sheet.front("reading");
    Mark mark;
    mark.file = sheet.name();
    mark.place = line == nullptr ? Place{1, 1, 0, 0} : line->place;
    mark.label = std::move(label);
    return mark;
}

}  // namespace

void check_reading_limit(const Template& sheet, std::string_view language, std::vector<Finding>& findings) {
    const FrontMatterLine* line = sheet.front("reading");
    if (line == nullptr) return;
    const Scale* scale = scale_of(language);
    const std::optional<double> limit = number(line->value);
    if (scale != nullptr && limit && *limit >= scale->least && *limit <= scale->most) return;
    Finding finding;
    finding.rule = "template-front-matter-unreadable";
    finding.message = scale == nullptr
                          ? fmt::format("There is no formula for how hard a text in \"{}\" is to read.", language)
                          : fmt::format("`reading` is {} from {:g} to {:g}, not \"{}\".", scale->name, scale->least,
                                        scale->most, line->value);
    finding.marks = {mark_at(sheet, "no such limit")};
    findings.push_back(std::move(finding));
}

void compare_reading_limits(const Stationery& clinic, const Stationery& built_in, std::vector<Finding>& findings) {
    const Scale* scale = scale_of(clinic.words.language());
    if (scale == nullptr) return;
    for (const auto& [name, sheet] : built_in.sheets) {
        const auto own = clinic.sheets.find(name);
        const std::optional<double> was = limit_of(sheet);
        if (own == clinic.sheets.end() || !was) continue;
        const std::optional<double> now = limit_of(own->second);
        if (now && (scale->more_is_harder ? *now <= *was : *now >= *was)) continue;
        Finding finding;
        finding.rule = "reading-limit-relaxed";
        finding.severity = Severity::warn;
        finding.message =
            now ? fmt::format("This sheet may be harder to read than the built-in one: {:g}, not {:g}.", *now, *was)
                : fmt::format(
                      "This sheet has no limit of its own for how hard it is to read; the "
                      "built-in one has {:g}.",
                      *was);
        finding.marks = {mark_at(own->second, "the changed sheet"), mark_at(sheet, "the built-in limit")};
        findings.push_back(std::move(finding));
    }
}

}  // namespace ventfolio
