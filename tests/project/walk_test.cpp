#include <doctest/doctest.h>

#include <filesystem>
#include <sstream>

#include "project/documents.hpp"
#include "project/files.hpp"
#include "project/shell.hpp"

/// The walk through the README, from a profile to a sheet, does what it says.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

TEST_CASE("the steps of the README work one after another") {
    const fs::path project{VENTFOLIO_SOURCE_DIR};
    const Scratch scratch;
    fs::create_directory_symlink(project / "profiles", scratch.path("profiles"));
    fs::create_directory(scratch.path("build"));
    fs::create_directory_symlink(VENTFOLIO_BINARY_DIR, scratch.path("build/release"));

    const std::string readme = contents(project / "README.md");
    const std::vector<std::string> steps = fenced_blocks(readme, "sh");
    const std::vector<std::string> shown = fenced_blocks(readme, "text");
    REQUIRE(steps.size() == 8);
    REQUIRE(shown.size() == 2);

    CHECK(run_in(scratch.folder(), steps[2]).status == 0);
    CHECK(!contents(scratch.path("home.yaml")).empty());

    const Ran check = run_in(scratch.folder(), steps[3]);
    CHECK(check.status == 1);
    CAPTURE(check.err);
    CHECK(check.err.find(shown[0]) != std::string::npos);
    CHECK(run_in(scratch.folder(), "build/release/ventfolio print home.yaml --on 2026-02-03 -o refused").status == 1);
    CHECK(!fs::exists(scratch.path("refused")));

    const Ran explain = run_in(scratch.folder(), steps[4]);
    CHECK(explain.status == 0);
    CHECK(explain.out.find("high-pressure-alarm-below-peak (refuse)") == 0);

    const Ran print = run_in(scratch.folder(), steps[5]);
    CHECK(print.status == 0);
    CHECK(fs::exists(scratch.path("papers/packet.pdf")));
    constexpr auto kForOthers = fs::perms::group_all | fs::perms::others_all;
    for (const char* name : {"papers", "papers/packet.pdf", "papers/packet.json"})
        CHECK((fs::status(scratch.path(name)).permissions() & kForOthers) == fs::perms::none);

    const Ran update = run_in(scratch.folder(), steps[6]);
    CHECK(update.status == 0);
    CHECK(fs::exists(scratch.path("papers-2/packet.pdf")));
    std::istringstream lines{shown[1]};
    for (std::string line; std::getline(lines, line);) {
        CAPTURE(line);
        CHECK(update.out.find(line) != std::string::npos);
    }

    CHECK(run_in(scratch.folder(), steps[7]).status == 0);
    CHECK(contents(scratch.path("calls.pdf")).starts_with("%PDF-"));
    CHECK(contents(scratch.path("due.ics")).starts_with("BEGIN:VCALENDAR\r\n"));
}

}  // namespace
}  // namespace ventfolio::project
