#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace bake {

/// A name of the book as a name of C++.
inline std::string identifier(std::string name) {
    std::ranges::replace(name, '-', '_');
    return name;
}

/// A text as a literal of C++. Any byte may stand in it; three octal digits never run into a digit that follows.
inline std::string literal(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '\n')
            out += "\\n";
        else if (byte < 0x20 || byte >= 0x7F)
            out += fmt::format("\\{:03o}", byte);
        else if (c == '"' || c == '\\')
            out += std::string{'\\', c};
        else
            out += c;
    }
    return out + "\"";
}

inline std::string literals(const std::vector<std::string>& texts) {
    std::string out;
    for (const std::string& text : texts) out += literal(text) + ", ";
    return out;
}

}  // namespace bake
