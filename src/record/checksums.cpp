#include "record/checksums.hpp"

#include <algorithm>
#include <set>

#include "record/sha256.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kDigits = 64;
constexpr std::string_view kBetween = "  ";  // the second blank says that the file was read as it is

std::optional<Checksum> read_line(std::string_view line) {
    if (line.size() <= kDigits + kBetween.size() || line.substr(kDigits, kBetween.size()) != kBetween)
        return std::nullopt;
    const std::string_view digest = line.substr(0, kDigits);
    const std::string_view name = line.substr(kDigits + kBetween.size());
    if (digest.find_first_not_of("0123456789abcdef") != std::string_view::npos) return std::nullopt;
    if (name.find('/') != std::string_view::npos) return std::nullopt;
    return Checksum{std::string{name}, std::string{digest}};
}

}  // namespace

Checksum checksum_of(std::string name, std::string_view bytes) { return {std::move(name), sha256_hex(bytes)}; }

std::string checksum_list(std::vector<Checksum> checksums) {
    std::ranges::sort(checksums);
    std::string text;
    for (const Checksum& one : checksums) text.append(one.digest).append(kBetween).append(one.name) += '\n';
    return text;
}

std::optional<std::vector<Checksum>> read_checksum_list(std::string_view text) {
    if (!text.ends_with('\n')) return std::nullopt;  // a list that was cut off
    text.remove_suffix(1);
    std::vector<Checksum> checksums;
    std::set<std::string> names;
    for (const std::string& line : split(text, '\n')) {
        auto checksum = read_line(line);
        if (!checksum || !names.insert(checksum->name).second) return std::nullopt;
        checksums.push_back(*std::move(checksum));
    }
    return checksums;
}

}  // namespace ventfolio
