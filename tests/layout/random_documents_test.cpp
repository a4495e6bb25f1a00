#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <random>
#include <set>

#include "documents.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// Markdown made of words that never come twice, and what is known of them.
class RandomDocument {
  public:
    explicit RandomDocument(unsigned seed) : random_{seed} {
        const std::size_t sections = 1 + pick(9);
        for (std::size_t at = 0; at < sections; ++at) add_section();
    }

    std::string markdown;
    std::vector<std::string> words;  ///< in the order of the text
    std::set<std::string> heads;     ///< of sections and tables: they may come again on the next page

  private:
    std::size_t pick(std::size_t below) { return random_() % below; }

    std::string word(bool head = false) {
        constexpr std::string_view kLetters = "aeioumnrstl";
        std::string text = fmt::format("{}", words.size());
        const std::size_t length = 1 + pick(9);
        for (std::size_t at = 0; at < length; ++at) text += kLetters[pick(kLetters.size())];
        text = "w" + text;
        words.push_back(text);
        if (head) heads.insert(text);
        return text;
    }

    std::string passage(std::size_t most, bool head = false) {
        std::string text = word(head);
        for (std::size_t more = pick(most); more > 0; --more) text += " " + word(head);
        return text;
    }

    void add_section() {
        constexpr const char* kLooks[] = {"",
                                          ".act",
                                          ".box",
                                          ".half",
                                          ".half",
                                          ".tight",
                                          ".large",
                                          ".cells columns=3",
                                          ".act .tight span=6",
                                          ".tasks columns=2",
                                          ".back",
                                          ".page",
                                          ".act .large .steps",
                                          ".banner .tight columns=2"};
        const std::string look = kLooks[pick(std::size(kLooks))];
        markdown += fmt::format("## {} {{{}}}\n\n", passage(5, true), look.empty() ? ".plain" : look);
        if (look.starts_with(".cells")) return add_rows(1 + pick(9), 3);
        if (look.find(".steps") != std::string::npos || look.starts_with(".banner")) return add_list(true);
        switch (pick(4)) {
            case 0:
                return add_list(false);
            case 1:
                return add_rows(1 + pick(30), 12);
            case 2:
                return look.empty() ? add_grid() : add_rows(1 + pick(6), 6);
            default:
                markdown += passage(60) + "\n\n";
                return;
        }
    }

    void add_list(bool ordered) {
        for (std::size_t items = 1 + pick(ordered ? 7 : 14); items > 0; --items) {
            const bool strong = ordered && pick(2) == 0;
            const std::string head = passage(5);
            markdown += fmt::format("{} {}{}{} {}\n", ordered ? "1." : "-", strong ? "**" : "", head,
                                    strong ? "**" : "", passage(12));
        }
        markdown += "\n";
    }

    void add_rows(std::size_t rows, std::size_t most) {
        markdown += "| | |\n|---|---|\n";
        for (; rows > 0; --rows) {
            const std::string label = passage(most);
            markdown += fmt::format("| {} | {} |\n", label, pick(6) == 0 ? "" : passage(most));
        }
        markdown += "\n";
    }

    void add_grid() {
        const std::size_t columns = 2 + pick(4);
        std::string line = "|";
        for (std::size_t at = 0; at < columns; ++at) line += " " + passage(2, true) + " |";
        markdown += line + "\n|";
        for (std::size_t at = 0; at < columns; ++at) markdown += "---|";
        markdown += "\n";
        for (std::size_t rows = 1 + pick(60); rows > 0; --rows) {
            line = "|";
            for (std::size_t at = 0; at < columns; ++at) line += " " + passage(3) + " |";
            markdown += line + "\n";
        }
        markdown += "\n";
    }

    std::mt19937 random_;
};

/// Where two rows of words part.
std::string first_difference(const std::vector<std::string>& one, const std::vector<std::string>& two) {
    const auto [left, right] = std::ranges::mismatch(one, two);
    if (left == one.end() && right == two.end()) return {};
    return fmt::format("{} and {} at {}", left == one.end() ? "nothing" : *left,
                       right == two.end() ? "nothing" : *right, left - one.begin());
}

}  // namespace

TEST_CASE("whatever a document holds, every word is placed once, in order, inside the margins and over no other") {
    std::size_t whole = 0;
    std::size_t pages = 0;
    std::size_t repeated = 0;
    for (unsigned seed = 1; seed <= 300; ++seed) {
        const RandomDocument made{seed};
        const Document document = document_of(made.markdown);
        for (const PageSetup setup : {PageSetup{Paper::letter, 1}, PageSetup{Paper::a4, 1.5}}) {
            CAPTURE(seed);
            CAPTURE(setup.scale);
            CAPTURE(made.markdown);
            const LaidOut out = laid_out(document, setup);
            pages += out.sheet.pages.size();
            // What no page can hold and nothing can break is told; all else must fit.
            for (const Finding& finding : out.findings)
                CHECK_MESSAGE(finding.rule == "part-taller-than-page", finding.rule);
            if (out.findings.empty()) {
                ++whole;
                CHECK(misplaced(out.sheet) == "");
            }

            std::vector<std::string> placed;
            std::map<std::string, std::size_t> times;
            for (const std::string& word : body_words(out.sheet)) {
                if (!word.starts_with("w")) continue;  // numbers of steps and items
                ++times[word];
                if (!made.heads.contains(word)) placed.push_back(word);
            }
            // Heads come again with each page, and in large print with each row of a wide table.
            std::vector<std::string> body;
            for (const std::string& word : made.words)
                if (!made.heads.contains(word)) body.push_back(word);
            CHECK(first_difference(placed, body) == "");
            for (const std::string& head : made.heads) CHECK_MESSAGE(times.contains(head), head);
            for (const auto& [word, count] : times) {
                if (count > 1) ++repeated;
                if (!made.heads.contains(word)) CHECK_MESSAGE(count == 1, word);
            }
        }
    }
    CHECK(whole > 500);
    CHECK(pages > 1000);
    CHECK(repeated > 100);
}

TEST_CASE("a document is set in the same way each time") {
    for (unsigned seed = 400; seed < 420; ++seed) {
        const Document document = document_of(RandomDocument{seed}.markdown);
        CHECK(dump(laid_out(document).sheet) == dump(laid_out(document).sheet));
    }
}

TEST_CASE("a section that goes on shows its heading and its table's head again on each page") {
    std::string text = "## Section goes on\n\n| Left head | Right head |\n|---|---|\n";
    for (int row = 0; row < 120; ++row) text += fmt::format("| left{0} | right{0} |\n", row);
    const LaidOut out = laid_out(document_of(text));
    CHECK(out.findings.empty());
    REQUIRE(out.sheet.pages.size() > 2);
    int next = 0;
    for (const PlacedPage& page : out.sheet.pages) {
        const std::string words = body_text(page);
        for (const char* head : {"Section goes on", "Left head", "Right head"}) {
            CAPTURE(std::string{head});
            CHECK(words.find(head) != std::string::npos);
            CHECK(words.find(head) < words.find("left"));
        }
        // No head stands alone at the foot of a page, and no row is lost or doubled.
        CHECK(words.find("left") != std::string::npos);
        while (words.find(fmt::format("left{} ", next)) != std::string::npos ||
               words.ends_with(fmt::format("right{}", next)))
            ++next;
    }
    CHECK(next == 120);
}

TEST_CASE("each page says its number, and how many there are") {
    std::string text = "## Long\n\n";
    for (int item = 0; item < 300; ++item) text += fmt::format("- item {}\n", item);
    const LaidOut out = laid_out(document_of(text));
    REQUIRE(out.sheet.pages.size() > 3);
    for (std::size_t at = 0; at < out.sheet.pages.size(); ++at) {
        const std::string wanted = fmt::format("Page\u00A0{}\u00A0of\u00A0{}", at + 1, out.sheet.pages.size());
        const bool found = std::ranges::any_of(out.sheet.pages[at].items, [&](const PlacedItem& item) {
            std::string words;
            for (const char32_t letter : item.text.text) words += utf8(letter);
            return words.find(wanted) != std::string::npos;
        });
        CHECK_MESSAGE(found, wanted);
    }
}
