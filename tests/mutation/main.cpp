#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>
#include <sys/mman.h>
#include <sys/resource.h>
#include <sys/time.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <bitset>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iostream>
#include <map>
#include <string>
#include <vector>

// Takes the place of tests/main.cpp in the copy of the source that has mutants.
//
//   test_rules MUTANTS JOBS LEFT_OUT   runs all tests but those left out; then, for each mutant of the file, the tests
//                                      that pass its place, quickest first, until one fails; a line each to standard
//                                      output
//   test_rules --mutant N …            runs the tests with one mutant alive; the rest is for doctest
namespace mutation = ventfolio::mutation;

namespace {

using Reached = std::bitset<mutation::kMostMutants>;

Reached reached_since_cleared() {
    Reached set;
    for (std::size_t mutant = 0; mutant < set.size(); ++mutant) set[mutant] = mutation::reached[mutant];
    std::fill(std::begin(mutation::reached), std::end(mutation::reached), false);
    return set;
}

struct TestCase {
    std::string name;
    double seconds = 0;
    Reached reached;
};

/// All test cases, as the unchanged program ran them.
std::vector<TestCase> cases;
bool recording = false;

/// Notes time and passed mutants of each test case.
struct Recorder : doctest::IReporter {
    explicit Recorder(const doctest::ContextOptions& /*options*/) {}

    void test_case_start(const doctest::TestCaseData& data) override {
        if (!recording) return;
        reached_since_cleared();
        cases.push_back({.name = data.m_name});
    }
    void test_case_end(const doctest::CurrentTestCaseStats& stats) override {
        if (!recording) return;
        cases.back().seconds = stats.seconds;
        cases.back().reached = reached_since_cleared();
    }

    void report_query(const doctest::QueryData& /*data*/) override {}
    void test_run_start() override {}
    void test_run_end(const doctest::TestRunStats& /*stats*/) override {}
    void test_case_reenter(const doctest::TestCaseData& /*data*/) override {}
    void test_case_exception(const doctest::TestCaseException& /*exception*/) override {}
    void subcase_start(const doctest::SubcaseSignature& /*signature*/) override {}
    void subcase_end() override {}
    void log_assert(const doctest::AssertData& /*data*/) override {}
    void log_message(const doctest::MessageData& /*data*/) override {}
    void test_case_skipped(const doctest::TestCaseData& /*data*/) override {}
};
REGISTER_LISTENER("recorder", 1, Recorder);

/// Mutants made by hand: each run shows by them that it tells one end from another. run.py knows them by their distance
/// from kMostMutants.
enum HandMade : int { kWrong = mutation::kMostMutants - 5, kHarmless, kCrashing, kEndless, kNeverPassed };

int always_one() {
    if (mutation::is(kEndless))
        for (volatile bool on = true; on;) {
        }
    if (mutation::is(kCrashing)) std::abort();
    if (mutation::is(kWrong)) return 2;
    return mutation::is(kHarmless) ? 1 : 3 - 2;
}

/// A name as a filter that takes it alone: a comma would part two filters.
std::string filter_of(std::string name) {
    std::ranges::replace(name, ',', '?');
    return name;
}

bool passes(const TestCase& one) {
    doctest::Context context;
    context.addFilter("test-case", filter_of(one.name).c_str());
    context.setOption("case-sensitive", true);
    context.setOption("abort-after", 1);
    context.setOption("out", "/dev/null");
    return context.run() == 0;
}

/// CPU time after which the child is ended: an endless loop is noticed as well as a wrong number.
void limit_time(double seconds) {
    itimerval timer{};
    timer.it_value.tv_sec = static_cast<time_t>(seconds) + 1;
    setitimer(ITIMER_PROF, &timer, nullptr);
}

void limit_memory() {
    constexpr rlim_t kMost = 6ULL << 30U;
    const rlimit limit{kMost, kMost};
    setrlimit(RLIMIT_AS, &limit);
}

/// Runs in a child: the place of the test case that fails is left in `at`.
[[noreturn]] void try_mutant(int mutant, const std::vector<const TestCase*>& tests, volatile std::size_t& at) {
    mutation::alive = mutant;
    limit_memory();
    for (std::size_t test = 0; test < tests.size(); ++test) {
        at = test;
        limit_time(3 * tests[test]->seconds + 2);
        if (!passes(*tests[test])) _exit(1);
    }
    _exit(0);
}

const char* ending(int status) {
    if (WIFEXITED(status) && WEXITSTATUS(status) == 0) return "survived";
    if (WIFSIGNALED(status)) return WTERMSIG(status) == SIGPROF ? "endless" : "crashed";
    return "failed";
}

struct Child {
    int mutant;
    std::vector<const TestCase*> tests;
    std::size_t* at;
};

void report_one(std::map<pid_t, Child>& children) {
    int status = 0;
    const pid_t pid = wait(&status);
    const Child& child = children.at(pid);
    const std::string end = ending(status);
    std::cout << child.mutant << '\t' << end << '\t' << (end == "survived" ? "" : child.tests[*child.at]->name)
              << std::endl;
    munmap(child.at, sizeof(std::size_t));
    children.erase(pid);
}

std::vector<const TestCase*> tests_of(int mutant) {
    std::vector<const TestCase*> tests;
    for (const TestCase& one : cases)
        if (one.reached[static_cast<std::size_t>(mutant)]) tests.push_back(&one);
    std::ranges::stable_sort(tests, {}, &TestCase::seconds);
    return tests;
}

void try_all(std::istream& mutants, std::size_t jobs) {
    std::map<pid_t, Child> children;
    for (int mutant = 0; mutants >> mutant;) {
        Child child{mutant, tests_of(mutant), nullptr};
        if (child.tests.empty()) {
            std::cout << mutant << "\tunreached\t" << std::endl;
            continue;
        }
        if (children.size() == jobs) report_one(children);
        void* shared = mmap(nullptr, sizeof(std::size_t), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
        child.at = static_cast<std::size_t*>(shared);
        const pid_t pid = fork();
        if (pid == 0) try_mutant(mutant, child.tests, *child.at);
        children.emplace(pid, std::move(child));
    }
    while (!children.empty()) report_one(children);
}

int run_unchanged(const char* left_out) {
    doctest::Context context;
    context.addFilter("test-case-exclude", left_out);
    context.setOption("out", "/dev/stderr");
    recording = true;
    const int status = context.run();
    recording = false;
    return status;
}

}  // namespace

TEST_CASE("mutants made by hand end as they must") { CHECK(always_one() == 1); }

int main(int argc, char** argv) {
    if (argc == 4 && argv[1][0] != '-') {
        std::ifstream mutants{argv[1]};
        if (run_unchanged(argv[3]) != 0) return 2;
        try_all(mutants, std::stoul(argv[2]));
        return 0;
    }
    if (argc > 2 && std::strcmp(argv[1], "--mutant") == 0) mutation::alive = std::stoi(argv[2]);
    return doctest::Context(argc, argv).run();
}
