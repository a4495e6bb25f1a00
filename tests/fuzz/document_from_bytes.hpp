#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "layout/lay_out.hpp"
#include "sheets/document.hpp"

namespace ventfolio::fuzz {

struct MadeDocument {
    Document document;
    Furniture furniture;
    PageSetup setup;
    std::vector<std::string> words;  ///< no two alike, none a part of another; each must be on the paper
};

/// A tree as markup/ could make one (tables are rectangular, lists hold items), out of any bytes. Each byte decides one
/// thing; where they end, so does the document.
MadeDocument document_from(std::span<const std::uint8_t> bytes);

/// The tree in short, a block a line, so that a broken promise can be read.
std::string shown(const std::vector<Block>& blocks, std::size_t depth = 0);

}  // namespace ventfolio::fuzz
