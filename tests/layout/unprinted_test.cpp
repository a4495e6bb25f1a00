#include <doctest/doctest.h>

#include <algorithm>

#include "documents.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

// The promise is ours: what a template says is printed, or the sheet is refused with the line that has no place.
TEST_CASE("what the look of a section cannot hold is refused with its line, never left out") {
    struct Row {
        const char* what;
        const char* markdown;
        std::size_t line;  ///< of the sheet; the text begins on its fourth
    };
    constexpr Row kRows[] = {
        {"a paragraph in a strip", "## Head {.strip}\n\nLost words.", 6},
        {"a second paragraph of an item", "- first\n\n  Lost words.", 4},
        {"a list in an item", "- first\n  - lost", 4},
        {"the heading of a chart", "## Lost {.ladder yes=\"Yes\"}\n\n1. ![Stop](figure:end) A.", 4},
        {"the aside of a pointer", "## Head {.pointer aside=\"lost\"}\n\nText.", 4},
        {"a third cell of a row", "| | | |\n|---|---|---|\n| label | value | lost |", 6},
        {"a third cell of a cell table", "## Head {.cells}\n\n| | | |\n|---|---|---|\n| label | value | lost |", 8},
        {"a figure among words", "See ![a hand](figure:hand) here.", 4},
        {"a figure alone", "![a hand](figure:hand)", 4},
        {"a figure in an item", "- ![a hand](figure:hand) lost", 4},
        {"a figure in a task", "- [ ] ![a hand](figure:hand) lost", 4},
        {"a figure in a cell", "| A | B |\n|---|---|\n| one | ![a hand](figure:hand) |", 6},
        {"a figure in a heading", "## Head ![a hand](figure:hand)\n\nText.", 4},
        {"a figure in a call-out", "> [!WARNING]\n> ![a hand](figure:hand) Hot.", 5},
        {"a second figure of a sign", "## {.signs}\n\n- ![a](figure:hand) ![b](figure:nod) **Yes** nods", 6},
        {"a word where a log is written in",
         "## Log {.log}\n\n| Item | Now | Range | 1 |\n|---|---|---|---|\n| a | b | c | lost |", 8},
    };
    for (const Row& row : kRows) {
        CAPTURE(std::string{row.what});
        const LaidOut out = laid_out(document_of(row.markdown));
        const auto found = std::ranges::find(out.findings, "part-without-place", &Finding::rule);
        REQUIRE(found != out.findings.end());
        CHECK(found->severity == Severity::refuse);
        CHECK(found->marks.front().place.line == row.line);
    }
}

TEST_CASE("the aside of a strip is printed") {
    const LaidOut out = laid_out(document_of("## Head {.strip aside=\"beside\"}\n"));
    CHECK(out.findings.empty());
    CHECK(body_words(out.sheet) == std::vector<std::string>{"Head", "beside"});
}

TEST_CASE("a headline of one long word is no wider than its strip") {
    const LaidOut out = laid_out(document_of("## Incomprehensibilities {.strip}\n"));
    CHECK(out.findings.empty());
}

TEST_CASE("a grid too wide for its page says each head with its value, the first one too") {
    const std::string word(30, 'm');
    const LaidOut out =
        laid_out(document_of("| First | Second | Third |\n|---|---|---|\n| one | " + word + " | " + word + " |\n"));
    CHECK(out.findings.empty());
    CHECK(body_words(out.sheet) == std::vector<std::string>{"First", "one", "Second", word, "Third", word});
}

TEST_CASE(
    "the aside of a heading without words is printed, or refused with its line, whatever the section looks like") {
    for (const char* look : {"",       ".act",   ".box",      ".banner",          ".strip",   ".place",
                             ".index", ".half",  ".steps",    ".hookup",          ".wallet",  ".letterhead",
                             ".calls", ".cells", ".signs",    ".tasks columns=2", ".pointer", ".ladder yes=Yes",
                             ".form",  ".log",   ".timeline", ".calendar",        ".was-now", ".signatures"}) {
        CAPTURE(std::string{look});
        const LaidOut out =
            laid_out(document_of("## {" + std::string{look} + " aside=\"lost\"}\n\n1. **One** word\n1. Two\n"));
        const std::vector<std::string> words = body_words(out.sheet);
        if (std::ranges::find(words, "lost") != words.end()) continue;
        const auto found = std::ranges::find_if(out.findings, [](const Finding& finding) {
            return finding.severity == Severity::refuse && finding.rule == "part-without-place" &&
                   finding.message.find("aside") != std::string::npos;
        });
        CHECK(found != out.findings.end());
        if (found != out.findings.end()) CHECK(found->marks.front().place.line == 4);
    }
}

TEST_CASE("the head of a table without rows is printed, even where it is too wide for its page") {
    // Found by the fuzz program of layout: a head that does not fit becomes a grid, which says it with each row.
    const std::string word(30, 'm');
    std::string head = "|";
    std::string under = "|";
    for (int column = 0; column < 6; ++column) {
        head += " " + word + " |";
        under += "---|";
    }
    for (const char* look : {".ruled", ".ruled .half", ".form"}) {
        CAPTURE(std::string{look});
        const LaidOut out =
            laid_out(document_of("## List {" + std::string{look} + "}\n\n" + head + "\n" + under + "\n"));
        CHECK(std::ranges::count(body_words(out.sheet), word) == 6);
        const bool refused = std::ranges::any_of(
            out.findings, [](const Finding& finding) { return finding.severity == Severity::refuse; });
        if (!refused) CHECK(misplaced(out.sheet) == "");
    }
}
