#include "project/files.hpp"

#include <stdlib.h>  // mkdtemp, of POSIX

#include <algorithm>
#include <fstream>
#include <iterator>
#include <sstream>
#include <stdexcept>

namespace ventfolio::project {

namespace fs = std::filesystem;

std::string contents(const fs::path& file) {
    std::ifstream stream{file, std::ios::binary};
    if (!stream) throw std::runtime_error{"cannot read " + file.string()};
    return {std::istreambuf_iterator<char>{stream}, {}};
}

void save(const fs::path& file, std::string_view bytes) {
    fs::create_directories(file.parent_path());
    std::ofstream stream{file, std::ios::binary};
    stream << bytes;
    if (!stream.flush()) throw std::runtime_error{"cannot write " + file.string()};
}

std::vector<fs::path> files_below(const fs::path& folder, const std::vector<std::string>& endings) {
    std::vector<fs::path> files;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator{folder})
        if (entry.is_regular_file() && std::ranges::find(endings, entry.path().extension().string()) != endings.end())
            files.push_back(entry.path());
    std::ranges::sort(files);
    return files;
}

std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines;
    std::istringstream stream{std::string{text}};
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

Scratch::Scratch() {
    std::string name = (fs::temp_directory_path() / "ventfolio-project-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error{"cannot make " + name};
    folder_ = name;
}

Scratch::~Scratch() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
}

}  // namespace ventfolio::project
