#pragma once

#include <chrono>
#include <cstddef>
#include <string_view>

namespace ventfolio {

/// One line on a terminal that says how far a long run is. It is taken away before anything else is said.
class Progress {
  public:
    /// Says nothing unless `shown`.
    explicit Progress(bool shown);
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    ~Progress() { take_away(); }

    void read(std::size_t done, std::size_t of);
    void printed(std::size_t done, std::size_t of, std::size_t not_printed);
    void take_away();

  private:
    using Clock = std::chrono::steady_clock;

    bool is_due(bool last);
    void show(std::string_view line);

    bool shown_;
    bool there_ = false;
    Clock::time_point last_;
    Clock::time_point begin_;  ///< of the printing
    bool printing_ = false;
};

}  // namespace ventfolio
