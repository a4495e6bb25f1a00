#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "packet/documents.hpp"
#include "print_home_sheets.hpp"
#include "record/sheet_code.hpp"
#include "rules/edited_home.hpp"
#include "rules/judge.hpp"
#include "rules/rule_book.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

void collect(const std::vector<Block>& blocks, std::vector<const Inline*>& all) {
    const auto add = [&](const Inlines& inlines) {
        for (const Inline& piece : inlines) all.push_back(&piece);
    };
    for (const Block& block : blocks) {
        add(block.inlines);
        add(block.aside);
        for (const TableCell& cell : block.head.cells) add(cell.inlines);
        for (const TableRow& row : block.rows)
            for (const TableCell& cell : row.cells) add(cell.inlines);
        collect(block.children, all);
    }
}

std::vector<const Inline*> pieces_of(const Document& document) {
    std::vector<const Inline*> all;
    for (const Inline& piece : document.title) all.push_back(&piece);
    collect(document.blocks, all);
    return all;
}

/// What a document prints for a field or a calculated value, each time that it stands there, sorted.
std::vector<std::string> printed_as(const Document& document, std::string_view field) {
    std::vector<std::string> values;
    for (const Inline* piece : pieces_of(document))
        if (piece->kind == Inline::Kind::value && piece->value.field == field)
            values.push_back(plain_blanks(piece->value.text()));
    std::ranges::sort(values);
    return values;
}

std::string all_words(const Document& document) {
    std::string words;
    for (const Inline* piece : pieces_of(document)) words += plain_text({*piece}) + " ";
    return plain_blanks(words);
}

struct Made {
    CheckedHome checked;
    std::vector<Finding> of_sheets;
    std::vector<Document> documents;

    const Document* named(std::string_view name) const {
        const auto found = std::ranges::find(documents, name, &Document::name);
        return found == documents.end() ? nullptr : &*found;
    }
};

/// A home with edits, and only the sheets that were asked for; all of them without.
Made made(std::string_view home, std::string_view edits, std::vector<std::string> sheets = {},
          std::string_view on = "2026-02-03") {
    Made made;
    const Date day = *Date::parse(on);
    made.checked = check_home(edited_profile(home, edits), day);
    if (sheets.empty()) sheets = stationery().in_order();
    made.documents =
        make_documents({made.checked.profile, day}, made.checked.findings, stationery(), sheets, made.of_sheets);
    return made;
}

std::vector<std::string> sorted(std::vector<std::string> all) {
    std::ranges::sort(all);
    return all;
}

}  // namespace

TEST_CASE("the folder index has the code that stands at the foot of every other sheet, and no other") {
    for (const char* home : kHomes) {
        const SetHome& set = set_demo_home(home);
        CAPTURE(std::string{home});
        REQUIRE_MESSAGE(!set.refused_by_sheets(), set.refusals());
        std::vector<std::string> at_the_foot;
        const Document* index = nullptr;
        for (const SetSheet& sheet : set.sheets) {
            if (sheet.document.sheet == "folder-index") {
                index = &sheet.document;
                continue;
            }
            std::set<std::string> of_pages;
            for (const PlacedPage& page : sheet.placed.pages)
                for (const PlacedItem& item : page.items)
                    if (item.origin.role == "code") of_pages.insert(words_of(item));
            REQUIRE_MESSAGE(of_pages.size() == 1, sheet.document.name);
            at_the_foot.push_back(*of_pages.begin());
        }
        REQUIRE(index != nullptr);
        CHECK(printed_as(*index, "calc.sheet-code") == sorted(at_the_foot));
        CHECK(printed_as(*index, "calc.own-code") == std::vector<std::string>{sheet_code(*index)});
        CHECK(set.sheets.front().document.sheet == "folder-index");
        CHECK(set.sheets.back().document.sheet == "verification");
    }
}

TEST_CASE("a sheet that lists the others says the same when it is printed alone") {
    for (const char* home : kHomes) {
        const Made whole = made(home, "");
        for (const char* sheet : {"folder-index", "verification"}) {
            CAPTURE(std::string{home});
            CAPTURE(std::string{sheet});
            const Made alone = made(home, "", {sheet});
            REQUIRE(alone.documents.size() == 1);
            REQUIRE(whole.named(sheet) != nullptr);
            CHECK(sheet_code(alone.documents.front()) == sheet_code(*whole.named(sheet)));
        }
    }
}

TEST_CASE("the folder index follows every change of another sheet") {
    const std::string before = sheet_code(*made("adult-mask", "").named("folder-index"));
    CHECK(sheet_code(*made("adult-mask", "prescriptions.0.alarms.high_pressure: 31 cmH2O").named("folder-index")) !=
          before);
    CHECK(sheet_code(*made("adult-mask", "caregivers.0.name: Sasha V. Vance").named("folder-index")) != before);
    // A value that stands on no sheet changes none.
    CHECK(sheet_code(*made("adult-mask", "home.weapons_secured: none here").named("folder-index")) == before);
}

TEST_CASE("the folder index names every recorded copy once for each sheet that it is of") {
    for (const char* home : kHomes) {
        const Made all = made(home, "");
        const Document& index = *all.named("folder-index");
        std::vector<std::string> expected;
        for (const PaperCopy& copy : all.checked.profile.copies) {
            std::size_t of = 0;
            for (const Document& document : all.documents)
                if (document.name == *copy.sheet || document.sheet == *copy.sheet) ++of;
            expected.insert(expected.end(), std::max<std::size_t>(of, 1), *copy.place);
        }
        CAPTURE(std::string{home});
        CHECK(printed_as(index, "calc.copy-place") == sorted(expected));
    }
}

TEST_CASE("a copy of a sheet that is not printed is named, not dropped") {
    const Made home = made("adult-mask", "copies.0.sheet: bedside-card/kitchen\ncopies.0.place: kitchen wall");
    CHECK(all_words(*home.named("folder-index")).find("bedside-card/kitchen") != std::string::npos);
    CHECK(all_words(*home.named("folder-index")).find("kitchen wall") != std::string::npos);
}

TEST_CASE("a letter is printed only with its permission, and the home is told why not") {
    struct Row {
        const char* edits;
        bool utility;
        bool fire;
        const char* rule;
    };
    const Row rows[] = {
        {"", true, true, ""},
        {"remove: consent.fire_letter", true, false, "letter-without-consent"},
        {"remove: consent.utility_letter", false, true, "letter-without-consent"},
        {"remove: consent", false, false, "letter-without-consent"},
        {"consent.fire_letter.answer: refused", true, false, "letter-refused"},
        {"consent.utility_letter.answer: refused", false, true, "letter-refused"},
    };
    for (const char* home : kHomes) {
        for (const Row& row : rows) {
            CAPTURE(std::string{home});
            CAPTURE(std::string{row.edits});
            const Made all = made(home, row.edits);
            CHECK((all.named("notice-letters/utility") != nullptr) == row.utility);
            CHECK((all.named("notice-letters/fire") != nullptr) == row.fire);
            const std::string index = all_words(*all.named("folder-index"));
            CHECK((index.find("Not printed: the letter to the power company") != std::string::npos) == !row.utility);
            CHECK((index.find("Not printed: the letter to the fire") != std::string::npos) == !row.fire);
            if (*row.rule == '\0') continue;
            const auto told = std::ranges::find(all.checked.findings, row.rule, &Finding::rule);
            REQUIRE(told != all.checked.findings.end());
            CHECK(told->message.find("its letter is not printed") != std::string::npos);
        }
        PrintOrder letters;
        letters.sheets = {"notice-letters"};
        const PrintedHome none = printed_home(edited_profile(home, "remove: consent"), letters);
        CHECK(none.refused);
        CHECK(none.drawings.empty());
        CHECK(none.missing_sheets == letters.sheets);
        CHECK(std::ranges::count(none.findings, "letter-without-consent", &Finding::rule) == 2);
    }
}

TEST_CASE("a letter names no diagnosis, setting, birth date or medicine, and no minutes") {
    for (const char* home : kHomes) {
        const Made all = made(home, "");
        const Profile& profile = all.checked.profile;
        std::vector<std::string> secret{*profile.diagnosis->plain,
                                        *profile.diagnosis->clinical,
                                        fmt::format("{}", profile.person->birth_date->year()),
                                        "cmH2O",
                                        "minutes",
                                        " min ",
                                        "mL",
                                        "L/min",
                                        "ventilator",
                                        "neck tube",
                                        "mask"};
        for (const Prescription& order : profile.prescriptions) secret.push_back(*order.mode_on_screen);
        for (const char* letter : {"notice-letters/utility", "notice-letters/fire"}) {
            CAPTURE(std::string{home});
            CAPTURE(std::string{letter});
            const Document* document = all.named(letter);
            REQUIRE(document != nullptr);
            const std::string words = all_words(*document) + " ";
            for (const std::string& one : secret) CHECK_MESSAGE(words.find(one) == std::string::npos, one);
            for (const Inline* piece : pieces_of(*document)) {
                if (piece->kind != Inline::Kind::value) continue;
                for (const char* part : {"diagnosis", "prescriptions", "baseline", "airway", "medicines", "allergies",
                                         "person.birth_date", "directive", "batteries", "home.entry.key_access"})
                    CHECK_MESSAGE(!piece->value.field.starts_with(part), piece->value.field);
            }
        }
    }
}

TEST_CASE("battery time is told to the power company as a band, from the cautious end") {
    struct Row {
        const char* edits;
        const char* band;
    };
    // Unit C of this home: two batteries, counted at 80 % (common practice, no source): 0.8 x (a + b) min.
    const Row rows[] = {
        {"batteries.0.tested_time: 74 min\nbatteries.1.tested_time: 75 min", "Under 2 hours"},   // 119.2 min
        {"batteries.0.tested_time: 75 min\nbatteries.1.tested_time: 75 min", "2 to 8 hours"},    // 120 min
        {"batteries.0.tested_time: 300 min\nbatteries.1.tested_time: 300 min", "2 to 8 hours"},  // 480 min
        {"batteries.0.tested_time: 301 min\nbatteries.1.tested_time: 300 min", "Over 8 hours"},  // 480.8 min
        {"remove: batteries.0.tested_time\nremove: batteries.1.tested_time", "Not known: count on none"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.edits});
        const std::string words = all_words(*made("adult-mask", row.edits).named("notice-letters/utility"));
        for (const char* band : {"Under 2 hours", "2 to 8 hours", "Over 8 hours", "Not known: count on none"})
            CHECK_MESSAGE((words.find(band) != std::string::npos) == (std::string{band} == row.band), band);
    }
}

TEST_CASE("the checking record lists every finding but notes, with what it says and what to do") {
    std::size_t seen = 0;
    for (const RuleText& rule : rule_book()) {
        if (rule.judges != Judges::profile || rule.severity == Severity::note || rule.severity == Severity::refuse)
            continue;
        if (rule.example.home.empty()) continue;
        CAPTURE(std::string{rule.name});
        const Made home = made(rule.example.home, written_out(rule.example.fires), {"verification"}, rule.example.on);
        const Document* record = home.named("verification");
        REQUIRE(record != nullptr);
        std::vector<std::string> rules;
        std::vector<std::string> messages;
        for (const auto* findings : {&home.checked.findings, &home.of_sheets})
            for (const Finding& finding : *findings)
                if (finding.severity != Severity::note) {
                    rules.push_back(finding.rule);
                    messages.push_back(finding.message);
                }
        const std::vector<std::string> listed = printed_as(*record, "calc.finding-rule");
        const std::set<std::string> distinct{listed.begin(), listed.end()};
        CHECK(distinct == std::set<std::string>{rules.begin(), rules.end()});
        CHECK(std::ranges::find(listed, rule.name) != listed.end());
        const std::vector<std::string> printed = printed_as(*record, "calc.finding");
        for (const std::string& message : messages) {
            if (message.find("20") != std::string::npos) continue;  // may hold a date, which prints in other words
            CHECK_MESSAGE(std::ranges::find(printed, message) != printed.end(), message);
        }
        ++seen;
    }
    CHECK(seen > 60);
}

TEST_CASE("the checking record lists every acceptance with who, when, why and the number, and whether it counts") {
    struct Row {
        const char* edits;
        const char* says;
    };
    const Row rows[] = {
        {"", "yes"},
        {"accepted.0.covers.0.value: 25 min", "no: a number changed"},
        {"accepted.0.rule: oxygen-near-flame", "nothing to accept any more"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.edits});
        const Made home = made("child-tracheostomy", row.edits, {"verification"});
        const Document& record = *home.named("verification");
        for (const char* field : {"rule", "by", "reason", "covers.0.name", "covers.0.value"})
            CHECK_MESSAGE(printed_as(record, fmt::format("accepted.0.{}", field)).size() == 1, std::string{field});
        CHECK(printed_as(record, "accepted.0.date") == std::vector<std::string>{"2 Jan 2026"});
        CHECK(all_words(record).find(row.says) != std::string::npos);
    }
    const std::string none = all_words(*made("adult-mask", "", {"verification"}).named("verification"));
    for (const char* words : {"Finding", "By, on", "Reason", "Covers", "Still counts", "None in", "An acceptance ends"})
        CHECK_MESSAGE(none.find(words) != std::string::npos, std::string{words});
}

TEST_CASE("the checking record works out the numbers that the paper prints") {
    struct Row {
        const char* home;
        const char* worked;
    };
    // Worked by hand from the demo homes; constants: 50 kg and 0.91 kg a cm, ARDS Network, N Engl J Med
    // 2000;342:1301; 0.28 L/psi for a US size E, ambulance tables.
    const Row rows[] = {
        {"adult-tracheostomy", "50 kg + 0.91 x (170 cm - 152.4) = 66 kg"},
        {"adult-tracheostomy", "5 cmH2O + 16 cmH2O = 21 cmH2O"},
        {"adult-tracheostomy", "(12 Fr / 3) / 8 mm = 50 %"},
        {"adult-tracheostomy", "(2,000 psi - 500 psi) x 0.28 L/psi / 1 L/min = 7 h"},
        {"adult-tracheostomy", "(220 min + 210 min + 480 min) x 80 % = 12 h 8 min"},
        {"adult-tracheostomy", "(240 min + 200 min) x 80 % = 5 h 52 min"},
        {"adult-tracheostomy", "728 min and 840 min - (2 x 25 min + 120 min): 9 h 18 min"},
        {"child-tracheostomy", "6 cmH2O + 14 cmH2O = 20 cmH2O"},
        {"child-tracheostomy", "(240 min + 180 min) x 80 % = 5 h 36 min"},
        {"child-tracheostomy", "336 min - (2 x 20 min + 120 min): 2 h 56 min"},
        {"adult-mask", "400 min - (2 x 30 min + 120 min): 3 h 40 min"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.worked});
        const std::string words = all_words(*made(row.home, "", {"verification"}).named("verification"));
        CHECK(words.find(row.worked) != std::string::npos);
    }
}

TEST_CASE("a sign-off is never filled in, and is due again a year after the last") {
    for (const char* status : {"trainee", "with_supervision", "independent"}) {
        const Made home = made("adult-mask", fmt::format("caregivers.0.status: {}", status));
        Document record = *home.named("skills-record/sasha");
        CHECK(printed_as(record, "caregivers.0.status").empty());
        const Made unchanged = made("adult-mask", "");
        // Whether the profile as a whole is checked is another matter, and counts.
        record.not_yet_checked = unchanged.named("skills-record/sasha")->not_yet_checked;
        CHECK(sheet_code(record) == sheet_code(*unchanged.named("skills-record/sasha")));
        CHECK(printed_as(record, "calc.renew-by") == std::vector<std::string>{"12 January 2027"});
    }
}

TEST_CASE("a skills record holds nothing of the person's health but the names of skills") {
    for (const char* home : kHomes) {
        for (const Document& document : made(home, "").documents) {
            if (document.sheet != "skills-record") continue;
            for (const Inline* piece : pieces_of(document)) {
                const std::string& field = piece->value.field;
                if (piece->kind != Inline::Kind::value) continue;
                const bool allowed = field.starts_with("caregivers.") || field.starts_with("contacts.") ||
                                     field == "person.preferred_name" || field == "calc.renew-by";
                CHECK_MESSAGE(allowed, field);
            }
        }
    }
}

TEST_CASE("two caregivers of one name have records of their own") {
    const Made home = made("adult-mask", "caregivers.1.first_name: Sasha");
    CHECK(home.named("skills-record/sasha") != nullptr);
    CHECK(home.named("skills-record/sasha-2") != nullptr);
}
