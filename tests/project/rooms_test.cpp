#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "project/files.hpp"

/// Data flows one way: a room uses rooms to its left only. CMake refuses a link the wrong way; an include needs no
/// link.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

const fs::path kSource = fs::path{VENTFOLIO_SOURCE_DIR} / "src";

std::vector<std::string> words_in(const std::string& text) {
    std::vector<std::string> words;
    const std::regex word{"[a-z_]+"};
    for (std::sregex_iterator at{text.begin(), text.end(), word}; at != std::sregex_iterator{}; ++at)
        words.push_back(at->str());
    return words;
}

std::string first_match(const std::string& text, const std::string& pattern) {
    std::smatch found;
    return std::regex_search(text, found, std::regex{pattern}) ? found[1].str() : "";
}

/// Left to right.
std::vector<std::string> rooms() {
    return words_in(first_match(contents(kSource / "CMakeLists.txt"), R"(foreach\(room IN ITEMS ([a-z ]+)\))"));
}

bool built(const std::string& room) { return fs::exists(kSource / room / "CMakeLists.txt"); }

/// Rooms that a room names in its CMake file.
std::vector<std::string> named_by(const std::string& room) {
    const std::string text = contents(kSource / room / "CMakeLists.txt");
    return words_in(first_match(text, R"(\n  USES ([a-z ]+))"));
}

/// A room, those that it names, and those that these name.
std::set<std::string> reached_from(const std::string& room) {
    std::set<std::string> reached{room};
    for (const std::string& next : named_by(room)) reached.merge(reached_from(next));
    return reached;
}

std::size_t place_of(const std::string& room) {
    const std::vector<std::string> all = rooms();
    return static_cast<std::size_t>(std::ranges::find(all, room) - all.begin());
}

TEST_CASE("every folder of the source is a room, and the rooms are those of the design") {
    CHECK(rooms() == std::vector<std::string>{"units", "profile", "calc", "rules", "sheets", "markup", "record",
                                              "layout", "pdf", "packet", "caseload", "cli"});
    for (const fs::directory_entry& entry : fs::directory_iterator{kSource})
        if (entry.is_directory()) {
            CAPTURE(entry.path());
            CHECK(place_of(entry.path().filename().string()) < rooms().size());
        }
}

TEST_CASE("a room names only rooms to its left") {
    std::size_t arrows = 0;
    for (const std::string& room : rooms()) {
        if (!built(room)) continue;
        for (const std::string& used : named_by(room)) {
            ++arrows;
            INFO(room, " uses ", used);
            CHECK(place_of(used) < place_of(room));
        }
    }
    CHECK(arrows >= 10);
}

TEST_CASE("a file includes only headers of its own room and of rooms that it may use") {
    const std::regex include{R"re(\n#include "([a-z]+)/[a-z_/]+\.hpp")re"};
    std::size_t includes = 0;
    for (const std::string& room : rooms()) {
        if (!built(room)) continue;
        const std::set<std::string> reached = reached_from(room);
        for (const fs::path& file : files_below(kSource / room, {".cpp", ".hpp"})) {
            const std::string text = "\n" + contents(file);
            for (std::sregex_iterator at{text.begin(), text.end(), include}; at != std::sregex_iterator{}; ++at) {
                ++includes;
                CAPTURE(file);
                CAPTURE((*at)[1].str());
                CHECK(reached.contains((*at)[1].str()));
            }
        }
    }
    CHECK(includes > 200);
}

TEST_CASE("the calculators know neither the profile nor the rules nor text") {
    const std::set<std::string> reached = reached_from("calc");
    CHECK(reached == std::set<std::string>{"calc", "units"});
}

}  // namespace
}  // namespace ventfolio::project
