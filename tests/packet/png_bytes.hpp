#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// PNG files put together by the letter of the standard (ISO/IEC 15948, also W3C "Portable Network Graphics"), so that
/// they can be wrong on purpose.
namespace ventfolio::testing {

/// Colour types of the standard, table 11.1.
enum class PngColour { grey = 0, rgb = 2, palette = 3, grey_alpha = 4 };

struct PngForm {
    std::uint32_t width = 1;
    std::uint32_t height = 1;
    int depth = 8;  ///< bits of a sample
    PngColour colour = PngColour::grey;
    bool interlaced = false;
    std::string chunks{};  ///< between IHDR and IDAT: PLTE, tRNS, tEXt
};

/// Length, type, data and CRC.
std::string png_chunk(std::string_view type, std::string_view data);

/// A file of this form whose rows, unfiltered, hold these bytes; `rows` of an interlaced one are those of its passes.
std::string png_file(const PngForm& form, const std::vector<std::string>& rows);

/// Dots of a grey picture, rows from the top.
struct GreyDots {
    std::uint32_t width;
    std::uint32_t height;
    std::string dots;
};

/// A ring with a bar in it, and a ramp of grey below: a logo that no clinic has.
GreyDots ring_logo(std::uint32_t width, std::uint32_t height);
std::vector<std::string> rows_of(const GreyDots& grey);
std::string grey_png(const GreyDots& grey);

}  // namespace ventfolio::testing
