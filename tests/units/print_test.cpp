#include <doctest/doctest.h>

#include "units/measure.hpp"
#include "units/print.hpp"
#include "units/text.hpp"

using namespace ventfolio;

TEST_CASE("numbers print as the rules for error-free medical writing ask") {
    const NumberFormat american;
    const NumberFormat french{.decimal_sign = ",", .group_sign = "\u202F"};
    const NumberFormat spanish{.decimal_sign = ",", .group_sign = "\u202F"};
    struct Row {
        const char* number;
        const NumberFormat& format;
        Zeros zeros;
        const char* printed;
        const char* source;
    };
    const Row rows[] = {
        {".5", american, Zeros::drop, "0.5", "pub: leading zero, ISMP list; Joint Commission do-not-use list"},
        {"5.0", american, Zeros::drop, "5", "pub: no trailing zero, the same lists"},
        {"5.50", american, Zeros::drop, "5.5", "pub: the same"},
        {"0.0", american, Zeros::drop, "0", "pub: the same"},
        {"1200", american, Zeros::drop, "1,200", "pub: thousands from 1,000 on, ISMP list"},
        {"999", american, Zeros::drop, "999", "pub: the same"},
        {"1000", american, Zeros::drop, "1,000", "pub: the same"},
        {"1234567.5", american, Zeros::drop, "1,234,567.5", "pub: the same"},
        {"1200", french, Zeros::drop, "1\u202F200", "pub: thin space between groups, SI brochure 5.4.4"},
        {"1.1", spanish, Zeros::drop, "1,1", "pub: decimal sign by language, SI brochure 5.4.4"},
        {"6.0", american, Zeros::keep, "6.0", "pub: a label's own size may keep its zero, Joint Commission list"},
        {"-40", american, Zeros::drop, "-40", "the sign is the caller's to put in words"},
        {"-1200", american, Zeros::drop, "-1,200", "the same"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.number});
        CAPTURE(std::string{row.source});
        CHECK(printed(*Decimal::parse(row.number), row.format, row.zeros) == std::string{row.printed});
    }
}

TEST_CASE("what must not print is no number in the first place") {
    // "<90" was read as "490", "10L" as "101": ISMP list.
    for (const char* text : {"<90 %", "10L", "1e3 mL"}) {
        CAPTURE(std::string{text});
        const bool volume = std::holds_alternative<Measure>(parse_measure(text, units_of(Dimension::volume)));
        const bool fraction = std::holds_alternative<Measure>(parse_measure(text, units_of(Dimension::fraction)));
        CHECK(!volume);
        CHECK(!fraction);
    }
}

TEST_CASE("a time that runs out is rounded down, a number of pieces up, whatever binary says") {
    // 0.28 x 2200 is 616.0000000000001 in binary, 90 x 1.1 is 99.00000000000001 (IEEE 754 double).
    CHECK(floor_minutes(Duration::of(0.28 * 2200, unit::min)) == 616);
    CHECK(floor_minutes(Duration::of(615.9999999999999, unit::min)) == 616);
    CHECK(floor_minutes(Duration::of(15.4, unit::min)) == 15);
    CHECK(floor_minutes(Duration::of(14.999, unit::min)) == 14);
    CHECK(floor_minutes(Duration::of(3.9, unit::h), 15) == 225);
    CHECK(floor_minutes(Duration::of(4, unit::h), 15) == 240);
    CHECK(floor_minutes(Duration::of(-1, unit::min), 15) == -15);
    CHECK(ceil_pieces(90 * 1.1) == 99);
    CHECK(ceil_pieces(30 / 7.0) == 5);
    CHECK(ceil_pieces(2.64) == 3);
    CHECK(ceil_pieces(1) == 1);
    CHECK(ceil_pieces(0) == 0);
}

TEST_CASE("text is measured in what the reader sees") {
    CHECK(display_cells("Việt") == 4);
    CHECK(display_cells("Vie\u0323\u0302t") == 4);
    CHECK(display_cells("東京") == 4);  // wide: Unicode Standard Annex 11
    CHECK(display_cells("") == 0);
    CHECK(display_cells("a\tb\x1B") == 2);  // controls take no cell, with or without other scripts beside them
    CHECK(display_cells("é\tb\x1B") == 2);
    CHECK(normal_form("e\u0301") == "\u00E9");          // Unicode Standard Annex 15, figure 3
    CHECK(normal_form("\u1100\u1161") == "\uAC00");     // Hangul composition, Unicode Standard 3.12
    CHECK(without_accents("Andr\u00E9s") == "Andres");  // base letters: Unicode Character Database, decompositions
    CHECK(without_accents("\u1EC6 and \u00C5") == "E and A");
    CHECK(!first_invalid_utf8("Việt"));
    CHECK(first_invalid_utf8("ab\xFF") == 2);
    CHECK(first_invalid_utf8("\xED\xA0\x80") == 0);  // RFC 3629, section 3: no surrogates
    CHECK(first_invalid_utf8("\xC0\x80") == 0);      // RFC 3629, section 3: no overlong forms
}

TEST_CASE("the distance of two words counts letters, and a swap of neighbours once") {
    CHECK(edit_distance("kitten", "sitting") == 3);  // the textbook pair for the distance of Levenshtein
    CHECK(edit_distance("hihg", "high") == 1);
    CHECK(edit_distance("", "abc") == 3);
    CHECK(edit_distance("same", "same") == 0);
    const std::vector<std::string> keys{"high_pressure", "low_pressure", "high_rate"};
    CHECK(nearest("hihg_pressure", keys) == "high_pressure");
    CHECK(nearest("HIGH_RATE", keys) == "high_rate");
    CHECK(!nearest("weight", keys));
    CHECK(!nearest("x", keys));
}

TEST_CASE("lines and lists of text are cut and joined without loss") {
    CHECK(trimmed("  a b\t") == "a b");
    CHECK(trimmed(" \t ").empty());
    CHECK(split("a,,b", ',') == std::vector<std::string>{"a", "", "b"});
    CHECK(split("", ',') == std::vector<std::string>{""});
    CHECK(joined(split("a b c", ' '), " ") == "a b c");
    CHECK(with_replaced("aaa", "a", "aa") == "aaaaaa");
    CHECK(utf8(code_points("東").front()) == "東");
}
