#include "caseload/homes.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <filesystem>

#include "pdf/programs.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using trial::Ran;
using trial::Scratch;

namespace fs = std::filesystem;

namespace {

/// Files as the test names them: below its folder.
std::string found_in(const Scratch& folder, const std::vector<std::string>& names, std::string_view listed = {}) {
    std::vector<std::string> full;
    for (const std::string& name : names) full.push_back(name == "-" ? name : folder.path(name).string());
    std::vector<std::string> found;
    for (const std::string& file : find_homes(full, listed).files)
        found.push_back(with_replaced(file, folder.path("").string(), ""));
    return joined(found, " ");
}

}  // namespace

TEST_CASE("a folder means every profile below it, sorted, and nothing that only looks like one") {
    const Scratch folder;
    for (const char* name : {"homes/north/hidden/.git", "homes/south", "homes/DEMO-1", "homes/empty.yaml", "elsewhere"})
        fs::create_directories(folder.path(name));
    for (const char* file : {"homes/b.yaml", "homes/a.yaml", "homes/B.yaml", "homes/north/z.yaml", "homes/south/a.yaml",
                             "homes/notes.txt", "homes/.b.yaml", "homes/c.yml", "homes/north/hidden/.git/x.yaml",
                             "homes/DEMO-1/profile.yaml", "homes/DEMO-1/packet.json", "elsewhere/out.yaml"})
        folder.save(file, "");
    fs::create_symlink(folder.path("elsewhere/out.yaml"), folder.path("homes/link.yaml"));
    fs::create_directory_symlink(folder.path("elsewhere"), folder.path("homes/linked"));
    fs::create_directory_symlink(folder.path("homes"), folder.path("homes/north/loop"));
    CHECK(found_in(folder, {"homes"}) ==
          "homes/B.yaml homes/a.yaml homes/b.yaml homes/north/z.yaml homes/south/a.yaml");
    // A folder that is given by name is meant, whatever it is called, and so is a link that is given by name.
    CHECK(found_in(folder, {"homes/DEMO-1"}) == "homes/DEMO-1/profile.yaml");
    CHECK(found_in(folder, {"homes/linked"}) == "homes/linked/out.yaml");
    CHECK(found_in(folder, {"homes/link.yaml"}) == "homes/link.yaml");
}

TEST_CASE("names keep their order, and a file that is named twice is one home") {
    const Scratch folder;
    fs::create_directory(folder.path("homes"));
    folder.save("homes/a.yaml", "");
    folder.save("homes/b.yaml", "");
    CHECK(found_in(folder, {"homes/b.yaml", "homes"}) == "homes/b.yaml homes/a.yaml");
    CHECK(found_in(folder, {"homes/b.yaml", "homes/./b.yaml", "homes/../homes/b.yaml"}) == "homes/b.yaml");
    CHECK(found_in(folder, {"missing.yaml"}) == "missing.yaml");  // told when it is read
}

TEST_CASE("a list of names comes one a line, or with a NUL behind each") {
    struct Row {
        std::string_view list;
        std::vector<std::string> names;
    };
    using namespace std::string_view_literals;
    const Row rows[] = {
        {"", {}},
        {"\n", {}},
        {"a.yaml\nb.yaml\n", {"a.yaml", "b.yaml"}},
        {"a.yaml\nb.yaml", {"a.yaml", "b.yaml"}},
        {"a.yaml\r\nb c.yaml\r\n\r\n", {"a.yaml", "b c.yaml"}},  // a list that a spreadsheet wrote
        {"a.yaml\0line\nend.yaml\0"sv, {"a.yaml", "line\nend.yaml"}},
        {"-\n", {"-"}},  // in a list it is the name of a file
    };
    const std::vector<std::string> dash{"-"};
    for (const Row& row : rows) {
        CAPTURE(std::string{row.list});
        CHECK(find_homes(dash, row.list).files == row.names);
    }
}

TEST_CASE("a folder that cannot be read is named, and the others are found") {
    const Scratch folder;
    // PATH_MAX is 4096 bytes (linux/limits.h). What lies deeper cannot be opened by its path, not even by root, for
    // whom no mode closes a folder.
    folder.save("make.py",
                "import os\n"
                "os.mkdir('homes')\n"
                "os.chdir('homes')\n"
                "open('a.yaml', 'w').close()\n"
                "for level in range(17):\n"
                "    os.mkdir('0' * 250)\n"
                "    os.chdir('0' * 250)\n"
                "open('deep.yaml', 'w').close()\n");
    const Ran made = folder.run("/usr/bin/python3 make.py");
    REQUIRE_MESSAGE(made.status == 0, made.err);
    const std::vector<std::string> names{folder.path("homes").string()};
    const FoundHomes found = find_homes(names);
    CHECK(found.files == std::vector<std::string>{folder.path("homes/a.yaml").string()});
    REQUIRE(found.unusable.size() == 1);
    CHECK(found.unusable[0].name.starts_with(names[0] + "/000"));
    CHECK(found.unusable[0].reason == "cannot be read: File name too long");
}

TEST_CASE("a folder without a profile is named: somebody expects homes in it") {
    const Scratch folder;
    fs::create_directories(folder.path("homes/closed"));
    folder.save("homes/notes.txt", "");
    const std::vector<std::string> names{folder.path("homes").string()};
    const FoundHomes found = find_homes(names);
    CHECK(found.files.empty());
    REQUIRE(found.unusable.size() == 1);
    CHECK(found.unusable[0].name == names[0]);
    CHECK(found.unusable[0].reason == "holds no profile (*.yaml)");
}

TEST_CASE("a part of a caseload is read as K/N") {
    struct Row {
        const char* text;
        std::size_t number;  ///< 0: no part
        std::size_t of;
    };
    const Row rows[] = {
        {"1/1", 1, 1},
        {"2/8", 2, 8},
        {"8/8", 8, 8},
        {"0/8", 0, 0},
        {"9/8", 0, 0},
        {"1/0", 0, 0},
        {"1", 0, 0},
        {"/8", 0, 0},
        {"1/", 0, 0},
        {"-1/8", 0, 0},
        {"", 0, 0},
        {"1/8/8", 0, 0},
        {"1 / 8", 0, 0},
        {"1/8 ", 0, 0},
        {"+1/8", 0, 0},
        {"a/b", 0, 0},
        {"0x1/8", 0, 0},
        {"1.5/8", 0, 0},
        {"99999999999999999999/99999999999999999999", 0, 0},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.text});
        const auto shard = Shard::parse(row.text);
        REQUIRE(shard.has_value() == (row.number > 0));
        if (!shard) continue;
        CHECK(shard->number == row.number);
        CHECK(shard->of == row.of);
    }
}

TEST_CASE("each home is in one part, by the digest of its path, as sha256sum of GNU coreutils gives it") {
    const Scratch folder;
    for (const char* file : {"abc", "homes/a.yaml", "./homes/a.yaml", "homes/Zoë.yaml", "homes/a b.yaml", ""}) {
        CAPTURE(std::string{file});
        for (const std::size_t parts : {1U, 2U, 3U, 16U, 1000U}) {
            const Ran ran = folder.run(fmt::format(
                R"(printf %s '{}' | sha256sum | {{ read -r digest rest; echo $((0x${{digest%${{digest#????????}}}} % {} + 1)); }})",
                file, parts));
            REQUIRE(ran.status == 0);
            std::size_t holding = 0;
            for (std::size_t number = 1; number <= parts; ++number) {
                if (!Shard{number, parts}.holds(file)) continue;
                ++holding;
                CHECK(fmt::format("{}\n", number) == ran.out);
            }
            CHECK(holding == 1);
        }
    }
    CHECK(Shard{16, 16}.holds("abc"));  // FIPS 180-4, example for "abc": ba7816bf 8f01cfea …
}

TEST_CASE("the parts of a caseload are nearly alike in size") {
    std::vector<std::size_t> sizes(8);
    for (int home = 0; home < 8000; ++home)
        for (std::size_t part = 0; part < sizes.size(); ++part)
            if (Shard{part + 1, sizes.size()}.holds(fmt::format("caseload/home-{}.yaml", home))) ++sizes[part];
    // Binomial: 1000 a part on average, standard deviation 30; five of these either way.
    for (const std::size_t size : sizes) {
        CHECK(size > 850);
        CHECK(size < 1150);
    }
}
