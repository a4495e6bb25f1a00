#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <sstream>

#include "pdf/programs.hpp"

/// The archive that cpack makes. What belongs into it is asked of others: the dynamic loader (ld.so(8)) says which
/// libraries the built program needs, dpkg which package brought a file.
namespace {

namespace fs = std::filesystem;
using ventfolio::trial::Ran;
using ventfolio::trial::Scratch;
using Names = std::set<std::string>;

std::string contents(const fs::path& file) {
    std::ifstream stream{file, std::ios::binary};
    REQUIRE_MESSAGE(stream.good(), file.string());
    return {std::istreambuf_iterator<char>{stream}, {}};
}

std::string output_of(const Scratch& scratch, const std::string& command) {
    const Ran ran = scratch.run(command);
    REQUIRE_MESSAGE(ran.status == 0, command << "\n" << ran.err);
    return ran.out;
}

Names lines_of(const std::string& text) {
    Names lines;
    std::istringstream stream{text};
    for (std::string line; std::getline(stream, line);) lines.insert(line);
    return lines;
}

Names names_in(const fs::path& folder) {
    Names names;
    for (const auto& entry : fs::directory_iterator{folder}) names.insert(entry.path().filename().string());
    return names;
}

struct Library {
    std::string name;
    std::string path;
    std::string package;  ///< the Debian package that brought it; empty if none did
};

/// A file in /usr/lib may have been packed as one in /lib, and the other way round.
std::string below_usr(const std::string& path) { return path.starts_with("/usr/") ? path.substr(4) : path; }

/// Asks dpkg once: each question takes it a tenth of a second. A line of its answer is "PACKAGE:amd64: PATH".
void find_packages(const Scratch& scratch, std::vector<Library>& libraries) {
    std::string paths;
    for (const Library& library : libraries) paths += fmt::format(" '{0}' '/usr{0}'", below_usr(library.path));
    for (const std::string& line : lines_of(scratch.run("dpkg-query --search" + paths).out))
        for (Library& library : libraries)
            if (below_usr(line.substr(line.rfind(' ') + 1)) == below_usr(library.path))
                library.package = line.substr(0, line.find(':'));
}

/// What the loader loads with a program, without running it.
std::vector<Library> loaded_with(const Scratch& scratch, const fs::path& program) {
    const std::string traced =
        output_of(scratch, fmt::format("env -i LD_TRACE_LOADED_OBJECTS=1 '{}'", program.string()));
    std::vector<Library> libraries;
    const std::regex line{R"(\s(\S+) => (.+) \(0x)"};
    for (std::sregex_iterator at{traced.begin(), traced.end(), line}; at != std::sregex_iterator{}; ++at)
        libraries.push_back({(*at)[1], (*at)[2], {}});
    REQUIRE(libraries.size() > 10);
    find_packages(scratch, libraries);
    return libraries;
}

/// Names of the libraries that the built program needs, and the packages that brought them here; not the C library's.
struct Needed {
    Names libraries;
    Names packages;
};

Needed needed_by_the_program(const Scratch& scratch) {
    Needed needed;
    for (const auto& [name, path, package] : loaded_with(scratch, VENTFOLIO_PROGRAM)) {
        REQUIRE_MESSAGE(package != "", path);
        if (package == "libc6") continue;
        needed.libraries.insert(name);
        needed.packages.insert(package);
    }
    return needed;
}

struct Archive {
    Scratch scratch;
    std::string top;  ///< the one folder at its head
    fs::path root;    ///< where that is unpacked

    Archive() {
        output_of(scratch, fmt::format("'{}' -G TGZ -B packed --config '{}/CPackConfig.cmake'", VENTFOLIO_CPACK,
                                       VENTFOLIO_BINARY_DIR));
        for (const std::string& name : names_in(scratch.path("packed")))
            if (name.ends_with(".tar.gz")) top = name.substr(0, name.size() - 7);
        REQUIRE(top != "");
        fs::create_directory(scratch.path("elsewhere"));
        output_of(scratch, fmt::format("tar -xzf 'packed/{}.tar.gz' -C elsewhere", top));
        root = scratch.path("elsewhere") / top;
    }

    Names files() const {
        Names files;
        for (const auto& entry : fs::recursive_directory_iterator{root})
            if (!entry.is_directory()) files.insert(fs::relative(entry.path(), root).string());
        return files;
    }
};

/// Made once for all tests: compressing takes seconds.
const Archive& archive_of_this_build() {
    static const Archive archive;
    return archive;
}

}  // namespace

TEST_CASE("the archive holds the program, its libraries with their licences, and nothing else") {
    const Archive& archive = archive_of_this_build();
    const Needed needed = needed_by_the_program(archive.scratch);
    const fs::path licences = archive.root / "share/doc/ventfolio/licenses";

    Names expected{"bin/ventfolio",
                   "share/bash-completion/completions/ventfolio",
                   "share/doc/ventfolio/copyright",
                   "share/doc/ventfolio/licenses/LIBRARIES",
                   "share/man/man1/ventfolio.1",
                   "share/man/man5/ventfolio-profile.5",
                   "share/man/man7/ventfolio-rules.7",
                   "share/zsh/site-functions/_ventfolio"};
    for (const std::string& library : needed.libraries) expected.insert("lib/ventfolio/" + library);
    Names packages = needed.packages;
    packages.insert({"libcli11-dev", "libkainjow-mustache-dev", "nlohmann-json3-dev"});  // headers, compiled in
    for (const std::string& package : packages) {
        expected.insert("share/doc/ventfolio/licenses/" + package);
        // Where Debian keeps the licence of a package: Debian Policy 12.5.
        const std::string licence = contents(fs::path{"/usr/share/doc"} / package / "copyright");
        CHECK_MESSAGE(contents(licences / package) == licence, package);
        const std::regex common{"/usr/share/common-licenses/([A-Za-z0-9.-]*[A-Za-z0-9])"};
        for (std::sregex_iterator at{licence.begin(), licence.end(), common}; at != std::sregex_iterator{}; ++at)
            expected.insert("share/doc/ventfolio/licenses/common-licenses/" + (*at)[1].str());
    }
    for (const std::string& home : names_in(fs::path{VENTFOLIO_SOURCE_DIR} / "profiles")) {
        expected.insert("share/ventfolio/profiles/" + home);
        CHECK(contents(archive.root / "share/ventfolio/profiles" / home) ==
              contents(fs::path{VENTFOLIO_SOURCE_DIR} / "profiles" / home));
    }
    const Names found = archive.files();
    for (const std::string& file : expected) CHECK_MESSAGE(found.contains(file), "missing: " << file);
    for (const std::string& file : found) CHECK_MESSAGE(expected.contains(file), "not expected: " << file);

    for (const std::string& text : names_in(licences / "common-licenses"))
        CHECK(contents(licences / "common-licenses" / text) == contents(fs::path{"/usr/share/common-licenses"} / text));
    const std::string table = contents(licences / "LIBRARIES");
    for (const std::string& library : needed.libraries)
        CHECK_MESSAGE(table.find("\n" + library + " ") != std::string::npos, library);
    const std::string copyright = contents(archive.root / "share/doc/ventfolio/copyright");
    for (const char* words :
         {"MIT License", "SIL OPEN FONT LICENSE", "libcli11-dev", "libkainjow-mustache-dev", "nlohmann-json3-dev"})
        CHECK_MESSAGE(copyright.find(words) != std::string::npos, std::string{words});
}

TEST_CASE("the archive unpacks into one folder, to plain files that their owner alone may change") {
    const Archive& archive = archive_of_this_build();
    const std::string listed =
        output_of(archive.scratch, fmt::format("tar --list --verbose --file 'packed/{}.tar.gz'", archive.top));
    for (const std::string& line : lines_of(listed)) {
        CAPTURE(line);
        CHECK((line.starts_with("-rw-r--r-- ") || line.starts_with("-rwxr-xr-x ") || line.starts_with("drwxr-xr-x ")));
        CHECK(line.find(" " + archive.top + "/") != std::string::npos);
        CHECK(line.find("..") == std::string::npos);
    }
}

TEST_CASE("wherever the archive is unpacked, the program runs with its own libraries and an empty environment") {
    const Archive& archive = archive_of_this_build();
    const fs::path moved = archive.scratch.path("a place with blanks");
    output_of(archive.scratch, fmt::format("cp -a '{}' '{}'", archive.root.string(), moved.string()));
    for (const auto& [name, path, package] : loaded_with(archive.scratch, moved / "bin/ventfolio")) {
        CAPTURE(name);
        const bool own = fs::path{path}.lexically_normal() == moved / "lib/ventfolio" / name;
        CHECK_MESSAGE((own || package == "libc6"), path);
    }
    const std::string version =
        output_of(archive.scratch, fmt::format("env -i '{}' --version", (moved / "bin/ventfolio").string()));
    CHECK(archive.top.starts_with("ventfolio-" + version.substr(10, version.size() - 11) + "-linux-"));
}
