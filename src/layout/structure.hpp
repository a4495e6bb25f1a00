#pragma once

#include <vector>

#include "layout/drawing.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// The structure of a sheet in reading order, from its document tree. Numbers in the tree what the elements are made
/// of, so that layout functions can hand the number on to what they place. The first element is the whole sheet, the
/// second its title as a heading of level 1; a heading of the template is one level below the one that it has there.
///
///     Document numbered = document;
///     sheet.structure = number_elements(numbered);
std::vector<StructureElement> number_elements(Document& document);

}  // namespace ventfolio
