#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <regex>

#include "packet/documents.hpp"
#include "print_home_sheets.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

constexpr const char* kCharts = "alarm-response";

/// The charts of a home with edits, one a line.
struct Charts {
    explicit Charts(std::string_view home, std::string_view edits = "") {
        const CheckedHome checked = check_home(edited_profile(home, edits), demo_day());
        REQUIRE(checked.readable);
        documents =
            make_documents(Household{checked.profile, demo_day()}, checked.findings, stationery(), {kCharts}, findings);
    }

    const Document& chart(std::string_view leaf) const {
        const auto found = std::ranges::find(documents, leaf, &Document::place);
        REQUIRE_MESSAGE(found != documents.end(), std::string{leaf});
        return *found;
    }
    std::string leaves() const {
        std::string names;
        for (const Document& document : documents)
            if (!document.place.empty()) names += (names.empty() ? "" : " ") + document.place;
        return names;
    }

    std::vector<Document> documents;
    std::vector<Finding> findings;
};

/// All words of blocks, a line for each block.
void add_words(const std::vector<Block>& blocks, std::string& text) {
    for (const Block& block : blocks) {
        for (const Inlines* inlines : {&block.inlines, &block.aside})
            if (!inlines->empty()) text += plain_blanks(plain_text(*inlines)) + "\n";
        for (const TableRow& row : block.rows)
            for (const TableCell& cell : row.cells) text += plain_blanks(plain_text(cell.inlines)) + "\n";
        add_words(block.children, text);
    }
}

std::string words_of(const Document& document) {
    std::string text = plain_blanks(plain_text(document.title)) + "\n";
    add_words(document.blocks, text);
    return text;
}

std::string words_of(const Charts& charts) {
    std::string text;
    for (const Document& document : charts.documents) text += words_of(document);
    return text;
}

/// The steps of a chart: the ordered list below its heading.
const Block& steps_of(const Document& document) {
    const auto list = std::ranges::find_if(
        document.blocks, [](const Block& block) { return block.kind == Block::Kind::list && block.ordered; });
    REQUIRE_MESSAGE(list != document.blocks.end(), document.name);
    return *list;
}

std::string words_of(const Block& block) {
    std::string text = plain_blanks(plain_text(block.inlines)) + "\n";
    add_words(block.children, text);
    return text;
}

/// Number of the first step with these words, from 1; 0: none.
std::size_t step_with(const Document& document, const std::string& words) {
    const Block& steps = steps_of(document);
    for (std::size_t at = 0; at < steps.children.size(); ++at)
        if (words_of(steps.children[at]).find(words) != std::string::npos) return at + 1;
    return 0;
}

bool holds(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

std::string first_message(const Charts& charts) {
    return charts.findings.empty() ? "" : charts.findings.front().message;
}

std::string lower(const std::string& text) { return lower_ascii(text); }

}  // namespace

TEST_CASE("each home has the charts that apply to it, and no other") {
    struct Row {
        const char* home;
        const char* edits;
        const char* leaves;
    };
    const std::string for_all =
        "high-pressure low-pressure low-volume fast-breathing no-breath low-battery machine-stopped";
    const Row rows[]{
        {"adult-tracheostomy", "", " low-oxygen tube-out blocked-tube humidifier fever-or-mucus choking bleeding"},
        {"child-tracheostomy", "", " low-oxygen tube-out blocked-tube humidifier fever-or-mucus choking bleeding"},
        {"adult-mask", "", " low-oxygen humidifier fever-or-mucus choking mask-or-mouthpiece"},
        {"adult-mask", "monitors.oximeter: none", " humidifier fever-or-mucus choking mask-or-mouthpiece"},
        {"adult-mask", "prescriptions.0.humidity: {kind: none}",
         " low-oxygen fever-or-mucus choking mask-or-mouthpiece"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.home});
        CAPTURE(std::string{row.edits});
        const Charts charts{row.home, row.edits};
        CHECK(charts.leaves() == for_all + row.leaves);
        // The index on the cover has a row for each, in their order and with their numbers.
        const Document& cover = charts.documents.front();
        CHECK(cover.name == "alarm-response");
        std::string numbers;
        std::size_t expected = 0;
        for (const Block& block : cover.blocks)
            for (const TableRow& row_of_index : block.rows) {
                CHECK(plain_text(row_of_index.cells.at(1).inlines) == std::to_string(++expected));
                const std::string name = plain_text(row_of_index.cells.at(0).inlines);
                CHECK_MESSAGE(name.starts_with(plain_text(charts.documents[expected].blocks.front().inlines)), name);
            }
        CHECK(expected == charts.documents.size() - 1);
    }
}

TEST_CASE("every chart asks about the person first, and its first way out is the box of rescue steps") {
    // Person, tube or mask, hose, machine: look, listen and feel come first in the UK guideline for tracheostomy
    // emergencies (McGrath and others, Anaesthesia, 2012).
    for (const char* home : kAllHomes) {
        const Charts charts{home};
        for (const Document& document : charts.documents) {
            CAPTURE(std::string{home});
            CAPTURE(document.name);
            const Block& first = steps_of(document).children.front();
            REQUIRE(first.children.size() == 2);
            const std::string question = lower(plain_text(first.children.front().inlines));
            CHECK_MESSAGE(std::ranges::any_of(std::array{"chest", "color", "breath", "awake"},
                                              [&](const char* word) { return holds(question, word); }),
                          question);
            const Block& exit = first.children.back().children.front();
            REQUIRE(exit.children.size() == 2);
            CHECK(plain_text(exit.children.front().inlines).starts_with("No: Rescue steps"));
            const std::size_t steps = exit.children.back().children.size();
            if (document.place.empty())
                CHECK(steps >= 7);
            else
                CHECK(steps == 4);
            CHECK(holds(words_of(exit), "911"));
            CHECK(holds(lower(words_of(exit)), "squeeze"));
        }
    }
}

TEST_CASE("the box of rescue steps stands top right on every chart, in 14 pt or more") {
    for (const char* home : kHomes) {
        const SetHome& set = set_demo_home(home);
        REQUIRE_MESSAGE(!set.refused_by_sheets(), set.refusals());
        for (const SetSheet& sheet : set.sheets) {
            if (sheet.document.sheet != kCharts) continue;
            CAPTURE(sheet.placed.name);
            const PlacedPage& page = sheet.placed.pages.front();
            const auto box = std::ranges::find_if(page.items, [](const PlacedItem& item) {
                return item.kind == PlacedItem::Kind::box && !item.box.filled && item.origin.role == "steps";
            });
            REQUIRE(box != page.items.end());
            const Area area = area_of(*box);
            CHECK(std::abs(area.right - live_area(page).right) < 1);
            CHECK(area.top < 0.3 * page.height);
            std::size_t steps = 0;
            for (const PlacedItem& item : page.items) {
                if (!is_text(item) || item.origin.role != "step" || !area_of(item).within(area, 0.1)) continue;
                ++steps;
                CHECK(item.text.size >= 14);
            }
            CHECK(steps >= 4);
        }
    }
}

TEST_CASE("someone whose mouth does not lead to the lungs is never given breaths there") {
    for (const char* home : {"adult-tracheostomy", "child-tracheostomy"}) {
        for (const char* upper : {"blocked", "laryngectomy"}) {
            CAPTURE(std::string{home});
            CAPTURE(std::string{upper});
            const Charts charts{home, fmt::format("airway.upper: {}\nremove: airway.neck_tube.speaking_valve", upper)};
            CHECK_MESSAGE(charts.findings.empty(), first_message(charts));
            const std::string words = lower(words_of(charts));
            for (const char* never : {"mouth and nose", "mask on mouth", "gauze", "cover the hole", "bag the face",
                                      "bag mask", "tilt head", "air leaks at the mouth? fill"})
                CHECK_MESSAGE(!holds(words, never), std::string{never});
            CHECK(holds(words_of(charts.chart("tube-out")), "Neck only"));
            CHECK(holds(words_of(charts.chart("tube-out")), "Small mask over the hole in the neck"));
        }
    }
    // The same words are there where the way is open, so that their absence says something.
    const std::string open = lower(words_of(Charts{"child-tracheostomy"}));
    for (const char* used : {"mask on mouth and nose", "gauze"}) CHECK_MESSAGE(holds(open, used), std::string{used});
}

TEST_CASE("nobody pushes a tube into a fresh opening") {
    const char* fresh = "airway.neck_tube.opening_made_on: 2026-01-25\nairway.neck_tube.opening_healed: false";
    for (const char* home : {"adult-tracheostomy", "child-tracheostomy"}) {
        CAPTURE(std::string{home});
        const Charts charts{home, fresh};
        CHECK_MESSAGE(charts.findings.empty(), first_message(charts));
        const std::string tube_out = words_of(charts.chart("tube-out"));
        const std::string blocked = words_of(charts.chart("blocked-tube"));
        for (const char* never : {"guide", "Spare ", "Change the tube", "Never force", " mm in:"}) {
            CHECK_MESSAGE(!holds(tube_out, never), std::string{never});
            CHECK_MESSAGE(!holds(blocked, never), std::string{never});
        }
        CHECK(holds(tube_out, "Call 911 now."));
        CHECK(holds(tube_out, "Fresh opening: do not push a tube in"));
        CHECK(holds(blocked, "Leave the tube in."));
        const Charts healed{home};
        CHECK(holds(words_of(healed.chart("tube-out")), "guide in"));
        CHECK(holds(words_of(healed.chart("blocked-tube")), "Change the tube now"));
    }
}

TEST_CASE("a blocked tube is looked for where its mode shows it") {
    // With a set pressure a plug lowers the volume; with a set volume it raises the pressure.
    for (const char* home : {"adult-tracheostomy", "child-tracheostomy"}) {
        CAPTURE(std::string{home});
        const Charts charts{home};
        const Document& low_volume = charts.chart("low-volume");
        const std::size_t step = step_with(low_volume, "Catheter passes to");
        CHECK(step == 3);
        CHECK(holds(words_of(steps_of(low_volume).children[step - 1]), "BLOCKED TUBE"));
        CHECK(holds(words_of(low_volume), "A blocked tube may show here first."));
        CHECK(holds(words_of(charts.chart("high-pressure")), "a blocked tube may alarm as LOW VOLUME"));
    }
}

TEST_CASE("with a set volume the catheter is passed on the chart of high pressure too") {
    const Charts charts{"adult-tracheostomy", "prescriptions.0.mode: vc_ac"};
    const Document& high_pressure = charts.chart("high-pressure");
    CHECK(step_with(high_pressure, "Does the catheter pass to 11 cm?") == 3);
    CHECK(step_with(charts.chart("low-volume"), "Catheter passes to 11 cm?") == 3);
    CHECK(step_with(Charts{"adult-tracheostomy"}.chart("high-pressure"), "Does the catheter pass") == 0);
}

TEST_CASE("a mask home is told nothing of a tube in the neck") {
    const Charts charts{"adult-mask"};
    const std::string words = words_of(charts);
    for (const char* never : {"neck", "TUBE OUT", "BLOCKED TUBE", "cuff", "catheter", "Suction to", "HME", "Inner tube",
                              "Oxygen source", "oxygen off"})
        CHECK_MESSAGE(!holds(words, never), std::string{never});
    for (const char* told : {"Mask off.", "Bag mask over mouth and nose.", "Tilt head, lift chin.", "Clear the mouth."})
        CHECK_MESSAGE(holds(words, told), std::string{told});
    // Vomit under a mask chokes: it comes off before anything else.
    CHECK(holds(words_of(charts.chart("choking")), "Mask off at once."));
}

TEST_CASE("steps name only what the home has") {
    struct Row {
        const char* home;
        const char* edits;
        const char* never;
    };
    const Row rows[]{
        {"child-tracheostomy", "", "cuff"},        {"child-tracheostomy", "", "spare machine"},
        {"child-tracheostomy", "", "inner tube"},  {"adult-tracheostomy", "", "small lines"},
        {"adult-tracheostomy", "", "valve"},       {"adult-tracheostomy", "", "salt water"},
        {"adult-mask", "", "oxygen off"},          {"adult-mask", "", "the trap"},
        {"adult-mains-only", "", "battery shows"}, {"adult-mains-only", "", "swap one battery"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.home});
        CAPTURE(std::string{row.never});
        CHECK(!holds(lower(words_of(Charts{row.home, row.edits})), row.never));
    }
    const Charts child{"child-tracheostomy"};
    CHECK(holds(words_of(child.chart("machine-stopped")), "Keep squeezing until help comes."));
    CHECK(holds(words_of(child.chart("tube-out")), "Roll under the shoulders."));
    CHECK(holds(words_of(child.chart("high-pressure")), "Small squeeze every 3 seconds"));
}

TEST_CASE("a place without a limit is not named among the limits") {
    const Charts mask{"adult-mask"};
    CHECK(holds(words_of(mask.chart("low-volume")), "NIGHT limit: 4 L/min. Alarm stops?"));
    CHECK(holds(words_of(mask.chart("fast-breathing")), "NIGHT limit: 35 breaths per minute. Alarm stops?"));
    CHECK(holds(words_of(Charts{"adult-tracheostomy"}.chart("low-volume")),
                "BED limits: 300 mL, 4.5 L/min. CHAIR limits:"));
}

TEST_CASE("who sleeps in a mask is not sent to the mouthpiece of the day") {
    const Charts mask{"adult-mask"};
    CHECK(holds(words_of(mask.chart("no-breath")), "Awake, or asleep with the mask on?"));
    CHECK(holds(words_of(mask.chart("no-breath")), "On the mouthpiece: at the lips?"));
    CHECK(holds(words_of(mask.chart("low-volume")), "On the mouthpiece: lips tight round it?"));
    CHECK(holds(words_of(mask.chart("low-pressure")), "On the mouthpiece: within reach?"));
}

TEST_CASE("the usual oxygen level is what is usual, not the goal under extra oxygen") {
    CHECK(
        holds(words_of(Charts{"child-tracheostomy"}.chart("fever-or-mucus")), "Usual oxygen level awake: 95 to 98 %."));
}

TEST_CASE("a spare machine is used for the places that it holds, which the chart of a stopped machine names") {
    const Charts adult{"adult-tracheostomy"};
    for (const char* chart : {"low-volume", "low-pressure", "high-pressure"})
        CHECK_MESSAGE(holds(words_of(adult.chart(chart)), "Spare machine: chart 7."), std::string{chart});
    CHECK(holds(words_of(adult.chart("low-battery")), "Spare machine on wall power: chart 7."));
    CHECK(holds(words_of(adult.chart("machine-stopped")), "CHAIR: no spare, call 911."));
}

TEST_CASE("where one chart sends to another, the number and the name belong together") {
    const std::regex reference{"[Cc]hart (\\d+), ([A-Z][A-Z ]+[A-Z])"};
    std::size_t seen = 0;
    for (const char* home : kAllHomes) {
        const Charts charts{home};
        for (const Document& document : charts.documents) {
            const std::string words = words_of(document);
            for (std::sregex_iterator at{words.begin(), words.end(), reference}, end; at != end; ++at) {
                const std::size_t number = std::stoul((*at)[1]);
                CAPTURE(document.name);
                REQUIRE(number < charts.documents.size());
                const std::string title = plain_text(charts.documents[number].blocks.front().inlines);
                CHECK_MESSAGE(title.starts_with((*at)[2].str()), at->str() << " is " << title);
                ++seen;
            }
        }
    }
    CHECK(seen >= 12);
}

TEST_CASE("no chart tells anyone to silence an alarm or to change a setting") {
    for (const char* home : kAllHomes) {
        CAPTURE(std::string{home});
        const std::string words = lower(words_of(Charts{home}));
        for (const char* never :
             {"silence", "mute", "turn up", "turn down", "alarm off", "raise the limit", "reset the"})
            CHECK_MESSAGE(!holds(words, never), std::string{never});
    }
}

TEST_CASE("steps are short: twelve words or fewer in a sentence") {
    const std::regex sentence{"[^.?!:\n]+"};
    for (const char* home : kHomes) {
        const Charts charts{home};
        for (const Document& document : charts.documents) {
            std::string words;
            add_words(steps_of(document).children, words);
            for (std::sregex_iterator at{words.begin(), words.end(), sentence}, end; at != end; ++at) {
                const std::string one = at->str();
                const auto blanks = std::ranges::count(std::string{trimmed(one)}, ' ');
                CHECK_MESSAGE(blanks + 1 <= 12, document.name << ": " << one);
            }
        }
    }
}
