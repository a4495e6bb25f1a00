#include "cli/given_homes.hpp"

#include <algorithm>

#include "cli/world.hpp"

namespace ventfolio {

FoundHomes given_homes(const std::vector<std::string>& names) {
    const bool listed = std::ranges::find(names, "-") != names.end();
    return find_homes(names, listed ? read_standard_input() : std::string{});
}

}  // namespace ventfolio
