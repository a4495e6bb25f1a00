#pragma once

#include <doctest/doctest.h>

#include <array>
#include <cstdio>
#include <memory>
#include <string>

/// Programs of other makers that know the answer. A test fails when one is not installed.
namespace ventfolio::oracle {

/// What a shell command prints, without its last line end.
inline std::string printed_by(const std::string& command) {
    struct Close {
        void operator()(std::FILE* pipe) const { pclose(pipe); }
    };
    const std::unique_ptr<std::FILE, Close> pipe{popen(command.c_str(), "r")};
    REQUIRE(pipe);
    std::string text;
    std::array<char, 256> buffer{};
    while (std::fgets(buffer.data(), static_cast<int>(buffer.size()), pipe.get())) text += buffer.data();
    while (text.ends_with('\n')) text.pop_back();
    CAPTURE(command);
    REQUIRE(!text.empty());
    return text;
}

/// GNU units: "2000 psi" in "bar". Debian package units.
inline double gnu_units(const std::string& from, const std::string& to) {
    const std::string text = printed_by("units --terse --output-format '%.15g' '" + from + "' '" + to + "' 2>&1");
    std::size_t used = 0;
    double value = 0;
    CAPTURE(text);
    REQUIRE_NOTHROW(value = std::stod(text, &used));
    REQUIRE(used == text.size());
    return value;
}

/// GNU date: the day that "2026-01-15 +90 days" is.
inline std::string gnu_date(const std::string& what) { return printed_by("date --utc --date '" + what + "' +%F 2>&1"); }

}  // namespace ventfolio::oracle
