#pragma once

#include <functional>
#include <string>

namespace ventfolio::bench {

/// What a run cost.
struct Cost {
    double cpu = 0;     ///< s, of the process and its children, in user and system mode
    double wall = 0;    ///< s
    double memory = 0;  ///< MiB, most that was resident at once; of a program only
};

/// Of a shell command, which must end with status 0. Throws std::runtime_error.
Cost cost_of(const std::string& command);
/// Of a function of this program; without memory.
Cost cost_of(const std::function<void()>& work);

/// The middle of an odd number of runs, by CPU time.
Cost middle_of(int runs, const std::function<Cost()>& run);

}  // namespace ventfolio::bench
