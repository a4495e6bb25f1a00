// usage: make_homes NUMBER SEED FOLDER
//
// Writes the profiles of a caseload of invented homes: FOLDER/B-000000.yaml and so on.

#include <fmt/format.h>

#include <charconv>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string_view>

#include "bench/homes.hpp"

namespace {

std::optional<std::uint64_t> number_in(std::string_view text) {
    std::uint64_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc{} && end == text.data() + text.size() ? std::optional{number} : std::nullopt;
}

}  // namespace

int main(int count, char** words) {
    const auto homes = count == 4 ? number_in(words[1]) : std::nullopt;
    const auto seed = count == 4 ? number_in(words[2]) : std::nullopt;
    if (!homes || !seed) {
        fmt::print(stderr, "usage: make_homes NUMBER SEED FOLDER\n");
        return 2;
    }
    const std::filesystem::path folder{words[3]};
    std::filesystem::create_directories(folder);
    for (std::size_t at = 0; at < *homes; ++at)
        std::ofstream{folder / (ventfolio::bench::record_number_of(at) + ".yaml"), std::ios::binary}
            << ventfolio::bench::invented_home(*seed, at);
    return 0;
}
