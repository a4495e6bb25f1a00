#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "pdf/programs.hpp"
#include "print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;
using ventfolio::trial::Ran;
using ventfolio::trial::Scratch;

namespace {

/// The demo home with another scalar for one field, written as YAML by the test itself.
SourceText with_yaml(const std::string& field, const std::string& yaml) {
    SourceText source = demo_profile("adult-tracheostomy");
    const CheckedHome home = check_home(source, demo_day());
    const std::vector<FieldAt> fields = fields_of(home.profile);
    const FieldAt* at = find_field(fields, field);
    REQUIRE(at != nullptr);
    source.text.replace(at->field->place.begin, at->field->place.end - at->field->place.begin, yaml);
    return source;
}

std::string without_blanks(const std::string& text) {
    std::string kept;
    for (const char letter : plain_blanks(text))
        if (letter != ' ' && letter != '\n' && letter != '\f') kept += letter;
    return kept;
}

std::string placed_words(const PlacedPage& page, const std::string& field) {
    std::string words;
    for (const PlacedItem& item : page.items)
        if (is_text(item) && item.origin.field == field) words += words_of(item);
    return without_blanks(words);
}

}  // namespace

TEST_CASE("a hostile name prints as itself wherever it stands") {
    struct Row {
        const char* yaml;
        const char* name;
    };
    const Row rows[] = {
        {"'{{x}}'", "{{x}}"},
        {"'{{{age}}}'", "{{{age}}}"},
        {"'A|B'", "A|B"},
        {"'*a*'", "*a*"},
        {"'**a** _b_'", "**a** _b_"},
        {"'<b>Al</b>'", "<b>Al</b>"},
        {"'&amp; &lt;'", "&amp; &lt;"},
        {"\"a\\nb\"", "a\nb"},
        {"'a\\b \\* \\'", "a\\b \\* \\"},
        {"'# x'", "# x"},
        {"'- x'", "- x"},
        {"'[ ] x'", "[ ] x"},
        {"'[x](y)'", "[x](y)"},
        {"'![x](figure:nod)'", "![x](figure:nod)"},
        {"'> x'", "> x"},
        {"'```x```'", "```x```"},
        {"'___'", "___"},
        {"'---'", "---"},
        {"'{.act}'", "{.act}"},
        {"'\"q\" ''s'''", "\"q\" 's'"},
        {"'(a) <1> %s {0}'", "(a) <1> %s {0}"},
        {"'Nguyễn Thị Ánh'", "Nguyễn Thị Ánh"},
        {"'Юлия Щербакова'", "Юлия Щербакова"},
        {"'Ελένη Παπαδοπούλου'", "Ελένη Παπαδοπούλου"},
        {"'Łucja Żółć-Ștefănescu'", "Łucja Żółć-Ștefănescu"},
        {"\"Nguye\\u0302\\u0303n\"", "Nguyễn"},  // combining marks: printed in normal form C (Unicode Annex 15)
    };
    for (const std::string field : {"person.preferred_name", "person.legal_name"}) {
        for (const Row& row : rows) {
            CAPTURE(field);
            CAPTURE(std::string{row.name});
            const SourceText source = with_yaml(field, row.yaml);
            const SetHome set = set_home(source);
            REQUIRE_MESSAGE((!set.refused_by_profile() && !set.refused_by_sheets()), set.refusals());
            const std::string expected = without_blanks(row.name);
            for (const SetSheet& sheet : set.sheets) {
                const bool on_wall = sheet.document.front("audience") == "wall";
                if (on_wall != (field == "person.preferred_name")) continue;
                CAPTURE(sheet.placed.name);
                CHECK(sheet.document.identifiers.front().text() == row.name);
                for (const PlacedPage& page : sheet.placed.pages)
                    CHECK(placed_words(page, field).starts_with(expected));
            }
            const Scratch scratch;
            scratch.save("packet.pdf", file_named(printed_home(source), "packet.pdf"));
            const Ran ran = scratch.run("pdftotext -raw -enc UTF-8 packet.pdf -");
            CHECK(ran.err == "");
            CHECK(without_blanks(ran.out).find(expected) != std::string::npos);
        }
    }
}

TEST_CASE("a name of 60 letters without a blank prints whole or is refused by its field") {
    const std::string name = "Wolfeschlegelsteinhausenbergerdorffwelchevoralternwarengewis";
    REQUIRE(name.size() == 60);
    for (const std::string field : {"person.preferred_name", "person.legal_name"}) {
        for (const double scale : {kNormalPrint, kLargePrint}) {
            CAPTURE(field);
            CAPTURE(scale);
            const SetHome set = set_home(with_yaml(field, name), {Paper::letter, scale});
            if (!set.refused_by_profile() && !set.refused_by_sheets()) {
                std::string words;
                for (const SetSheet& sheet : set.sheets) words += words_of(sheet.placed);
                CHECK(words.find(name) != std::string::npos);
                continue;
            }
            CHECK_MESSAGE(set.refusals().find("name") != std::string::npos, set.refusals());
            for (const auto* findings : {&set.checked.findings, &set.of_sheets})
                for (const Finding& finding : *findings)
                    if (finding.severity == Severity::refuse) CHECK(finding.marks.front().field == field);
        }
    }
    // With a blank it must print: a full name of 60 letters is no fault.
    const SetHome two =
        set_home(with_yaml("person.legal_name", "Wolfeschlegelsteinhausenbergerdorff Welchevoralternwaren"));
    CHECK_MESSAGE((!two.refused_by_profile() && !two.refused_by_sheets()), two.refusals());
}

TEST_CASE("a name that these fonts cannot set is refused, with the character and the field, and makes no file") {
    struct Row {
        const char* yaml;
        const char* character;
    };
    const Row rows[] = {
        {"'Ann \U0001F600'", "U+1F600"},  // emoji
        {"'דנה'", "U+05D3"},              // Hebrew
        {"'ليلى'", "U+0644"},             // Arabic
        {"'美咲'", "U+7F8E"},             // Chinese or Japanese
        {"'ชัย'", "U+0E0A"},               // Thai
    };
    for (const std::string field : {"person.preferred_name", "person.legal_name", "contacts.equipment_provider.name"}) {
        for (const Row& row : rows) {
            CAPTURE(field);
            CAPTURE(std::string{row.character});
            const PrintedHome home = printed_home(with_yaml(field, row.yaml));
            CHECK(home.refused);
            CHECK(home.drawings.empty());
            const auto told = std::ranges::find_if(home.findings, [&](const Finding& finding) {
                return finding.severity == Severity::refuse &&
                       finding.message.find(row.character) != std::string::npos &&
                       finding.message.find(field) != std::string::npos;
            });
            CHECK(told != home.findings.end());
        }
    }
}

TEST_CASE("every free text of a profile may hold signs that mean something to templates and Markdown") {
    const std::string hostile = "*a|{{b}}<c>_[ ]#";
    for (const char* home : kAllHomes) {
        SourceText source = demo_profile(home);
        CheckedHome read = check_home(source, demo_day());
        std::vector<FieldAt> fields = fields_of(read.profile);
        // Names that other fields refer to stay, else the profile would be refused for that.
        std::erase_if(fields, [&](const FieldAt& at) {
            for (const char* key :
                 {"id", "label", "prescription", "unit", "slot", "sheet", "name", "by", "rule", "numbers", "covers"})
                if (at.info.key == key) return true;
            return at.field->kind() != ValueKind::text || at.info.shape != TextShape::free || !at.field->given() ||
                   at.info.longest < hostile.size();
        });
        std::ranges::sort(fields, std::greater{}, [](const FieldAt& at) { return at.field->place.begin; });
        for (const FieldAt& at : fields)
            source.text.replace(at.field->place.begin, at.field->place.end - at.field->place.begin,
                                "'" + hostile + "'");
        const SetHome set = set_home(source);
        CAPTURE(std::string{home});
        REQUIRE_MESSAGE((!set.refused_by_profile() && !set.refused_by_sheets()), set.refusals());
        std::size_t seen = 0;
        for (const SetSheet& sheet : set.sheets) {
            for (const PlacedPage& page : sheet.placed.pages) {
                for (const PlacedItem& item : page.items) {
                    const auto one = std::ranges::find(fields, item.origin.field, &FieldAt::path);
                    if (one == fields.end() || !is_text(item)) continue;
                    ++seen;
                    const std::string words = placed_words(page, item.origin.field);
                    CHECK_MESSAGE(without_blanks(words).starts_with(without_blanks(hostile)),
                                  item.origin.field << ": " << words);
                }
            }
        }
        CHECK(seen > 20);
    }
}
