#pragma once

#include <cstddef>
#include <map>
#include <memory>
#include <string>

namespace ventfolio {

/// The dots of a clinic's logo, the one raster that is printed. They are grey: paper is photocopied, and no meaning
/// rests on a colour.
struct Picture {
    std::size_t width = 0;   ///< dots, at least 1
    std::size_t height = 0;  ///< dots, at least 1
    std::string grey;        ///< one byte for each dot, rows from the top: 0 is black, 255 white
    std::string digest;      ///< SHA-256 of width, height and dots: another one is another picture
};

/// A file that templates may name as a picture. Exactly one of `picture` and `fault` is there.
struct PictureFile {
    std::string name;  ///< as messages show it: "clinic/logo.png"
    std::shared_ptr<const Picture> picture{};
    std::string fault{};  ///< why it cannot be printed: "is no PNG file"
};

/// By the path that templates use, below the clinic's folder: "logo.png".
using Pictures = std::map<std::string, PictureFile, std::less<>>;

}  // namespace ventfolio
