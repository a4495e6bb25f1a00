#pragma once

#include <string>
#include <string_view>

namespace ventfolio {

/// What a fault of the YAML library means to someone who fills in a profile.
struct YamlFault {
    std::string rule;
    std::string message;
    std::string label;
    std::string to_do;
};

/// From the library's own words (without position), for example "illegal map value".
YamlFault explained(std::string_view library_message);

}  // namespace ventfolio
