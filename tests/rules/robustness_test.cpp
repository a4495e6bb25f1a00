#include <doctest/doctest.h>

#include <algorithm>

#include "edited_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using ventfolio::testing::demo_home;
using ventfolio::testing::edited;
using ventfolio::testing::judged;
using ventfolio::testing::paths_of;

namespace {

void check_findings(const std::vector<Finding>& findings) {
    for (const Finding& finding : findings) {
        CAPTURE(finding.rule);
        CHECK_MESSAGE(finding.message.find_first_of("{}") == std::string::npos, finding.message);
        REQUIRE(!finding.marks.empty());
        CHECK(std::ranges::all_of(finding.marks, [](const Mark& mark) { return mark.place.known(); }));
    }
}

/// Paths without those of the third and later items of a list, which are read and judged as the first two are.
std::vector<std::string> telling_paths(const std::string& text) {
    std::vector<std::string> paths = paths_of(text);
    std::erase_if(paths, [](const std::string& path) {
        return std::ranges::any_of(split(path, '.'), [](const std::string& step) {
            return step.find_first_not_of("0123456789") == std::string::npos && std::stoi(step) > 1;
        });
    });
    return paths;
}

}  // namespace

TEST_CASE("a home with any one thing taken out is judged without a hole in a message") {
    for (const char* home : {"adult-tracheostomy", "child-tracheostomy", "adult-mask"}) {
        const std::string text = demo_home(home);
        CAPTURE(home);
        for (const std::string& path : telling_paths(text)) {
            CAPTURE(path);
            check_findings(judged("home.yaml", edited(text, "remove: " + path), "2026-02-03").findings);
        }
    }
}

TEST_CASE("a home with any one answer unknown, off or none is judged without a hole in a message") {
    const std::string text = demo_home("adult-tracheostomy");
    constexpr const char* kWords[]{"unknown", "off", "none"};
    std::size_t turn = 0;
    for (const std::string& path : telling_paths(text)) {
        const char* word = kWords[turn++ % 3];
        CAPTURE(path);
        CAPTURE(word);
        check_findings(judged("home.yaml", edited(text, path + ": " + word), "2026-02-03").findings);
    }
}
