#include "pdf/haru.hpp"

#include <doctest/doctest.h>
#include <string>

#include "pdf/pdf_error.hpp"

using namespace ventfolio;

// The library itself would go on after a fault and save a file with parts missing.
TEST_CASE("the first fault ends the document") {
    HaruDocument document;
    document.add_page(612, 792);
    CHECK_THROWS_AS(document.add_page(1, 792), PdfError);
    CHECK_THROWS_AS(document.add_page(612, 792), PdfError);
    CHECK_THROWS_AS(document.add_flag(document.catalog(), "Sound", true), PdfError);
    CHECK_THROWS_AS(document.bytes(), PdfError);
}

TEST_CASE("the sentence is about the first fault") {
    HaruDocument document;
    const HPDF_Page page = document.add_page(612, 792);
    std::string first;
    try {
        document.add_name(page, "Name", "");
        document.add_name(page, "Name", std::string(500, 'x'));
    } catch (const PdfError& fault) {
        first = fault.what();
    }
    REQUIRE_FALSE(first.empty());
    CHECK_THROWS_WITH_AS(document.add_page(1, 1), first.c_str(), PdfError);
}

TEST_CASE("a document that nobody saves is given back") { CHECK_NOTHROW(HaruDocument{}.add_page(612, 792)); }
