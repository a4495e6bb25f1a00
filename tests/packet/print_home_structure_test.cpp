#include <doctest/doctest.h>

#include <cstddef>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "pdf/programs.hpp"
#include "print_home_sheets.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// Without colons too: the label of a way stands on its arrow, and the colon behind it does not.
std::string without_blanks(const std::string& text) {
    std::string kept;
    for (const char letter : plain_blanks(text))
        if (letter != ' ' && letter != '\n' && letter != ':') kept += letter;
    return kept;
}

/// The structure as poppler reads it: an element and its text a line.
struct Heard {
    std::vector<std::string> elements;
    std::string text;  ///< without numbers and check boxes of items, and without blanks
};

Heard heard(const std::string& pdf) {
    const trial::Scratch scratch;
    scratch.save("packet.pdf", pdf);
    const auto ran = scratch.run("pdfinfo -enc UTF-8 -struct-text packet.pdf");
    REQUIRE(ran.status == 0);
    REQUIRE(ran.err == "");
    Heard heard;
    std::istringstream lines{ran.out};
    std::string element;
    for (std::string line; std::getline(lines, line);) {
        line.erase(0, line.find_first_not_of(' '));
        const bool is_text = line.starts_with('"') && line.ends_with('"') && line.size() > 1;
        if (!is_text) {
            heard.elements.push_back(element = line.substr(0, line.find_first_of(" :")));
            continue;
        }
        if (element != "Lbl") heard.text += without_blanks(line.substr(1, line.size() - 2));
    }
    return heard;
}

/// The packet of a demo home, heard once for all tests.
const Heard& heard_home(const std::string& name) {
    static std::map<std::string, Heard> homes;
    const auto known = homes.find(name);
    if (known != homes.end()) return known->second;
    return homes.emplace(name, heard(file_named(printed_home(demo_profile(name)), "packet.pdf"))).first->second;
}

/// Words of a passage as they stand on paper: what is drawn has none.
std::string written(const Inlines& inlines) {
    Inlines kept;
    for (const Inline& piece : inlines)
        if (piece.kind == Inline::Kind::text || piece.kind == Inline::Kind::value) kept.push_back(piece);
    return without_blanks(plain_text(kept));
}

/// From and to of a bar are drawn to scale, in the second and third column of a timeline. They are heard in the plan's
/// table of sources, which says the same.
constexpr std::size_t kFirstDrawn = 1;
constexpr std::size_t kLastDrawn = 2;

std::string written(const std::vector<Block>& blocks) {
    std::string text;
    bool timeline = false;
    const auto row = [&](const TableRow& one, bool body) {
        for (std::size_t at = 0; at < one.cells.size(); ++at)
            if (!body || !timeline || at < kFirstDrawn || at > kLastDrawn) text += written(one.cells[at].inlines);
    };
    for (const Block& block : blocks) {
        if (block.kind == Block::Kind::heading) timeline = block.attributes.has("timeline");
        text += written(block.inlines) + written(block.aside);
        row(block.head, false);
        for (const TableRow& one : block.rows) row(one, true);
        text += written(block.children);
    }
    return text;
}

}  // namespace

TEST_CASE("whoever hears a sheet hears all of its words in the order of its template, each once") {
    for (const char* const name : kAllHomes) {
        const SetHome& home = set_demo_home(name);
        std::string expected;
        for (const SetSheet& sheet : home.sheets)
            expected += written(sheet.document.title) + written(sheet.document.blocks);
        const Heard& all = heard_home(name);
        CAPTURE(name);
        const auto behind_slip = all.text.find(expected.substr(0, 40));
        REQUIRE(behind_slip != std::string::npos);
        const std::string text = all.text.substr(behind_slip);
        std::size_t same = 0;
        while (same < expected.size() && same < text.size() && expected[same] == text[same]) ++same;
        const std::size_t from = same < 40 ? 0 : same - 40;
        CHECK_MESSAGE((text == expected),
                      "heard: " << text.substr(from, 120) << "\nwritten: " << expected.substr(from, 120));
    }
}

TEST_CASE("each sheet is a part of its own that begins with its title") {
    for (const char* const name : kAllHomes) {
        const Heard& all = heard_home(name);
        std::size_t sheets = 0;
        for (std::size_t at = 0; at < all.elements.size(); ++at) {
            if (all.elements[at] != "Sect") continue;
            ++sheets;
            CHECK(all.elements.at(at + 1) == "H1");
        }
        CHECK(sheets == set_demo_home(name).sheets.size() + 1);  // the print slip is one more
    }
}
