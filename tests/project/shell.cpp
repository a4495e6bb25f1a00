#include "project/shell.hpp"

#include <fmt/format.h>
#include <sys/wait.h>

#include <cstdlib>
#include <stdexcept>

#include "project/files.hpp"

namespace ventfolio::project {

std::string quoted(const std::filesystem::path& word) {
    std::string text = "'";
    for (const char c : word.string()) text += c == '\'' ? "'\\''" : std::string(1, c);
    return text + "'";
}

Ran run_in(const std::filesystem::path& folder, std::string_view command) {
    const Scratch scratch;
    save(scratch.path("command"), command);
    const std::string line =
        fmt::format("cd {} && bash {} > {} 2> {} < /dev/null", quoted(folder), quoted(scratch.path("command")),
                    quoted(scratch.path("out")), quoted(scratch.path("err")));
    const int status = std::system(line.c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, contents(scratch.path("out")), contents(scratch.path("err"))};
}

Ran run_as_installed(const std::filesystem::path& program, const std::filesystem::path& folder,
                     std::string_view command) {
    return run_in(folder, fmt::format("export PATH={}:$PATH SOURCE_DATE_EPOCH=1770120000\n{}",
                                      quoted(program.parent_path()), command));
}

std::string output_of(const std::filesystem::path& folder, std::string_view command) {
    Ran ran = run_in(folder, command);
    if (ran.status != 0 || !ran.err.empty())
        throw std::runtime_error{fmt::format("{}: exit status {}\n{}", command, ran.status, ran.err)};
    return std::move(ran.out);
}

}  // namespace ventfolio::project
