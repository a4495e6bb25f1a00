#pragma once

#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>

namespace bake {

/// Writes a file anew. Throws std::runtime_error, with its name, where that fails.
inline void write_file(const std::filesystem::path& path, const std::string& text) {
    std::ofstream file{path, std::ios::binary};
    file << text;
    if (!file.flush()) throw std::runtime_error{"cannot write " + path.string()};
}

}  // namespace bake
