#pragma once

#include <span>
#include <string_view>

namespace ventfolio {

/// A file that the build put into the program byte for byte: a template, a font, a data file.
struct EmbeddedFile {
    std::string_view name;      ///< path below its base folder, with forward slashes
    std::string_view contents;  ///< its bytes, followed in memory by one zero byte
};

}  // namespace ventfolio
