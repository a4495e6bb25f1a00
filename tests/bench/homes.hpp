#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

namespace ventfolio::bench {

/// The profile of an invented home, number `at` of a caseload that a seed stands for: a demo home with people, places,
/// times of batteries and of travel of its own. The same seed and number give the same text.
std::string invented_home(std::uint64_t seed, std::size_t at);

/// Its record number, which names its file and its folder: "B-000012".
std::string record_number_of(std::size_t at);

}  // namespace ventfolio::bench
