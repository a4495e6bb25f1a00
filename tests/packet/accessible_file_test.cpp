#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "pdf/programs.hpp"
#include "pdf/write_pdf.hpp"
#include "print_home_sheets.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;
using nlohmann::json;

// What someone needs who hears the papers of a home, over all sheets in two languages. qpdf reads the objects of the
// file, poppler the words. Clause numbers of ISO 14289-1 are from memory.

namespace {

/// All sheets of a home in English with Spanish under it, as one file.
class HeardFile {
  public:
    HeardFile() {
        PdfRequest request{.title = "Papers", .language = "en", .sheets = {}};
        for (const SetSheet& sheet : home().sheets) request.sheets.push_back({&sheet.placed, ""});
        scratch_.save("papers.pdf", write_pdf(request));
        objects_ = json::parse(run("qpdf --json=2 --json-stream-data=none papers.pdf")).at("qpdf").at(1);
    }

    static const HeardFile& both() {
        static const HeardFile file;
        return file;
    }
    static const SetHome& home() { return set_home_in_both("adult-tracheostomy"); }

    std::string run(const std::string& command) const {
        const auto ran = scratch_.run(command);
        REQUIRE_MESSAGE((ran.status == 0 && ran.err.empty()), ran.err);
        return ran.out;
    }
    json at(const json& reference) const { return objects_.at("obj:" + reference.get<std::string>()).at("value"); }
    json catalog() const { return at(objects_.at("trailer").at("value").at("/Root")); }
    std::vector<json> all_with(const char* key, std::string_view value) const {
        std::vector<json> found;
        for (const auto& [name, entry] : objects_.items()) {
            const json own = entry.contains("value") ? entry.at("value") : json{};
            if (own.is_object() && own.contains(key) && own.at(key) == value) found.push_back(own);
        }
        return found;
    }

    /// Elements in reading order, each with the language that holds for it.
    struct Heard {
        json element;
        std::string language;
    };
    std::vector<Heard> elements() const {
        std::vector<Heard> all;
        const std::function<void(const json&, const std::string&)> walk = [&](const json& reference,
                                                                              const std::string& around) {
            const json element = at(reference);
            const std::string language = element.value("/Lang", around);
            all.push_back({element, language});
            const json kids = element.value("/K", json::array());
            for (const json& kid : kids.is_array() ? kids : json::array({kids}))
                if (kid.is_string()) walk(kid, language);
        };
        walk(at(catalog().at("/StructTreeRoot")).at("/K"), catalog().at("/Lang"));
        return all;
    }

  private:
    trial::Scratch scratch_;
    json objects_;
};

std::string without_blanks(std::string_view text) {
    std::string kept;
    for (const char letter : plain_blanks(std::string{text}))
        if (letter != ' ' && letter != '\n') kept += letter;
    return kept;
}

/// Words in the second language, in the order of the tree.
void add_second(const Inlines& inlines, std::string& words) {
    for (const Inline& piece : inlines)
        if (piece.second && (piece.kind == Inline::Kind::text || piece.kind == Inline::Kind::value))
            words += without_blanks(plain_text({piece}));
}

void add_second(const std::vector<Block>& blocks, std::string& words) {
    for (const Block& block : blocks) {
        add_second(block.inlines, words);
        add_second(block.aside, words);
        for (const TableCell& cell : block.head.cells) add_second(cell.inlines, words);
        for (const TableRow& row : block.rows)
            for (const TableCell& cell : row.cells) add_second(cell.inlines, words);
        add_second(block.children, words);
    }
}

}  // namespace

TEST_CASE("what stands in the second language is heard in it, and nothing else is") {  // ISO 14289-1, 7.2
    std::string expected;
    for (const SetSheet& sheet : HeardFile::home().sheets) {
        add_second(sheet.document.title, expected);
        add_second(sheet.document.blocks, expected);
    }
    REQUIRE(expected.size() > 10000);

    // poppler prints elements in the same order, each with its words in quotes on the lines below it.
    const std::vector<HeardFile::Heard> elements = HeardFile::both().elements();
    std::istringstream lines{HeardFile::both().run("pdfinfo -enc UTF-8 -struct-text papers.pdf")};
    std::size_t next = 0;
    std::string heard;
    for (std::string line; std::getline(lines, line);) {
        line.erase(0, line.find_first_not_of(' '));
        if (line.empty() || line.front() == '/') continue;  // an attribute
        if (line.front() != '"') {
            const std::string type = line.substr(0, line.find_first_of(" :"));
            REQUIRE(next < elements.size());
            REQUIRE("/" + type == elements[next].element.at("/S").get<std::string>());
            ++next;
            continue;
        }
        const HeardFile::Heard& of = elements[next - 1];
        if (of.language == "u:es" && of.element.at("/S") != "/Figure")
            heard += without_blanks(line.substr(1, line.size() - 2));
    }
    CHECK(next == elements.size());
    std::size_t same = 0;
    while (same < heard.size() && same < expected.size() && heard[same] == expected[same]) ++same;
    const std::size_t from = same < 60 ? 0 : same - 60;
    CHECK_MESSAGE((heard == expected),
                  "heard: " << heard.substr(from, 160) << "\nwritten: " << expected.substr(from, 160));
}

TEST_CASE("every figure says what it shows and where it stands") {  // ISO 14289-1, 7.3
    const HeardFile& file = HeardFile::both();
    std::size_t figures = 0;
    for (const json& figure : file.all_with("/S", "/Figure")) {
        ++figures;
        CAPTURE(figure.dump());
        CHECK(figure.at("/Alt").get<std::string>().size() > 3);
        const json page = file.at(figure.at("/Pg"));
        const json paper = page.at("/MediaBox");
        const json box = figure.at("/A").at("/BBox");
        CHECK(figure.at("/A").at("/O") == "/Layout");
        CHECK(box[0] > 0);
        CHECK(box[1] > 0);
        CHECK(box[2] > box[0]);
        CHECK(box[3] > box[1]);
        CHECK(box[2] < paper[2]);
        CHECK(box[3] < paper[3]);
    }
    CHECK(figures > 50);
}

TEST_CASE("every head of a table says what it is for, and every row has a head") {  // ISO 14289-1, 7.5
    const HeardFile& file = HeardFile::both();
    std::size_t rows = 0;
    for (const json& row : file.all_with("/S", "/TR")) {
        ++rows;
        std::size_t heads = 0;
        for (const json& kid : row.at("/K")) {
            const json cell = file.at(kid);
            if (cell.at("/S") != "/TH") continue;
            ++heads;
            CHECK(cell.at("/A").at("/O") == "/Table");
            CHECK((cell.at("/A").at("/Scope") == "/Row" || cell.at("/A").at("/Scope") == "/Column"));
        }
        CHECK(heads >= 1);
    }
    CHECK(rows > 300);
}

TEST_CASE("lists with numbers say that they count, and those without do not") {  // ISO 14289-1, 7.6
    std::size_t counting = 0;
    for (const json& list : HeardFile::both().all_with("/S", "/L")) {
        if (!list.contains("/A")) continue;
        ++counting;
        CHECK(list.at("/A") == json{{"/O", "/List"}, {"/ListNumbering", "/Decimal"}});
    }
    CHECK(counting > 20);
}

TEST_CASE("no call-out passes for a footnote, and no type needs an explanation") {  // ISO 14289-1, 7.1 and 7.9
    const HeardFile& file = HeardFile::both();
    const json root = file.at(file.catalog().at("/StructTreeRoot"));
    CHECK_FALSE(root.contains("/RoleMap"));
    // ISO 32000-1, 14.8.4: all of them are standard types.
    const std::vector<std::string> standard{"/Document", "/Sect", "/Div", "/P",  "/H1",   "/H2",
                                            "/H3",       "/H4",   "/L",   "/LI", "/Lbl",  "/LBody",
                                            "/Table",    "/TR",   "/TH",  "/TD", "/Span", "/Figure"};
    for (const HeardFile::Heard& heard : file.elements()) {
        const std::string type = heard.element.at("/S");
        CHECK_MESSAGE(std::ranges::count(standard, type) == 1, type);
    }
}

TEST_CASE("headings go down one level at a time on every sheet") {  // ISO 14289-1, 7.4.2
    int before = 0;
    for (const HeardFile::Heard& heard : HeardFile::both().elements()) {
        const std::string type = heard.element.at("/S");
        if (type == "/Sect") before = 0;
        if (type.size() != 3 || type[1] != 'H') continue;
        const int level = type[2] - '0';
        CHECK(level <= before + 1);
        before = level;
    }
    CHECK(before > 0);
}

TEST_CASE("every page is read by its structure, and holds nothing to click or fill in") {  // ISO 14289-1, 7.18
    const HeardFile& file = HeardFile::both();
    const std::vector<json> pages = file.all_with("/Type", "/Page");
    CHECK(pages.size() >= HeardFile::home().sheets.size());
    for (const json& page : pages) {
        CHECK(page.at("/Tabs") == "/S");
        CHECK(page.contains("/StructParents"));
        CHECK_FALSE(page.contains("/Annots"));
        CHECK_FALSE(page.contains("/AA"));
    }
    for (const char* entry : {"/AcroForm", "/OCProperties", "/Names", "/Threads", "/OpenAction", "/AA", "/Perms"})
        CHECK_FALSE(file.catalog().contains(entry));
}

TEST_CASE("every letter of every font is embedded and has its code point") {  // ISO 14289-1, 7.21
    const HeardFile& file = HeardFile::both();
    const std::vector<json> fonts = file.all_with("/Subtype", "/Type0");
    CHECK(fonts.size() == 2);
    CHECK(file.all_with("/Type", "/Font").size() == 4);  // and a descendant each
    for (const json& font : fonts) {
        CHECK(font.at("/Encoding") == "/Identity-H");
        CHECK(font.contains("/ToUnicode"));
        const json descendant = file.at(font.at("/DescendantFonts")[0]);
        CHECK(descendant.contains("/CIDToGIDMap"));
        CHECK(file.at(descendant.at("/FontDescriptor")).contains("/FontFile2"));
    }
}

TEST_CASE("all that is drawn is marked, and every mark ends") {  // ISO 14289-1, 7.1
    std::istringstream lines{HeardFile::both().run("qpdf --qdf --object-streams=disable papers.pdf -")};
    const std::vector<std::string> paints{"BT", "f", "S", "B"};  // text begins; a path is filled, stroked, or both
    bool in_page = false;
    int open = 0;
    std::size_t drawn = 0;
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("%% Contents for page")) in_page = true;
        if (line == "endstream") in_page = false;
        if (!in_page) continue;
        const std::string last = line.substr(line.rfind(' ') + 1);
        if (last == "BMC" || last == "BDC") {
            REQUIRE(++open == 1);
        } else if (last == "EMC") {
            REQUIRE(--open == 0);
        } else if (std::ranges::count(paints, last) == 1) {
            ++drawn;
            REQUIRE(open == 1);
        }
    }
    CHECK(open == 0);
    CHECK(drawn > 10000);
}
