#include "packet/folder_writer.hpp"

#include <functional>

#include "packet/temporary_folder.hpp"

namespace ventfolio {
namespace {

std::size_t entries(const fs::path& folder) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator{folder}, fs::directory_iterator{}));
}

std::string cause_of(const FolderOrder& order) {
    try {
        write_folder(order);
    } catch (const FolderError& error) {
        return error.cause();
    }
    return {};
}

}  // namespace

TEST_CASE("a new folder is written for its owner only, with nothing beside it") {
    const TemporaryFolder home;
    const mode_t before = ::umask(0);  // the modes are ours, not those of a careful umask
    write_folder(order_for(home / "packet"));
    ::umask(before);
    check_written(home / "packet");
    CHECK(entries(home / "packet") == 3);
    CHECK(entries(home.path()) == 1);
}

TEST_CASE("a target may end in a slash, and folders above it are made for their owner only") {
    const TemporaryFolder home;
    write_folder(order_for(home.path() / "homes" / "V-0412" / "packet" / ""));
    check_written(home.path() / "homes" / "V-0412" / "packet");
    CHECK(mode_of(home / "homes") == 0700);
    CHECK(mode_of(home.path() / "homes" / "V-0412") == 0700);
}

TEST_CASE("an empty folder and the same packet are replaced") {
    const TemporaryFolder home;
    fs::create_directory(home / "packet");
    const ino_t empty = number_of(home / "packet");
    write_folder(order_for(home / "packet"));
    check_written(home / "packet");
    CHECK(number_of(home / "packet") != empty);

    put(home.path() / "packet" / "packet.pdf", "older bytes of the same revision");
    put(home.path() / "packet" / "bedside-card.pdf", "a sheet");
    const ino_t older = number_of(home / "packet");
    write_folder(order_for(home / "packet"));
    check_written(home / "packet");
    CHECK(number_of(home / "packet") != older);
    CHECK_FALSE(fs::exists(home.path() / "packet" / "bedside-card.pdf"));
    CHECK(entries(home.path()) == 1);
}

TEST_CASE("other files are carried over when one sheet is printed again") {
    const TemporaryFolder home;
    write_folder(order_for(home / "packet"));
    put(home.path() / "packet" / "bedside-card.pdf", "a sheet");
    const ino_t sheet = number_of(home.path() / "packet" / "bedside-card.pdf");
    FolderOrder order = order_for(home / "packet");
    const std::vector<FolderFile> one{{"wallet-card.pdf", "small"}, {"packet.json", manifest("V-0412", "R3") + "\n"}};
    order.files = one;
    order.other_files = OtherFiles::carry_over;
    write_folder(order);
    CHECK(bytes_of(home.path() / "packet" / "wallet-card.pdf") == "small");
    CHECK(bytes_of(home.path() / "packet" / "packet.json") == manifest("V-0412", "R3") + "\n");
    CHECK(bytes_of(home.path() / "packet" / "packet.pdf") == packet_files()[1].bytes);
    CHECK(bytes_of(home.path() / "packet" / "bedside-card.pdf") == "a sheet");
    CHECK(number_of(home.path() / "packet" / "bedside-card.pdf") == sheet);
    CHECK(entries(home / "packet") == 5);
    CHECK(entries(home.path()) == 1);
}

TEST_CASE("what must not be replaced is refused, and not one byte of it changes") {
    struct Row {
        const char* what;
        std::function<void(const fs::path&)> before;
        const char* cause;
    };
    const Row rows[] = {
        {"another revision", [](const fs::path& at) { put(at / "packet.json", manifest("V-0412", "R2")); },
         "holds revision R2; use update to replace it with R3"},
        {"another person", [](const fs::path& at) { put(at / "packet.json", manifest("V-0500", "R3")); },
         "holds the packet of another record number"},
        {"photographs", [](const fs::path& at) { put(at / "garden.jpg", "roses"); },
         "is not empty and holds no packet; choose another folder"},
        {"a hidden file", [](const fs::path& at) { put(at / ".notes", "mine"); },
         "is not empty and holds no packet; choose another folder"},
        {"a broken packet.json", [](const fs::path& at) { put(at / "packet.json", "{\"record_number\": \"V-0412\""); },
         "cannot be read as a packet; choose another folder"},
        {"a list for a packet.json", [](const fs::path& at) { put(at / "packet.json", "[\"V-0412\", \"R3\"]"); },
         "cannot be read as a packet; choose another folder"},
        {"a number for a revision",
         [](const fs::path& at) { put(at / "packet.json", R"({"record_number": "V-0412", "revision": 3})"); },
         "cannot be read as a packet; choose another folder"},
        {"a revision that would move the cursor",
         [](const fs::path& at) { put(at / "packet.json", R"({"record_number": "V-0412", "revision": "\u001b[2J"})"); },
         "holds another revision; use update to replace it with R3"},
        {"a packet.json that is a link",
         [](const fs::path& at) {
             put(at.parent_path() / "elsewhere.json", manifest("V-0412", "R3"));
             fs::create_directory(at);
             fs::create_symlink(at.parent_path() / "elsewhere.json", at / "packet.json");
         },
         "is not empty and holds no packet; choose another folder"},
        {"a file", [](const fs::path& at) { put(at, "a letter"); }, "is a file, not a folder"},
        {"a link to a folder",
         [](const fs::path& at) {
             fs::create_directory(at.parent_path() / "real");
             fs::create_directory_symlink(at.parent_path() / "real", at);
         },
         "is a link; name the folder itself"},
        {"a link to nowhere", [](const fs::path& at) { fs::create_symlink("nowhere", at); },
         "is a link; name the folder itself"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.what);
        const TemporaryFolder home;
        row.before(home / "packet");
        const auto before = snapshot(home.path());
        CHECK(cause_of(order_for(home / "packet")) == row.cause);
        CHECK(snapshot(home.path()) == before);
    }
}

TEST_CASE("a place that cannot be used is named with its reason") {
    const TemporaryFolder home;
    put(home / "letter", "a file");
    const auto before = snapshot(home.path());
    try {
        write_folder(order_for(home.path() / "letter" / "packet"));
        FAIL("a folder below a file was accepted");
    } catch (const FolderError& error) {
        CHECK(error.path() == home / "letter");
        CHECK(error.cause() == "is not a folder");
        CHECK(std::string{error.what()} == (home / "letter").string() + ": is not a folder");
    }
    for (const char* target : {".", "..", "/", ""})
        CHECK(cause_of(order_for(target)) == "give the folder a name of its own");
    for (const char* name : {"", ".", "..", "../packet.pdf", "/etc/motd", ".hidden", "a\nb"}) {
        CAPTURE(name);
        FolderOrder order = order_for(home / "packet");
        const std::vector<FolderFile> odd{{name, "x"}};
        order.files = odd;
        CHECK(cause_of(order) == "is not a plain file name");
    }
    FolderOrder twice = order_for(home / "packet");
    const std::vector<FolderFile> same{{"a.pdf", "1"}, {"a.pdf", "2"}};
    twice.files = same;
    CHECK(cause_of(twice) == "File exists");
    CHECK(snapshot(home.path()) == before);
}

TEST_CASE("a folder inside the old one cannot be carried over, and stays") {
    const TemporaryFolder home;
    write_folder(order_for(home / "packet"));
    put(home.path() / "packet" / "photos" / "hose.jpg", "blue");
    const auto before = snapshot(home.path());
    FolderOrder order = order_for(home / "packet");
    order.other_files = OtherFiles::carry_over;
    CHECK(cause_of(order) == "is not a file, and cannot be carried over");
    CHECK(snapshot(home.path()) == before);
}

}  // namespace ventfolio
