#pragma once

#include <string>
#include <string_view>

#include "profile/audience.hpp"
#include "sheets/document.hpp"

/// What sheets that list others print of them.
namespace ventfolio {

/// A sheet code in the folder: "K7M-2QD".
PrintedValue code_value(std::string code);

/// A title, without the words that it starts with. It may name a person or a place: it stands where all its values may.
PrintedValue title_value(const Document& document, std::string_view without = {});

/// Where a copy is kept. A place that fits on a line is not broken: what stands behind its box belongs to it.
PrintedValue place_value(std::string words);

}  // namespace ventfolio
