#include "pdf/fonts.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <iterator>
#include <span>

namespace ventfolio {
namespace {

/// Two bytes, high one first, for each code up to the highest in use: its glyph (ISO 32000-1, table 117).
std::string glyph_map(const FontSubset& font) {
    std::string map((static_cast<std::size_t>(font.letters.back().code_point) + 1) * 2, '\0');
    for (const FontSubset::Letter& letter : font.letters) {
        map[2 * letter.code_point] = static_cast<char>(letter.glyph >> 8U);
        map[2 * letter.code_point + 1] = static_cast<char>(letter.glyph & 0xFFU);
    }
    return map;
}

/// What a reader copies and searches: each code is its own code point (ISO 32000-1, 9.10.3).
std::string text_map(const FontSubset& font) {
    std::string map =
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
        "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    constexpr std::size_t kMostInOneBlock = 100;
    std::span<const FontSubset::Letter> rest{font.letters};
    while (!rest.empty()) {
        const auto block = rest.first(std::min(rest.size(), kMostInOneBlock));
        fmt::format_to(std::back_inserter(map), "{} beginbfchar\n", block.size());
        for (const FontSubset::Letter& letter : block)
            fmt::format_to(std::back_inserter(map), "<{0:04X}> <{0:04X}>\n",
                           static_cast<std::uint32_t>(letter.code_point));
        map += "endbfchar\n";
        rest = rest.subspan(block.size());
    }
    return map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

/// Runs of neighbouring codes: the first code, then a list of widths (ISO 32000-1, 9.7.4.3).
void add_widths(HaruDocument& document, HPDF_Dict to, const FontSubset& font) {
    const HPDF_Array widths = document.add_array(to, "W");
    HPDF_Array run = nullptr;
    char32_t next = 0;
    for (const FontSubset::Letter& letter : font.letters) {
        if (run == nullptr || letter.code_point != next) {
            document.add_number(widths, letter.code_point);
            run = document.add_array(widths);
        }
        document.add_number(run, letter.width);
        next = letter.code_point + 1;
    }
}

HPDF_Dict new_descriptor(HaruDocument& document, const FontSubset& font) {
    constexpr int kSymbolic = 4;  // letters beyond the standard Latin set (ISO 32000-1, table 123)
    const HPDF_Dict descriptor = document.new_indirect_dictionary();
    document.add_name(descriptor, "Type", "FontDescriptor");
    document.add_name(descriptor, "FontName", font.name);
    document.add_number(descriptor, "Flags", kSymbolic);
    const HPDF_Array box = document.add_array(descriptor, "FontBBox");
    for (const double edge : font.bounding_box) document.add_number(box, edge);
    document.add_number(descriptor, "ItalicAngle", 0);
    document.add_number(descriptor, "Ascent", font.ascent);
    document.add_number(descriptor, "Descent", font.descent);
    document.add_number(descriptor, "CapHeight", font.cap_height);
    document.add_number(descriptor, "StemV", font.stem);
    const HPDF_Dict file = document.new_stream(font.bytes);
    document.add_number(file, "Length1", static_cast<double>(font.bytes.size()));
    document.add(descriptor, "FontFile2", file);
    return descriptor;
}

HPDF_Dict new_descendant(HaruDocument& document, const FontSubset& font) {
    const HPDF_Dict descendant = document.new_indirect_dictionary();
    document.add_name(descendant, "Type", "Font");
    document.add_name(descendant, "Subtype", "CIDFontType2");
    document.add_name(descendant, "BaseFont", font.name);
    const HPDF_Dict system = document.add_dictionary(descendant, "CIDSystemInfo");
    document.add_ascii(system, "Registry", "Adobe");
    document.add_ascii(system, "Ordering", "Identity");
    document.add_number(system, "Supplement", 0);
    document.add(descendant, "FontDescriptor", new_descriptor(document, font));
    add_widths(document, descendant, font);
    document.add(descendant, "CIDToGIDMap", document.new_stream(glyph_map(font)));
    return descendant;
}

}  // namespace

HPDF_Dict embed_font(HaruDocument& document, const FontSubset& font) {
    const HPDF_Dict type0 = document.new_indirect_dictionary();
    document.add_name(type0, "Type", "Font");
    document.add_name(type0, "Subtype", "Type0");
    document.add_name(type0, "BaseFont", font.name);
    document.add_name(type0, "Encoding", "Identity-H");
    document.add(document.add_array(type0, "DescendantFonts"), new_descendant(document, font));
    document.add(type0, "ToUnicode", document.new_stream(text_map(font)));
    return type0;
}

}  // namespace ventfolio
