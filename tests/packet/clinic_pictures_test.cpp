#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "packet/png_bytes.hpp"
#include "packet/png_picture.hpp"
#include "packet/print_home_sheets.hpp"
#include "packet/stationery_shelf.hpp"
#include "packet/temporary_folder.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;
using namespace std::string_literals;

namespace {

bool holds(std::string_view text, std::string_view part) { return text.find(part) != text.npos; }

/// The grey of each dot, as numbers.
std::vector<int> greys(std::string_view dots) {
    std::vector<int> numbers;
    for (const char dot : dots) numbers.push_back(static_cast<unsigned char>(dot));
    return numbers;
}

std::vector<int> read(const std::string& bytes) {
    const PictureFile file = png_picture(bytes, "logo.png");
    REQUIRE_MESSAGE(file.picture, file.fault);
    return greys(file.picture->grey);
}

std::string fault_of(const std::string& bytes) { return png_picture(bytes, "logo.png").fault; }

/// The rows of the seven passes of an interlaced file: ISO/IEC 15948, 8.2.
std::vector<std::string> interlaced_rows(const GreyDots& grey) {
    struct Pass {
        std::uint32_t x, y, across, down;
    };
    constexpr Pass kPasses[] = {{0, 0, 8, 8}, {4, 0, 8, 8}, {0, 4, 4, 8}, {2, 0, 4, 4},
                                {0, 2, 2, 4}, {1, 0, 2, 2}, {0, 1, 1, 2}};
    std::vector<std::string> rows;
    for (const Pass& pass : kPasses) {
        for (std::uint32_t y = pass.y; y < grey.height; y += pass.down) {
            std::string row;
            for (std::uint32_t x = pass.x; x < grey.width; x += pass.across) row += grey.dots[y * grey.width + x];
            if (!row.empty()) rows.push_back(std::move(row));
        }
    }
    return rows;
}

/// A folder of a clinic with one sheet that shows a picture.
void put_sheet(const TemporaryFolder& folder, const std::string& figure) {
    put(folder / "en/clinic-page.md",
        "---\ntitle: Clinic\naudience: folder\norder: 75\n---\n## Us\n\n" + figure + "\n");
    put(folder / "en/words.yaml", "sheets:\n  clinic-page: Clinic\n");
}

PrintedHome printed_from(const TemporaryFolder& folder) {
    const StationeryShelf shelf{built_in_files(), read_template_folder(folder.path())};
    const ShelvedStationery& clinic = shelf.at("en", {"us"});
    for (const Finding& fault : clinic.faults) FAIL(fault.message);
    PrintOrder order;
    order.sheets = {"clinic-page"};
    order.dump_layout = true;
    Measurer measurer;
    return print_home(demo_profile("adult-tracheostomy"), demo_day(), order, clinic.stationery, measurer);
}

}  // namespace

// What each form of file means is said in ISO/IEC 15948; the files are put together by its letter.
TEST_CASE("each form of PNG becomes the grey that its writer meant, over white") {
    CHECK(read(png_file({.width = 3}, {"\x00\x80\xFF"s})) == std::vector{0, 128, 255});
    CHECK(read(png_file({.width = 2, .height = 2}, {"\x01\x02"s, "\x03\x04"s})) == std::vector{1, 2, 3, 4});
    CHECK(read(png_file({.width = 8, .depth = 1}, {"\xA5"s})) == std::vector{255, 0, 255, 0, 0, 255, 0, 255});
    // Of 16 bits the upper eight, as in a file of eight bits.
    CHECK(read(png_file({.width = 3, .depth = 16}, {"\x00\x00\x80\x80\xFF\xFF"s})) == std::vector{0, 128, 255});
    // See-through dots show the paper.
    const std::string alpha = "\x00\xFF\x00\x00\xFF\xFF"s;
    CHECK(read(png_file({.width = 3, .colour = PngColour::grey_alpha}, {alpha})) == std::vector{0, 255, 255});
    const std::string palette =
        png_chunk("PLTE", "\x00\x00\x00\xFF\xFF\xFF\x00\x00\x00"s) + png_chunk("tRNS", "\xFF\xFF\x00"s);
    CHECK(read(png_file({.width = 3, .colour = PngColour::palette, .chunks = palette}, {"\x00\x01\x02"s})) ==
          std::vector{0, 255, 255});
    const GreyDots logo = ring_logo(37, 23);
    CHECK(read(grey_png(logo)) == greys(logo.dots));
    CHECK(read(png_file({.width = 37, .height = 23, .interlaced = true}, interlaced_rows(logo))) == greys(logo.dots));
}

TEST_CASE("a colour becomes the grey of its brightness") {
    // IEC 61966-2-1: red, green and blue have 0.2126, 0.7152 and 0.0722 of the brightness of white; its curve.
    const std::vector<int> grey =
        read(png_file({.width = 3, .colour = PngColour::rgb}, {"\xFF\x00\x00\x00\xFF\x00\x00\x00\xFF"s}));
    constexpr std::array kBrightness{0.2126, 0.7152, 0.0722};
    for (std::size_t at = 0; at < kBrightness.size(); ++at) {
        const double expected = 255 * (1.055 * std::pow(kBrightness[at], 1 / 2.4) - 0.055);
        CHECK(std::abs(grey[at] - expected) < 2);
    }
}

TEST_CASE("a hostile or damaged file is a fault in words, whatever it claims to be") {
    const std::string good = grey_png(ring_logo(40, 40));
    const auto changed = [&](std::size_t at) {
        std::string bytes = good;
        bytes[at] ^= 1;
        return bytes;
    };
    const std::size_t data = good.find("IDAT");
    CHECK(fault_of(good).empty());
    CHECK(fault_of("") == "is no PNG file");
    CHECK(fault_of("GIF89a") == "is no PNG file");
    CHECK(fault_of(changed(0)) == "is no PNG file");
    CHECK(holds(fault_of(good.substr(0, 8)), "is broken ("));
    CHECK(holds(fault_of(good.substr(0, 20)), "is broken ("));
    CHECK(holds(fault_of(good.substr(0, data + 20)), "is broken ("));
    CHECK(holds(fault_of(changed(29)), "is broken ("));                // CRC of the header
    CHECK(holds(fault_of(changed(data + 30)), "is broken ("));         // the packed dots
    CHECK(holds(fault_of(changed(good.size() - 14)), "is broken ("));  // CRC of the dots
    CHECK(fault_of(png_file({.width = 4001}, {""})) == "has 4001 x 1 dots, and at most 4000 x 4000 are read");
    CHECK(fault_of(png_file({.width = 1, .height = 900'000}, {""})) ==
          "has 1 x 900000 dots, and at most 4000 x 4000 are read");
    CHECK(holds(fault_of(png_file({.width = 0}, {""})), "is broken ("));
    CHECK(holds(fault_of(png_file({.width = 0x7FFFFFFF, .height = 0x7FFFFFFF}, {""})), "is broken ("));
    CHECK(holds(fault_of(png_file({.width = 4000, .height = 4000}, {""})), "is broken ("));  // too few dots
    CHECK(holds(fault_of(png_file({.depth = 3}, {"\x00"s})), "is broken ("));
    // Every place at which a file can end.
    for (std::size_t size = 8; size < good.size() - 12; ++size) CHECK(!fault_of(good.substr(0, size)).empty());
}

TEST_CASE("only dots get out of a file: what else it holds changes nothing") {
    const GreyDots logo = ring_logo(40, 30);
    const std::string said =
        png_chunk("tEXt", "Author\0Somebody"s) + png_chunk("tIME", "\x07\xEA\x01\x01\x01\x01\x01"s);
    const PictureFile plain = png_picture(grey_png(logo), "a.png");
    const PictureFile talking =
        png_picture(png_file({.width = 40, .height = 30, .chunks = said}, rows_of(logo)), "b.png");
    REQUIRE(plain.picture);
    REQUIRE(talking.picture);
    CHECK(talking.picture->digest == plain.picture->digest);
    GreyDots other = logo;
    other.dots[7] ^= 1;
    CHECK(png_picture(grey_png(other), "a.png").picture->digest != plain.picture->digest);
    // The same dots in rows of another length are another picture.
    CHECK(png_picture(grey_png({30, 40, logo.dots}), "a.png").picture->digest != plain.picture->digest);
}

TEST_CASE("a picture that a template names wrongly, or that cannot be read, is refused at its line") {
    struct Row {
        const char* figure;
        const char* rule;
        const char* told;
    };
    const Row rows[] = {
        {"![Clinic](logos.png)", "picture-not-printable", "holds no picture \"logos.png\""},
        {"![Clinic](../logo.png)", "picture-not-printable", "holds no picture \"../logo.png\""},
        {"![Clinic](/etc/logo.png)", "picture-not-printable", "holds no picture"},
        {"![Clinic](text.png)", "picture-not-printable", "text.png is no PNG file."},
        {"![Clinic](broken.png)", "picture-not-printable", "broken.png is broken ("},
        {"![Clinic](wide.png)", "picture-not-printable", "wide.png has 4001 x 1 dots"},
        {"![Clinic](heavy.png)", "picture-not-printable", "heavy.png is larger than 1 MiB."},
        {"![Clinic](tiny.png)", "picture-not-printable", "3.4 x 3.4 mm on paper, too small to read"},
        {"![](logo.png)", "template-figure-without-description", "needs words"},
        {"![Clinic](logo.jpg)", "template-markdown-not-allowed", "not the address of a figure or of a picture"},
        {"![Clinic](file:logo.png)", "template-markdown-not-allowed", "not the address"},
        {"![Clinic](http://example.org/logo.png)", "template-markdown-not-allowed", "not the address"},
        {"![Clinic](logo.png \"words\")", "template-markdown-not-allowed", "not the address"},
        {"Our ![Clinic](logo.png) logo", "part-without-place", "picture among words"},
        {"![Clinic](logo.png)", "", ""},
        {"![Clinic](en/inner.png)", "", ""},
    };
    TemporaryFolder folder;
    const std::string good = grey_png(ring_logo(300, 120));
    put(folder / "logo.png", good);
    put(folder / "en/inner.png", good);
    put(folder / "text.png", "words");
    put(folder / "broken.png", good.substr(0, good.size() / 2));
    put(folder / "wide.png", png_file({.width = 4001}, {""}));
    put(folder / "heavy.png", std::string(1024 * 1024 + 1, 'x'));
    put(folder / "tiny.png", grey_png(ring_logo(20, 20)));
    for (const Row& row : rows) {
        CAPTURE(std::string{row.figure});
        put_sheet(folder, row.figure);
        const PrintedHome home = printed_from(folder);
        const auto found = std::ranges::find(home.findings, std::string{row.rule}, &Finding::rule);
        CHECK(home.refused == (row.rule != ""s));
        if (row.rule == ""s) {
            CHECK(holds(file_named(home, "clinic-page.layout.txt"), " of 300 x 120 dots, SHA-256 "));
            continue;
        }
        REQUIRE(found != home.findings.end());
        CHECK_MESSAGE(holds(found->message, row.told), found->message);
        CHECK(found->marks.front().file == (folder / "en/clinic-page.md").string());
        CHECK(found->marks.front().place.line == 8);
    }
}

TEST_CASE("a picture from outside the folder is not read") {
    const TemporaryFolder outside;
    put(outside / "logo.png", grey_png(ring_logo(300, 120)));
    const TemporaryFolder folder;
    put_sheet(folder, "![Clinic](logo.png)");
    fs::create_symlink(outside / "logo.png", folder / "logo.png");
    CHECK_THROWS_WITH_AS(read_template_folder(folder.path()), doctest::Contains("leads out of the folder"),
                         FolderError);
}

TEST_CASE("another logo is another sheet and another stationery; another name is not another sheet") {
    const auto code_and_digest = [](const GreyDots& logo, const std::string& name) {
        const TemporaryFolder folder;
        put_sheet(folder, "![Clinic](" + name + ")");
        put(folder / name, grey_png(logo));
        const PrintedHome home = printed_from(folder);
        REQUIRE(home.record.sheets.size() == 1);
        return std::pair{home.record.sheets.front().code, home.record.made.templates};
    };
    GreyDots logo = ring_logo(300, 120);
    const auto first = code_and_digest(logo, "logo.png");
    CHECK(code_and_digest(logo, "logo.png") == first);
    CHECK(code_and_digest(logo, "sign.png").first == first.first);
    logo.dots[300 * 60] ^= 1;
    const auto other = code_and_digest(logo, "logo.png");
    CHECK(other.first != first.first);
    CHECK(other.second != first.second);
}
