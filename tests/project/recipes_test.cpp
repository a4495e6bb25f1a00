#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "project/documents.hpp"
#include "project/files.hpp"
#include "project/shell.hpp"

/// The recipe of DEVELOPERS.md for sharing a caseload does what it says.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

TEST_CASE("GNU parallel prints a caseload in parts, each home once") {
    const fs::path project{VENTFOLIO_SOURCE_DIR};
    const Scratch scratch;
    fs::create_directories(scratch.path("build"));
    fs::create_directory_symlink(VENTFOLIO_BINARY_DIR, scratch.path("build/release"));
    fs::create_directory(scratch.path("homes"));
    constexpr const char* kHomes[] = {"adult-mask", "adult-tracheostomy", "child-tracheostomy", "toddler-dual-limb"};
    for (const char* home : kHomes)
        save(scratch.path("homes/" + std::string{home} + ".yaml"),
             contents(project / "profiles" / (std::string{home} + ".yaml")));

    const std::vector<std::string> recipes = fenced_blocks(contents(project / "DEVELOPERS.md"), "sh");
    REQUIRE(recipes.size() == 1);
    REQUIRE(recipes[0].starts_with("parallel "));
    for (const char* outcome : {",printed,", ",current,"}) {  // the second time everything is there
        const Ran ran = run_in(scratch.folder(), recipes[0]);
        CHECK_MESSAGE(ran.status == 0, ran.err);
        std::string all;
        for (int part = 1; part <= 4; ++part) all += contents(scratch.path("summary-" + std::to_string(part) + ".csv"));
        for (const char* home : kHomes) {
            CAPTURE(std::string{home});
            CHECK(all.find("homes/" + std::string{home} + ".yaml" + outcome) != std::string::npos);
        }
        CHECK(std::ranges::count(all, '\n') == 8);  // a head each, and the homes
    }
}

}  // namespace
}  // namespace ventfolio::project
