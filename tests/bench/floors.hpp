#pragma once

#include <filesystem>

#include "bench/costs.hpp"

namespace ventfolio::bench {

/// What no program that makes these pages can do without, each as the middle of several runs.
///
/// The bytes of a PDF, without their compression, through zlib once.
Cost deflating(const std::filesystem::path& pdf);
/// The lines of a PDF written by libharu, each where the one before ended, in one embedded face: no layout, no tags.
Cost writing_plainly(const std::filesystem::path& pdf);
/// The words of a PDF set by groff.
Cost setting_by_groff(const std::filesystem::path& pdf);

}  // namespace ventfolio::bench
