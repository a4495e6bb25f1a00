#include "record/sheet_code.hpp"

#include <doctest/doctest.h>
#include <set>
#include <stdexcept>

#include "record/canonical_words.hpp"
#include "record/sample_document.hpp"
#include "record/sha256.hpp"

namespace ventfolio {
namespace {

using Change = void (*)(Document&);
struct Row {
    const char* what;
    Change change;
};

Document changed(Change change) {
    Document document = sample::document();
    change(document);
    return document;
}

std::size_t count_texts() {
    std::size_t count = 0;
    Document document = sample::document();
    sample::each_text(document, [&](std::string&) { ++count; });
    return count;
}

Document with_text_changed(std::size_t which, const sample::EachText& change) {
    Document document = sample::document();
    std::size_t at = 0;
    sample::each_text(document, [&](std::string& text) {
        if (at++ == which) change(text);
    });
    return document;
}

}  // namespace

TEST_CASE("base 32 agrees with Crockford's description") {
    // Alphabet: Douglas Crockford, "Base 32" (from memory): digits, then letters without I, L, O and U.
    std::string alphabet;
    for (std::uint64_t number = 0; number < 32; ++number) alphabet += base32(number, 1);
    CHECK(alphabet == "0123456789ABCDEFGHJKMNPQRSTVWXYZ");
    CHECK(base32(1234, 3) == "16J");  // example of a published library for this base (from memory)
    CHECK(base32(0, 6) == "000000");
    CHECK(base32((1U << 30U) - 1, 6) == "ZZZZZZ");
}

TEST_CASE("a code that was heard or typed is read with Crockford's rules") {
    struct Heard {
        const char* typed;
        const char* code;
    };
    // The rules: either case; O is 0; I and L are 1; hyphens are ignored. U is not a symbol.
    constexpr Heard rows[] = {{"K7M-2QD", "K7M-2QD"}, {"k7m2qd", "K7M-2QD"}, {"k7m 2qd", "K7M-2QD"},
                              {"O1L-o0i", "011-001"}, {"K7M-2Q", nullptr},   {"K7M-2QDX", nullptr},
                              {"U7M-2QD", nullptr},   {"", nullptr},         {"K7M-2Q\xC3\x9C", nullptr}};
    for (const Heard& row : rows) {
        CAPTURE(row.typed);
        const auto code = read_sheet_code(row.typed);
        CHECK(code.has_value() == (row.code != nullptr));
        if (code && row.code != nullptr) CHECK(*code == row.code);
    }
}

TEST_CASE("a code is two groups of three and reads back as itself") {
    const std::string code = sheet_code(sample::document());
    CHECK(code.size() == 7);
    CHECK(code[3] == '-');
    CHECK(read_sheet_code(code) == code);
    CHECK(sheet_code(sample::document()) == code);
}

TEST_CASE("a code is the first 30 bits of the SHA-256 of the words") {
    // The slow way: the hexadecimal digest as a number, six times divided by 32.
    const Document document = sample::document();
    const std::string digits = sha256_hex(canonical_words(document)).substr(0, 8);
    const std::uint64_t bits = std::stoull(digits, nullptr, 16) / 4;
    const std::string code = sheet_code(document);
    CHECK(code.substr(0, 3) + code.substr(4) == base32(bits, 6));
}

TEST_CASE("every text of a sheet counts") {
    const std::string code = sheet_code(sample::document());
    const std::size_t count = count_texts();
    CHECK(count == 24);  // counted by hand in the sample
    std::set<std::string> codes{code};
    for (std::size_t which = 0; which < count; ++which) {
        CAPTURE(which);
        codes.insert(sheet_code(with_text_changed(which, [](std::string& text) { text += "x"; })));
        codes.insert(sheet_code(with_text_changed(which, [](std::string& text) { text.front() ^= 1; })));
        codes.insert(sheet_code(with_text_changed(which, [](std::string& text) { text.clear(); })));
    }
    CHECK(codes.size() == 3 * count + 1);
}

TEST_CASE("the structure of a sheet counts") {
    constexpr Row rows[] = {
        {"a word moves to the next cell",
         [](Document& d) {
             auto& cells = d.blocks.back().rows[0].cells;
             cells[1].inlines.insert(cells[1].inlines.begin(), cells[0].inlines.front());
             cells[0].inlines.clear();
         }},
        {"two rows change places", [](Document& d) { std::swap(d.blocks.back().rows[0], d.blocks.back().rows[1]); }},
        {"the head becomes a row",
         [](Document& d) {
             Block& table = d.blocks.back();
             table.rows.insert(table.rows.begin(), table.head);
             table.head = {};
         }},
        {"a picture is there",
         [](Document& d) { d.blocks[1].inlines.push_back(sample::picture("logo.png", "digest one")); }},
        {"another picture is there",
         [](Document& d) { d.blocks[1].inlines.push_back(sample::picture("logo.png", "digest two")); }},
        {"it is not yet checked", [](Document& d) { d.not_yet_checked = true; }},
        {"two blocks change places", [](Document& d) { std::swap(d.blocks[2], d.blocks[3]); }},
        {"two identifiers change places", [](Document& d) { std::swap(d.identifiers[0], d.identifiers[1]); }},
        {"a numbered list loses its numbers", [](Document& d) { d.blocks[2].ordered = false; }},
        {"an item gets a check box", [](Document& d) { d.blocks[2].children[0].task = true; }},
        {"a heading sinks a level", [](Document& d) { d.blocks[0].level = 2; }},
        {"a paragraph becomes a heading", [](Document& d) { d.blocks[1].kind = Block::Kind::heading; }},
        {"a block goes", [](Document& d) { d.blocks.pop_back(); }},
        {"an empty block comes", [](Document& d) { d.blocks.push_back({}); }},
        {"a paragraph leaves its call-out",
         [](Document& d) {
             d.blocks.insert(d.blocks.begin() + 4, d.blocks[3].children.front());
             d.blocks[3].children.clear();
         }},
        {"a line to write on becomes a check box",
         [](Document& d) { d.blocks[1].inlines[4].kind = Inline::Kind::check_box; }},
        {"a check box goes", [](Document& d) { d.blocks[1].inlines.erase(d.blocks[1].inlines.begin() + 5); }},
        {"a line break goes", [](Document& d) { d.blocks[1].inlines.erase(d.blocks[1].inlines.begin() + 2); }},
        {"the title becomes the first word of the aside",
         [](Document& d) {
             d.blocks[0].aside.insert(d.blocks[0].aside.begin(), d.title.front());
             d.title.clear();
         }},
    };
    std::set<std::string> codes{sheet_code(sample::document())};
    for (const Row& row : rows) {
        CAPTURE(row.what);
        CHECK(codes.insert(sheet_code(changed(row.change))).second);
    }
}

TEST_CASE("text that looks like the marks between words is still only text") {
    // Without lengths, the words of one cell could spell out the end of a cell and the start of the next.
    Document one = sample::document();
    Document two = sample::document();
    one.blocks = {sample::paragraph({sample::text("a)(pT1:b")})};
    two.blocks = {sample::paragraph({sample::text("a")}), sample::paragraph({sample::text("b")})};
    CHECK(canonical_words(one) != canonical_words(two));
}

TEST_CASE("what the paper does not say does not count") {
    constexpr Row rows[] = {
        {"the sheet's name", [](Document& d) { d.name = "bedside-card/chair"; }},
        {"its place", [](Document& d) { d.place = "chair"; }},
        {"its template", [](Document& d) { d.template_file = "clinic/bedside-card.md"; }},
        {"front matter",
         [](Document& d) {
             d.front_matter = {{"paper", "A4"}};
         }},
        {"lines of the template",
         [](Document& d) {
             d.blocks[0].line = 40;
             d.blocks[1].inlines[0].line = 41;
             d.blocks.back().rows[0].line = 42;
         }},
        {"the field of a value", [](Document& d) { d.blocks[1].inlines[1].value.field = "calc.peak"; }},
        {"where a value may stand", [](Document& d) { d.blocks[1].inlines[1].value.audiences = 1; }},
        {"emphasis", [](Document& d) { d.blocks[1].inlines[0].strong = true; }},
        {"a class", [](Document& d) { d.blocks[0].attributes.classes.push_back("danger"); }},
        {"the width of a block", [](Document& d) { d.blocks[0].attributes.options[0].second = "6"; }},
        {"alignment",
         [](Document& d) {
             d.blocks.back().alignments = {Alignment::left, Alignment::right};
         }},
        {"where a value is cut into parts",
         [](Document& d) {
             auto& parts = d.blocks[1].inlines[1].value.parts;
             parts = {{PrintedPart::Kind::word, parts[0].text + parts[1].text}};
         }},
        {"whether a word stands in the template or is a value",
         [](Document& d) {
             Inline& part = d.blocks[1].inlines[1];
             part = sample::text(part.value.text());
         }},
        {"the length of a line to write on", [](Document& d) { d.blocks[1].inlines[4].text = "________"; }},
        {"an aside in braces that is already resolved",
         [](Document& d) { d.blocks[0].attributes.options.emplace_back("aside", "\uE001"); }},
    };
    const std::string code = sheet_code(sample::document());
    for (const Row& row : rows) {
        CAPTURE(row.what);
        CHECK(sheet_code(changed(row.change)) == code);
    }
}

TEST_CASE("a month view does not count, and what follows it does") {
    const auto with_month = [](std::string month, std::string after) {
        Document document = sample::document();
        Block head = sample::heading(2, month);
        head.attributes.classes = {"calendar"};
        document.blocks.push_back(head);
        document.blocks.push_back(sample::paragraph({sample::text(month + " 1 to 28")}));
        document.blocks.push_back(sample::heading(3, "Week of " + month));
        document.blocks.push_back(sample::heading(2, std::move(after)));
        return document;
    };
    CHECK(sheet_code(with_month("February", "Every day")) == sheet_code(with_month("March", "Every day")));
    CHECK(sheet_code(with_month("February", "Every day")) != sheet_code(with_month("February", "Every week")));
    Document boxed = sample::document();
    boxed.blocks.push_back(sample::call_out("MONTH", "February"));
    boxed.blocks.back().attributes.classes = {"calendar"};
    CHECK(sheet_code(boxed) == sheet_code(sample::document()));
}

TEST_CASE("an option with an unresolved value stops the code") {
    Document document = sample::document();
    document.blocks[0].attributes.options.emplace_back("note", "\uE001");
    CHECK_THROWS_AS(sheet_code(document), std::logic_error);
}

}  // namespace ventfolio
