#include "sheets/own_code.hpp"

#include <doctest/doctest.h>

#include "record/sample_document.hpp"
#include "record/sheet_code.hpp"

namespace ventfolio {
namespace {

Inline own_code_piece(std::string code) {
    Inline piece = sample::piece(Inline::Kind::value);
    piece.value = own_code(std::move(code));
    return piece;
}

/// The sample, with its own code wherever words can stand.
Document with_own_code(const std::string& code) {
    Document document = sample::document();
    document.title.push_back(own_code_piece(code));
    document.blocks[0].inlines.push_back(own_code_piece(code));
    document.blocks[0].aside.push_back(own_code_piece(code));
    document.blocks[1].inlines.push_back(own_code_piece(code));
    document.blocks[2].children[0].children[0].inlines.push_back(own_code_piece(code));
    document.blocks.back().head.cells[0].inlines.push_back(own_code_piece(code));
    document.blocks.back().rows[0].cells[1].inlines.push_back(own_code_piece(code));
    return document;
}

std::size_t times(const std::string& words, Document document) {
    std::size_t count = 0;
    sample::each_text(document, [&](std::string& text) {
        if (text == words) ++count;
    });
    return count;
}

}  // namespace

TEST_CASE("a sheet that prints its own code has the same code without it") {
    const std::string code = sheet_code(sample::document());
    for (const char* printed : {"to come", "K7M-2QD", ""}) CHECK(sheet_code(with_own_code(printed)) == code);
}

TEST_CASE("the code of another sheet counts") {
    Document one = with_own_code("K7M-2QD");
    one.blocks[1].inlines.back().value.field = "calc.sheet-code";
    CHECK(sheet_code(one) != sheet_code(sample::document()));
}

TEST_CASE("a sheet's own code is filled in wherever the sheet prints it") {
    Document document = with_own_code("to come");
    fill_in_own_code(document, "K7M-2QD");
    CHECK(times("to come", document) == 0);
    CHECK(times("K7M-2QD", document) == 7);  // as often as it was put in above
    CHECK(times("14", document) == 1);       // other values stay
}

}  // namespace ventfolio
