#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "pdf/programs.hpp"
#include "print_home_sheets.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;
using ventfolio::trial::Scratch;

namespace {

PrintedHome printed_card(const char* home) {
    PrintOrder order;
    order.sheets = {"wallet-card"};
    return printed_home(demo_profile(home), order);
}

/// What zbarimg reads out of the only code on a page that pdftoppm drew.
std::string decoded(const std::string& pdf, const std::string& resolution) {
    const Scratch scratch;
    scratch.save("card.pdf", pdf);
    const auto ran = scratch.run("pdftoppm " + resolution + " -mono card.pdf card && zbarimg --quiet --raw card-1.pbm");
    CHECK(ran.status == 0);
    return ran.out;
}

std::string without_blanks(const std::string& text) {
    std::string kept = plain_blanks(text);
    std::erase(kept, ' ');
    return kept;
}

const SetSheet& card_of(const SetHome& home) {
    const auto found =
        std::ranges::find(home.sheets, "wallet-card", [](const SetSheet& sheet) { return sheet.document.sheet; });
    REQUIRE(found != home.sheets.end());
    return *found;
}

std::string code_at_the_foot(const SetSheet& sheet) {
    for (const PlacedItem& item : sheet.placed.pages.front().items)
        if (item.origin.role == "code") return words_of(item);
    return {};
}

}  // namespace

TEST_CASE(
    "a phone reads the code of each demo home from a laser print and from a fax, and it says what the card says") {
    // zbarimg is a reader of other makers. 204 x 196 dots an inch, one bit: ITU-T T.4, fine.
    for (const char* home : kHomes) {
        CAPTURE(std::string{home});
        const PrintedHome printed = printed_card(home);
        const std::string pdf = file_named(printed, "wallet-card.pdf");
        REQUIRE(!pdf.empty());
        const std::string text = decoded(pdf, "-r 300");
        CHECK(decoded(pdf, "-rx 204 -ry 196") == text);
        CHECK(text.starts_with("EMERGENCY: home ventilator\n"));
        CHECK(text.size() > 100);
        CHECK(text.size() <= 287 + 1);  // and the reader's own end of line
        CHECK(text.find("://") == text.npos);
        const SetHome& set = set_demo_home(home);
        const std::string words = without_blanks(words_of(card_of(set).placed));
        for (const std::string& line : split(text, '\n'))
            CHECK_MESSAGE(words.find(without_blanks(line)) != words.npos, line);
        CHECK(text.ends_with("\nR1 " + code_at_the_foot(card_of(set)) + "\n"));
        const std::string on_the_face = without_blanks("R1 " + code_at_the_foot(card_of(set)) + " Review by");
        CHECK_MESSAGE(words.find(on_the_face) != words.npos, words);
    }
}

TEST_CASE("code and card tell nothing that a wallet may not") {
    // Facts of the demo homes that must not be found by whoever finds a wallet.
    struct Row {
        const char* home;
        std::vector<const char*> secrets;
    };
    const Row kRows[] = {
        {"adult-tracheostomy", {"1978", "DEMO-1", "Juniper", "dystrophy", "muscle disease", "Priya", "20-4471"}},
        {"child-tracheostomy", {"2023", "DEMO-2", "Tansy", "dysplasia", "Mira", "Jonas"}},
        {"adult-mask", {"1996", "DEMO-3", "Amberfield", "Duchenne", "Sasha", "Imre", "signed order"}},
    };
    for (const Row& row : kRows) {
        CAPTURE(std::string{row.home});
        const SetHome& set = set_demo_home(row.home);
        const SetSheet& card = card_of(set);
        const std::string words = words_of(card.placed);
        const std::string code = decoded(file_named(printed_card(row.home), "wallet-card.pdf"), "-r 300");
        for (const char* secret : row.secrets) {
            CAPTURE(std::string{secret});
            CHECK(words.find(secret) == words.npos);
            CHECK(code.find(secret) == code.npos);
        }
        CHECK(!card.document.identifiers.empty());
        for (const PrintedValue& value : card.document.identifiers) CHECK((value.audiences & wallet) != 0);
    }
}

TEST_CASE("allergies beyond the room of card and code refuse the wallet card and name what is too long") {
    std::string substances;
    for (int at = 0; at < 12; ++at)
        substances += fmt::format("{}{{substance: invented substance number {}, reaction: rash, severity: mild}}",
                                  at == 0 ? "" : ", ", at);
    const SetHome set =
        set_home(edited_profile("adult-tracheostomy", fmt::format("allergies.substances: [{}]", substances)));
    REQUIRE(!set.refused_by_profile());
    CHECK(set.refusals().find("card-too-full") != std::string::npos);
    CHECK(set.refusals().find("code-text-too-long") != std::string::npos);
    for (const Finding& finding : set.of_sheets)
        if (finding.rule == "card-too-full") CHECK(finding.marks.front().field.starts_with("allergies.substances."));
}
