#include "caseload/ordered_work.hpp"

#include <doctest/doctest.h>

#include <atomic>
#include <chrono>
#include <stdexcept>
#include <string>
#include <thread>

using namespace ventfolio;

namespace {

/// Every third piece takes long, so that later ones are finished before it.
std::size_t slow_square(std::size_t number) {
    std::this_thread::sleep_for(std::chrono::microseconds{number % 3 == 0 ? 2000 : 10});
    return number * number;
}

}  // namespace

TEST_CASE("results come in the order of their numbers, whichever is finished first") {
    struct Row {
        std::size_t count;
        std::size_t jobs;
    };
    for (const Row& row : {Row{0, 4}, Row{1, 8}, Row{100, 1}, Row{100, 3}, Row{100, 64}, Row{5, 0}}) {
        CAPTURE(row.count);
        CAPTURE(row.jobs);
        std::vector<std::size_t> results;
        work_in_order(
            row.count, row.jobs, [] { return slow_square; }, [&](std::size_t result) { results.push_back(result); });
        REQUIRE(results.size() == row.count);
        for (std::size_t number = 0; number < row.count; ++number) CHECK(results[number] == number * number);
    }
}

TEST_CASE("no thread runs far ahead of the result that is waited for") {
    std::atomic<std::size_t> begun = 0;
    std::size_t taken = 0;
    std::size_t most_ahead = 0;
    const auto work = [&](std::size_t number) {
        ++begun;
        return number;
    };
    work_in_order(
        500, 4, [&] { return work; },
        [&](std::size_t) {
            std::this_thread::sleep_for(std::chrono::microseconds{200});
            most_ahead = std::max(most_ahead, begun - taken);
            ++taken;
        });
    CHECK(taken == 500);
    CHECK(most_ahead <= 4 * 4 + 1);  // four results a thread, and the one that is being taken
    CHECK(most_ahead > 4);
}

TEST_CASE("each thread has a worker of its own") {
    std::atomic<int> made = 0;
    const auto make_worker = [&] {
        ++made;
        return [count = 0](std::size_t) mutable { return ++count; };
    };
    work_in_order(64, 4, make_worker, [](int count) { CHECK(count >= 1); });
    CHECK(made == 4);
}

TEST_CASE("what is thrown in a thread or by the taker reaches the caller, and all threads end") {
    const auto fails_at_30 = [](std::size_t number) {
        if (number == 30) throw std::runtime_error{"thirty"};
        return number;
    };
    CHECK_THROWS_WITH(work_in_order(
                          1000, 4, [&] { return fails_at_30; }, [](std::size_t) {}),
                      "thirty");
    CHECK_THROWS_WITH(work_in_order(
                          1000, 4, [] { return slow_square; },
                          [](std::size_t result) {
                              if (result == 9) throw std::runtime_error{"nine"};
                          }),
                      "nine");
}
