#include <doctest/doctest.h>

#include <set>

#include "packet/documents.hpp"
#include "packet/print_home_sheets.hpp"
#include "packet/stationery_shelf.hpp"
#include "profile/read_profile.hpp"
#include "sheets/printer.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

const StationeryShelf& shelf() {
    static const StationeryShelf one{built_in_files()};
    return one;
}

/// The words of one sheet of a demo home with edits, as `print` chooses its stationery.
struct Page {
    std::string words;
    double width = 0;  ///< in points
    double height = 0;
};

Page page_of(const std::string& sheet, const std::string& edits, const StationeryChoice& choice = {}) {
    const SourceText profile = edited_profile("adult-tracheostomy", edits);
    ReadResult read = read_profile(profile);
    const ShelvedStationery& chosen = shelf().for_home(read.profile, choice);
    REQUIRE(chosen.faults.empty());
    PrintOrder order;
    order.sheets = {sheet};
    order.dump_layout = true;
    Measurer measurer;
    const PrintedHome home = print_home(check_home(std::move(read), profile, demo_day(), &chosen.stationery.region),
                                        demo_day(), order, chosen.stationery, measurer);
    REQUIRE_MESSAGE(!home.refused, home.findings.size());
    const std::string layout = file_named(home, sheet + ".layout.txt");
    Page page;
    page.words = plain_blanks(layout);
    const std::size_t at = layout.find("\npage ");
    REQUIRE(at != std::string::npos);
    REQUIRE(std::sscanf(layout.c_str() + at, "\npage %*d %lf x %lf", &page.width, &page.height) == 2);
    return page;
}

bool holds(const std::string& text, std::string_view words) { return text.find(words) != std::string::npos; }

/// The number stands by itself, and not inside another one.
bool has_number(const std::string& text, const std::string& number) {
    const auto digit = [&](std::size_t at) { return at < text.size() && text[at] >= '0' && text[at] <= '9'; };
    for (std::size_t at = text.find(number); at != std::string::npos; at = text.find(number, at + 1))
        if (!(at > 0 && (digit(at - 1) || text[at - 1] == '-')) && !digit(at + number.size())) return true;
    return false;
}

}  // namespace

TEST_CASE("a demo home is printed in the ways of each region") {
    struct Row {
        const char* region;
        const char* number;
        double width;  ///< of portrait paper, in points
        const char* moment;
        const char* decimal;
        const char* source;
    };
    const Row rows[] = {
        {"us", "911", 612, "12 January 2026, 10 AM", "\"1.2\"", "pub: ANSI/ASME Y14.1 size A; 911 from memory"},
        {"gb", "999", 595.276, "12 January 2026, 10:00", "\"1.2\"", "pub: ISO 216; 999 Ofcom, from memory"},
        {"es", "112", 595.276, "12 January 2026, 10:00", "\"1,2\"",
         "pub: ISO 216; Directive (EU) 2018/1972, article 109; SI Brochure 5.4.4; from memory"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.region});
        // Nothing is said of the emergency number: it is that of the region.
        const Page page = page_of("bedside-card", "remove: contacts.emergency", {"en", row.region});
        for (const Row& other : rows)
            CHECK(holds(page.words, "\"" + std::string{other.number} + "\"") ==
                  (std::string{other.number} == row.number));
        CHECK(page.width == doctest::Approx(row.width).epsilon(0.001));
        CHECK(holds(page.words, row.moment));
        CHECK(holds(page.words, row.decimal));
    }
}

// Sources of the numbers: as above.
TEST_CASE("no sheet of a home without a number of its own tells another region's") {
    struct Row {
        const char* language;
        const char* region;
        const char* number;
    };
    const Row rows[] = {{"en", "us", "911"}, {"en", "gb", "999"}, {"es", "es", "112"}, {"en+es", "gb", "999"}};
    for (const char* home : kAllHomes)
        for (const Row& row : rows) {
            CAPTURE(std::string{home});
            CAPTURE(std::string{row.language});
            const Stationery& chosen = shelf().at(row.language, {row.region}).stationery;
            const CheckedHome checked =
                check_home(edited_profile(home, "remove: contacts.emergency"), demo_day(), &chosen.region);
            const Household household{checked.profile, demo_day()};
            std::vector<Finding> findings;
            std::size_t told = 0;
            for (const Document& document :
                 make_documents(household, checked.findings, chosen, chosen.in_order(), findings)) {
                const std::string words = words_of_blocks(document.blocks);
                for (const Row& other : rows)
                    if (std::string{other.number} != row.number) CHECK_FALSE(has_number(words, other.number));
                if (has_number(words, row.number)) ++told;
            }
            CHECK(told >= 5);  // card, crew's sheet, wallet card, charts and outage plan at least
        }
}

TEST_CASE("a profile has its own region, number, paper and writing") {
    const Page page = page_of("bedside-card",
                              "home.region: gb\nhome.paper: letter\nhome.date_order: month_day_year\n"
                              "home.decimal_sign: comma\ncontacts.emergency.phone: 555-0199");
    CHECK(holds(page.words, "\"555-0199\""));
    CHECK_FALSE(holds(page.words, "999"));
    CHECK(page.width == doctest::Approx(612));
    CHECK(holds(page.words, "January 12, 2026, 10:00"));
    CHECK(holds(page.words, "\"1,2\""));
}

TEST_CASE("what is asked for goes before the profile, and the profile before the packet that hangs") {
    const SourceText profile = edited_profile("adult-tracheostomy", "home.region: gb");
    const ReadResult read = read_profile(profile);
    PacketRecord before;
    before.made.language = "en";
    before.made.region = "es";
    CHECK(shelf().for_home(read.profile, {}).stationery.region_name == "gb");
    CHECK(shelf().for_home(read.profile, {}, &before).stationery.region_name == "gb");
    CHECK(shelf().for_home(Profile{}, {}, &before).stationery.region_name == "es");
    CHECK(shelf().for_home(Profile{}, {}).stationery.region_name == "us");
    CHECK(shelf().for_home(read.profile, {{}, "us"}, &before).stationery.region_name == "us");
}

TEST_CASE("a region that there is not is a finding at its place") {
    const SourceText profile = edited_profile("adult-mask", "home.region: gbb");
    const auto fault = shelf().fault_of_region(read_profile(profile).profile, profile);
    REQUIRE(fault);
    CHECK(fault->message == "There is no region \"gbb\"; the regions are: es, gb, us.");
    CHECK(fault->marks.front().place.known());
    CHECK_FALSE(shelf().fault_of_region(read_profile(demo_profile("adult-mask")).profile, profile));
}
