#include <doctest/doctest.h>
#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "pdf/programs.hpp"
#include "print_home_sheets.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;
using ventfolio::trial::Ran;
using ventfolio::trial::Scratch;

namespace {

std::vector<PrintOrder> orders() {
    PrintOrder whole;
    PrintOrder large;
    large.large_print = true;
    large.paper = Paper::a4;
    PrintOrder separate;
    separate.separate = true;
    return {whole, large, separate};
}

bool is_pdf(const FolderFile& file) { return file.name.ends_with(".pdf"); }

}  // namespace

TEST_CASE("the files of every demo home pass the structure check and no reader says a word about them") {
    for (const char* home : kAllHomes) {
        for (const PrintOrder& order : orders()) {
            const PrintedHome printed = printed_home(demo_profile(home), order);
            CAPTURE(std::string{home});
            REQUIRE(!printed.refused);
            for (const FolderFile& file : printed.drawings) {
                if (!is_pdf(file)) continue;
                const Scratch scratch;
                scratch.save("paper.pdf", file.bytes);
                CAPTURE(file.name);
                const Ran structure = scratch.run("qpdf --check paper.pdf");
                CHECK_MESSAGE(structure.status == 0, structure.out << structure.err);
                CHECK(structure.err == "");
                // The pages of single files are drawn by the same content as in the packet, where all are rendered.
                std::vector<std::string> readers{"pdftotext paper.pdf -", "pdfinfo paper.pdf", "pdffonts paper.pdf"};
                if (!order.separate)
                    readers.insert(readers.end(),
                                   {"pdftoppm -r 36 paper.pdf page", "pdftocairo -ps paper.pdf page.ps"});
                for (const std::string& reader : readers) {
                    CAPTURE(reader);
                    const Ran ran = scratch.run(reader);
                    CHECK(ran.status == 0);
                    CHECK(ran.err == "");
                }
            }
        }
    }
}

TEST_CASE("all fonts are embedded, cut down to the letters used, and have a way back to Unicode") {
    for (const char* home : kAllHomes) {
        const Scratch scratch;
        scratch.save("packet.pdf", file_named(printed_home(demo_profile(home)), "packet.pdf"));
        const Ran ran = scratch.run("pdffonts packet.pdf");
        std::istringstream lines{ran.out};
        std::string line;
        std::size_t fonts = 0;
        std::getline(lines, line);
        REQUIRE(line.find("emb sub uni") != std::string::npos);
        const std::size_t column = line.find("emb sub uni");
        std::getline(lines, line);  // hyphens under the head
        while (std::getline(lines, line)) {
            ++fonts;
            CHECK_MESSAGE(line.substr(column, 11) == "yes yes yes", line);
        }
        CHECK(fonts == 2);
    }
}

TEST_CASE("the file's own data tells nothing about the person or the moment") {
    for (const char* home : kAllHomes) {
        const SourceText source = demo_profile(home);
        const SetHome& set = set_demo_home(home);
        const Scratch scratch;
        scratch.save("packet.pdf", file_named(printed_home(source), "packet.pdf"));
        const Ran info = scratch.run("pdfinfo packet.pdf");
        const Ran custom = scratch.run("qpdf --qdf --object-streams=disable packet.pdf - | strings | grep -a -i date");
        CHECK_MESSAGE(custom.out.find("CreationDate") == std::string::npos, custom.out);
        CHECK(custom.out.find("ModDate") == std::string::npos);
        for (const std::string& name : split(*set.checked.profile.person->legal_name, ' ')) {
            CAPTURE(name);
            CHECK(info.out.find(name) == std::string::npos);
        }
        CHECK(info.out.find(*set.checked.profile.person->preferred_name) == std::string::npos);
    }
}

TEST_CASE("two runs over one home give the same bytes, and another day or profile others") {
    for (const PrintOrder& order : orders()) {
        const PrintedHome first = printed_home(demo_profile("child-tracheostomy"), order);
        const PrintedHome second = printed_home(demo_profile("child-tracheostomy"), order);
        const PrintedHome other = printed_home(demo_profile("adult-mask"), order);
        REQUIRE(first.drawings.size() == second.drawings.size());
        for (std::size_t at = 0; at < first.drawings.size(); ++at) {
            CHECK(first.drawings[at].name == second.drawings[at].name);
            CHECK((first.drawings[at].bytes == second.drawings[at].bytes));
            CHECK((first.drawings[at].bytes != other.drawings[at].bytes));
        }
    }
}

TEST_CASE("the dump of the layout names every word and field that is placed") {
    PrintOrder order;
    order.dump_layout = true;
    const SourceText source = demo_profile("adult-tracheostomy");
    const std::string text = file_named(printed_home(source, order), "packet.layout.txt");
    for (const SetSheet& sheet : set_demo_home("adult-tracheostomy").sheets) {
        CHECK(text.find("sheet " + sheet.placed.name + " ") != std::string::npos);
        for (const PlacedPage& page : sheet.placed.pages) {
            for (const PlacedItem& item : page.items) {
                if (!is_text(item)) continue;
                const std::string line = fmt::format("text {:.2f} {:.2f} ", item.text.origin.x, item.text.origin.y);
                CHECK_MESSAGE(text.find(line) != std::string::npos, words_of(item));
            }
        }
    }
}

TEST_CASE("each sheet of a packet starts on a front side, and a side left blank says so") {
    std::size_t blank = 0;
    for (const char* home : kAllHomes) {
        CAPTURE(std::string{home});
        const PrintedHome printed = printed_home(demo_profile(home));
        const Scratch scratch;
        scratch.save("packet.pdf", file_named(printed, "packet.pdf"));
        const Ran ran = scratch.run("qpdf --json=2 --json-key=outlines --json-key=pages packet.pdf");
        REQUIRE(ran.status == 0);
        const auto read = nlohmann::json::parse(ran.out);
        CHECK(read.at("outlines").size() == printed.record.sheets.size() + 1);  // the slip comes first
        for (const auto& bookmark : read.at("outlines"))
            CHECK_MESSAGE(bookmark.at("destpageposfrom1").get<int>() % 2 == 1, bookmark.at("title"));
        const std::size_t added = read.at("pages").size() - printed.pages - 1;  // without the slip
        const Ran words = scratch.run("pdftotext packet.pdf - | grep -c 'blank on purpose'");
        CHECK(std::to_string(added) + "\n" == words.out);
        blank += added;
    }
    CHECK(blank > 0);
}
