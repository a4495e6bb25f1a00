#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <random>

#include "program.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace fs = std::filesystem;
using Json = nlohmann::json;

namespace {

std::string words(std::string_view target, std::string_view day) {
    return fmt::format("update '{}' --from R1 --on {} -o {} --quiet", profile_path("adult-tracheostomy-revision-2"),
                       day, target);
}

void print_first(const Scratch& folder) {
    REQUIRE(ventfolio_in(folder,
                         fmt::format("print '{}' --on 2026-02-03 -o R1 --quiet", profile_path("adult-tracheostomy")))
                .status == 0);
}

/// On which day the packet in a folder was printed, if every file of it is what its checksums say; "mixture" if not.
std::string day_of(const Scratch& folder, std::string_view packet) {
    if (folder.run(fmt::format("cd '{}' && sha256sum --check --strict --status SHA256SUMS", packet)).status != 0)
        return "mixture";
    if (names_in(folder.path(packet)) != "SHA256SUMS packet.json packet.pdf profile.yaml") return "mixture";
    return Json::parse(contents(folder.path(packet) / "packet.json")).at("printed_on");
}

bool left_unfinished(const Scratch& folder) {
    for (const auto& entry : fs::directory_iterator{folder.path("")})
        if (entry.path().filename().string().starts_with(".ventfolio-")) return true;
    return false;
}

/// Of the fastest of three runs: another one may read from the disk what these find in memory.
double seconds_of(const Scratch& folder, const std::string& command) {
    double fastest = 1e9;
    for (int time = 0; time < 3; ++time) {
        const auto start = std::chrono::steady_clock::now();
        REQUIRE(folder.run(command).status == 0);
        const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
        fastest = std::min(fastest, taken.count());
    }
    return fastest;
}

}  // namespace

TEST_CASE("killed at any moment, the program leaves the old packet or the new one, never a mixture") {
    const Scratch folder;
    print_first(folder);
    const std::string first = state_of(folder.path("R1"));
    const std::string program = fmt::format("'{}' {}", VENTFOLIO_PROGRAM, words("R2", "2026-03-17"));
    const double whole = seconds_of(folder, program + " 2> /dev/null");
    // Half of the moments lie anywhere in the run, half in its last part, where it writes.
    std::mt19937 random{20260317};
    std::uniform_real_distribution<double> anywhere{0, 1.1 * whole};
    std::uniform_real_distribution<double> late{0.7 * whole, 1.1 * whole};
    int killed = 0;
    int finished = 0;
    std::string day = "2026-03-17";
    for (int time = 0; time < 200; ++time) {
        const std::string next = time % 2 == 0 ? "2026-03-18" : "2026-03-19";
        const double moment = time % 2 == 0 ? anywhere(random) : late(random);
        const Ran ran = folder.run(fmt::format("exec timeout --signal=KILL {:.4f} '{}' {} 2> err.txt", moment,
                                               VENTFOLIO_PROGRAM, words("R2", next)));
        CAPTURE(moment);
        const bool whole_run = ran.status == 0;
        (whole_run ? finished : killed) += 1;
        CHECK((whole_run || ran.status == 137));
        const std::string found = day_of(folder, "R2");
        // A run that ended well left the new packet; a killed one the new or the one before.
        CHECK((found == next || (!whole_run && found == day)));
        day = found;
        REQUIRE(state_of(folder.path("R1")) == first);
        folder.run("rm -rf .ventfolio-*");
    }
    MESSAGE("killed " << killed << " times, finished " << finished << " times");
    CHECK(killed >= 60);
}

TEST_CASE("killed before the first packet is in place, there is none") {
    const Scratch folder;
    print_first(folder);
    const double whole =
        seconds_of(folder, fmt::format("'{}' {} 2> /dev/null", VENTFOLIO_PROGRAM, words("trial", "2026-03-17")));
    std::mt19937 random{7};
    std::uniform_real_distribution<double> moments{0.6 * whole, 1.05 * whole};
    int without = 0;
    for (int time = 0; time < 40; ++time) {
        const Ran ran = folder.run(fmt::format("exec timeout --signal=KILL {:.4f} '{}' {} 2> err.txt", moments(random),
                                               VENTFOLIO_PROGRAM, words("R2", "2026-03-17")));
        if (ran.status != 0) {
            CHECK(ran.status == 137);
            without += fs::exists(folder.path("R2")) ? 0 : 1;
        }
        if (fs::exists(folder.path("R2"))) CHECK(day_of(folder, "R2") == "2026-03-17");
        folder.run("rm -rf R2 .ventfolio-*");
    }
    CHECK(without >= 5);
}

TEST_CASE("a file that may not grow is an error with its name, and nothing is lost") {
    const Scratch folder;
    print_first(folder);
    const std::string first = state_of(folder.path("R1"));
    // RLIMIT_FSIZE in blocks of 1024 bytes (bash manual, ulimit): less than any packet.pdf needs. What the program says
    // goes through a pipe, which no limit holds.
    for (const char* limit : {"0", "1", "64"}) {
        CAPTURE(std::string{limit});
        const Ran ran =
            folder.run(fmt::format("{{ bash -c \"ulimit -f {}; exec '{}' {}\"; echo status $?; }} 2>&1 | cat", limit,
                                   VENTFOLIO_PROGRAM, words("R2", "2026-03-17")));
        CHECK_MESSAGE(holds(ran.out, "packet.pdf: File too large"), ran.out);
        CHECK(holds(ran.out, "status 3\n"));
        CHECK(!fs::exists(folder.path("R2")));
        CHECK(!left_unfinished(folder));
        CHECK(state_of(folder.path("R1")) == first);
    }
}

TEST_CASE("where nothing can be said any more, the status still tells") {
    const Scratch folder;
    print_first(folder);
    // /dev/full: every write fails with ENOSPC (Linux manual, full(4)).
    const Ran ran = folder.run(
        fmt::format("'{}' {} > /dev/full 2> /dev/full", VENTFOLIO_PROGRAM, "match R1 000-000 --on 2026-03-17"));
    CHECK(ran.status == 3);
}

TEST_CASE("a disk that is full or read-only is an error with its name, and the packet on it stays") {
    const Scratch folder;
    print_first(folder);
    fs::create_directory(folder.path("disk"));
    // A real file system of the kernel, in a mount namespace of its own.
    if (folder.run("unshare --mount sh -c 'mount -t tmpfs -o size=1m small disk'").status != 0) {
        WARN_MESSAGE(false, "no file system can be mounted here, so only the fake disk was tried");
        return;
    }
    struct Row {
        const char* mount;
        const char* told;
    };
    const Row rows[] = {
        {"mount -t tmpfs -o size=1100k small disk && cp -a R1 disk/R1", "No space left on device"},
        {"mount -t tmpfs -o size=8m small disk && cp -a R1 disk/R1 && mount -o remount,ro disk",
         "Read-only file system"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.mount});
        const Ran ran =
            folder.run(fmt::format("unshare --mount sh -c '{} && cd disk && {{ \"{}\" update \"{}\" --from R1 --on "
                                   "2026-03-17 -o R2; echo status $?; "
                                   "ls -A; cmp R1/packet.pdf ../R1/packet.pdf && (cd R1 && sha256sum --check --strict "
                                   "--quiet SHA256SUMS) && echo "
                                   "whole; }}'",
                                   row.mount, VENTFOLIO_PROGRAM, profile_path("adult-tracheostomy-revision-2")));
        CHECK_MESSAGE(holds(ran.out, "status 3\nR1\nwhole\n"), ran.out << ran.err);
        CHECK_MESSAGE(holds(ran.err, row.told), ran.err);
    }
}
