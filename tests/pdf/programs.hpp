#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// Programs of other makers, which judge what the writer wrote. A test fails if one is not installed.
namespace ventfolio::trial {

struct Ran {
    int status = -1;  ///< exit status; 127: there is no such program
    std::string out;
    std::string err;
};

/// A folder for one test; it goes when the test ends.
class Scratch {
  public:
    Scratch();
    ~Scratch();
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    std::filesystem::path save(std::string_view name, std::string_view bytes) const;
    std::filesystem::path path(std::string_view name) const { return folder_ / name; }
    /// Runs a shell command in this folder.
    Ran run(std::string_view command) const;

  private:
    std::filesystem::path folder_;
};

/// A page as a reader draws it: 0 is black, 255 is white.
class DrawnPage {
  public:
    /// Draws a page with poppler.
    static DrawnPage of(std::string_view pdf, int dots_per_inch, std::size_t page = 1);
    /// A page that poppler has drawn into a file: a bit map or a grey map in its binary form.
    static DrawnPage read(const std::filesystem::path& file);
    std::size_t width() const { return width_; }
    std::size_t height() const { return height_; }
    int at(std::size_t x, std::size_t y) const { return static_cast<unsigned char>(pixels_.at(y * width_ + x)); }
    /// Darkness of a rectangle, in whole black pixels.
    double ink(std::size_t left, std::size_t top, std::size_t width, std::size_t height) const;
    double ink() const { return ink(0, 0, width_, height_); }

  private:
    std::size_t width_ = 0;
    std::size_t height_ = 0;
    std::string pixels_;
};

/// What a reader copies out of a file. Fails the test if the reader complains.
std::string text_of(std::string_view pdf);

}  // namespace ventfolio::trial
