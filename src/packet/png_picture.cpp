#include "packet/png_picture.hpp"

#include <fmt/format.h>
#include <png.h>

#include "record/sha256.hpp"

namespace ventfolio {
namespace {

constexpr std::string_view kSignature = "\x89PNG\r\n\x1A\n";

/// The state of libpng while it reads one file.
class PngReader {
  public:
    PngReader() { image_.version = PNG_IMAGE_VERSION; }
    PngReader(const PngReader&) = delete;
    PngReader& operator=(const PngReader&) = delete;
    ~PngReader() { png_image_free(&image_); }

    /// Reads as far as the size.
    bool begin(std::string_view bytes) {
        const bool begun = png_image_begin_read_from_memory(&image_, bytes.data(), bytes.size()) != 0;
        image_.flags |= PNG_IMAGE_FLAG_16BIT_sRGB;  // else 16 bits without a gamma would be taken for linear ones
        return begun;
    }
    std::size_t width() const { return image_.width; }
    std::size_t height() const { return image_.height; }

    bool read_grey(std::string& dots) {
        constexpr png_color kWhite{255, 255, 255};
        image_.format = PNG_FORMAT_GRAY;
        dots.resize(PNG_IMAGE_SIZE(image_));
        return png_image_finish_read(&image_, &kWhite, dots.data(), 0, nullptr) != 0;
    }

    /// In libpng's words.
    std::string_view message() const { return image_.message; }

  private:
    png_image image_{};
};

std::string broken(const PngReader& reader) { return fmt::format("is broken ({})", reader.message()); }

/// Fills in the picture. Returns why that cannot be done, else nothing.
std::string read(std::string_view bytes, Picture& picture) {
    if (!bytes.starts_with(kSignature)) return "is no PNG file";
    PngReader reader;
    if (!reader.begin(bytes)) return broken(reader);
    picture.width = reader.width();
    picture.height = reader.height();
    if (picture.width > kMostDots || picture.height > kMostDots)
        return fmt::format("has {} x {} dots, and at most {} x {} are read", picture.width, picture.height, kMostDots,
                           kMostDots);
    if (!reader.read_grey(picture.grey)) return broken(reader);
    picture.digest = sha256_hex(fmt::format("{} x {}\n", picture.width, picture.height) + picture.grey);
    return {};
}

}  // namespace

PictureFile png_picture(std::string_view bytes, std::string name) {
    Picture picture;
    PictureFile file{std::move(name)};
    file.fault = read(bytes, picture);
    if (file.fault.empty()) file.picture = std::make_shared<const Picture>(std::move(picture));
    return file;
}

}  // namespace ventfolio
