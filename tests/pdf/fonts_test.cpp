#include <doctest/doctest.h>
#include <fmt/format.h>
#include <ft2build.h>
#include <array>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <vector>
#include FT_FREETYPE_H
#include FT_OUTLINE_H

#include "drawings.hpp"
#include "layout/fonts.hpp"
#include "pdf/subset.hpp"
#include "programs.hpp"
#include "units/text.hpp"

// FreeType reads the fonts in a file as a reader would, and compares them with the whole fonts. HarfBuzz, which made
// them, has no say here.

using namespace ventfolio;
using namespace ventfolio::trial;
using nlohmann::json;

namespace {

class Library {
  public:
    Library() { REQUIRE(FT_Init_FreeType(&library_) == 0); }
    ~Library() { FT_Done_FreeType(library_); }
    Library(const Library&) = delete;
    Library& operator=(const Library&) = delete;
    FT_Library get() const { return library_; }

  private:
    FT_Library library_ = nullptr;
};

class LoadedFont {
  public:
    LoadedFont(const Library& library, std::string_view bytes) {
        REQUIRE(FT_New_Memory_Face(library.get(), reinterpret_cast<const FT_Byte*>(bytes.data()),
                                   static_cast<FT_Long>(bytes.size()), 0, &face_) == 0);
    }
    ~LoadedFont() { FT_Done_Face(face_); }
    LoadedFont(const LoadedFont&) = delete;
    LoadedFont& operator=(const LoadedFont&) = delete;

    unsigned glyph_of(char32_t letter) const { return FT_Get_Char_Index(face_, letter); }
    /// Advance, then every point of the outline, in font units.
    std::vector<long> shape(unsigned glyph) const {
        REQUIRE(FT_Load_Glyph(face_, glyph, FT_LOAD_NO_SCALE) == 0);
        std::vector<long> shape{face_->glyph->metrics.horiAdvance};
        const FT_Outline& outline = face_->glyph->outline;
        for (int at = 0; at < outline.n_points; ++at) {
            shape.push_back(outline.points[at].x);
            shape.push_back(outline.points[at].y);
        }
        return shape;
    }
    double units_per_em() const { return face_->units_per_EM; }
    std::string post_script_name() const { return FT_Get_Postscript_Name(face_); }

  private:
    FT_Face face_ = nullptr;
};

/// A composite font as it lies in a file.
struct FontInFile {
    std::string name;
    std::string program;
    std::string glyph_map;
    std::string text_map;
    json widths;
    json descriptor;
};

FontInFile font_in(std::string_view pdf) {
    const Scratch scratch;
    scratch.save("page.pdf", pdf);
    const Ran listed = scratch.run("qpdf --json=2 --json-stream-data=none page.pdf");
    REQUIRE(listed.status == 0);
    const json objects = json::parse(listed.out).at("qpdf").at(1);
    const auto object = [&](const json& reference) {
        return objects.at("obj:" + reference.get<std::string>()).at("value");
    };
    const auto stream = [&](const json& reference) {
        const std::string number = reference.get<std::string>();
        const Ran ran = scratch.run(
            fmt::format("qpdf --show-object={} --filtered-stream-data page.pdf", number.substr(0, number.find(' '))));
        REQUIRE(ran.status == 0);
        return ran.out;
    };
    for (const auto& [key, entry] : objects.items()) {
        if (!entry.contains("value") || !entry.at("value").is_object()) continue;
        const json& font = entry.at("value");
        if (font.value("/Subtype", "") != "/Type0") continue;
        const json descendant = object(font.at("/DescendantFonts").at(0));
        const json descriptor = object(descendant.at("/FontDescriptor"));
        return {.name = font.at("/BaseFont").get<std::string>().substr(1),
                .program = stream(descriptor.at("/FontFile2")),
                .glyph_map = stream(descendant.at("/CIDToGIDMap")),
                .text_map = stream(font.at("/ToUnicode")),
                .widths = descendant.at("/W"),
                .descriptor = descriptor};
    }
    FAIL("no font in the file");
    return {};
}

/// The glyph for a code (ISO 32000-1, table 117): two bytes, high one first.
unsigned glyph_for(const FontInFile& font, char32_t code) {
    const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(font.glyph_map.at(at)); };
    return static_cast<unsigned>(byte(2 * code) << 8 | byte(2 * code + 1));
}

/// The width for a code, from "first [width width …]" (ISO 32000-1, 9.7.4.3).
double width_for(const FontInFile& font, char32_t code) {
    for (std::size_t at = 0; at + 1 < font.widths.size(); at += 2) {
        const auto first = font.widths.at(at).get<char32_t>();
        const json& run = font.widths.at(at + 1);
        if (code >= first && code - first < run.size()) return run.at(code - first).get<double>();
    }
    return -1;
}

constexpr const char* kMany =
    "THE QUICK BROWN FOX JUMPS OVER the quick brown fox jumps over 0123456789 LAZY lazy DOGS dogs: ÄÖÜäöüßéèñçå ŠšŽž "
    "Tiếng Việt Đường ẶỶỹ "
    "Съешь ЁЙёй ещё Ω Ελλάδα ΐΰ \u0387\u00A0\u2011\u2013\u2014\u2026\u2019\u00B0\u00D7\u00BD\u2082";

}  // namespace

TEST_CASE("each letter in a file has the outline and the width that it has in the whole font") {
    const Library library;
    for (const Face face : {Face::regular, Face::bold}) {
        const FontInFile font = font_in(one_page(page(612, 792, {line(kMany, 20, 40, 6, face)})));
        const LoadedFont part{library, font.program};
        const LoadedFont whole{library, font_bytes(face)};
        for (const char32_t letter : code_points(kMany)) {
            const std::string what = fmt::format("U+{:04X}", static_cast<unsigned>(letter));
            CAPTURE(what);
            const unsigned glyph = glyph_for(font, letter);
            const std::vector<long> expected = whole.shape(whole.glyph_of(letter));
            CHECK(glyph != 0);
            CHECK(part.shape(glyph) == expected);
            CHECK(part.glyph_of(letter) == glyph);
            CHECK(width_for(font, letter) ==
                  doctest::Approx(1000.0 * static_cast<double>(expected.front()) / whole.units_per_em()).epsilon(1e-6));
        }
    }
}

TEST_CASE("a font in a file is called after itself and its letters") {
    const Library library;
    const auto name = [](std::string_view text, Face face) {
        return font_in(one_page(page(612, 792, {line(text, 20, 40, 6, face)}))).name;
    };
    for (const Face face : {Face::regular, Face::bold})
        CHECK(name("abc", face).substr(7) == LoadedFont{library, font_bytes(face)}.post_script_name());
    CHECK(name("abc", Face::regular) == name("cba", Face::regular));
    CHECK(name("abc", Face::regular) != name("abd", Face::regular));
    CHECK(name("abc", Face::regular).substr(0, 6) != name("abc", Face::bold).substr(0, 6));
}

TEST_CASE("a file holds just the letters that are drawn") {
    const Library library;
    const FontInFile font = font_in(one_page(page(612, 792, {line("Cab", 20, 40, 6), line("\u00E9", 20, 60, 6)})));
    CHECK(font.text_map.find(
              "5 beginbfchar\n<0020> <0020>\n<0043> <0043>\n<0061> <0061>\n<0062> <0062>\n<00E9> <00E9>\nendbfchar") !=
          std::string::npos);
    const LoadedFont part{library, font.program};
    CHECK(part.glyph_of(U'C') != 0);
    CHECK(part.glyph_of(U'D') == 0);
    CHECK(width_for(font, U'D') == -1);
    CHECK(font.program.size() < 3000);
}

TEST_CASE("a text map has at most 100 entries in a block") {
    // ISO 32000-1, 9.7.5.4 takes the limit from the CMap specification.
    const std::string map = font_in(one_page(page(612, 792, {line(kMany, 20, 40, 6)}))).text_map;
    CHECK(map.find("\n100 beginbfchar\n") != std::string::npos);
    std::size_t entries = 0;
    for (std::size_t at = map.find("\n<"); at != std::string::npos; at = map.find("\n<", at + 1)) ++entries;
    const std::u32string letters = code_points(kMany);
    CHECK(entries == std::set<char32_t>(letters.begin(), letters.end()).size() + 1);  // and one code space
}

TEST_CASE("the descriptor gives the measures of the font") {
    const FontInFile font = font_in(one_page(page(612, 792, {line("abc", 20, 40, 6, Face::bold)})));
    // Line height 1.362 em and capitals of 0.714 em: published metrics of the family, 1069 up and 293 down.
    CHECK(font.descriptor.at("/Ascent") == 1069);
    CHECK(font.descriptor.at("/Descent") == -293);
    CHECK(font.descriptor.at("/CapHeight") == 714);
    CHECK(font.descriptor.at("/StemV").get<double>() > 100);
    constexpr int kForceBold = 1 << 18;  // ISO 32000-1, table 123
    CHECK((font.descriptor.at("/Flags").get<int>() & kForceBold) == 0);
    CHECK(font.descriptor.at("/FontName") == "/" + font.name);
}
