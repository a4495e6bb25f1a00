#include "cli/world.hpp"

#include <sys/stat.h>
#include <unistd.h>
#include <algorithm>
#include <cerrno>
#include <charconv>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <memory>
#include <thread>

namespace ventfolio {
namespace {

constexpr std::size_t kLargestProfile = 1024 * 1024;

struct FileCloser {
    void operator()(std::FILE* file) const { std::fclose(file); }
};

[[noreturn]] void unusable(const std::string& name, int error) {
    throw UnusableFile{name + ": cannot be read: " + std::strerror(error)};
}

/// Seconds since 1970 as a moment in universal time.
std::optional<Moment> moment_of_epoch(std::string_view text) {
    long long seconds = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), seconds);
    if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    const std::chrono::sys_seconds time{std::chrono::seconds{seconds}};
    const auto midnight = std::chrono::floor<std::chrono::days>(time);
    const std::chrono::year_month_day day{midnight};
    const auto date =
        Date::of(static_cast<int>(day.year()), static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
    if (!date) return std::nullopt;
    const auto minutes = std::chrono::floor<std::chrono::minutes>(time - midnight).count();
    return Moment{*date, ClockTime{static_cast<int>(minutes)}};
}

}  // namespace

SourceText read_file(const std::string& name) {
    const std::unique_ptr<std::FILE, FileCloser> file{std::fopen(name.c_str(), "rb")};
    if (!file) unusable(name, errno);
    struct stat status {};
    if (fstat(fileno(file.get()), &status) != 0) unusable(name, errno);
    if (S_ISDIR(status.st_mode)) unusable(name, EISDIR);
    SourceText source{name, std::string(kLargestProfile + 1, '\0')};
    source.text.resize(std::fread(source.text.data(), 1, source.text.size(), file.get()));
    if (std::ferror(file.get())) unusable(name, errno);
    return source;
}

std::string read_standard_input() {
    std::string text;
    char part[64 * 1024];
    while (const std::size_t count = std::fread(part, 1, sizeof part, stdin)) text.append(part, count);
    if (std::ferror(stdin)) unusable("standard input", errno);
    return text;
}

void write_file(const std::string& name, std::string_view bytes) {
    const std::string part = name + ".part";
    const auto failed = [&] {
        const int error = errno;
        std::remove(part.c_str());
        throw UnusableFile{name + ": cannot be written: " + std::strerror(error)};
    };
    std::unique_ptr<std::FILE, FileCloser> file{std::fopen(part.c_str(), "wbx")};
    if (!file) throw UnusableFile{part + ": cannot be written: " + std::strerror(errno)};
    if (fchmod(fileno(file.get()), S_IRUSR | S_IWUSR) != 0) failed();
    if (std::fwrite(bytes.data(), 1, bytes.size(), file.get()) != bytes.size()) failed();
    // The name may mean the new file only when its bytes are on the disk: a power cut would leave neither list.
    if (std::fflush(file.get()) != 0 || fsync(fileno(file.get())) != 0) failed();
    if (std::fclose(file.release()) != 0) failed();
    if (std::rename(part.c_str(), name.c_str()) != 0) failed();
}

void write_output(const std::string& name, std::string_view bytes) {
    if (!name.empty()) return write_file(name, bytes);
    std::fwrite(bytes.data(), 1, bytes.size(), stdout);  // main says when that cannot be written
}

Moment now() {
    if (const char* epoch = std::getenv("SOURCE_DATE_EPOCH"))
        if (const auto moment = moment_of_epoch(epoch)) return *moment;
    const std::time_t time = std::time(nullptr);
    std::tm local{};
    localtime_r(&time, &local);
    const auto date =
        Date::of(local.tm_year + 1900, static_cast<unsigned>(local.tm_mon + 1), static_cast<unsigned>(local.tm_mday));
    if (!date) throw UnusableFile{"the clock of this machine shows an impossible date; give one with --on"};
    return {*date, ClockTime{local.tm_hour * 60 + local.tm_min}};
}

Date today() { return now().date; }

void report_files_that_grow_too_large() { std::signal(SIGXFSZ, SIG_IGN); }

std::size_t cores() { return std::max(1U, std::thread::hardware_concurrency()); }

bool standard_error_is_terminal() { return isatty(STDERR_FILENO) == 1; }
bool standard_output_is_terminal() { return isatty(STDOUT_FILENO) == 1; }

}  // namespace ventfolio
