#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// The samples: the papers of the demo homes, one PDF a home and one picture a sheet, its pages side by side.
namespace ventfolio::project {

/// A demo home, the day on which it is printed, and the home whose packet it updates, if it does.
struct SampleKind {
    std::string_view name;
    std::string_view on;
    std::string_view follows;
};
inline constexpr std::array<SampleKind, 4> kSampleHomes{
    {{"adult-tracheostomy", "2026-02-03", ""},
     {"adult-tracheostomy-revision-2", "2026-03-17", "adult-tracheostomy"},
     {"child-tracheostomy", "2026-02-03", ""},
     {"adult-mask", "2026-02-03", ""}}};
inline constexpr int kSampleDotsPerInch = 72;
inline constexpr std::string_view kRenewSamples = "cmake --build --preset release --target samples";

/// 0 is black, 255 is white.
struct Picture {
    std::uint32_t width = 0;
    std::uint32_t height = 0;
    std::vector<std::uint8_t> pixels;

    std::uint8_t& at(std::size_t x, std::size_t y) { return pixels.at(y * width + x); }
    int at(std::size_t x, std::size_t y) const { return pixels.at(y * width + x); }
};

/// A page as poppler draws it.
Picture page_picture(const std::filesystem::path& pdf, std::size_t page, int dots_per_inch);
Picture side_by_side(const std::vector<Picture>& pages);
/// Sixteen shades are enough for the eye and make half of the file.
Picture in_sixteen_greys(Picture picture);
void write_png(const std::filesystem::path& file, const Picture& picture);
Picture read_png(const std::filesystem::path& file);

/// How far two pictures differ where they differ most: squares of 4 x 4 pixels are compared by their mean, so that
/// another release of the renderer may smooth edges in its own way, while a letter that is missing or moved shows.
/// 0 is the same, 255 white for black; pictures of different size are 255.
double largest_difference(const Picture& one, const Picture& other);

struct SampleSheet {
    std::string name;  ///< "bedside-card-bed"
    Picture picture;
};
struct SampleHome {
    std::string name;
    std::filesystem::path pdf;
    std::vector<SampleSheet> sheets;
};

/// Prints a demo home with the program into `folder` and draws the sheets that are printed. Throws std::runtime_error.
SampleHome print_sample(const std::filesystem::path& program, const std::filesystem::path& project,
                        const SampleKind& kind, const std::filesystem::path& folder);

/// The words of each page, laid out as they stand.
std::vector<std::string> page_texts(const std::filesystem::path& pdf);

}  // namespace ventfolio::project
