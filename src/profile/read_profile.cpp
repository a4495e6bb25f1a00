#include "profile/read_profile.hpp"

#include "profile/read_described.hpp"

namespace ventfolio {

ReadResult read_profile(const SourceText& source) {
    ReadResult result;
    result.findings = read_into(result.profile, source);
    return result;
}

}  // namespace ventfolio
