#include <doctest/doctest.h>
#include <fmt/format.h>

#include <set>

#include "project/files.hpp"
#include "project/samples.hpp"

/// The committed samples are what the program prints today, in words and in looks; bytes may differ.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

const fs::path kProject{VENTFOLIO_SOURCE_DIR};

/// Another release of the renderer smooths edges in its own way; a missing or moved letter is far above.
constexpr double kSmoothing = 32;
constexpr int kDotsPerInch = 50;

std::string renew(std::string_view what) {
    return fmt::format("{}. Look at the change, then renew the samples: {}", what, kRenewSamples);
}

std::set<std::string> names_in(const fs::path& folder) {
    std::set<std::string> names;
    for (const fs::directory_entry& entry : fs::directory_iterator{folder})
        names.insert(entry.path().filename().string());
    return names;
}

void compare_pages(const fs::path& committed, const fs::path& fresh) {
    const std::vector<std::string> old_pages = page_texts(committed);
    const std::vector<std::string> new_pages = page_texts(fresh);
    INFO(renew("The samples have other pages than the program prints now"));
    REQUIRE(!new_pages.empty());
    REQUIRE(old_pages.size() == new_pages.size());
    for (std::size_t at = 0; at < new_pages.size(); ++at) {
        CAPTURE(at + 1);
        CHECK(old_pages[at] == new_pages[at]);
        CHECK(largest_difference(page_picture(committed, at + 1, kDotsPerInch),
                                 page_picture(fresh, at + 1, kDotsPerInch)) <= kSmoothing);
    }
}

TEST_CASE("the samples show what the program prints") {
    for (const SampleKind& home : kSampleHomes) {
        CAPTURE(home.name);
        const fs::path committed = kProject / "samples" / home.name;
        INFO(renew("The samples are not there, or not all"));
        REQUIRE(fs::exists(committed / "packet.pdf"));
        const Scratch scratch;
        const SampleHome fresh = print_sample(VENTFOLIO_PROGRAM, kProject, home, scratch.folder());
        compare_pages(committed / "packet.pdf", fresh.pdf);
        std::set<std::string> expected{"packet.pdf"};
        for (const SampleSheet& sheet : fresh.sheets) {
            CAPTURE(sheet.name);
            expected.insert(sheet.name + ".png");
            const fs::path picture = committed / (sheet.name + ".png");
            REQUIRE(fs::exists(picture));
            CHECK(largest_difference(read_png(picture), sheet.picture) <= kSmoothing);
        }
        CHECK(names_in(committed) == expected);
    }
}

TEST_CASE("the samples stay small") {
    constexpr std::uintmax_t kMost = 10'000'000;
    std::uintmax_t size = 0;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator{kProject / "samples"})
        if (entry.is_regular_file()) size += entry.file_size();
    CHECK(size < kMost);
}

TEST_CASE("pictures are told apart by one small letter, not by smoothed edges") {
    const Scratch scratch;
    const SampleHome home = print_sample(VENTFOLIO_PROGRAM, kProject, kSampleHomes[0], scratch.folder());
    const Picture& page = home.sheets.at(0).picture;
    CHECK(largest_difference(page, page) == 0);

    Picture smoothed = page;
    for (std::size_t y = 0; y < page.height; ++y)
        for (std::size_t x = 1; x < page.width; ++x)
            smoothed.at(x, y) = static_cast<std::uint8_t>((15 * page.at(x, y) + page.at(x - 1, y)) / 16);
    CHECK(largest_difference(page, smoothed) > 0);
    CHECK(largest_difference(page, smoothed) <= kSmoothing);

    // A square of 4 x 6 pixels is a digit of 7 pt at 80 dots per inch.
    Picture inked = page;
    for (std::size_t y = 4; y < 10; ++y)
        for (std::size_t x = 4; x < 8; ++x) inked.at(x, y) = 128;
    CHECK(largest_difference(page, inked) > kSmoothing);

    Picture wider = page;
    wider.width += 1;
    wider.pixels.resize(std::size_t{wider.width} * wider.height);
    CHECK(largest_difference(page, wider) == 255);
}

TEST_CASE("a picture survives the file") {
    const Scratch scratch;
    const Picture drawn{3, 2, {0, 128, 255, 7, 77, 177}};
    write_png(scratch.path("drawn.png"), drawn);
    const Picture read = read_png(scratch.path("drawn.png"));
    CHECK(read.width == 3);
    CHECK(read.height == 2);
    CHECK(read.pixels == drawn.pixels);
    CHECK(side_by_side({drawn, drawn}).pixels ==
          std::vector<std::uint8_t>{0, 128, 255, 0, 128, 255, 7, 77, 177, 7, 77, 177});
}

}  // namespace
}  // namespace ventfolio::project
