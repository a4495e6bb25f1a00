#include "cli/progress.hpp"

#include <fmt/format.h>
#include <cstdio>

namespace ventfolio {
namespace {

constexpr std::chrono::milliseconds kBetween{100};
constexpr std::string_view kToStartOfEmptyLine = "\r\x1b[2K";  // ECMA-48: EL, the whole line

}  // namespace

Progress::Progress(bool shown) : shown_{shown} {}

void Progress::read(std::size_t done, std::size_t of) {
    if (is_due(done == of)) show(fmt::format("reading: {} of {} profiles", done, of));
}

void Progress::printed(std::size_t done, std::size_t of, std::size_t not_printed) {
    if (!printing_) begin_ = Clock::now();
    printing_ = true;
    if (!is_due(done == of)) return;
    const double seconds = std::chrono::duration<double>(Clock::now() - begin_).count();
    const double rate = seconds > 0 ? static_cast<double>(done) / seconds : 0;
    show(fmt::format("{} of {} homes, {} not printed, {:.0f} a second", done, of, not_printed, rate));
}

void Progress::take_away() {
    if (there_) fmt::print(stderr, "{}", kToStartOfEmptyLine);
    there_ = false;
}

bool Progress::is_due(bool last) {
    if (!shown_) return false;
    const Clock::time_point now = Clock::now();
    if (there_ && !last && now - last_ < kBetween) return false;
    last_ = now;
    return true;
}

void Progress::show(std::string_view line) {
    fmt::print(stderr, "{}{}", kToStartOfEmptyLine, line);
    std::fflush(stderr);
    there_ = true;
}

}  // namespace ventfolio
