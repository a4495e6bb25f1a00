#include "program.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace ventfolio::testing {

namespace fs = std::filesystem;

Ran ventfolio_in(const Scratch& folder, std::string_view words, std::string_view environment) {
    return folder.run(fmt::format("{} '{}' {}", environment, VENTFOLIO_PROGRAM, words));
}

Ran validated_by(const Scratch& folder, std::string_view schema, std::string_view json) {
    folder.save("schema.json", ventfolio_in(folder, fmt::format("schema --of {}", schema)).out);
    folder.save("instance.json", json);
    folder.save("validate.py",
                "import json, sys, jsonschema\n"
                "schema = json.load(open('schema.json'))\n"
                "jsonschema.Draft202012Validator.check_schema(schema)\n"
                "faults = list(jsonschema.Draft202012Validator(schema).iter_errors(json.load(open('instance.json'))))\n"
                "for fault in faults: print(list(fault.absolute_path), fault.message)\n"
                "sys.exit(1 if faults else 0)\n");
    return folder.run("/usr/bin/python3 validate.py");
}

std::string profile_path(std::string_view home) {
    return fmt::format("{}/profiles/{}.yaml", VENTFOLIO_SOURCE_DIR, home);
}

std::string contents(const fs::path& file) {
    std::ifstream stream{file, std::ios::binary};
    REQUIRE_MESSAGE(stream.good(), file.string());
    return {std::istreambuf_iterator<char>{stream}, {}};
}

std::string state_of(const fs::path& folder) {
    std::vector<std::string> lines;
    for (const auto& entry : fs::recursive_directory_iterator{folder}) {
        struct stat status {};
        REQUIRE(::lstat(entry.path().c_str(), &status) == 0);
        lines.push_back(fmt::format("{} {:o} {} {}.{} {}", fs::relative(entry.path(), folder).string(), status.st_mode,
                                    status.st_ino, status.st_mtim.tv_sec, status.st_mtim.tv_nsec,
                                    entry.is_regular_file() ? contents(entry.path()) : std::string{}));
    }
    std::ranges::sort(lines);
    return fmt::format("{}", fmt::join(lines, "\n"));
}

std::string names_in(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator{folder}) names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return fmt::format("{}", fmt::join(names, " "));
}

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

}  // namespace ventfolio::testing
