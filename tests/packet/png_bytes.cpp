#include "packet/png_bytes.hpp"

#include <zlib.h>
#include <algorithm>
#include <stdexcept>

namespace ventfolio::testing {
namespace {

std::string four_bytes(std::uint32_t number) {
    std::string bytes;
    for (const unsigned shift : {24U, 16U, 8U, 0U}) bytes += static_cast<char>(number >> shift & 0xFFU);
    return bytes;
}

std::string deflated(const std::string& bytes) {
    uLongf size = compressBound(bytes.size());
    std::string packed(size, '\0');
    if (compress(reinterpret_cast<Bytef*>(packed.data()), &size, reinterpret_cast<const Bytef*>(bytes.data()),
                 bytes.size()) != Z_OK)
        throw std::runtime_error{"zlib stopped"};
    packed.resize(size);
    return packed;
}

}  // namespace

std::string png_chunk(std::string_view type, std::string_view data) {
    const std::string body = std::string{type} + std::string{data};
    const uLong crc = crc32(0, reinterpret_cast<const Bytef*>(body.data()), static_cast<uInt>(body.size()));
    return four_bytes(static_cast<std::uint32_t>(data.size())) + body + four_bytes(static_cast<std::uint32_t>(crc));
}

std::string png_file(const PngForm& form, const std::vector<std::string>& rows) {
    std::string header = four_bytes(form.width) + four_bytes(form.height);
    header += static_cast<char>(form.depth);
    header += static_cast<char>(form.colour);
    header += std::string(2, '\0');
    header += form.interlaced ? '\1' : '\0';
    std::string filtered;
    for (const std::string& row : rows) filtered += '\0' + row;
    return "\x89PNG\r\n\x1A\n" + png_chunk("IHDR", header) + form.chunks + png_chunk("IDAT", deflated(filtered)) +
           png_chunk("IEND", "");
}

GreyDots ring_logo(std::uint32_t width, std::uint32_t height) {
    GreyDots grey{width, height, {}};
    const double radius = height * 0.4;
    for (std::uint32_t y = 0; y < height; ++y) {
        for (std::uint32_t x = 0; x < width; ++x) {
            const double across = x - radius * 1.2;
            const double down = y - radius * 1.1;
            const double square = across * across + down * down;
            const bool ring = square < radius * radius && square > radius * radius * 0.5;
            const bool bar = x > radius * 2.6 && y > height * 0.35 && y < height * 0.55;
            const bool ramp = y > height * 0.92;
            grey.dots += static_cast<char>(ramp ? 255U * x / width : ring || bar ? 0U : 255U);
        }
    }
    return grey;
}

std::vector<std::string> rows_of(const GreyDots& grey) {
    std::vector<std::string> rows;
    for (std::uint32_t y = 0; y < grey.height; ++y) rows.push_back(grey.dots.substr(y * grey.width, grey.width));
    return rows;
}

std::string grey_png(const GreyDots& grey) {
    return png_file({.width = grey.width, .height = grey.height}, rows_of(grey));
}

}  // namespace ventfolio::testing
