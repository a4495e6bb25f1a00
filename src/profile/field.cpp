#include "profile/field.hpp"

#include <algorithm>
#include <charconv>

#include "profile/finding.hpp"
#include "units/text.hpp"

namespace ventfolio {

std::string_view name_of(Severity severity) {
    constexpr std::array<std::string_view, 4> kNames{"note", "warn", "acknowledge", "refuse"};
    return kNames[static_cast<std::size_t>(severity)];
}

FieldBase::FieldBase() = default;
FieldBase::FieldBase(const FieldBase&) = default;
FieldBase::FieldBase(FieldBase&&) noexcept = default;
FieldBase& FieldBase::operator=(const FieldBase&) = default;
FieldBase& FieldBase::operator=(FieldBase&&) noexcept = default;
FieldBase::~FieldBase() = default;

std::optional<Revision> Revision::parse(std::string_view text) {
    if (!text.starts_with('R')) return std::nullopt;
    Revision revision;
    const char* end = text.data() + text.size();
    const auto [rest, error] = std::from_chars(text.data() + 1, end, revision.number);
    if (error != std::errc{} || revision.number < 1 || revision.number > 9999) return std::nullopt;
    revision.letter.assign(rest, end);
    const bool one_small_letter = revision.letter.size() == 1 && revision.letter[0] >= 'a' && revision.letter[0] <= 'z';
    if (!revision.letter.empty() && !one_small_letter) return std::nullopt;
    return revision;
}

std::string Revision::text() const { return "R" + std::to_string(number) + letter; }

Place SourceText::place(std::size_t begin, std::size_t end) const {
    begin = std::min(begin, text.size());
    Place place;
    place.begin = begin;
    place.end = std::min(std::max(begin, end), text.size());
    place.line =
        1 + static_cast<std::size_t>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(begin), '\n'));
    const auto line_start = begin == 0 ? std::string::npos : text.rfind('\n', begin - 1);
    const std::size_t first = line_start == std::string::npos ? 0 : line_start + 1;
    place.column = 1 + display_cells(std::string_view{text}.substr(first, begin - first));
    return place;
}

std::string_view SourceText::line(std::size_t number) const {
    std::size_t begin = 0;
    for (std::size_t at = 1; at < number; ++at) {
        const auto newline = text.find('\n', begin);
        if (newline == std::string::npos) return {};
        begin = newline + 1;
    }
    std::string_view line = std::string_view{text}.substr(begin);
    line = line.substr(0, line.find('\n'));
    if (line.ends_with('\r')) line.remove_suffix(1);
    return line;
}

}  // namespace ventfolio
