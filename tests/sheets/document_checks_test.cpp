#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "markup/render.hpp"
#include "packet/documents.hpp"
#include "packet/print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "profile/profile.hpp"
#include "sheets/document_checks.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// What `print` says about the demo home on a sheet of the test's own. No built-in sheet is used.
PrintedHome printed_with(const std::string& text) {
    Stationery own = stationery();
    own.sheets.clear();
    own.sheets.emplace("own-sheet", parse_template({"own/own-sheet.md", text}, {}));
    Measurer measurer;
    return print_home(demo_profile("adult-tracheostomy"), demo_day(), {}, own, measurer);
}

std::string front(std::string_view audience) {
    return fmt::format("---\ntitle: Own sheet\naudience: {}\n---\n\n## Heading\n\n", audience);
}

/// "rule file:line" of each refusal.
std::string refusals(const PrintedHome& home) {
    std::string all;
    for (const Finding& finding : home.findings)
        if (finding.severity == Severity::refuse)
            all +=
                fmt::format("{} {}:{}\n", finding.rule, finding.marks.front().file, finding.marks.front().place.line);
    return all;
}

}  // namespace

TEST_CASE("a sheet shows only what its readers may know; the finding names template, line and field") {
    struct Row {
        const char* audience;
        const char* name;
        bool allowed;
    };
    const Row rows[] = {
        {"wall", "home.address", false},
        {"wall", "person.birth_date", false},
        {"wall", "person.birth_date_brief", false},
        {"wall", "person.legal_name", false},
        {"wall", "diagnosis.clinical", false},
        {"wall", "diagnosis.plain", false},
        {"wall", "directive.status", false},
        {"wall", "utility_company.account", false},
        {"wall", "age", false},
        {"wall", "person.preferred_name", true},
        {"crew", "home.address", true},
        {"crew", "person.birth_date", true},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.audience});
        CAPTURE(std::string{row.name});
        // In a paragraph, a table, a list, a heading and its aside, a call-out.
        const std::string value = fmt::format("{{{{{}}}}}", row.name);
        const std::pair<std::string, int> places[] = {
            {"The value is " + value + ".", 8},
            {"| a | b |\n|---|---|\n| a | " + value + " |", 10},
            {"1. one\n2. two " + value, 9},
            {"### Heading " + value, 8},
            {"## Heading {aside=\"" + value + "\"}\n\nText.", 8},
            {"> [!WARNING]\n> " + value, 9},
        };
        for (const auto& [text, line] : places) {
            CAPTURE(text);
            const PrintedHome home = printed_with(front(row.audience) + text + "\n");
            if (row.allowed) {
                CHECK(refusals(home) == "");
                CHECK(!home.refused);
                continue;
            }
            CHECK(home.refused);
            CHECK(home.drawings.empty());
            CHECK(refusals(home) == fmt::format("private-fact-in-wrong-place own/own-sheet.md:{}\n", line));
        }
    }
}

TEST_CASE("no field that may not hang on the wall gets through on a wall sheet") {
    const SetHome& home = set_demo_home("adult-tracheostomy");
    std::size_t tried = 0;
    for (const FieldAt& at : fields_of(home.checked.profile)) {
        if (!at.field->given() || !at.reachable || (at.info.on & wall) != 0 || at.path.find('.') == std::string::npos)
            continue;
        if (at.path.find_first_of("0123456789") != std::string::npos || at.field->kind() == ValueKind::flag) continue;
        ++tried;
        CAPTURE(at.path);
        const PrintedHome printed = printed_with(front("wall") + "Value {{" + at.path + "}}.\n");
        CHECK(printed.refused);
        CHECK(refusals(printed) == "private-fact-in-wrong-place own/own-sheet.md:8\n");
        CHECK(printed.findings.back().marks.front().field == at.path);
    }
    CHECK(tried > 40);
}

TEST_CASE("numbers that can be misread are refused in a template's own words") {
    struct Row {
        const char* words;
        bool refused;
        const char* source;
    };
    const Row rows[] = {
        {"Give .5 L/min.", true, "pub: naked decimal point, ISMP error-prone notation list (as quoted)"},
        {"Below <90 call.", true, "pub: <10 was read as 40, the same"},
        {"Above > 30.", true, "pub: the same"},
        {"Give 0.5 L/min.", false, "pub: right form, the same"},
        {"Below 90 call.", false, "pub: right form, the same"},
        {"Give 5.0 L/min.", true, "pub: trailing zero, the same"},
        {"Give 12.50 mL.", true, "pub: trailing zero, the same"},
        {"The tube is new. 5 minutes.", false, "a full stop is no decimal point"},
        {"Page 2 of 10.", false, "ten is no trailing zero"},
        {"Wait 1.5 seconds, then 100.", false, "the same"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        CAPTURE(std::string{row.source});
        const PrintedHome home = printed_with(front("wall") + row.words + "\n");
        CHECK(refusals(home) == (row.refused ? "misreadable-number own/own-sheet.md:8\n" : ""));
    }
}

TEST_CASE("a name that is misspelt in a template is reported with file, line and the name that was meant") {
    const PrintedHome home = printed_with(front("wall") + "First line.\n\nFor {{person.prefered_name}}.\n");
    CHECK(home.refused);
    CHECK(home.drawings.empty());
    REQUIRE(!home.findings.empty());
    const auto found = std::ranges::find(home.findings, Severity::refuse, &Finding::severity);
    REQUIRE(found != home.findings.end());
    CHECK(found->marks.front().file == "own/own-sheet.md");
    CHECK(found->marks.front().place.line == 10);
    CHECK(found->message.find("\"person.prefered_name\"") != std::string::npos);
    CHECK(found->marks.front().label == "the nearest is \"person.preferred_name\"");
}

TEST_CASE("a sheet without an audience, or for one that there is none of, is refused") {
    for (const char* text :
         {"---\ntitle: Own\n---\n\nText.\n", "---\ntitle: Own\naudience: visitors\n---\n\nText.\n"}) {
        const PrintedHome home = printed_with(text);
        CHECK(home.refused);
        CHECK(home.drawings.empty());
        CHECK(refusals(home).find("own/own-sheet.md:") != std::string::npos);
    }
}

TEST_CASE("each audience has its two identifiers") {
    struct Row {
        const char* audience;
        const char* first;
        const char* second;
    };
    const Row rows[] = {
        {"wall", "person.preferred_name", "record_number"},
        {"folder", "person.legal_name", "person.birth_date"},
        {"crew", "person.legal_name", "person.birth_date"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.audience});
        Stationery own = stationery();
        own.sheets.clear();
        own.sheets.emplace("own-sheet", parse_template({"own/own-sheet.md", front(row.audience) + "Text.\n"}, {}));
        const CheckedHome checked = check_home(demo_profile("adult-mask"), demo_day());
        std::vector<Finding> findings;
        const std::vector<Document> documents =
            make_documents({checked.profile, demo_day()}, checked.findings, own, {"own-sheet"}, findings);
        CHECK(findings.empty());
        REQUIRE(documents.size() == 1);
        REQUIRE(documents[0].identifiers.size() >= 2);
        CHECK(documents[0].identifiers[0].field == row.first);
        CHECK(documents[0].identifiers[1].field == row.second);
    }
}
