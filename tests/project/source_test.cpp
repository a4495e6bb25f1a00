#include <doctest/doctest.h>

#include <filesystem>
#include <regex>

#include "project/files.hpp"

/// What must not appear in the source, each with the reason and what to use in its place.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

const fs::path kProject{VENTFOLIO_SOURCE_DIR};

struct Ban {
    const char* pattern;
    const char* allowed_below;  ///< a folder of src/, or nothing
    const char* reason;
    const char* example;  ///< a line that the pattern must find
};

constexpr Ban kBans[] = {
    {R"(#include\s*[<"]hpdf)", "pdf", "libharu has sharp edges: only src/pdf knows them", "#include <hpdf.h>"},
    {R"(\b(std|chrono)::time\(|\btime\((nullptr|NULL|0|&)|_clock::now|localtime|gmtime|mktime|strftime)", "cli",
     "the print date is a parameter: only src/cli reads the clock", "auto now = std::time(nullptr);"},
    {R"(\bgetenv\b|\benviron\b)", "cli", "only src/cli reads the environment", "std::getenv(\"HOME\")"},
    {R"(\bisatty\b)", "cli", "only src/cli looks at the terminal", "if (isatty(2)) {"},
    {R"(\bsetlocale\b|std::locale\b)", "", "numbers print alike everywhere: use fmt or from_chars",
     "setlocale(LC_ALL, \"\");"},
    {R"(\bs?rand\(|random_device|mt19937|default_random_engine)", "", "the same input gives the same bytes",
     "int x = rand();"},
    {R"(\bas<\s*(int|long|short|unsigned|float|double|bool|std::string|std::size_t|size_t)\b)", "",
     "yaml-cpp reads 010 as 8 and yes as true: read scalars as text, numbers with from_chars", "node.as<int>()"},
    {R"(\b(ato[ifl]|strto(d|f|l|ul|ll)|sscanf|sto[dfil])\()", "",
     "these obey the locale or skip blanks: use from_chars", "atoi(text)"},
    {R"(std::regex\b|#include <regex>)", "", "too slow and deep in recursion for hostile input: write the loop",
     "std::regex pattern;"},
    {R"(HPDF_Page_(TextRect|MeasureText)|HPDF_ResetError)", "", "libharu cuts inside letters, and its errors are final",
     "HPDF_ResetError(pdf);"},
    {R"(\busing namespace std;)", "", "name what is used", "using namespace std;"},
    {R"(/(hom[e]|roo[t]|tm[p]|wor[k])/)", "", "no folder of anyone's machine belongs in the source",
     "read(\"/ho"
     "me/me/fonts\")"},
};

/// A line without its comment.
std::string code_of(const std::string& line) {
    const std::size_t comment = line.find("//");
    return comment == std::string::npos || (comment > 0 && line[comment - 1] == ':') ? line : line.substr(0, comment);
}

TEST_CASE("the source holds nothing that must not appear") {
    for (const Ban& ban : kBans) {
        CAPTURE(std::string{ban.pattern});
        const std::regex pattern{ban.pattern};
        REQUIRE(std::regex_search(ban.example, pattern));
        for (const fs::path& file : files_below(kProject / "src", {".cpp", ".hpp"})) {
            const std::string path = fs::relative(file, kProject / "src").string();
            if (*ban.allowed_below != '\0' && path.starts_with(std::string{ban.allowed_below} + "/")) continue;
            std::size_t number = 0;
            for (const std::string& line : lines_of(contents(file))) {
                ++number;
                if (!std::regex_search(code_of(line), pattern)) continue;
                FAIL_CHECK("src/" << path << ":" << number << ": " << line << "\n" << std::string{ban.reason});
            }
        }
    }
}

TEST_CASE("no folder of anyone's machine stands in templates, profiles or documents") {
    const std::regex pattern{R"(/(hom[e]|roo[t]|tm[p]|wor[k])/)"};
    std::vector<fs::path> files{kProject / "README.md", kProject / "DEVELOPERS.md", kProject / "CMakeLists.txt"};
    for (const char* folder : {"templates", "profiles", "cmake", "src"})
        for (const fs::path& file : files_below(kProject / folder, {".md", ".yaml", ".txt", ".cmake"}))
            files.push_back(file);
    CHECK(files.size() > 20);
    for (const fs::path& file : files) {
        CAPTURE(file);
        CHECK(!std::regex_search(contents(file), pattern));
    }
}

TEST_CASE("emergency numbers and paper sizes stand in regions, not in code or in sheets") {
    // Whole numbers only: 1.112 or DEMO-911 are something else.
    const std::regex number{R"((^|[^\w.-])(911|999|112)([^\w.-]|$))"};
    REQUIRE(std::regex_search("Call 911 now", number));
    // In code only what could be printed: a breath rate of 112 is none.
    const std::regex quoted_number{R"re("(|[^"]*[^\w.-])(911|999|112)([^\w.-][^"]*|)")re"};
    REQUIRE(std::regex_search("say(\"Call 911 now\")", quoted_number));
    REQUIRE(std::regex_search("number = \"911\";", quoted_number));
    const std::regex paper{R"(\bA4\b|8[.,]5 ?(x|in)|\bUS Letter\b)"};
    REQUIRE(std::regex_search("on A4 paper", paper));
    std::size_t read = 0;
    for (const fs::path& file : files_below(kProject / "src", {".cpp", ".hpp"})) {
        CAPTURE(file);
        for (const std::string& line : lines_of(contents(file)))
            CHECK(!std::regex_search(code_of(line), quoted_number));
        ++read;
    }
    for (const fs::path& file : files_below(kProject / "templates", {".md", ".yaml"})) {
        if (file.parent_path().filename() == "regions") continue;
        CAPTURE(file);
        CHECK(!std::regex_search(contents(file), number));
        // The print slip of a packet names the paper, which is a word then.
        if (file.extension() == ".md") CHECK(!std::regex_search(contents(file), paper));
        ++read;
    }
    CHECK(read > 300);
}

/// What a file includes first; empty if it includes nothing.
std::string first_include(const fs::path& file) {
    for (const std::string& line : lines_of(contents(file))) {
        if (!line.starts_with("#include ")) continue;
        const std::size_t begin = line.find_first_of("\"<") + 1;
        return line.substr(begin, line.find_first_of("\">", begin) - begin);
    }
    return {};
}

// So that compiling the source file proves that its header compiles alone.
TEST_CASE("a source file includes its own header first") {
    std::size_t pairs = 0;
    for (const fs::path& header : files_below(kProject / "src", {".hpp"})) {
        const fs::path source = fs::path{header}.replace_extension(".cpp");
        if (!fs::exists(source)) continue;
        ++pairs;
        CAPTURE(source);
        CHECK(first_include(source) == fs::relative(header, kProject / "src").string());
    }
    CHECK(pairs > 200);
}

TEST_CASE("every header says that it is read once") {
    for (const fs::path& file : files_below(kProject / "src", {".hpp"})) {
        CAPTURE(file);
        CHECK(contents(file).find("#pragma once") != std::string::npos);
    }
}

}  // namespace
}  // namespace ventfolio::project
