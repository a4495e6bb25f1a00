#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <vector>

#include "print_home_sheets.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// Every page of every demo home, on both papers, in both sizes of print.
template <class Look>
void for_each_page(Look look) {
    for (const char* home : kAllHomes) {
        for (const Paper paper : kPapers) {
            for (const double scale : {kNormalPrint, kLargePrint}) {
                const SetHome set = set_home(demo_profile(home), {paper, scale});
                CAPTURE(std::string{home});
                CAPTURE(scale);
                CAPTURE((paper == Paper::letter ? "letter" : "a4"));
                REQUIRE_MESSAGE((!set.refused_by_profile() && !set.refused_by_sheets()), set.refusals());
                REQUIRE(!set.sheets.empty());
                for (const SetSheet& sheet : set.sheets) {
                    CAPTURE(sheet.placed.name);
                    const bool fixed_size = sheet.document.front("type_size") == "fixed";
                    for (std::size_t number = 0; number < sheet.placed.pages.size(); ++number) {
                        CAPTURE(number);
                        look(sheet.placed.pages[number], fixed_size ? kNormalPrint : scale);
                    }
                }
            }
        }
    }
}

/// A number of a drawing stands on a disc.
bool is_black_disc(const PlacedItem& item) {
    return item.kind == PlacedItem::Kind::path && item.path.filled && item.path.ink == Ink::black;
}

std::string shown(const PlacedItem& item) {
    const Area area = area_of(item);
    return fmt::format("{} \"{}\" at {:.2f} {:.2f} to {:.2f} {:.2f}", item.origin.role,
                       is_text(item) ? words_of(item) : "", area.left, area.top, area.right, area.bottom);
}

}  // namespace

TEST_CASE("nothing that is placed leaves the live area of its page") {
    std::size_t items = 0;
    for_each_page([&](const PlacedPage& page, double) {
        // Margins of half an inch or more, 20 mm on the binding side: common practice, no source.
        const bool landscape = page.width > page.height;
        CHECK((landscape ? page.margin_top : page.margin_left) >= 20 * 72 / 25.4 - 0.01);
        CHECK(std::min({page.margin_left, page.margin_top, page.margin_right, page.margin_bottom}) >= 36 - 0.01);
        for (const PlacedItem& item : page.items) {
            ++items;
            CHECK_MESSAGE(area_of(item).within(live_area(page), 0.06), shown(item));
        }
    });
    CHECK(items > 5000);
}

TEST_CASE("no two text boxes overlap") {
    for_each_page([](const PlacedPage& page, double) {
        std::vector<const PlacedItem*> texts;
        for (const PlacedItem& item : page.items)
            if (is_text(item)) texts.push_back(&item);
        REQUIRE(texts.size() > 10);
        std::ranges::sort(texts, {}, [](const PlacedItem* item) { return area_of(*item).top; });
        for (std::size_t one = 0; one < texts.size(); ++one) {
            const Area area = area_of(*texts[one]);
            for (std::size_t two = one + 1; two < texts.size(); ++two) {
                const Area other = area_of(*texts[two]);
                if (other.top > area.bottom) break;
                CHECK_MESSAGE(!area.overlaps(other, 0.3), shown(*texts[one]) << " and " << shown(*texts[two]));
            }
        }
    });
}

TEST_CASE("no text crosses the line of a box or a rule") {
    for_each_page([](const PlacedPage& page, double) {
        for (const PlacedItem& line : page.items) {
            const bool outline = line.kind == PlacedItem::Kind::box && !line.box.filled;
            if (line.kind != PlacedItem::Kind::rule && !outline) continue;
            for (const PlacedItem& text : page.items) {
                if (!is_text(text)) continue;
                // The letters themselves: capitals are 0.714 of the size high, a descender reaches 0.24 below.
                const TextRun& run = text.text;
                const Area letters{run.origin.x, run.origin.y - 0.714 * run.size, run.origin.x + run.width,
                                   run.origin.y + 0.2 * run.size};
                Area frame = area_of(line);
                if (outline) {
                    const Area inner{frame.left + line.box.stroke, frame.top + line.box.stroke,
                                     frame.right - line.box.stroke, frame.bottom - line.box.stroke};
                    CHECK_MESSAGE((letters.within(inner, 0.3) || !letters.overlaps(frame, 0.3)),
                                  shown(text) << " and a box at " << shown(line));
                } else {
                    const bool level = frame.bottom - frame.top < 0.01;
                    const double from = level ? letters.top : letters.left;
                    const double to = level ? letters.bottom : letters.right;
                    const double at = level ? frame.top : frame.left;
                    const bool crosses = at > from + 0.3 && at < to - 0.3;
                    const bool beside = level ? letters.right <= frame.left + 0.3 || letters.left >= frame.right - 0.3
                                              : letters.bottom <= frame.top + 0.3 || letters.top >= frame.bottom - 0.3;
                    CHECK_MESSAGE((!crosses || beside), shown(text) << " and a rule at " << shown(line));
                }
            }
        }
    });
}

TEST_CASE("no type is smaller than 9 pt, the footer's 8 pt excepted, and large print is one and a half times that") {
    // 9 pt is the floor for medicine leaflets: European Commission readability guideline, 2009 (from memory).
    std::set<std::string> small;
    for_each_page([&](const PlacedPage& page, double scale) {
        for (const PlacedItem& item : page.items) {
            if (!is_text(item)) continue;
            const bool footer = item.origin.role == "footer";
            CHECK_MESSAGE(item.text.size >= (footer ? 8.0 : 9.0 * scale) - 1e-9, shown(item));
            if (item.text.size < 9) small.insert(item.origin.role);
        }
    });
    CHECK(small == std::set<std::string>{"footer"});
}

TEST_CASE("white words stand on a black box or disc that holds them, and black words on none") {
    std::size_t white = 0;
    for_each_page([&](const PlacedPage& page, double) {
        for (std::size_t at = 0; at < page.items.size(); ++at) {
            const PlacedItem& text = page.items[at];
            if (!is_text(text)) continue;
            CHECK(text.text.ink != Ink::grey);
            const TextRun& run = text.text;
            const Area letters{run.origin.x, run.origin.y - 0.714 * run.size, run.origin.x + run.width, run.origin.y};
            bool held = false;
            for (std::size_t below = 0; below < at; ++below) {
                const PlacedItem& box = page.items[below];
                if (is_black_disc(box)) held = held || letters.within(area_of(box), 0.01);
                if (box.kind != PlacedItem::Kind::box || !box.box.filled) continue;
                CHECK(box.box.ink == Ink::black);
                held = held || letters.within(area_of(box), 0.01);
                if (run.ink == Ink::black) CHECK_MESSAGE(!letters.overlaps(area_of(box), 0.01), shown(text));
            }
            // Drawn later, a black box would cover the words.
            for (std::size_t above = at + 1; above < page.items.size(); ++above) {
                const PlacedItem& box = page.items[above];
                if (box.kind == PlacedItem::Kind::box && box.box.filled)
                    CHECK_MESSAGE(!letters.overlaps(area_of(box), 0.01), shown(text));
            }
            if (run.ink == Ink::white) {
                ++white;
                CHECK_MESSAGE(held, shown(text));
            }
        }
    });
    CHECK(white > 100);
}

TEST_CASE("Letter and A4 pages have their words at the same places of the live area") {
    // Furniture at the foot of the page stands lower on A4, which is longer.
    for (const char* home : kAllHomes) {
        for (const double scale : {kNormalPrint, kLargePrint}) {
            const SetHome letter = set_home(demo_profile(home), {Paper::letter, scale});
            const SetHome a4 = set_home(demo_profile(home), {Paper::a4, scale});
            CAPTURE(std::string{home});
            CAPTURE(scale);
            REQUIRE_MESSAGE((!letter.refused_by_sheets() && !a4.refused_by_sheets()), letter.refusals());
            REQUIRE(letter.sheets.size() == a4.sheets.size());
            for (std::size_t sheet = 0; sheet < a4.sheets.size(); ++sheet) {
                const PlacedSheet& one = letter.sheets[sheet].placed;
                const PlacedSheet& two = a4.sheets[sheet].placed;
                CAPTURE(one.name);
                REQUIRE(one.pages.size() == two.pages.size());
                for (std::size_t page = 0; page < one.pages.size(); ++page) {
                    CAPTURE(page);
                    REQUIRE(one.pages[page].items.size() == two.pages[page].items.size());
                    for (std::size_t at = 0; at < one.pages[page].items.size(); ++at) {
                        const PlacedItem& first = one.pages[page].items[at];
                        const PlacedItem& second = two.pages[page].items[at];
                        if (!is_text(first) || first.origin.role == "footer" || first.origin.role == "code") continue;
                        const Point from{first.text.origin.x - one.pages[page].margin_left,
                                         first.text.origin.y - one.pages[page].margin_top};
                        const Point to{second.text.origin.x - two.pages[page].margin_left,
                                       second.text.origin.y - two.pages[page].margin_top};
                        // 0.3 pt is a tenth of a millimetre.
                        REQUIRE_MESSAGE((words_of(first) == words_of(second) && std::abs(from.x - to.x) < 0.3 &&
                                         std::abs(from.y - to.y) < 0.3),
                                        shown(first) << " and " << shown(second));
                    }
                }
            }
        }
    }
}

TEST_CASE("each sheet of a demo home keeps to its number of sides") {
    struct Row {
        const char* sheet;
        std::size_t least;
        std::size_t most;
    };
    const Row rows[] = {
        {"bedside-card", 2, 2},   {"responder-sheet", 2, 2}, {"setting-check", 2, 2},  {"skills-record", 3, 3},
        {"visit-check", 5, 7},    {"wallet-card", 1, 1},     {"alarm-response", 1, 2}, {"hookup", 1, 2},
        {"notice-letters", 1, 1}, {"folder-index", 1, 2},    {"verification", 3, 5},
    };
    for (const char* home : kHomes) {
        for (const Paper paper : kPapers) {
            const SetHome set = set_home(demo_profile(home), {paper, kNormalPrint});
            CAPTURE(std::string{home});
            REQUIRE_MESSAGE(!set.refused_by_sheets(), set.refusals());
            std::map<std::string, std::size_t> made;
            for (const SetSheet& sheet : set.sheets) ++made[sheet.document.sheet];
            for (const Row& row : rows) {
                for (const SetSheet& sheet : set.sheets) {
                    if (sheet.document.sheet != row.sheet) continue;
                    const std::size_t pages = sheet.placed.pages.size();
                    CHECK_MESSAGE((row.least <= pages && pages <= row.most), sheet.placed.name << ": " << pages);
                }
                CHECK_MESSAGE(made[row.sheet] > 0, std::string{row.sheet});
            }
            for (const char* each : {"bedside-card", "setting-check", "hookup"})
                CHECK(made[each] == set.checked.profile.prescriptions.size());
            CHECK(made["skills-record"] == set.checked.profile.caregivers.size());
        }
    }
}

TEST_CASE("the front of every bedside card has the rescue steps and whom to call, and the card is one leaf") {
    // Found by looking: a time of two lines or the mark pushed the phone numbers to the back.
    for (const char* home : kAllHomes) {
        for (const SetHome* set : {&set_demo_home(home), &set_spanish_home(home)}) {
            CAPTURE(std::string{home});
            const Contacts& contacts = *set->checked.profile.contacts;
            std::size_t cards = 0;
            for (const SetSheet& sheet : set->sheets) {
                if (sheet.document.sheet != "bedside-card") continue;
                ++cards;
                CAPTURE(sheet.placed.name);
                const std::string front = words_of(sheet.placed.pages.front());
                for (const Group<Contact>* one :
                     {&contacts.emergency, &contacts.equipment_provider, &contacts.prescriber_on_call})
                    CHECK_MESSAGE(front.find(*(*one)->phone) != std::string::npos, *(*one)->phone);
                // The names of the last home are as long as a profile may have them.
                const std::size_t most = std::string_view{home} == "adult-long-names" ? 4 : 2;
                CHECK(sheet.placed.pages.size() <= most);
            }
            CHECK(cards == set->checked.profile.prescriptions.size());
        }
    }
}

TEST_CASE("every page says who, which page of how many, which revision, until when and under which code") {
    for_each_page([](const PlacedPage& page, double) {
        const std::string words = words_of(page);
        const auto says = [&](const char* text) { return words.find(text) != std::string::npos; };
        // A lost wallet does not tell the record number; the folder index names all sheets.
        const bool in_wallet = says("Wallet card") && !says("Folder index");
        const bool letter = says("This letter says what its reader needs");
        std::vector<const char*> all{"Page ", " of ", "R1", "Current only if this code is in the folder index"};
        const char* const age = says(" months") ? " months" : " years";
        if (!letter) {
            for (const char* of_a_sheet :
                 {in_wallet ? age : "DEMO-", "In force from ", "Review by ", "local protocol come first"})
                all.push_back(of_a_sheet);
        }
        for (const char* needed : all) {
            CAPTURE(std::string{needed});
            CHECK(words.find(needed) != std::string::npos);
        }
        const auto code =
            std::ranges::find(page.items, "code", [](const PlacedItem& item) { return item.origin.role; });
        REQUIRE(code != page.items.end());
        const std::string text = words_of(*code);
        CHECK(text.size() == 7);
        // Base 32 without I, L, O, U: Crockford.
        CHECK(text.find_first_not_of("0123456789ABCDEFGHJKMNPQRSTVWXYZ-") == std::string::npos);
        CHECK(text[3] == '-');
    });
}
