#include "packet/version.hpp"

namespace ventfolio {

std::string_view program_version() { return VENTFOLIO_VERSION; }

}  // namespace ventfolio
