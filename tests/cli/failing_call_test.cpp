#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <utility>

#include "program.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace fs = std::filesystem;

/// The built program, of whose calls one fails (failing_call.cpp). Reasons are those that the manual of each call
/// names.
namespace {

struct Failed {
    Ran ran;
    bool happened = false;  ///< whether there was such a call
};

Failed run_with_failing(const Scratch& folder, std::string_view call, int at, int reason, std::string_view words) {
    fs::remove(folder.path("note"));
    Failed failed;
    failed.ran = ventfolio_in(folder, words,
                              fmt::format("FAIL_CALL={} FAIL_AT={} FAIL_WITH={} FAIL_NOTE='{}' LD_PRELOAD='{}'", call,
                                          at, reason, folder.path("note").string(), VENTFOLIO_FAILING_CALL));
    failed.happened = fs::exists(folder.path("note"));
    return failed;
}

bool is_whole(const Scratch& folder, std::string_view packet) {
    return folder.run(fmt::format("cd '{}' && sha256sum --check --strict --quiet SHA256SUMS", packet)).status == 0;
}

/// Files that a run makes on its way and should take away.
std::string left_unfinished(const Scratch& folder) {
    return folder.run("find . -name '.ventfolio-*' -o -name '*.part'").out;
}

void print_first(const Scratch& folder) {
    REQUIRE(ventfolio_in(folder,
                         fmt::format("print '{}' --on 2026-02-03 -o R1 --quiet", profile_path("adult-tracheostomy")))
                .status == 0);
}

struct Row {
    const char* call;
    int reason;
    int least;  ///< how many such calls there must be
};

}  // namespace

TEST_CASE(
    "whichever call of the system fails, an update is an error with its reason, and the packet that hangs stays") {
    const Scratch folder;
    print_first(folder);
    const std::string first = state_of(folder.path("R1"));
    const std::string words = fmt::format("update '{}' --from R1 --on 2026-03-17 -o R2 --quiet",
                                          profile_path("adult-tracheostomy-revision-2"));
    // Four files and two folders; each must be on the disk before the packet counts.
    const Row rows[] = {{"write", ENOSPC, 4}, {"fsync", EIO, 6}, {"renameat2", EACCES, 1}};
    for (const auto& [call, reason, least] : rows) {
        CAPTURE(std::string{call});
        int at = 1;
        for (;; ++at) {
            CAPTURE(at);
            const Failed failed = run_with_failing(folder, call, at, reason, words);
            CHECK(state_of(folder.path("R1")) == first);
            CHECK(left_unfinished(folder) == "");
            if (!failed.happened) break;
            CHECK(failed.ran.status == 3);
            CHECK_MESSAGE(holds(failed.ran.err, std::strerror(reason)), failed.ran.err);
            CHECK_MESSAGE(holds(failed.ran.err, "R2"), failed.ran.err);
            REQUIRE(!fs::exists(folder.path("R2")));
        }
        CHECK(at > least);
        CHECK(is_whole(folder, "R2"));
        fs::remove_all(folder.path("R2"));
    }
}

TEST_CASE("whichever call of the system fails, a sheet printed into a packet is in it or the packet is as it was") {
    const Scratch folder;
    print_first(folder);
    folder.run("cp -a R1 kept");
    const std::string words =
        fmt::format("print '{}' --on 2026-02-03 --sheet wallet-card -o R1 --quiet", profile_path("adult-tracheostomy"));
    const Row rows[] = {{"mkdtemp", EACCES, 1}, {"openat", EMFILE, 4}, {"write", ENOSPC, 1},   {"fsync", EIO, 3},
                        {"linkat", EMLINK, 3},  {"renameat2", EIO, 1}, {"unlinkat", EACCES, 2}};
    int after = 0;
    for (const auto& [call, reason, least] : rows) {
        CAPTURE(std::string{call});
        int at = 1;
        for (;; ++at) {
            CAPTURE(at);
            folder.run("rm -rf R1 .ventfolio-* && cp -a kept R1");
            const std::string before = state_of(folder.path("R1"));
            const Failed failed = run_with_failing(folder, call, at, reason, words);
            CHECK(is_whole(folder, "R1"));
            if (!failed.happened) break;
            CHECK(failed.ran.status == 3);
            CHECK_MESSAGE(holds(failed.ran.err, std::strerror(reason)), failed.ran.err);
            if (holds(failed.ran.err, "the new folder is in place, but the old one could not be removed")) {
                after += 1;
                CHECK(state_of(folder.path("R1")) != before);
            } else {
                CHECK(state_of(folder.path("R1")) == before);
                CHECK(left_unfinished(folder) == "");
            }
        }
        CHECK(at > least);
        CHECK(left_unfinished(folder) == "");
    }
    CHECK(after >= 2);
}

TEST_CASE("a call that a signal interrupts is made again") {
    const Scratch folder;
    print_first(folder);
    const std::string words = fmt::format("update '{}' --from R1 --on 2026-03-17 -o R2 --quiet",
                                          profile_path("adult-tracheostomy-revision-2"));
    for (const char* call : {"read", "write", "fsync"}) {
        CAPTURE(std::string{call});
        const Failed failed = run_with_failing(folder, call, 2, EINTR, words);
        CHECK(failed.happened);
        CHECK_MESSAGE(failed.ran.status == 0, failed.ran.err);
        CHECK(is_whole(folder, "R2"));
        fs::remove_all(folder.path("R2"));
    }
}

TEST_CASE("whichever call of the system fails, a list stays as it was in its file") {
    const Scratch folder;
    const std::string words =
        fmt::format("due '{}' --on 2026-02-03 --within 90 --format csv -o due.csv", profile_path("adult-tracheostomy"));
    const Row rows[] = {{"fchmod", EPERM, 1}, {"fsync", EIO, 1}, {"rename", EACCES, 1}};
    for (const auto& [call, reason, least] : rows) {
        CAPTURE(std::string{call});
        int at = 1;
        for (;; ++at) {
            folder.save("due.csv", "the list of last week\n");
            const Failed failed = run_with_failing(folder, call, at, reason, words);
            CHECK(left_unfinished(folder) == "");
            if (!failed.happened) break;
            CHECK(failed.ran.status == 3);
            CHECK(failed.ran.err == fmt::format("ventfolio: due.csv: cannot be written: {}\n", std::strerror(reason)));
            CHECK(contents(folder.path("due.csv")) == "the list of last week\n");
        }
        CHECK(at > least);
        CHECK(holds(contents(folder.path("due.csv")), "DEMO-"));
    }
    // RLIMIT_FSIZE: a file may not grow at all. What is said goes through a pipe.
    folder.save("due.csv", "the list of last week\n");
    const Ran ran = folder.run(fmt::format("{{ bash -c \"ulimit -f 0; exec '{}' {}\"; echo status $?; }} 2>&1 | cat",
                                           VENTFOLIO_PROGRAM, words));
    CHECK(ran.out == "ventfolio: due.csv: cannot be written: File too large\nstatus 3\n");
    CHECK(contents(folder.path("due.csv")) == "the list of last week\n");
    CHECK(left_unfinished(folder) == "");
}

TEST_CASE("memory that ends in one home stops that home only") {
    const Scratch folder;
    const std::string words = fmt::format("print '{}' '{}' --on 2026-02-03 --sheet wallet-card -o all --jobs 1",
                                          profile_path("adult-tracheostomy"), profile_path("adult-mask"));
    for (const auto& [memory, at] : {std::pair{"hpdf", 300}, std::pair{"new", 60000}}) {
        CAPTURE(std::string{memory});
        const Failed failed = run_with_failing(folder, memory, at, ENOMEM, words);
        CHECK(failed.happened);
        CHECK(failed.ran.status == 3);
        CHECK_MESSAGE(holds(failed.ran.out, "there is not enough memory"), failed.ran.out);
        CHECK_MESSAGE(holds(failed.ran.out, "2 homes: 1 printed, 0 current, 0 refused, 1 unusable"), failed.ran.out);
        CHECK(left_unfinished(folder) == "");
        fs::remove_all(folder.path("all"));
    }
}

TEST_CASE("wherever memory ends, no part of a packet is left and the reason is told") {
    const Scratch folder;
    print_first(folder);
    const std::string first = state_of(folder.path("R1"));
    const std::string words = fmt::format("print '{}' --on 2026-02-03 --sheet wallet-card -o trial --quiet",
                                          profile_path("adult-tracheostomy"));
    struct Place {
        const char* memory;
        int first;
        int least;  ///< how many times it must have ended
    };
    // The first memory of the program itself is taken before it has begun.
    for (const auto& [memory, from, least] : {Place{"hpdf", 1, 12}, Place{"new", 2000, 8}}) {
        CAPTURE(std::string{memory});
        int times = 0;
        for (int at = from;; at += 1 + at / 2, ++times) {
            CAPTURE(at);
            const Failed failed = run_with_failing(folder, memory, at, ENOMEM, words);
            if (!failed.happened) break;
            CHECK(failed.ran.status == 3);
            CHECK_MESSAGE(holds(failed.ran.err, "there is not enough memory"), failed.ran.err);
            // What is said of a packet comes after the packet: memory may end between the two.
            if (fs::exists(folder.path("trial"))) CHECK(is_whole(folder, "trial"));
            fs::remove_all(folder.path("trial"));
            CHECK(left_unfinished(folder) == "");
        }
        CHECK(times >= least);
        CHECK(is_whole(folder, "trial"));
        fs::remove_all(folder.path("trial"));
    }
    CHECK(state_of(folder.path("R1")) == first);
}
