#include "bench/costs.hpp"

#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <stdexcept>
#include <vector>

namespace ventfolio::bench {
namespace {

double seconds(const timeval& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
}

double cpu_of(const rusage& usage) { return seconds(usage.ru_utime) + seconds(usage.ru_stime); }

class Clock {
  public:
    double passed() const { return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count(); }

  private:
    std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
};

}  // namespace

Cost cost_of(const std::string& command) {
    const Clock clock;
    const pid_t child = ::fork();
    if (child == 0) {
        ::execl("/bin/sh", "sh", "-c", command.c_str(), nullptr);
        ::_exit(127);
    }
    int status = 0;
    rusage usage{};
    if (child < 0 || ::wait4(child, &status, 0, &usage) != child || !WIFEXITED(status) || WEXITSTATUS(status) != 0)
        throw std::runtime_error{fmt::format("failed: {}", command)};
    return {cpu_of(usage), clock.passed(), static_cast<double>(usage.ru_maxrss) / 1024};
}

Cost cost_of(const std::function<void()>& work) {
    rusage before{};
    rusage after{};
    ::getrusage(RUSAGE_SELF, &before);
    const Clock clock;
    work();
    const double wall = clock.passed();
    ::getrusage(RUSAGE_SELF, &after);
    return {cpu_of(after) - cpu_of(before), wall, 0};
}

Cost middle_of(int runs, const std::function<Cost()>& run) {
    std::vector<Cost> costs;
    for (int time = 0; time < runs; ++time) costs.push_back(run());
    std::ranges::sort(costs, {}, &Cost::cpu);
    return costs.at(costs.size() / 2);
}

}  // namespace ventfolio::bench
