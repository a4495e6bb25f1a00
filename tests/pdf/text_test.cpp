#include <doctest/doctest.h>
#include <cstdlib>
#include <string>

#include "drawings.hpp"
#include "layout/fonts.hpp"
#include "programs.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::trial;

namespace {

/// Width of the first word as poppler places it.
double word_width(std::string_view pdf) {
    const Scratch scratch;
    scratch.save("page.pdf", pdf);
    const Ran ran = scratch.run("pdftotext -bbox page.pdf -");
    REQUIRE(ran.status == 0);
    REQUIRE(ran.err == "");
    const std::size_t word = ran.out.find("<word ");
    REQUIRE(word != std::string::npos);
    const auto edge = [&](std::string_view name) {
        const std::size_t at = ran.out.find(name, word);
        REQUIRE(at != std::string::npos);
        return std::strtod(ran.out.c_str() + at + name.size(), nullptr);
    };
    return edge("xMax=\"") - edge("xMin=\"");
}

}  // namespace

TEST_CASE("text comes back as it was written") {
    for (const std::string text :
         {"High pressure: 35 cmH2O", "Tiếng Việt: Đường thở, ống mở khí quản", "Привет, Йод, Ёлка", "Ελλάδα, πνεύμονας",
          "Zażółć gęślą jaźń; Größe; señal; français", "(round) \\ back [square] {curly} <angle>",
          "ĨĩŜčĊШЩќЍ",  // their second bytes are the signs ( ) \\ CR LF, which mean something in a PDF string
          "0123456789 .,:;!?%/+-=*#@&'\""}) {
        for (const Face face : {Face::regular, Face::bold}) {
            CAPTURE(text);
            CHECK(text_of(one_page(page(612, 792, {line(text, 40, 72, 12, face)}))) == text);
        }
    }
}

TEST_CASE("a no-break space comes back as a blank of one word gap") {
    // Poppler itself turns every kind of blank into U+0020.
    CHECK(text_of(one_page(page(612, 792, {line("35\u00A0cmH2O for 12\u202Fh", 40, 72, 12)}))) == "35 cmH2O for 12 h");
}

TEST_CASE("letters stand where HarfBuzz measured them") {
    struct Row {
        std::string word;
        Face face;
        double size;
    };
    for (const Row& row :
         {Row{"To", Face::regular, 100}, Row{"AVAST", Face::bold, 48}, Row{"minimum", Face::regular, 11.5},
          Row{"Việt", Face::bold, 24}, Row{"Щи", Face::regular, 30}}) {
        CAPTURE(row.word);
        const PlacedItem text = line(row.word, 40, 120, row.size, row.face);
        // Poppler counts the move after the last letter, which no kern has; it prints six decimals.
        CHECK(word_width(one_page(page(612, 792, {text}))) == doctest::Approx(text.text.width).epsilon(0.0002));
    }
}

TEST_CASE("kerned letters stand closer") {
    const PlacedItem kerned = line("To", 40, 120, 100);
    REQUIRE(kerned.text.kerns.size() == 2);
    REQUIRE(kerned.text.kerns[0] < 0);
    const double with = word_width(one_page(page(612, 792, {kerned})));
    const double without = word_width(one_page(page(612, 792, {without_kerns(kerned)})));
    CHECK(without - with == doctest::Approx(-kerned.text.kerns[0] / 10).epsilon(0.001));  // 1/1000 of 100 pt
}

TEST_CASE("a text lies at its origin") {
    const PlacedItem text = line("HI", 100, 200, 72);
    const DrawnPage picture = DrawnPage::of(one_page(page(612, 792, {text})), 72);
    const FontMetrics& metrics = FontMetrics::of(Face::regular);
    const double cap_height = metrics.cap_height() * 72 / 1000;  // 51.4 pt
    const auto top = static_cast<std::size_t>(200 - cap_height);
    CHECK(picture.ink(100, top, 120, 200 - top) == doctest::Approx(picture.ink()).epsilon(0.01));
    CHECK(picture.ink(100, top, 120, 3) > 5);
    CHECK(picture.ink(100, 197, 120, 3) > 5);
    CHECK(picture.ink(100, 201, 120, 20) == 0);
}

TEST_CASE("a letter that the face lacks is never drawn") {
    struct Row {
        std::string text;
        Face face;
        std::string fault;
    };
    for (const Row& row : {Row{"SpO\u2082 \u4E2D", Face::regular, "the regular face has no glyph for U+4E2D"},
                           Row{"\u2192", Face::bold, "the bold face has no glyph for U+2192"},
                           Row{"\U0001F600", Face::regular, "the regular face has no glyph for U+1F600"},
                           Row{"line\nbreak", Face::regular, "the regular face has no glyph for U+000A"}}) {
        CAPTURE(row.text);
        PlacedItem text;
        text.text.text = code_points(row.text);
        text.text.face = row.face;
        text.text.size = 12;
        text.text.origin = {72, 72};
        CHECK_THROWS_WITH_AS(one_page(page(612, 792, {text})), row.fault.c_str(), std::logic_error);
    }
}
