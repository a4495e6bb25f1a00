#include <doctest/doctest.h>
#include <fmt/format.h>
#include <utf8proc.h>
#include <string>
#include <vector>

#include "drawings.hpp"
#include "layout/fonts.hpp"
#include "programs.hpp"
#include "units/text.hpp"

// Text that a reader copies can be right while the paper is wrong: an accent may be lost in print. So these tests count
// black pixels.

using namespace ventfolio;
using namespace ventfolio::trial;

namespace {

double ink_of(const char* text, Face face) {
    return DrawnPage::of(one_page(page(400, 100, {line(text, 20, 70, 48, face)})), 144).ink();
}

/// The first letter of the canonical decomposition, by utf8proc; an i or j without its dot.
char32_t base_of(char32_t letter) {
    utf8proc_int32_t parts[8];
    int last_boundclass = 0;
    const auto count =
        utf8proc_decompose_char(static_cast<utf8proc_int32_t>(letter), parts, 8, UTF8PROC_DECOMPOSE, &last_boundclass);
    if (count < 2) return letter;
    if (parts[0] == U'i') return U'\u0131';
    if (parts[0] == U'j') return U'\u0237';
    return static_cast<char32_t>(parts[0]);
}

/// Every accented letter of Latin, Greek and Cyrillic that the face has.
std::vector<char32_t> accented(Face face) {
    std::vector<char32_t> letters;
    for (char32_t letter = 0xC0; letter < 0x2000; ++letter)
        if ((letter < 0x530 || letter >= 0x1E00) && FontMetrics::of(face).covers(letter) && base_of(letter) != letter &&
            FontMetrics::of(face).covers(base_of(letter)))
            letters.push_back(letter);
    return letters;
}

constexpr std::size_t kColumns = 30;
constexpr std::size_t kCell = 40;

/// One letter a cell, so that each has its own ink.
DrawnPage chart(const std::vector<char32_t>& letters, Face face) {
    std::vector<PlacedItem> items;
    for (std::size_t at = 0; at < letters.size(); ++at)
        items.push_back(line(utf8(letters[at]), static_cast<double>(at % kColumns * kCell) + 10,
                             static_cast<double>(at / kColumns * kCell) + 28, 18, face));
    const std::size_t rows = (letters.size() + kColumns - 1) / kColumns;
    return DrawnPage::of(one_page(page(kColumns * kCell, static_cast<double>(rows * kCell), items)), 72);
}

double ink_of_cell(const DrawnPage& picture, std::size_t at) {
    return picture.ink(at % kColumns * kCell, at / kColumns * kCell, kCell, kCell);
}

}  // namespace

TEST_CASE("accents are seen in the ink") {
    for (const Face face : {Face::regular, Face::bold}) {
        CHECK(ink_of("Ä ế Й", face) > 1.15 * ink_of("A e И", face));
        CHECK(ink_of("ế", face) > ink_of("ê", face));
        CHECK(ink_of("ê", face) > ink_of("e", face));
    }
}

TEST_CASE("every accented letter has more ink than its base") {
    for (const Face face : {Face::regular, Face::bold}) {
        const std::vector<char32_t> letters = accented(face);
        REQUIRE(letters.size() > 500);
        std::vector<char32_t> bases;
        for (const char32_t letter : letters) bases.push_back(base_of(letter));
        const DrawnPage with = chart(letters, face);
        const DrawnPage without = chart(bases, face);
        for (std::size_t at = 0; at < letters.size(); ++at) {
            const std::string what = fmt::format("U+{:04X} {}", static_cast<unsigned>(letters[at]), utf8(letters[at]));
            CAPTURE(what);
            CHECK(ink_of_cell(with, at) > ink_of_cell(without, at) + 0.5);
        }
    }
}

TEST_CASE("white letters on black are read") {
    const std::string pdf = one_page(
        page(400, 100, {box(0, 0, 400, 100, 0, true), line("CALL 555-0142", 20, 70, 48, Face::bold, Ink::white)}));
    const std::string black = one_page(page(400, 100, {line("CALL 555-0142", 20, 70, 48, Face::bold)}));
    CHECK(text_of(pdf) == "CALL 555-0142");
    const double letters = DrawnPage::of(black, 72).ink();
    CHECK(400 * 100 - DrawnPage::of(pdf, 72).ink() == doctest::Approx(letters).epsilon(0.01));
}

TEST_CASE("bold letters are bold once") {
    const double regular = ink_of("lllll", Face::regular);
    const double bold = ink_of("lllll", Face::bold);
    // The stems of the two faces are 92 and 156 units wide: measured in the fonts.
    CHECK(bold / regular == doctest::Approx(1.68).epsilon(0.05));
}
