// usage: write_manual FOLDER
//
// Writes the manual pages and the completions of the shells, as the build installs them.

#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>

#include "cli/command_line.hpp"
#include "cli/manual/completions.hpp"
#include "cli/manual/pages.hpp"

namespace {

void write(const std::filesystem::path& file, const std::string& text) {
    std::ofstream stream{file, std::ios::binary};
    stream << text;
    if (!stream.flush()) throw std::runtime_error{"cannot write " + file.string()};
}

}  // namespace

int main(int count, char** words) {
    try {
        if (count != 2) throw std::runtime_error{"usage: write_manual FOLDER"};
        const std::filesystem::path folder{words[1]};
        std::filesystem::create_directories(folder);
        const ventfolio::CommandLine line;
        write(folder / "ventfolio.1", ventfolio::manual_of_commands(line.app()));
        write(folder / "ventfolio-profile.5", ventfolio::manual_of_profile());
        write(folder / "ventfolio-rules.7", ventfolio::manual_of_rules());
        write(folder / "ventfolio.bash", ventfolio::bash_completion(line.app()));
        write(folder / "_ventfolio", ventfolio::zsh_completion(line.app()));
        return 0;
    } catch (const std::exception& fault) {
        std::fprintf(stderr, "write_manual: %s\n", fault.what());
        return 1;
    }
}
