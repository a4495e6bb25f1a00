#include "pdf/compressed.hpp"

#include <doctest/doctest.h>
#include <zlib.h>

#include <random>

using namespace ventfolio;

namespace {

/// What zlib, which PDF readers use, makes of a stream; nothing if it is none.
std::string inflated(const std::string& stream, std::size_t most) {
    std::string bytes(most, '\0');
    uLongf length = most;
    const auto* from = reinterpret_cast<const Bytef*>(stream.data());
    if (uncompress(reinterpret_cast<Bytef*>(bytes.data()), &length, from, stream.size()) != Z_OK) return "no stream";
    bytes.resize(length);
    return bytes;
}

std::string noise(std::size_t length) {
    std::mt19937 chance{7};  // NOLINT(cert-msc51-cpp): the same bytes on each run
    std::string bytes;
    for (std::size_t at = 0; at < length; ++at) bytes += static_cast<char>(chance() & 0xFFU);
    return bytes;
}

}  // namespace

TEST_CASE("zlib reads back what was compressed") {
    const std::string lines = [] {
        std::string text;
        for (int line = 0; line < 2000; ++line) text += "BT /F1 12 Tf 56.69 " + std::to_string(line) + " Td ET\n";
        return text;
    }();
    for (const std::string& bytes : {std::string{}, std::string{"a"}, lines, noise(70000), std::string(1000, '\0')})
        CHECK((inflated(compressed(bytes), bytes.size() + 1) == bytes));
    CHECK(compressed(lines).size() < lines.size() / 4);
    CHECK(compressed(lines) == compressed(lines));
}
