#include "caseload/csv.hpp"

#include <doctest/doctest.h>

#include "pdf/programs.hpp"

using namespace ventfolio;

TEST_CASE("a cell is quoted as RFC 4180 says, and a spreadsheet does not run it") {
    struct Row {
        const char* given;
        const char* expected;
        const char* source;
    };
    constexpr Row rows[] = {
        {"family", "family", "RFC 4180, section 2, 5: quotes may be left out"},
        {"", "", "likewise"},
        {"Palm, Sasha", "\"Palm, Sasha\"", "RFC 4180, section 2, 6: a comma"},
        {"one\r\ntwo", "\"one\r\ntwo\"", "RFC 4180, section 2, 6: a line end"},
        {"a \"b\"", "\"a \"\"b\"\"\"", "RFC 4180, section 2, 7: a quote is doubled"},
        // Of a web security project's page on injection into spreadsheets, from memory: these begin a formula.
        {"=1+1", "'=1+1", "from memory"},
        {"+1 555 0100", "'+1 555 0100", "from memory"},
        {"-2", "'-2", "from memory"},
        {"@SUM(A1)", "'@SUM(A1)", "from memory"},
        {"\t=1", "'\t=1", "from memory"},
        {"\r=1", "\"'\r=1\"", "from memory"},
        {"=\"a\",1", "\"'=\"\"a\"\",1\"", "both"},
        {"1-2", "1-2", "not at the start"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.source});
        CHECK(csv_cell(row.given) == row.expected);
    }
}

TEST_CASE("a reader of another make finds the cells of a record again") {
    const std::string cells[] = {"CL-1", "Palm, Sasha (\"Sas\")", "two\nlines", "", "Andrés"};
    const trial::Scratch folder;
    folder.save("list.csv", csv_row(cells) + csv_row(cells));
    const trial::Ran ran = folder.run(
        "/usr/bin/python3 -c \"import csv\n"
        "rows = list(csv.reader(open('list.csv', newline='', encoding='utf-8'), strict=True))\n"
        "print(len(rows), rows[0] == rows[1], '|'.join(rows[0]).replace(chr(10), '/'))\"");
    CHECK(ran.err == "");
    CHECK(ran.out == "2 True CL-1|Palm, Sasha (\"Sas\")|two/lines||Andrés\n");
}
