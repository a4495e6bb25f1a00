#pragma once

#include <string>
#include <vector>

#include "rules/calculators/calculate.hpp"
#include "rules/household.hpp"

namespace ventfolio {

/// A number behind the paper of a home, worked out by a calculator of the book: with formula, result and source.
struct Working {
    std::string about;  ///< whose number it is, in the household's own words: "bed", "Unit A"; empty: the home's
    Calculation calculation;
};

/// Every calculation that paper or rules rely on and that this home has the fields for. What a calculator gives no
/// number for is left out, as it is on paper.
std::vector<Working> workings(const Household& home);

}  // namespace ventfolio
