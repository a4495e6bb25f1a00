#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "sheets/picture.hpp"

namespace ventfolio {

/// No side of a picture has more dots. A logo is at most 58 mm wide on paper, so 4000 dots are finer than any printer.
inline constexpr std::size_t kMostDots = 4000;

/// Reads a PNG file (ISO/IEC 15948) into grey dots, over white where it is see-through. Only the dots are taken: no
/// text, no profile and no date of the file gets any further.
///
/// `name` is what messages call it. What is no PNG file, is damaged or has too many dots is a fault of the result; the
/// size is known before anything is unpacked.
PictureFile png_picture(std::string_view bytes, std::string name);

}  // namespace ventfolio
