#include "profile/yaml_guard.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>

#include "profile/place_finder.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kMostBytes = 1024 * 1024;
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

struct Span {
    char32_t first;
    char32_t last;
};

// Unicode general categories Cc, Co, Zl and Zp, noncharacters, and the controls that turn the direction of writing: a
// number behind one of those reads backwards.
constexpr std::array kUnprintable{
    Span{0x00, 0x1F},     Span{0x7F, 0x9F},     Span{0x2028, 0x202E}, Span{0x2066, 0x2069},
    Span{0xE000, 0xF8FF}, Span{0xFDD0, 0xFDEF}, Span{0xFEFF, 0xFEFF}, Span{0xF0000, 0x10FFFF},
};

bool unprintable(char32_t point) {
    if ((point & 0xFFFE) == 0xFFFE) return true;
    return std::ranges::any_of(kUnprintable, [&](Span span) { return point >= span.first && point <= span.last; });
}

bool private_use(char32_t point) { return (point >= 0xE000 && point <= 0xF8FF) || point >= 0xF0000; }

std::string name_of_character(char32_t point) { return fmt::format("U+{:04X}", static_cast<unsigned>(point)); }

void report_tabs(const SourceText& source, FindingList& findings) {
    const auto first = source.text.find('\t');
    if (first == std::string::npos) return;
    const auto others = std::ranges::count(source.text, '\t') - 1;
    const std::string more = others == 0   ? "."
                             : others == 1 ? ", and one more further down."
                                           : fmt::format(", and {} more further down.", others);
    findings.refuse({"tab-in-file", source.place(first, first + 1), "", "The file holds a tab character" + more,
                     "a tab", "Set the editor to write blanks for the tab key, and replace each tab by two blanks."});
}

void report_character(const SourceText& source, std::size_t begin, std::size_t end, char32_t point,
                      FindingList& findings) {
    const std::string name = name_of_character(point);
    const Place place = source.place(begin, end);
    if (private_use(point))
        findings.refuse({"private-use-character-in-file", place, "",
                         fmt::format("The character {} has no meaning that all computers share.", name), name,
                         "Take it out, or write the word that it stands for."});
    else
        findings.refuse({"control-character-in-file", place, "",
                         fmt::format("The file holds {}, a character that does not print.", name), name,
                         "Take it out. It often comes along when text is copied from another program."});
}

void report_characters(const SourceText& source, FindingList& findings) {
    constexpr std::size_t kMostCharacters = 20;
    const std::string_view text = source.text;
    std::size_t found = 0;
    std::size_t at = length_of_byte_order_mark(text);
    while (at < text.size() && found < kMostCharacters) {
        const auto lead = static_cast<unsigned char>(text[at]);
        const std::size_t size = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        const bool line_end = lead == '\n' || (lead == '\r' && text.substr(at + 1).starts_with('\n'));
        if (!line_end && lead != '\t' && (lead < 0x20 || lead >= 0x7F)) {
            const char32_t point = code_points(text.substr(at, size)).front();
            if (unprintable(point)) {
                report_character(source, at, at + size, point, findings);
                ++found;
            }
        }
        at += size;
    }
}

}  // namespace

std::size_t length_of_byte_order_mark(std::string_view text) {
    return text.starts_with(kByteOrderMark) ? kByteOrderMark.size() : 0;
}

void guard_text(const SourceText& source, FindingList& findings) {
    if (source.text.size() > kMostBytes) {
        const auto end = std::min(source.text.find_first_of("\r\n"), std::size_t{40});
        findings.refuse({"file-too-large",
                         {1, 1, 0, end},
                         "",
                         fmt::format("The file holds {} KiB; a profile may hold 1024.", source.text.size() / 1024),
                         "too large",
                         "Check that this is the right file."});
        return;
    }
    if (const auto bad = first_invalid_utf8(source.text)) {
        findings.refuse({"text-not-utf8", source.place(*bad, *bad + 1), "",
                         "From here on the file is not UTF-8 text, so letters could print wrong.", "not UTF-8",
                         "Save the file again with the encoding UTF-8."});
        return;
    }
    report_tabs(source, findings);
    report_characters(source, findings);
}

std::optional<std::string> first_unprintable(std::string_view text) {
    const auto plain = [](char c) { return (c >= ' ' && c <= '~') || c == '\n'; };
    if (std::ranges::all_of(text, plain)) return std::nullopt;
    for (const char32_t point : code_points(text))
        if (point != '\n' && unprintable(point)) return name_of_character(point);
    return std::nullopt;
}

}  // namespace ventfolio
