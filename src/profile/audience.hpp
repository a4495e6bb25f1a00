#pragma once

#include <cstdint>

namespace ventfolio {

/// Readers of paper. A field may stand only on sheets for the audiences it lists.
enum Audience : std::uint8_t {
    nobody = 0,
    wall = 1,      ///< hangs in the room; visitors read it
    folder = 2,    ///< in the folder: family, nurses, therapist
    crew = 4,      ///< ambulance and emergency staff
    wallet = 8,    ///< a stranger who opens the wallet
    utility = 16,  ///< the power company
    fire = 32,     ///< fire service and dispatch
};
using Audiences = std::uint8_t;

}  // namespace ventfolio
