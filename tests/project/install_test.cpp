#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>

#include "project/files.hpp"
#include "project/shell.hpp"

/// An installed program finds what was installed with it.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

/// What `cmake --install` puts below a prefix; what it says of each file is not wanted.
void install_below(const fs::path& prefix) {
    const Ran ran = run_in(prefix.parent_path(), "cmake --install " + quoted(VENTFOLIO_BINARY_DIR) + " --prefix " +
                                                     quoted(prefix) + " > install.log");
    REQUIRE_MESSAGE(ran.status == 0, ran.err);
}

}  // namespace

TEST_CASE("an installed program checks a clinic's templates with the homes of its own prefix, wherever that is moved") {
    const Scratch scratch;
    install_below(scratch.path("prefix"));
    fs::rename(scratch.path("prefix"), scratch.path("moved"));
    for (const char* file : {"man/man1/ventfolio.1", "man/man5/ventfolio-profile.5", "man/man7/ventfolio-rules.7",
                             "bash-completion/completions/ventfolio", "zsh/site-functions/_ventfolio"}) {
        CAPTURE(std::string{file});
        CHECK(fs::file_size(scratch.path("moved/share") / file) > 1000);
    }
    fs::create_directories(scratch.path("clinic/en"));
    const fs::path homes = scratch.path("moved/share/ventfolio/profiles");
    // Only one home is left, so that those of the build cannot stand in for it.
    for (const auto& home : fs::directory_iterator{homes})
        if (home.path().stem() != "adult-mask") fs::remove(home.path());
    const std::string check = "moved/bin/ventfolio templates check clinic --on 2026-02-03";
    const Ran checked = run_in(scratch.folder(), check);
    CHECK_MESSAGE(checked.status == 0, checked.err);
    CHECK(checked.out.find("2 languages with 1 homes: 0 faults") != std::string::npos);

    // By a link in another folder, too.
    fs::create_symlink(scratch.path("moved/bin/ventfolio"), scratch.path("linked"));
    CHECK(run_in(scratch.folder(), "./linked templates check clinic --on 2026-02-03").out == checked.out);

    fs::remove_all(homes);
    const Ran without = run_in(scratch.folder(), check);
    CHECK(without.status == 3);
    CHECK(without.err == "ventfolio: the demo homes are not installed in " +
                             fs::canonical(scratch.path("moved")).string() +
                             "/share/ventfolio/profiles; name profiles to check with\n");
    CHECK(without.out == "");
}

}  // namespace ventfolio::project
