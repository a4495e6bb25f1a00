#include "programs.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sys/wait.h>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace ventfolio::trial {
namespace {

std::string contents(const std::filesystem::path& file) {
    std::ifstream stream{file, std::ios::binary};
    std::ostringstream all;
    all << stream.rdbuf();
    return all.str();
}

}  // namespace

Scratch::Scratch() {
    std::string name = (std::filesystem::temp_directory_path() / "ventfolio-pdf-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error{"cannot make " + name};
    folder_ = name;
}

Scratch::~Scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
}

std::filesystem::path Scratch::save(std::string_view name, std::string_view bytes) const {
    std::ofstream stream{path(name), std::ios::binary};
    stream << bytes;
    if (!stream.flush()) throw std::runtime_error{"cannot write " + path(name).string()};
    return path(name);
}

Ran Scratch::run(std::string_view command) const {
    const std::string line = fmt::format("cd '{}' && ({}) > out 2> err < /dev/null", folder_.string(), command);
    const int status = std::system(line.c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, contents(path("out")), contents(path("err"))};
}

DrawnPage DrawnPage::of(std::string_view pdf, int dots_per_inch, std::size_t page) {
    const Scratch scratch;
    scratch.save("page.pdf", pdf);
    const Ran ran =
        scratch.run(fmt::format("pdftoppm -gray -singlefile -f {} -r {} page.pdf page", page, dots_per_inch));
    REQUIRE(ran.status == 0);
    REQUIRE(ran.err == "");

    return read(scratch.path("page.pgm"));
}

// "P5 width height 255", one blank, then a byte a pixel; "P4 width height", one blank, then rows of whole bytes in
// which a set bit is black, the leftmost pixel highest.
DrawnPage DrawnPage::read(const std::filesystem::path& file) {
    std::istringstream stream{contents(file)};
    DrawnPage picture;
    std::string kind;
    stream >> kind >> picture.width_ >> picture.height_;
    REQUIRE((kind == "P4" || kind == "P5"));
    const bool bits = kind == "P4";
    int white = 255;
    if (!bits) stream >> white;
    REQUIRE(white == 255);
    stream.get();
    const std::size_t bytes_a_row = bits ? (picture.width_ + 7) / 8 : picture.width_;
    std::string bytes(bytes_a_row * picture.height_, '\0');
    stream.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    REQUIRE(stream.good());
    if (!bits) {
        picture.pixels_ = std::move(bytes);
        return picture;
    }
    picture.pixels_.reserve(picture.width_ * picture.height_);
    for (std::size_t y = 0; y < picture.height_; ++y)
        for (std::size_t x = 0; x < picture.width_; ++x) {
            const auto byte = static_cast<unsigned char>(bytes[y * bytes_a_row + x / 8]);
            picture.pixels_ += (byte >> (7 - x % 8) & 1) != 0 ? '\0' : '\xff';
        }
    return picture;
}

double DrawnPage::ink(std::size_t left, std::size_t top, std::size_t width, std::size_t height) const {
    double darkness = 0;
    for (std::size_t y = top; y < top + height; ++y)
        for (std::size_t x = left; x < left + width; ++x) darkness += 1 - at(x, y) / 255.0;
    return darkness;
}

std::string text_of(std::string_view pdf) {
    const Scratch scratch;
    scratch.save("page.pdf", pdf);
    const Ran ran = scratch.run("pdftotext -enc UTF-8 page.pdf -");
    REQUIRE(ran.status == 0);
    REQUIRE(ran.err == "");
    const std::size_t end = ran.out.find_last_not_of("\n\f");  // poppler ends paragraphs and pages with them
    return end == std::string::npos ? "" : ran.out.substr(0, end + 1);
}

}  // namespace ventfolio::trial
