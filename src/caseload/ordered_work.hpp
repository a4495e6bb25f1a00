#pragma once

#include <algorithm>
#include <condition_variable>
#include <cstddef>
#include <exception>
#include <mutex>
#include <optional>
#include <thread>
#include <type_traits>
#include <utility>
#include <vector>

namespace ventfolio {

/// Results of several threads, handed over in the order of their numbers. No thread runs far ahead of the one that is
/// waited for, so that only a few results are held, however many there are.
template <typename Result>
class OrderedResults {
  public:
    OrderedResults(std::size_t count, std::size_t most_held) : count_{count}, held_(most_held) {}

    /// The number of the next piece of work; nothing when there is none left. Waits while too many results are held.
    std::optional<std::size_t> next() {
        std::unique_lock lock{mutex_};
        room_.wait(lock, [&] { return stopped_ || begun_ == count_ || begun_ < taken_ + held_.size(); });
        if (stopped_ || begun_ == count_) return std::nullopt;
        return begun_++;
    }

    void put(std::size_t number, Result result) {
        const std::lock_guard lock{mutex_};
        held_[number % held_.size()].emplace(std::move(result));
        ready_.notify_one();
    }

    /// Instead of a result; take throws it.
    void fail(std::exception_ptr fault) {
        const std::lock_guard lock{mutex_};
        fault_ = std::move(fault);
        ready_.notify_one();
    }

    /// The results one by one, the first one first.
    Result take() {
        std::unique_lock lock{mutex_};
        std::optional<Result>& place = held_[taken_ % held_.size()];
        ready_.wait(lock, [&] { return fault_ || place; });
        if (fault_) std::rethrow_exception(fault_);
        Result result = std::move(*std::exchange(place, std::nullopt));
        ++taken_;
        room_.notify_all();
        return result;
    }

    void stop() {
        const std::lock_guard lock{mutex_};
        stopped_ = true;
        room_.notify_all();
    }

  private:
    const std::size_t count_;
    std::mutex mutex_;
    std::condition_variable room_;
    std::condition_variable ready_;
    std::vector<std::optional<Result>> held_;  ///< the result of number N at N modulo the size
    std::size_t begun_ = 0;
    std::size_t taken_ = 0;
    bool stopped_ = false;
    std::exception_ptr fault_;
};

/// Works through the numbers below `count` on `jobs` threads. Each thread has a worker of its own, made by
/// `make_worker()`, which turns a number into a result; `take` gets the results in the calling thread, the first number
/// first, whichever is finished first. What a worker or `take` throws ends the work and is thrown on.
///
/// Example: work_in_order(3, 2, [] { return [](std::size_t number) { return number * number; }; }, print) prints 0 1 4.
template <typename MakeWorker, typename Take>
void work_in_order(std::size_t count, std::size_t jobs, MakeWorker make_worker, Take take) {
    using Worker = std::invoke_result_t<MakeWorker&>;
    using Result = std::invoke_result_t<Worker&, std::size_t>;
    constexpr std::size_t kHeldForEach = 4;  // so that one slow piece of work does not keep the other threads waiting
    OrderedResults<Result> results{count, std::max<std::size_t>(1, jobs) * kHeldForEach};
    const auto work = [&] {
        try {
            Worker worker = make_worker();
            while (const auto number = results.next()) results.put(*number, worker(*number));
        } catch (...) {
            results.fail(std::current_exception());
        }
    };
    struct StopAtEnd {
        OrderedResults<Result>& results;
        ~StopAtEnd() { results.stop(); }
    };
    std::vector<std::jthread> threads;  // joined when it goes, after the stop
    const StopAtEnd stop_at_end{results};
    for (std::size_t thread = 0; thread < std::min(std::max<std::size_t>(1, jobs), count); ++thread)
        threads.emplace_back(work);
    for (std::size_t number = 0; number < count; ++number) take(results.take());
}

}  // namespace ventfolio
