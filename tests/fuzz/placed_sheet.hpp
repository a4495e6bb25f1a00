#pragma once

#include "layout/lay_out.hpp"

namespace ventfolio::fuzz {

/// Lays a document out. What may be printed lies inside the margins, and no text over another; what a finding refuses
/// only has to come to an end. Nothing is returned for it.
std::optional<PlacedSheet> check_placed(const Document& document, const Furniture& furniture, const PageSetup& setup);

}  // namespace ventfolio::fuzz
