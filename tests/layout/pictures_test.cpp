#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "documents.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr double kMm = 72 / 25.4;

std::shared_ptr<const Pictures> logo_of(std::size_t width, std::size_t height) {
    PictureFile file{"clinic/logo.png"};
    file.picture = std::make_shared<const Picture>(Picture{width, height, std::string(width * height, '\x7F'), "abc"});
    return std::make_shared<const Pictures>(Pictures{{"logo.png", file}});
}

LaidOut with_logo(const std::string& markdown, std::size_t width, std::size_t height, const PageSetup& setup = {}) {
    return laid_out(document_of(markdown, {}, {}, logo_of(width, height)), setup);
}

std::vector<const PlacedItem*> pictures_on(const PlacedPage& page) {
    std::vector<const PlacedItem*> found;
    for (const PlacedItem& item : page.items)
        if (item.kind == PlacedItem::Kind::picture) found.push_back(&item);
    return found;
}

const std::string kLetterhead =
    "## {.letterhead}\n\n![Willow Street Clinic](logo.png)\n\n**Willow Street Clinic** {.large}\n\n"
    "12 Willow Street, 555-0160\n\n## Head\n\nText.\n";

}  // namespace

// The bounds are the design's: 16 mm, a third of 176 mm of text, 150 dots to the inch, 4 mm.
TEST_CASE("a logo keeps its proportions within its bounds, and a small one prints small") {
    struct Row {
        std::size_t width;
        std::size_t height;
        double wide;  ///< mm
        double high;
    };
    constexpr Row kRows[] = {
        {600, 600, 16, 16},      // as high as it may be
        {2000, 400, 58, 11.6},   // as wide as it may be
        {150, 60, 25.4, 10.16},  // one inch of 150 dots
        {4000, 4000, 16, 16},   {94, 47, 15.92, 7.96},
    };
    for (const Row& row : kRows) {
        CAPTURE(row.width);
        CAPTURE(row.height);
        const LaidOut out = with_logo("![Clinic](logo.png)\n", row.width, row.height);
        CHECK(out.findings.empty());
        const auto shown = pictures_on(out.sheet.pages.front());
        REQUIRE(shown.size() == 1);
        CHECK(std::abs(shown.front()->picture.width / kMm - row.wide) < 0.02);
        CHECK(std::abs(shown.front()->picture.height / kMm - row.high) < 0.02);
    }
}

TEST_CASE("a logo that nobody could read is refused with its size on paper") {
    for (const auto& [width, height] : {std::pair{23, 100}, {100, 23}, {1, 1}, {4000, 100}}) {
        const LaidOut out =
            with_logo("![Clinic](logo.png)\n", static_cast<std::size_t>(width), static_cast<std::size_t>(height));
        REQUIRE(out.findings.size() == 1);
        CHECK(out.findings.front().rule == "picture-not-printable");
        CHECK(out.findings.front().severity == Severity::refuse);
        CHECK(out.findings.front().marks.front().place.line == 4);
    }
    CHECK(with_logo("![Clinic](logo.png)\n", 24, 24).findings.empty());
}

TEST_CASE("a letterhead has its logo beside its words, inside the margins, with nothing over anything") {
    for (const Paper paper : {Paper::letter, Paper::a4}) {
        for (const double scale : {1.0, 1.5}) {
            for (const std::size_t height : {300UL, 90UL}) {
                const LaidOut out = with_logo(kLetterhead, 900, height, {paper, scale});
                CHECK(out.findings.empty());
                CHECK(misplaced(out.sheet).empty());
                const PlacedPage& page = out.sheet.pages.front();
                const auto shown = pictures_on(page);
                REQUIRE(shown.size() == 1);
                const PlacedPicture& logo = shown.front()->picture;
                CHECK(std::abs(logo.corner.x - page.margin_left) < 0.02);
                CHECK(logo.corner.y > page.margin_top);
                CHECK(logo.corner.x + logo.width < page.width - page.margin_right);
                for (const PlacedItem& item : page.items) {
                    if (item.kind != PlacedItem::Kind::text) continue;
                    const TextRun& run = item.text;
                    const bool beside = run.origin.x > logo.corner.x + logo.width + 4 * kMm;
                    const bool above = run.origin.y + run.descent < logo.corner.y;
                    const bool below = run.origin.y - run.ascent > logo.corner.y + logo.height;
                    CHECK((beside || above || below));
                }
            }
        }
    }
}

TEST_CASE("a letterhead may have a logo alone or words alone") {
    const LaidOut logo = with_logo("## {.letterhead}\n\n![Clinic](logo.png)\n\n## Head\n\nText.\n", 300, 100);
    CHECK(logo.findings.empty());
    CHECK(pictures_on(logo.sheet.pages.front()).size() == 1);
    const LaidOut words = with_logo("## {.letterhead}\n\nWillow Street Clinic\n\n## Head\n\nText.\n", 300, 100);
    CHECK(words.findings.empty());
    CHECK(body_words(words.sheet) == std::vector<std::string>{"Willow", "Street", "Clinic", "Head", "Text."});
    const LaidOut headed = with_logo("## Lost {.letterhead}\n\nClinic\n", 300, 100);
    REQUIRE(headed.findings.size() == 1);
    CHECK(headed.findings.front().rule == "part-without-place");
}

TEST_CASE("whoever hears the sheet hears what the logo shows, where it stands") {
    const LaidOut out = with_logo(kLetterhead, 300, 100);
    const auto shown = pictures_on(out.sheet.pages.front());
    REQUIRE(shown.size() == 1);
    const StructureElement& element = out.sheet.structure.at(shown.front()->origin.element);
    CHECK(element.kind == StructureElement::Kind::figure);
    CHECK(element.instead == "Willow Street Clinic");
}
