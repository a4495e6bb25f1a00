#include <doctest/doctest.h>

#include <filesystem>

#include "project/documents.hpp"
#include "project/files.hpp"
#include "project/shell.hpp"

/// The ten-minute walk of the README, from an empty profile to a changed sheet, does what it says.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

/// What the walk asks to be done in an editor: the first of these words becomes other words.
void edit(const fs::path& file, const std::string& readme, const std::string& words, const std::string& other) {
    CHECK(readme.find("`" + words + "`") != std::string::npos);
    CHECK(readme.find("`" + other + "`") != std::string::npos);
    std::string text = contents(file);
    const std::size_t at = text.find(words);
    REQUIRE(at != std::string::npos);
    save(file, text.replace(at, words.size(), other));
}

TEST_CASE("the ten-minute walk works step by step, and says what the README quotes") {
    const fs::path project{VENTFOLIO_SOURCE_DIR};
    const Scratch scratch;
    fs::create_directory_symlink(project / "profiles", scratch.path("profiles"));
    const std::string walk = section(contents(project / "README.md"), "## A ten-minute walk");

    const std::string kept = "high_pressure: 31 cmH2O";
    const std::string slip = "high_pressure: 20 cmH2O";
    // The commands of each step, and the status of the last of them. A step without one is the reader's.
    struct Step {
        const char* begins;
        int status;
    };
    constexpr Step steps[] = {{"ventfolio new", 1},    {"cp ", 0},
                              {"ventfolio check", 1},  {"ventfolio explain", 0},
                              {"ventfolio check", 0},  {"ventfolio print", 0},
                              {"ventfolio update", 0}, {"ventfolio match", 1},
                              {"ventfolio schema", 0}};
    std::size_t done = 0;
    std::size_t quoted_blocks = 0;
    std::string said;
    for (const Fence& fence : fences(walk)) {
        CAPTURE(fence.text);
        if (fence.language == "sh") {
            REQUIRE(done < std::size(steps));
            const Step& step = steps[done++];
            CHECK(fence.text.starts_with(step.begins));
            if (done == 3) edit(scratch.path("home.yaml"), walk, kept, slip);
            if (done == 5) edit(scratch.path("home.yaml"), walk, slip, kept);
            const Ran ran = run_as_installed(VENTFOLIO_PROGRAM, scratch.folder(), fence.text);
            CHECK_MESSAGE(ran.status == step.status, ran.err);
            said = ran.out + ran.err;
        } else {
            ++quoted_blocks;
            std::size_t from = 0;
            for (const std::string& line : lines_of(fence.text)) {
                CAPTURE(line);
                CAPTURE(said);
                const std::size_t at = ("\n" + said).find("\n" + line + "\n", from);
                CHECK(at != std::string::npos);
                if (at != std::string::npos) from = at;
            }
        }
        // What is refused is not printed.
        if (done == 3 && fence.language == "sh") {
            CHECK(run_as_installed(VENTFOLIO_PROGRAM, scratch.folder(),
                                   "ventfolio print home.yaml --on 2026-02-03 -o refused")
                      .status == 1);
            CHECK(!fs::exists(scratch.path("refused")));
        }
    }
    CHECK(done == std::size(steps));
    CHECK(quoted_blocks >= 6);

    constexpr auto kForOthers = fs::perms::group_all | fs::perms::others_all;
    for (const char* name : {"papers", "papers/packet.pdf", "papers/packet.json"})
        CHECK((fs::status(scratch.path(name)).permissions() & kForOthers) == fs::perms::none);
    CHECK(contents(scratch.path("papers-2/packet.pdf")).starts_with("%PDF-"));
    CHECK(contents(scratch.path("profile.schema.json")).starts_with("{"));
}

}  // namespace
}  // namespace ventfolio::project
