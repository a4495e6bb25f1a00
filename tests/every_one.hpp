#pragma once

#include <cstdlib>
#include <string_view>

namespace ventfolio::testing {

/// Whether a walk tries every one of its things alone (VENTFOLIO_TEST_ALL=1, as at night), or leaves out those that
/// another one stands for: the same field of another home, the same name in a translation.
inline bool tries_every_one() {
    const char* all = std::getenv("VENTFOLIO_TEST_ALL");
    return all != nullptr && std::string_view{all} == "1";
}

}  // namespace ventfolio::testing
