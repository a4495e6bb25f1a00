#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "units/text.hpp"
#include "value_reader.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

// Of the words that a sheet says, 99 of 100 must come back from a fax. Expected is the document tree, as it is before
// anything is drawn; where the words stand is known, and each stretch of them is read alone.

namespace {

using WordCounts = std::map<std::string, std::size_t>;

/// Words and figures in small letters, without what stands between them.
void add_words(std::string_view text, WordCounts& words) {
    std::string plain = lower_ascii(plain_blanks(std::string{text}));
    for (const char* mark : {"\u2019", "\u2018", "\u201C", "\u201D", "'"})
        plain = with_replaced(std::move(plain), mark, "");
    std::string word;
    for (const char letter : with_replaced(std::move(plain), "h20", "h2o") + " ") {
        const bool part = (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') ||
                          static_cast<signed char>(letter) < 0;
        if (part) {
            word += letter;
            continue;
        }
        if (!word.empty()) ++words[word];
        word.clear();
    }
}

struct Back {
    std::size_t expected = 0;
    std::size_t missing = 0;
    std::string which;
};

/// Words of the first that are not in the second, as often as they lack.
Back compare(const WordCounts& expected, const WordCounts& read) {
    Back back;
    for (const auto& [word, times] : expected) {
        back.expected += times;
        const auto found = read.find(word);
        const std::size_t seen = found == read.end() ? 0 : found->second;
        if (seen >= times) continue;
        back.missing += times - seen;
        back.which += fmt::format(" {} ({})", word, times - seen);
    }
    return back;
}

/// Letters only: of a sign or a drawing, the words are for those who do not see it.
void add_letters(const Inlines& inlines, WordCounts& words) {
    Inlines letters;
    for (const Inline& piece : inlines)
        if (piece.kind == Inline::Kind::text || piece.kind == Inline::Kind::value) letters.push_back(piece);
    add_words(plain_text(letters), words);
}

/// The second and third cell of a chart's row are drawn as a bar.
void add_row(const TableRow& row, bool timeline, WordCounts& words) {
    for (std::size_t at = 0; at < row.cells.size(); ++at)
        if (!timeline || at == 0 || at > 2) add_letters(row.cells[at].inlines, words);
}

void add_written(const std::vector<Block>& blocks, WordCounts& words) {
    bool timeline = false;
    for (const Block& block : blocks) {
        if (block.kind == Block::Kind::heading) timeline = block.attributes.has("timeline");
        add_letters(block.inlines, words);
        add_letters(block.aside, words);
        add_row(block.head, false, words);
        for (const TableRow& row : block.rows) add_row(row, timeline, words);
        add_written(block.children, words);
    }
}

Back words_back(const SetHome& home, const std::vector<std::string>& names, const Copy& copy) {
    LetterReader reader{sheets_named(home, names), copy};
    WordCounts expected;
    for (const SetSheet& sheet : home.sheets)
        if (names.empty() || std::ranges::count(names, sheet.document.sheet) > 0)
            add_written(sheet.document.blocks, expected);
    std::vector<std::size_t> all(reader.boxes().size());
    for (std::size_t box = 0; box < all.size(); ++box) all[box] = box;
    reader.look_at(all, 1);
    WordCounts read;
    for (const std::size_t box : all) add_words(reader.looks(box).front(), read);
    return compare(expected, read);
}

void words_come_back(const char* name, const std::vector<std::string>& sheets, const Copy& copy) {
    const SetHome& home = set_demo_home(name);
    REQUIRE_MESSAGE(!home.refused_by_sheets(), home.refusals());
    const Back back = words_back(home, sheets, copy);
    CAPTURE(std::string{name});
    CAPTURE(std::string{copy.name});
    CAPTURE(back.which);
    MESSAGE((back.expected - back.missing) << " of " << back.expected << " words");
    CHECK(back.expected > 1000);
    CHECK(static_cast<double>(back.missing) <= 0.01 * static_cast<double>(back.expected));
}

}  // namespace

TEST_CASE("99 of 100 words of what is read in trouble come back from a fax") {
    words_come_back("adult-tracheostomy", {"bedside-card", "responder-sheet", "wallet-card", "outage-plan"}, kFax);
}

TEST_CASE("99 of 100 words of every demo home's papers come back from every copy" * doctest::skip()) {
    for (const char* home : kAllHomes)
        for (const Copy& copy : kCopies) words_come_back(home, {}, copy);
}

TEST_CASE("words that are not there are missed") {
    WordCounts expected;
    add_words("Put the bag on the tube. 31 cmH2O", expected);
    WordCounts read;
    add_words("Put the bag on tube; 37 cmH20", read);
    const Back back = compare(expected, read);
    CHECK(back.expected == 8);
    CHECK(back.which == " 31 (1) the (1)");
}
