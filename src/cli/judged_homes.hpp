#pragma once

#include <functional>
#include <string>
#include <vector>

#include "packet/print_home.hpp"

namespace ventfolio {

/// A profile that could be read as a file, and what the rules say.
struct JudgedHome {
    const std::string& file;
    const CheckedHome& home;
    std::string refusal;  ///< "refused: 2 refuse, 1 warn"; empty where nothing refuses
};

/// Reads and judges the profiles that these names mean, one after the other, and hands each on; nothing of a home is
/// kept. One that is refused is named on standard error and handed on all the same; a file that cannot be used is named
/// there and goes to `unusable` with the reason.
///
/// Returns the status of the program: kDone, kFindings if a profile is refused, kUnusable if a file cannot be used.
int for_each_judged_home(const std::vector<std::string>& names, Date on,
                         const std::function<void(const JudgedHome&)>& judged,
                         const std::function<void(const std::string& file, const std::string& reason)>& unusable);

}  // namespace ventfolio
