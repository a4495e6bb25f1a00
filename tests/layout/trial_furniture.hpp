#pragma once

#include "layout/furniture.hpp"

namespace ventfolio::testing {

/// Header and footer of nobody's paper, for documents that are made up.
Furniture trial_furniture();

}  // namespace ventfolio::testing
