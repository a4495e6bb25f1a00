#include <doctest/doctest.h>

#include <fmt/format.h>
#include <regex>
#include <string>
#include <vector>

#include "print_home_sheets.hpp"
#include "sheets/checks/passages.hpp"
#include "units/text.hpp"

// The mistakes that would hurt most on paper, looked for on every sheet of every home. That each of them is dangerous
// is common practice, no source, where no other is named.

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

SetHome made(std::string_view home, std::string_view edits = "") {
    SetHome set = set_home(edited_profile(home, edits));
    CAPTURE(std::string{home});
    REQUIRE_MESSAGE(!set.refused_by_profile(), set.refusals());
    REQUIRE_MESSAGE(!set.refused_by_sheets(), set.refusals());
    REQUIRE(set.sheets.size() > 5);
    return set;
}

/// All words of a sheet in small letters, one blank between them.
std::string said_on(const SetSheet& sheet) {
    return std::regex_replace(lower_ascii(words_of(sheet.placed)), std::regex{" +"}, " ");
}

/// "sheet: words" for each sheet that says something of this form.
std::vector<std::string> sheets_that_say(const SetHome& home, const std::string& form) {
    std::vector<std::string> found;
    for (const SetSheet& sheet : home.sheets) {
        const std::string text = said_on(sheet);
        std::smatch match;
        if (std::regex_search(text, match, std::regex{form})) found.push_back(sheet.document.name + ": " + match.str());
    }
    return found;
}

void never(const SetHome& home, const std::string& form) {
    const auto found = sheets_that_say(home, form);
    CHECK_MESSAGE(found.empty(), joined(found, "\n"));
}

void somewhere(const SetHome& home, const std::string& form) {
    CHECK_MESSAGE(!sheets_that_say(home, form).empty(), form);
}

/// Words that stand with a passage: its row and the head of its table, or, beside no table, its section. Another row of
/// the same table is no company: "Peak, total" says nothing about the row below it.
std::string company_of(const std::vector<sheet_check::Passage>& all, const sheet_check::Passage& one) {
    const bool cell = one.kind == sheet_check::Passage::Kind::cell;
    std::string words;
    for (const sheet_check::Passage& other : all) {
        const bool in_row = other.group == one.group || (one.head != 0 && other.group == one.head);
        if (in_row || (!cell && other.section == one.section)) words += other.text + " ";
    }
    return lower_ascii(plain_blanks(words));
}

bool is_inspiratory(const std::string& field) {
    return field.ends_with("inspiratory_pressure") || field.ends_with("support_pressure") ||
           field.ends_with("pressure_range") || field.ends_with("pressure_least") || field.ends_with("pressure_most");
}

}  // namespace

TEST_CASE("an inspiratory pressure never stands without the word for what it counts from") {
    std::size_t seen = 0;
    for (const char* name : kAllHomes) {
        const SetHome home = made(name);
        for (const SetSheet& sheet : home.sheets) {
            const auto passages = sheet_check::passages_of(sheet.document);
            for (const sheet_check::Passage& passage : passages)
                for (const sheet_check::ValueSpan& span : passage.values) {
                    if (span.value == nullptr || !is_inspiratory(span.value->field)) continue;
                    ++seen;
                    const std::string company = company_of(passages, passage);
                    CHECK_MESSAGE(
                        (company.find("above") != std::string::npos || company.find("total") != std::string::npos),
                        sheet.document.name << ": " << passage.text);
                }
        }
    }
    CHECK(seen > 20);
}

TEST_CASE("the age on paper is counted on the day of printing") {
    somewhere(made("adult-mask", "person.birth_date: 2006-02-03"), "20 years");
    never(made("adult-mask", "person.birth_date: 2006-02-04"), "20 years");
    somewhere(made("adult-mask", "person.birth_date: 2006-02-04"), "19 years");
}

TEST_CASE("someone with a mask is never told to handle a neck tube") {
    for (const char* name : {"adult-mask", "adult-mains-only"})
        never(made(name),
              "inner tube|cuff (down|flat|up)|fill the cuff|change the (neck )?tube|suction the (neck )?tube|"
              "tube ties|spare tube");
}

TEST_CASE("someone whose upper airway is closed is never breathed for by mouth or face") {
    const char* const by_mouth =
        "bag (by|on) (the )?(mouth|face)|bag the (mouth|face)|mask (on|over) (the )?(mouth|nose|face)|"
        "cover (the )?hole, bag|lips around|mouth[- ]to[- ]mouth";
    never(made("toddler-dual-limb"), by_mouth);
    never(made("adult-tracheostomy", "airway.upper: laryngectomy"), by_mouth);
    never(made("adult-tracheostomy", "airway.upper: blocked"), by_mouth);
    somewhere(made("toddler-dual-limb"), "no (air|way)[a-z ]* (by|from|passes by) mouth");
    somewhere(made("adult-tracheostomy"), by_mouth);  // the words looked for are those that would stand there
}

TEST_CASE("nobody but the clinic puts a tube back into a fresh opening") {
    const SetHome fresh = made("adult-tracheostomy", "airway.neck_tube.opening_healed: false");
    never(fresh, "guide out at once|spare [0-9.]+ mm, guide in");
    somewhere(fresh, "do not (put|change|push)|fresh|not healed");
}

TEST_CASE("a rated battery time is never printed, and a time tested on other settings is never printed whole") {
    never(made("adult-tracheostomy", "batteries.0.rated_time: 777 min"), "777|12 h 57|12 hours 57");
    const auto leave = [](const SetHome& home) {
        for (const SetSheet& sheet : home.sheets) {
            const std::string text = said_on(sheet);
            std::smatch match;
            if (sheet.document.sheet == "outage-plan" &&
                std::regex_search(text, match, std::regex{"([0-9]+) h ([0-9]+) min"}))
                return text;
        }
        return std::string{};
    };
    const std::string before = leave(made("adult-tracheostomy"));
    const std::string after =
        leave(made("adult-tracheostomy", "batteries.0.tested_at: [{prescription: P1, revision: R2}]"));
    CHECK(!before.empty());
    CHECK(before != after);
}

TEST_CASE("a low-pressure alarm is not said to be enough where a tube is small") {
    for (const char* name : {"child-tracheostomy", "toddler-dual-limb"}) somewhere(made(name), "alarm may stay quiet");
    never(made("adult-mask"), "alarm may stay quiet");
}

TEST_CASE("nobody is told to squeeze harder against a block") {
    for (const char* name : kAllHomes) never(made(name), "squeeze harder|bag harder|press harder|more force");
    somewhere(made("adult-tracheostomy"), "do not squeeze hard");
}

TEST_CASE("a directive is pointed at, never restated") {
    for (const char* name : kAllHomes)
        never(made(name), "do not resuscitate|no cpr|comfort care only|withhold|do not intubate");
}

TEST_CASE("numbers keep the form that is hard to misread") {
    for (const char* name : kAllHomes) never(made(name), "(^|[ (])\\.[0-9]");  // ISMP: a zero before the point
    const SetHome home = made("adult-tracheostomy");
    somewhere(home, "8\\.0 mm");  // tube sizes as on the box
    never(home, "14\\.0 (per|breaths)");
    never(home, "1\\.0 l/min");
}

TEST_CASE("two small lines are told apart by their bore, not by a color") {
    const SetHome home = made("child-tracheostomy");
    for (const SetSheet& sheet : home.sheets)
        if (sheet.document.sheet == "hookup") {
            const std::string text = said_on(sheet);
            CHECK(text.find("4 mm") != std::string::npos);
            CHECK(text.find("3 mm") != std::string::npos);
            for (const char* color : {"blue", "red", "green", "clear line", "white line"})
                CHECK_MESSAGE(text.find(color) == std::string::npos, color);
        }
}

TEST_CASE("none, not recorded and a value are three different prints") {
    const std::string with = joined(sheets_that_say(made("adult-tracheostomy"), "allerg[a-z ]*[^.]*penicillin"), "\n");
    CHECK(!with.empty());
    const SetHome none = made("adult-tracheostomy", "allergies.substances: none");
    const SetHome missing = made("adult-tracheostomy", "remove: allergies.substances");
    somewhere(none, "allergies none known");
    never(none, "allergies not recorded");
    somewhere(missing, "allergies[^.]*not recorded");
    never(missing, "allergies none known");
    const SetHome latex = made("adult-tracheostomy", "remove: allergies.latex");
    somewhere(latex, "latex: not recorded");
    never(latex, "no latex allergy");
    somewhere(made("adult-tracheostomy", "remove: medicines"), "medicines: not recorded");
    somewhere(made("adult-tracheostomy", "remove: implants"), "implants: not recorded");
}
