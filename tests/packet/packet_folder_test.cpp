#include "packet/packet_folder.hpp"

#include <cerrno>
#include <functional>
#include <system_error>

#include "packet/chain.hpp"
#include "packet/record_home.hpp"
#include "packet/temporary_folder.hpp"

namespace ventfolio {
namespace {

PacketRecord record(const char* revision, const std::optional<PacketRecord::Link>& follows = std::nullopt) {
    PacketRecord one;
    one.record_number = "V-0412";
    one.revision = revision;
    one.effective = "2026-01-12 10:00";
    one.printed_on = "2026-02-03";
    one.made = {"0.1.0", std::string(64, 'a'), "en", "us", "letter", false};
    one.follows = follows;
    RecordedSheet card;
    card.name = "bedside-card";
    card.title = "Bedside card";
    card.code = "K7M-2QD";
    card.revision = revision;
    card.printed_on = "2026-02-03";
    card.pages = 2;
    card.file = "packet.pdf";
    card.folder = ".";
    one.sheets = {card};
    return one;
}

void put_packet(const fs::path& folder, const PacketRecord& packet) {
    std::vector<FolderFile> files{{"packet.pdf", "%PDF of " + packet.revision}};
    add_record(files, packet, {"home.yaml", "record_number: V-0412\n"});
    write_folder({.target = folder,
                  .record_number = packet.record_number,
                  .revision = packet.revision,
                  .files = files,
                  .other_files = OtherFiles::leave_behind});
}

/// R1, R2 and R3 of a home, each made from the one before, in folders beside each other.
void put_chain(const fs::path& home) {
    put_packet(home / "R1", record("R1"));
    for (const auto& [before, now] : {std::pair{"R1", "R2"}, std::pair{"R2", "R3"}}) {
        const PacketFolder from = read_packet_folder(home / before);
        put_packet(home / now,
                   record(now, PacketRecord::Link{seen_from(home / before, home / now), before, from.checksums}));
    }
}

/// Brings SHA256SUMS of a folder up to date, as somebody would who covers an edit.
void sum_anew(const fs::path& folder) {
    std::vector<Checksum> checksums;
    for (const auto& entry : fs::directory_iterator{folder})
        if (entry.path().filename() != kChecksumFile)
            checksums.push_back(checksum_of(entry.path().filename().string(), bytes_of(entry)));
    put(folder / kChecksumFile, checksum_list(checksums));
}

std::string all(const std::vector<FolderError>& faults, const fs::path& below) {
    std::string text;
    for (const FolderError& fault : faults)
        text += fault.path().lexically_relative(below).string() + ": " + fault.cause() + "\n";
    return text;
}

/// The disk from which reading fails.
class UnreadableFile : public FileSystem {
  public:
    explicit UnreadableFile(std::string name) : name_{std::move(name)} {}
    std::optional<std::string> read_file(const Descriptor& folder, const std::string& name, std::size_t most) override {
        if (name != name_) return FileSystem::read_file(folder, name, most);
        fired = true;
        throw std::system_error{EIO, std::generic_category(), "read"};
    }
    bool fired = false;

  private:
    std::string name_;
};

}  // namespace

TEST_CASE("a packet is read back as it was written, with the digest of its checksums") {
    const TemporaryFolder home;
    put_packet(home / "R1", record("R1"));
    const PacketFolder packet = read_packet_folder(home / "R1");
    CHECK((packet.record == record("R1")));
    CHECK(packet.faults.empty());
    CHECK(packet.files.size() == 3);
    CHECK(packet.profile.text == "record_number: V-0412\n");
    CHECK(packet.checksums.size() == 64);
    // A link to the folder is a way to name it.
    fs::create_directory_symlink(home / "R1", home / "newest");
    CHECK(read_packet_folder(home / "newest").checksums == packet.checksums);
}

TEST_CASE("what cannot be relied on is no packet, and the message names the file") {
    struct Row {
        const char* what;
        std::function<void(const fs::path&)> damage;
        const char* file;
        const char* cause;
    };
    const Row rows[] = {
        {"nothing there", [](const fs::path& f) { fs::remove_all(f); }, "", "No such file"},
        {"another thing", [](const fs::path& f) { fs::remove_all(f), put(f, "text"); }, "", "Not a directory"},
        {"an empty folder", [](const fs::path& f) { fs::remove_all(f), fs::create_directory(f); }, "SHA256SUMS",
         "is missing"},
        {"the list is missing", [](const fs::path& f) { fs::remove(f / "SHA256SUMS"); }, "SHA256SUMS",
         "no whole packet"},
        {"the list is cut off",
         [](const fs::path& f) { fs::resize_file(f / "SHA256SUMS", fs::file_size(f / "SHA256SUMS") - 5); },
         "SHA256SUMS", "not a list of checksums"},
        {"the record is missing", [](const fs::path& f) { fs::remove(f / "packet.json"); }, "packet.json",
         "is missing"},
        {"the record is edited",
         [](const fs::path& f) {
             std::string text = bytes_of(f / "packet.json");
             put(f / "packet.json", text.replace(text.find("K7M-2QD"), 7, "K7M-2QE"));
         },
         "packet.json", "was changed after it was written"},
        {"the record is a half, and its checksum was made anew",
         [](const fs::path& f) { fs::resize_file(f / "packet.json", 200), sum_anew(f); }, "packet.json",
         "cannot be read"},
        {"the record is not in the list",
         [](const fs::path& f) {
             const auto list = *read_checksum_list(bytes_of(f / "SHA256SUMS"));
             put(f / "SHA256SUMS", checksum_list({list.at(1), list.at(2)}));
         },
         "SHA256SUMS", "does not name packet.json"},
        {"the record is a link",
         [](const fs::path& f) {
             fs::rename(f / "packet.json", f / "other.json");
             fs::create_symlink("other.json", f / "packet.json");
         },
         "packet.json", "symbolic link"},
        {"the record is a folder",
         [](const fs::path& f) { fs::remove(f / "packet.json"), fs::create_directory(f / "packet.json"); },
         "packet.json", ""},
    };
    for (const Row& row : rows) {
        CAPTURE(row.what);
        const TemporaryFolder home;
        put_packet(home / "R1", record("R1"));
        row.damage(home / "R1");
        try {
            read_packet_folder(home / "R1");
            FAIL_CHECK("it was read");
        } catch (const FolderError& error) {
            CAPTURE(error.what());
            CHECK(error.path() == (*row.file == '\0' ? home / "R1" : home / "R1" / row.file));
            CHECK(error.cause().find(row.cause) != std::string::npos);
        }
    }
}

TEST_CASE("a file beside the record that is missing or was changed is named, and the codes are still known") {
    const TemporaryFolder home;
    put_packet(home / "R1", record("R1"));
    fs::remove(home / "R1" / "packet.pdf");
    put(home / "R1" / "profile.yaml", "record_number: V-0413\n");
    put(home / "R1" / "note.txt", "a note of the therapist, which nobody minds");
    const PacketFolder packet = read_packet_folder(home / "R1");
    CHECK(all(packet.faults, home.path()) ==
          "R1/packet.pdf: is missing\nR1/profile.yaml: was changed after it was written\n");
    CHECK(packet.record.sheets.size() == 1);
    // A list from which somebody took the lines does not hide it.
    const auto list = *read_checksum_list(bytes_of(home / "R1" / "SHA256SUMS"));
    put(home / "R1" / "SHA256SUMS", checksum_list({list.at(0)}));
    REQUIRE(list.at(0).name == "packet.json");
    CHECK(all(read_packet_folder(home / "R1").faults, home.path()) ==
          "R1/packet.pdf: does not stand in SHA256SUMS\nR1/profile.yaml: does not stand in SHA256SUMS\n");
}

TEST_CASE("a disk that fails while a packet is read says so with the file") {
    for (const char* name : {"SHA256SUMS", "packet.json", "packet.pdf", "profile.yaml"}) {
        CAPTURE(name);
        const TemporaryFolder home;
        put_packet(home / "R1", record("R1"));
        UnreadableFile disk{name};
        try {
            read_packet_folder(home / "R1", disk);
            FAIL_CHECK("it was read");
        } catch (const FolderError& error) {
            CHECK(error.path() == home / "R1" / name);
            CHECK(error.cause() == "Input/output error");
        }
        CHECK(disk.fired);
    }
}

TEST_CASE("a chain of packets holds, wherever the folders are moved together") {
    const TemporaryFolder home;
    put_chain(home.path());
    CHECK(chain_faults(read_packet_folder(home / "R3")).empty());
    CHECK(read_packet_folder(home / "R3").record.follows->folder == "../R2");
    fs::create_directory(home / "archive");
    for (const char* name : {"R1", "R2", "R3"}) fs::rename(home / name, home / "archive" / name);
    CHECK(chain_faults(read_packet_folder(home / "archive" / "R3")).empty());
}

TEST_CASE("a folder is named from another one without the path of the machine, there already or not") {
    const TemporaryFolder home;
    const fs::path was = fs::current_path();
    fs::current_path(home.path());
    fs::create_directories("R1");
    const std::string beside = seen_from("R1", "R2");
    const std::string below = seen_from("R1", "later/deep/R2");
    fs::current_path(was);
    CHECK(beside == "../R1");
    CHECK(below == "../../../R1");
    CHECK(seen_from(home / "R1", home / "R2") == "../R1");
}

TEST_CASE("a broken or edited link of the chain is named with its file") {
    struct Row {
        const char* what;
        std::function<void(const fs::path&)> damage;
        const char* faults;
    };
    const Row rows[] = {
        {"the first folder is gone", [](const fs::path& h) { fs::remove_all(h / "R1"); },
         "R1: No such file or directory (R2 was made from R1, which is in it)\n"},
        {"a PDF of the second is gone", [](const fs::path& h) { fs::remove(h / "R2/packet.pdf"); },
         "R2/packet.pdf: is missing\n"},
        {"a profile of the first is edited", [](const fs::path& h) { put(h / "R1/profile.yaml", "x: 1\n"); },
         "R1/profile.yaml: was changed after it was written\n"},
        {"the same, covered by new checksums",
         [](const fs::path& h) { put(h / "R1/profile.yaml", "x: 1\n"), sum_anew(h / "R1"); },
         "R1/SHA256SUMS: was changed after R2 was made from it\n"},
        {"a record is edited",
         [](const fs::path& h) { put(h / "R2/packet.json", bytes_of(h / "R2/packet.json") + " "); },
         "R2/packet.json: was changed after it was written, so its codes cannot be relied on; restore it from a copy "
         "(R3 was made from R2, which "
         "is "
         "in it)\n"},
        {"two faults", [](const fs::path& h) { fs::remove(h / "R2/packet.pdf"), put(h / "R1/profile.yaml", "x: 1\n"); },
         "R2/packet.pdf: is missing\nR1/profile.yaml: was changed after it was written\n"},
        {"another home in its place",
         [](const fs::path& h) {
             fs::remove_all(h / "R1");
             PacketRecord other = record("R1");
             other.record_number = "V-0099";
             put_packet(h / "R1", other);
         },
         "R1: holds the packet of another record number\n"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.what);
        const TemporaryFolder home;
        put_chain(home.path());
        row.damage(home.path());
        CHECK(all(chain_faults(read_packet_folder(home / "R3")), home.path()) == row.faults);
    }
}

TEST_CASE("an old packet knows the one beside it that follows it") {
    const TemporaryFolder home;
    put_chain(home.path());
    const std::vector<fs::path> after_first = successors(read_packet_folder(home / "R1"));
    REQUIRE(after_first.size() == 1);
    CHECK(after_first.front().filename() == "R2");
    CHECK(successors(read_packet_folder(home / "R3")).empty());
    put(home / "R2" / "packet.json", "{");
    CHECK(successors(read_packet_folder(home / "R1")).empty());
}

}  // namespace ventfolio
