#include <algorithm>
#include <array>
#include <map>
#include <optional>

#include "profile/field_paths.hpp"
#include "profile/profile.hpp"
#include "sheets/checks/checks.hpp"
#include "sheets/checks/letters.hpp"
#include "units/quantity.hpp"
#include "units/text.hpp"

/// Numbers that can be misread. Source: list of error-prone notations, Institute for Safe Medication Practices (as
/// quoted): naked point, trailing zero, signs for less and more, unit run together with its number.
namespace ventfolio::sheet_check {
namespace {

/// How a field is declared; nothing for a value that a calculator made.
const DeclaredField* declared(const std::string& path) {
    static const auto fields = [] {
        std::map<std::string, DeclaredField, std::less<>> all;
        for (DeclaredField& field : declared_fields_of<Profile>()) all.emplace(field.path, std::move(field));
        return all;
    }();
    const auto found = fields.find(declared_path(path));
    return found == fields.end() ? nullptr : &found->second;
}

/// Only free text can hold a number that our own printer has not written.
bool may_be_misread(const PrintedValue& value) {
    const DeclaredField* field = declared(value.field);
    if (field == nullptr) return true;
    const bool text = field->kind == ValueKind::text || field->kind == ValueKind::text_list;
    return text && field->info.shape == TextShape::free;
}

/// Blanks of any width before `at`, and the offset before them.
std::size_t before_blanks(std::string_view text, std::size_t at) {
    while (at > 0) {
        if (text[at - 1] == ' ')
            --at;
        else if (text.substr(0, at).ends_with(kNoBreakSpace))
            at -= kNoBreakSpace.size();
        else
            break;
    }
    return at;
}
std::size_t after_blanks(std::string_view text, std::size_t at) {
    while (at < text.size()) {
        if (text[at] == ' ')
            ++at;
        else if (text.substr(at).starts_with(kNoBreakSpace))
            at += kNoBreakSpace.size();
        else
            break;
    }
    return at;
}

struct Misread {
    std::size_t begin;
    std::size_t end;
    std::string_view as;
};

/// A number of a text: digits with points and commas inside.
std::size_t end_of_number(std::string_view text, std::size_t at) {
    while (at < text.size() && (is_digit(text[at]) || ((text[at] == '.' || text[at] == ',') && at + 1 < text.size() &&
                                                       is_digit(text[at + 1]))))
        ++at;
    return at;
}

/// Tube and catheter sizes keep their zeros, as the box reads.
bool size_of_a_tube(std::string_view text, std::size_t end) {
    const std::string_view rest = text.substr(after_blanks(text, end));
    return rest.starts_with("mm") || rest.starts_with("Fr");
}

bool has_trailing_zero(std::string_view number) {
    const auto point = number.find('.');
    return point != std::string_view::npos && number.find('.', point + 1) == std::string_view::npos &&
           number.back() == '0';
}

bool unit_is_glued(std::string_view text, std::size_t end) {
    constexpr std::array<std::string_view, 31> kUnits{
        "cmH2O", "hPa", "mbar", "kPa", "mmHg", "psi", "bar", "mL",  "ml",  "L",  "l", "L/min", "mg", "mcg", "g", "kg",
        "lb",    "mm",  "cm",   "m",   "ft",   "in",  "Fr",  "min", "sec", "ms", "s", "h",     "W",  "V",   "Ah"};
    std::size_t letters = end;
    while (letters < text.size() && (is_letter(text[letters]) || text[letters] == '/' || is_digit(text[letters])))
        ++letters;
    return std::ranges::find(kUnits, text.substr(end, letters - end)) != kUnits.end();
}

std::optional<Misread> misread_number(std::string_view text, std::size_t at) {
    const std::size_t end = end_of_number(text, at);
    const char before = at > 0 ? text[at - 1] : ' ';
    const char before_that = at > 1 ? text[at - 2] : ' ';
    if (before == '.' && !is_digit(before_that) && !is_letter(before_that))
        return Misread{at - 1, end, "a number ten times as large"};
    if (is_letter(before) && before_that != kNoBreakSpace.front()) return std::nullopt;  // "P1", "CO2"
    if (before == '-' && is_letter(before_that)) return std::nullopt;                    // "DEMO-1"
    if (has_trailing_zero(text.substr(at, end - at)) && !size_of_a_tube(text, end))
        return Misread{at, end, "a number ten times as large"};
    if (unit_is_glued(text, end)) return Misread{at, end + 1, "another number, where letter and digit run together"};
    return std::nullopt;
}

std::optional<Misread> misread_sign(std::string_view text, std::size_t at) {
    const std::size_t next = after_blanks(text, at + 1);
    const std::size_t last = before_blanks(text, at);
    const bool by_number =
        (next < text.size() && is_digit(text[next])) || (last > 0 && is_digit(text[last - 1])) || next > at + 1;
    if (!by_number) return std::nullopt;
    return Misread{at, std::max(at + 1, end_of_number(text, next)), "a digit, or its opposite"};
}

/// Digits and signs; most of a text is neither, and is passed over.
bool may_begin_number(char c) { return is_digit(c) || c == '<' || c == '>'; }

std::optional<Misread> misread_at(std::string_view text, std::size_t at) {
    if (text[at] == '<' || text[at] == '>') return misread_sign(text, at);
    if (is_digit(text[at])) return misread_number(text, at);
    return std::nullopt;
}

void judge_signs(const Passage& passage, DocumentReport& report) {
    for (std::size_t at = 0; at < passage.text.size();) {
        if (!may_begin_number(passage.text[at])) {
            ++at;
            continue;
        }
        const PrintedValue* value = value_at(passage.values, at);
        // A name is printed as it is, whatever signs are in it.
        const bool name = value != nullptr && value->field.starts_with("person.");
        const bool judged = !name && (value == nullptr || may_be_misread(*value));
        const auto misread = judged ? misread_at(passage.text, at) : std::optional<Misread>{};
        if (misread) {
            const bool open = value == nullptr || (value->audiences & wall) != 0;
            const std::string text = passage.text.substr(misread->begin, misread->end - misread->begin);
            report.at(line_at(passage, at),
                      {{"text", open ? text : "{" + value->field + "}"}, {"misread", std::string{misread->as}}},
                      value ? value->field : std::string{});
        }
        const std::size_t next = is_digit(passage.text[at]) ? end_of_number(passage.text, at) : at + 1;
        at = std::max({next, misread ? misread->end : 0, at + 1});
    }
}

bool has_part(const PrintedValue& value, PrintedPart::Kind kind) {
    return std::ranges::any_of(value.parts, [&](const PrintedPart& part) { return part.kind == kind; });
}

bool shows_a_unit(const Passage& passage) {
    for (const ValueSpan& span : passage.values)
        if (has_part(*span.value, PrintedPart::Kind::unit)) return true;
    if (passage.text.find('%') != std::string::npos) return true;
    for (const Token& token : tokens_of(passage.text))
        if (find_unit(passage.text.substr(token.begin, token.end - token.begin)) != nullptr) return true;
    return false;
}

/// A measured value whose number stands alone, with no unit in its line, its row or the head of its table. A size that
/// is read off a box has none there either.
void judge_units(const JudgedDocument& sheet, const Passage& passage, DocumentReport& report) {
    for (const ValueSpan& span : passage.values) {
        const PrintedValue& value = *span.value;
        if (!has_part(value, PrintedPart::Kind::number) || has_part(value, PrintedPart::Kind::unit)) continue;
        const DeclaredField* field = declared(value.field);
        if (field == nullptr || (field->kind != ValueKind::measure && field->kind != ValueKind::range)) continue;
        if (field->dimension == Dimension::count || field->info.zeros == Zeros::keep) continue;
        const bool has_unit = std::ranges::any_of(sheet.passages, [&](const Passage& other) {
            return (other.group == passage.group || (passage.head != 0 && other.group == passage.head)) &&
                   shows_a_unit(other);
        });
        if (has_unit) continue;
        const bool open = (value.audiences & wall) != 0;
        report.at(span.line,
                  {{"text", open ? value.text() : "{" + value.field + "}"}, {"misread", "a number of another unit"}},
                  value.field);
    }
}

}  // namespace

void misreadable_number(const JudgedDocument& sheet, DocumentReport& report) {
    for (const Passage& passage : sheet.passages) {
        judge_signs(passage, report);
        judge_units(sheet, passage, report);
    }
}

}  // namespace ventfolio::sheet_check
