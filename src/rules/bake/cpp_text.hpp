#pragma once

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

/// A text as a literal of C++.
inline std::string literal(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        if (c == '\n')
            out += "\\n";
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
