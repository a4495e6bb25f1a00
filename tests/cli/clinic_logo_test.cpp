#include <doctest/doctest.h>
#include <fmt/format.h>
#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "cli/program.hpp"
#include "packet/png_bytes.hpp"

using namespace ventfolio::testing;
using nlohmann::json;

/// An invented clinic with a logo, a letterhead, phone numbers, one changed sheet and a new one: no file of the program
/// changes, and none is built again.
namespace {

const GreyDots& logo() {
    static const GreyDots dots = ring_logo(420, 180);
    return dots;
}

void put_clinic(const Scratch& folder) {
    std::filesystem::create_directories(folder.path("clinic/en/partials"));
    std::filesystem::create_directories(folder.path("clinic/en"));
    REQUIRE(ventfolio_in(folder, "templates export built-in").status == 0);
    folder.save("clinic/logo.png", grey_png(logo()));
    folder.save("clinic/en/partials/letterhead.md",
                "## {.letterhead}\n\n![Willow Street Clinic](logo.png)\n\n**Willow Street Clinic** {.large}\n\n"
                "12 Willow Street, 555-0160\n");
    folder.save("clinic/en/partials/clinic-calls.md", "- **Nurse line** **555-0161** by day\n");
    folder.save("clinic/en/partials/clinic-outage-calls.md", "- **Clinic** **555-0162**\n");
    folder.save("clinic/en/supplies.md",
                contents(folder.path("built-in/en/supplies.md")) + "\n## From our clinic\n\nOrder by Thursday.\n");
    folder.save("clinic/en/pharmacy-list.md",
                "---\ntitle: Pharmacy list\naudience: folder\npages: 1\norder: 75\n---\n## Answers {.signs}\n\n"
                "- ![An eye looking up](figure:eyes-up) **Yes** looks up\n");
    folder.save("clinic/en/words.yaml", "sheets:\n  pharmacy-list: Pharmacy list\n");
}

std::string print_words(std::string_view options) {
    return fmt::format("print '{}' --on 2026-02-03 -o papers --templates clinic {}", profile_path("adult-tracheostomy"),
                       options);
}

/// The dots of a grey picture that poppler took out of a PDF: a binary PPM file, each dot three times.
GreyDots read_ppm(const std::string& bytes) {
    std::istringstream in{bytes};
    std::string magic;
    GreyDots grey{};
    int most = 0;
    in >> magic >> grey.width >> grey.height >> most;
    REQUIRE(magic == "P6");
    REQUIRE(most == 255);
    in.get();
    const auto begin = static_cast<std::size_t>(in.tellg());
    for (std::size_t at = begin; at + 2 < bytes.size(); at += 3) {
        CHECK((bytes[at] == bytes[at + 1] && bytes[at] == bytes[at + 2]));
        grey.dots += bytes[at];
    }
    return grey;
}

}  // namespace

TEST_CASE("a clinic's logo is in the packet once, dot for dot, on its letters and its index") {
    const Scratch folder;
    put_clinic(folder);
    const Ran ran = ventfolio_in(folder, print_words("--dump-layout"));
    REQUIRE_MESSAGE(ran.status == 0, ran.err);

    // poppler: which pages show a picture, and which object it is
    const Ran listed = folder.run("pdfimages -list papers/packet.pdf | tail -n +3 | awk '{print $3, $4, $5, $6, $11}'");
    CHECK(listed.err.empty());
    const std::string first = listed.out.substr(0, listed.out.find('\n'));
    CHECK(first.starts_with("image 420 180 gray "));
    CHECK(listed.out == first + "\n" + first + "\n" + first + "\n");  // the index and two letters
    const Ran taken = folder.run("pdfimages -l 4 papers/packet.pdf logo && ls logo-*");
    CHECK(taken.out == "logo-000.ppm\n");
    const GreyDots read_back = read_ppm(contents(folder.path("logo-000.ppm")));
    CHECK(read_back.width == logo().width);
    CHECK(read_back.height == logo().height);
    CHECK((read_back.dots == logo().dots));

    // qpdf: the file is whole, and holds one picture
    CHECK(folder.run("qpdf --check papers/packet.pdf").status == 0);
    const json objects = json::parse(folder.run("qpdf --json=2 --json-stream-data=none papers/packet.pdf").out);
    const auto is_image = [](const json& object) {
        return object.contains("stream") && object["stream"]["dict"].value("/Subtype", "") == "/Image";
    };
    CHECK(std::ranges::count_if(objects["qpdf"][1], is_image) == 1);

    // Whoever hears the papers hears whose they are.
    const auto says_clinic = [](const json& object) {
        return object.contains("value") && object["value"].is_object() &&
               object["value"].value("/S", "") == "/Figure" &&
               object["value"].value("/Alt", "") == "u:Willow Street Clinic";
    };
    CHECK(std::ranges::count_if(objects["qpdf"][1], says_clinic) == 3);
    const std::string words = folder.run("pdftotext -layout papers/packet.pdf -").out;
    for (const char* said : {"12 Willow Street, 555-0160", "Order by Thursday.", "looks up", "555-0161"})
        CHECK_MESSAGE(holds(words, said), said);
    // The same clinic gives the same bytes.
    const std::string before = contents(folder.path("papers/packet.pdf"));
    REQUIRE(ventfolio_in(folder, print_words("")).status == 0);
    CHECK((contents(folder.path("papers/packet.pdf")) == before));
}

TEST_CASE("the clinic's own numbers stand where a home looks for whom to call") {
    const Scratch folder;
    put_clinic(folder);
    for (const auto& [sheet, number] : {std::pair{"bedside-card", "555-0161"}, {"outage-plan", "555-0162"}}) {
        CAPTURE(std::string{sheet});
        const Ran ran = ventfolio_in(folder, print_words(fmt::format("--sheet {}", sheet)));
        REQUIRE_MESSAGE(ran.status == 0, ran.err);
        CHECK(holds(folder.run(fmt::format("pdftotext -layout papers/{}.pdf -", sheet)).out, number));
    }
}

TEST_CASE("another logo is printed by --resume, and the same one is not") {
    const Scratch folder;
    put_clinic(folder);
    REQUIRE(ventfolio_in(folder, print_words("")).status == 0);
    CHECK(holds(ventfolio_in(folder, print_words("--resume")).out, "DEMO-1: current"));
    GreyDots other = logo();
    other.dots[0] ^= 1;
    folder.save("clinic/logo.png", grey_png(other));
    const std::string before = contents(folder.path("papers/packet.json"));
    CHECK(holds(ventfolio_in(folder, print_words("--resume")).out, " pages, in papers"));
    CHECK(contents(folder.path("papers/packet.json")) != before);
}

TEST_CASE("update takes down the papers with the old logo, and says why") {
    const Scratch folder;
    put_clinic(folder);
    REQUIRE(ventfolio_in(folder, print_words("")).status == 0);
    GreyDots other = logo();
    other.dots[0] ^= 1;
    folder.save("clinic/logo.png", grey_png(other));
    const Ran ran = ventfolio_in(
        folder, fmt::format("update '{}' --from papers --on 2026-03-17 -o papers-2 --templates clinic --dry-run",
                            profile_path("adult-tracheostomy-revision-2")));
    REQUIRE_MESSAGE(ran.status == 0, ran.err);
    for (const char* letter : {"notice-letters/utility", "notice-letters/fire"}) {
        const std::size_t at = ran.out.find("new    " + std::string{letter});
        REQUIRE(at != std::string::npos);
        CHECK(holds(ran.out.substr(at, ran.out.find('\n', at) - at), "because of the wording"));
    }
}

TEST_CASE("templates check and print tell of a logo that cannot be printed, and where it is named") {
    const Scratch folder;
    put_clinic(folder);
    folder.save("clinic/logo.png", "not a picture");
    const Ran checked =
        ventfolio_in(folder, fmt::format("templates check clinic '{}' --on 2026-02-03", profile_path("adult-mask")));
    CHECK(checked.status == 1);
    CHECK(holds(checked.err,
                "clinic/en/partials/letterhead.md:3:1: refuse: The picture clinic/logo.png is no PNG file."));
    const Ran printed = ventfolio_in(folder, print_words(""));
    CHECK(printed.status == 1);
    CHECK_FALSE(std::filesystem::exists(folder.path("papers")));
}
