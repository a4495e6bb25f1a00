#include <doctest/doctest.h>
#include <array>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

#include "drawings.hpp"
#include "pdf/write_pdf.hpp"
#include "programs.hpp"

using namespace ventfolio;
using namespace ventfolio::trial;
using nlohmann::json;

namespace {

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

Ran judged(std::string_view pdf, std::string_view command) {
    const Scratch scratch;
    scratch.save("sample.pdf", pdf);
    Ran ran = scratch.run(command);
    CAPTURE(command);
    CAPTURE(ran.err);
    REQUIRE(ran.status == 0);
    return ran;
}

/// The objects of a file as qpdf reads them: "obj:4 0 R" and "trailer".
json objects(std::string_view pdf) {
    return json::parse(judged(pdf, "qpdf --json=2 --json-stream-data=none sample.pdf").out).at("qpdf").at(1);
}

json object(const json& all, const json& reference) {
    return all.at("obj:" + reference.get<std::string>()).at("value");
}

json catalog(const json& all) { return object(all, all.at("trailer").at("value").at("/Root")); }

std::string titled(std::string title) {
    const PlacedSheet placed = sheet("Sheet", {page(612, 792, {line("a", 72, 72, 12)})});
    return write_pdf({.title = std::move(title), .language = "vi", .sheets = {{&placed, ""}}});
}

}  // namespace

TEST_CASE("a file is sound to an independent checker") {
    const Ran ran = judged(sample(), "qpdf --check sample.pdf");
    CHECK(holds(ran.out, "No syntax or stream encoding errors found"));
    CHECK(ran.err == "");
    CHECK(sample().starts_with("%PDF-1.6\n"));  // page labels 1.3, language 1.4, PrintScaling 1.6: ISO 32000-1
}

TEST_CASE("every font is embedded, cut down and can be searched") {
    const Ran ran = judged(sample(), "pdffonts sample.pdf | tail -n +3");
    CHECK(ran.err == "");
    std::istringstream lines{ran.out};
    std::string name, type, kind, encoding, embedded, cut_down, searchable, rest;
    int fonts = 0;
    while (lines >> name >> kind >> type >> encoding >> embedded >> cut_down >> searchable &&
           std::getline(lines, rest)) {
        CAPTURE(name);
        ++fonts;
        CHECK(kind + " " + type == "CID TrueType");
        CHECK(encoding == "Identity-H");
        CHECK(embedded == "yes");
        CHECK(cut_down == "yes");
        CHECK(searchable == "yes");
        CHECK(name.find("+NotoSans-") == 6);
        CHECK(name.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == 6);
    }
    CHECK(fonts == 2);
}

TEST_CASE("a face that no letter uses is not in the file") {
    const std::string pdf = one_page(page(612, 792, {line("bold", 72, 72, 12, Face::bold)}));
    const Ran ran = judged(pdf, "pdffonts sample.pdf");
    CHECK(holds(ran.out, "NotoSans-Bold"));
    CHECK_FALSE(holds(ran.out, "NotoSans-Regular"));
}

TEST_CASE("a page without letters is a page") {
    const std::string pdf = one_page(page(612, 792, {}));
    CHECK(holds(judged(pdf, "qpdf --check sample.pdf").out, "No syntax or stream encoding errors found"));
    CHECK(judged(pdf, "pdftoppm -gray -r 20 sample.pdf page").err == "");
}

TEST_CASE("each page has the size that was asked for") {
    struct Row {
        double width, height;
        std::string printed;
        std::string source;
    };
    const Row rows[] = {
        {612, 792, "612 x 792 pts (letter)", "ANSI/ASME Y14.1: 8.5 in x 11 in, 72 pt to the inch"},
        {792, 612, "792 x 612 pts (letter)", "the same, on its side"},
        {595.276, 841.89, "595.276 x 841.89 pts (A4)", "ISO 216: 210 mm x 297 mm"},
        {242.65, 153.01, "242.65 x 153.01 pts", "ISO/IEC 7810 ID-1: 85.60 mm x 53.98 mm"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.source);
        const Ran ran = judged(one_page(page(row.width, row.height, {})), "pdfinfo sample.pdf");
        CHECK(holds(ran.out, row.printed));
        CHECK(ran.err == "");
    }
}

TEST_CASE("the title is kept letter by letter") {
    for (const std::string title :
         {"Bedside card", "Thẻ đầu giường & <Ä> \"é\" (x) \\ Й Ω", "beyond the first plane: \U0001F600"}) {
        CAPTURE(title);
        const Ran ran = judged(titled(title), "pdfinfo -enc UTF-8 sample.pdf | grep ^Title");
        CHECK(ran.out == "Title:           " + title + "\n");
        CHECK(ran.err == "");
    }
}

TEST_CASE("the metadata are XML with title and language, and nothing else") {
    for (const std::string title : {"Bedside card", "Thẻ <đầu> & \"giường\""}) {
        CAPTURE(title);
        const std::string pdf = titled(title);
        const Ran ran = judged(pdf,
                               "pdfinfo -meta sample.pdf | python3 -c 'import sys, xml.etree.ElementTree as E\n"
                               "for e in E.parse(sys.stdin.buffer).getroot().iter():\n"
                               "  if (e.text or \"\").strip(): print(e.text)'");
        CHECK(ran.err == "");
        CHECK(ran.out == "application/pdf\n" + title + "\nvi\n");
        const json all = objects(pdf);
        const json about = all.at("obj:" + catalog(all).at("/Metadata").get<std::string>()).at("stream").at("dict");
        CHECK(about.at("/Type") == "/Metadata");  // ISO 32000-1, 14.3.2
        CHECK(about.at("/Subtype") == "/XML");
    }
}

TEST_CASE("the catalog says language, true size, title and how to open") {
    const json all = objects(titled("Bedside card"));
    const json root = catalog(all);
    CHECK(root.at("/Lang") == "u:vi");
    CHECK(root.at("/PageLayout") == "/SinglePage");
    CHECK(root.at("/ViewerPreferences") == json{{"/DisplayDocTitle", true}, {"/PrintScaling", "/None"}});
    CHECK(root.at("/PageMode") == "/UseNone");
    CHECK(catalog(objects(sample())).at("/PageMode") == "/UseOutlines");
}

TEST_CASE("page labels count each sheet from one") {
    const json labels =
        json::parse(judged(sample(), "qpdf --json=2 --json-key=pagelabels sample.pdf").out).at("pagelabels");
    const json expected = json::parse(R"([
        {"index": 0, "label": {"/S": "/D", "/St": 1, "/P": "u:Bedside card "}},
        {"index": 2, "label": {"/S": "/D", "/St": 1, "/P": "u:Outage plan "}}])");
    CHECK(labels == expected);
}

TEST_CASE("each sheet is a bookmark to its first page") {
    const PlacedSheet first = sheet("Thẻ đầu giường", {page(612, 792, {}), page(612, 792, {})});
    const PlacedSheet second = sheet("Power & <light>", {page(612, 792, {})});
    const std::string pdf = write_pdf({.title = "T", .language = "en", .sheets = {{&first, ""}, {&second, ""}}});
    const json outlines = json::parse(judged(pdf, "qpdf --json=2 --json-key=outlines sample.pdf").out).at("outlines");
    REQUIRE(outlines.size() == 2);
    CHECK(outlines[0].at("title") == "Thẻ đầu giường");
    CHECK(outlines[0].at("destpageposfrom1") == 1);
    CHECK(outlines[1].at("title") == "Power & <light>");
    CHECK(outlines[1].at("destpageposfrom1") == 3);
}

TEST_CASE("the same request gives the same bytes, whatever the machine") {
    const std::string here = sample();
    CHECK(sample() == here);
    for (const std::string surroundings :
         {"LANG=C TZ=UTC HOME=/", "LANG=C.utf8 LC_ALL=C.utf8 TZ=Pacific/Kiritimati HOME=/nonexistent USER=someone",
          "LANG=vi_VN.UTF-8 LC_NUMERIC=de_DE.UTF-8 TZ=America/St_Johns HOME=/nowhere SOURCE_DATE_EPOCH=1"}) {
        CAPTURE(surroundings);
        const Scratch scratch;
        const Ran ran = scratch.run("env -i " + surroundings + " '" VENTFOLIO_PDF_SAMPLE "'");
        CHECK(ran.status == 0);
        CHECK(ran.err == "");
        CHECK(ran.out == here);
    }
}

TEST_CASE("documents can be written side by side") {
    const std::string alone = sample();
    std::array<int, 4> right{};
    {
        std::vector<std::jthread> writers;
        for (int& count : right)
            writers.emplace_back([&count, &alone] {
                for (int turn = 0; turn < 25; ++turn) count += sample() == alone ? 1 : 0;
            });
    }
    CHECK(right == std::array{25, 25, 25, 25});
}

TEST_CASE("a file says nothing about when, where and by whom it was made") {
    const Ran ran = judged(sample(), "qpdf --qdf --object-streams=disable --no-original-object-ids sample.pdf -");
    for (const std::string leak : {"Date", "D:19", "D:20", "/Author", "/Creator", "xmp:", "libharu", "Haru", "HarfBuzz",
                                   "/home", "/usr", "/build", ".ttf"}) {
        CAPTURE(leak);
        CHECK_FALSE(holds(ran.out, leak));
    }
    for (const std::string command : {"hostname", "id -un", "pwd", "dirname \"$PWD\"", "uname -r"}) {
        const std::string answer = judged("", command).out;
        const std::string name = answer.substr(0, answer.find('\n'));
        CAPTURE(command);
        REQUIRE_FALSE(name.empty());
        CHECK_FALSE(holds(ran.out, name));
    }
    const json all = objects(sample());
    CHECK_FALSE(all.at("trailer").at("value").contains("/ID"));  // many writers make it from clock and path
    const json about = object(all, all.at("trailer").at("value").at("/Info"));
    CHECK(about == json{{"/Producer", "u:ventfolio"}, {"/Title", "u:Folder of one home"}});
}

TEST_CASE("what is drawn is compressed") {
    const PlacedItem words = line("Check the tube, then the mask, then the bag.", 72, 72, 12);
    const std::string pdf = one_page(page(612, 792, std::vector<PlacedItem>(300, words)));
    const std::string plain = judged(pdf, "qpdf --qdf --object-streams=disable sample.pdf -").out;
    CHECK(pdf.size() * 3 < plain.size());
}

TEST_CASE("what cannot be a document is a fault that says why") {
    const PlacedSheet without_pages = sheet("Empty", {});
    CHECK_THROWS_WITH_AS(write_pdf({.title = "T", .language = "en", .sheets = {}}), "a document without a sheet",
                         std::logic_error);
    CHECK_THROWS_WITH_AS(write_pdf({.title = "T", .language = "en", .sheets = {{&without_pages, ""}}}),
                         "a sheet without a page", std::logic_error);
    // ISO 32000-1, annex C: a page measures 3 to 14,400 units.
    const char* size =
        "the PDF file cannot be written: a page is smaller than 3 pt or larger than 14400 pt (libharu "
        "0x1054, detail 0)";
    CHECK_THROWS_WITH_AS(one_page(page(2.5, 792, {})), size, PdfError);
    CHECK_THROWS_WITH_AS(one_page(page(612, 14401, {})), size, PdfError);
    CHECK_THROWS_AS(titled(std::string(40000, 'x')), PdfError);
    CHECK_NOTHROW(one_page(page(3, 14400, {})));
}
