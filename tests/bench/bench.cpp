// usage: bench PROGRAM [HOMES]
//
// What the program costs, as tables in Markdown: one home, a caseload of HOMES invented homes (default 1000), and where
// the time goes. Times are ratios to floors too, since machines differ. Nothing passes or fails here.

#include <fmt/format.h>
#include <stdlib.h>

#include <charconv>
#include <exception>
#include <filesystem>
#include <fstream>
#include <thread>

#include "bench/costs.hpp"
#include "bench/floors.hpp"
#include "bench/homes.hpp"
#include "bench/rooms.hpp"

namespace ventfolio::bench {
namespace {

namespace fs = std::filesystem;

constexpr std::uint64_t kSeed = 20260203;
constexpr double kMegabyte = 1e6;

class Folder {
  public:
    explicit Folder(const fs::path& below) {
        std::string name = (below / "ventfolio-bench-XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error{"no folder below " + below.string()};
        path_ = name;
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    fs::path operator/(const std::string& name) const { return path_ / name; }

  private:
    fs::path path_;
};

void write_homes(const fs::path& folder, std::size_t homes) {
    fs::create_directories(folder);
    for (std::size_t at = 0; at < homes; ++at)
        std::ofstream{folder / (record_number_of(at) + ".yaml"), std::ios::binary} << invented_home(kSeed, at);
}

std::string print_command(const fs::path& program, const fs::path& profiles, const fs::path& papers,
                          const std::string& more) {
    return fmt::format("'{}' print '{}' --on 2026-02-03 -o '{}' --quiet {} > /dev/null 2> /dev/null", program.string(),
                       profiles.string(), papers.string(), more);
}

void one_home(const fs::path& program, const Folder& work) {
    write_homes(work / "one", 1);
    const fs::path profile = work / "one" / (record_number_of(0) + ".yaml");
    const Cost cost = middle_of(21, [&] { return cost_of(print_command(program, profile, work / "paper", "")); });
    const fs::path pdf = work / "paper/packet.pdf";
    fmt::print("| one home, whole process, cold | |\n|---|---|\n");
    fmt::print("| CPU time | {:.0f} ms |\n| by the clock, with flushing | {:.0f} ms |\n", 1e3 * cost.cpu,
               1e3 * cost.wall);
    fmt::print("| most memory | {:.0f} MiB |\n", cost.memory);
    fmt::print("| packet.pdf | {:.2f} MB |\n", static_cast<double>(fs::file_size(pdf)) / kMegabyte);
    const auto ratio = [&](const char* what, const Cost& floor) {
        fmt::print("| {} | {:.1f} ms, ours is {:.2f} times that |\n", what, 1e3 * floor.cpu, cost.cpu / floor.cpu);
    };
    ratio("zlib deflating the same bytes", deflating(pdf));
    ratio("libharu writing the same lines, no layout", writing_plainly(pdf));
    ratio("groff setting the same words", setting_by_groff(pdf));
}

void caseload(const fs::path& program, const Folder& work, const Folder& memory, std::size_t most) {
    fmt::print(
        "\n| homes | jobs | packets a second | in memory, without flushing | most memory |\n|---|---|---|---|---|\n");
    const unsigned cores = std::max(1U, std::thread::hardware_concurrency());
    for (std::size_t homes = 10; homes <= most; homes *= 10) {
        const std::string name = fmt::format("homes-{}", homes);
        write_homes(work / name, homes);
        for (unsigned jobs = 1; jobs <= cores; jobs *= 2) {
            const auto run = [&](const fs::path& papers) {
                const Cost cost = cost_of(print_command(program, work / name, papers, fmt::format("--jobs {}", jobs)));
                fs::remove_all(papers);
                return cost;
            };
            const Cost disk = run(work / "papers");
            const Cost tmpfs = run(memory / "papers");
            const auto each = static_cast<double>(homes);
            fmt::print("| {} | {} | {:.1f} | {:.1f} | {:.0f} MiB |\n", homes, jobs, each / disk.wall, each / tmpfs.wall,
                       disk.memory);
        }
    }
}

void rooms(const Folder& work) {
    std::vector<SourceText> homes;
    for (std::size_t at = 0; at < 60; ++at) homes.push_back({record_number_of(at), invented_home(kSeed, at)});
    const auto times = time_by_room(homes, work / "rooms");
    double cpu = 0;
    for (std::size_t at = 0; at + 1 < times.size(); ++at) cpu += times[at].second;
    fmt::print("\n| room | a home | share |\n|---|---|---|\n");
    for (std::size_t at = 0; at + 1 < times.size(); ++at)
        fmt::print("| {} | {:.1f} ms | {:.0f} % |\n", times[at].first,
                   1e3 * times[at].second / static_cast<double>(homes.size()), 100 * times[at].second / cpu);
    fmt::print("| {} | {:.1f} ms | apart |\n", times.back().first,
               1e3 * times.back().second / static_cast<double>(homes.size()));
}

void run(const fs::path& program, std::size_t homes) {
    const Folder work{fs::temp_directory_path()};
    const Folder memory{"/dev/shm"};
    one_home(program, work);
    rooms(work);
    caseload(program, work, memory, homes);
}

}  // namespace
}  // namespace ventfolio::bench

int main(int count, char** words) {
    std::size_t homes = 1000;
    const std::string_view number = count == 3 ? words[2] : "1000";
    const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), homes);
    if (count < 2 || count > 3 || error != std::errc{} || end != number.data() + number.size()) {
        fmt::print(stderr, "usage: bench PROGRAM [HOMES]\n");
        return 2;
    }
    try {
        ventfolio::bench::run(words[1], homes);
    } catch (const std::exception& fault) {
        fmt::print(stderr, "bench: {}\n", fault.what());
        return 1;
    }
    return 0;
}
