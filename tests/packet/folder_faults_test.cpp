#include <algorithm>
#include <cerrno>
#include <functional>
#include <system_error>
#include <utility>

#include "packet/folder_writer.hpp"
#include "packet/temporary_folder.hpp"

namespace ventfolio {
namespace {

/// A disk on which the call with one number fails; every other call is real.
class FailingFileSystem : public FileSystem {
  public:
    FailingFileSystem(int failing_call, int reason) : failing_call_{failing_call}, reason_{reason} {}

    bool has_failed() const { return failed_; }
    const std::string& failed_in() const { return failed_in_; }

    std::string make_staging_folder(const fs::path& parent) override {
        count("make_staging_folder");
        return FileSystem::make_staging_folder(parent);
    }
    void make_folder(const fs::path& folder) override {
        count("make_folder");
        FileSystem::make_folder(folder);
    }
    Descriptor create_file(const Descriptor& folder, const std::string& name) override {
        count("create_file");
        return FileSystem::create_file(folder, name);
    }
    std::size_t write_some(const Descriptor& file, std::string_view bytes) override {
        count("write_some");
        return FileSystem::write_some(file, bytes.substr(0, 100'000));  // a disk may take less than it is given
    }
    void flush(const Descriptor& file_or_folder) override {
        count("flush");
        FileSystem::flush(file_or_folder);
    }
    void link(const Descriptor& from, const Descriptor& to, const std::string& name) override {
        count("link");
        FileSystem::link(from, to, name);
    }
    void rename_to_new(const Descriptor& folder, const std::string& from, const std::string& to) override {
        count("rename_to_new");
        FileSystem::rename_to_new(folder, from, to);
    }
    void exchange(const Descriptor& folder, const std::string& one, const std::string& other) override {
        count("exchange");
        FileSystem::exchange(folder, one, other);
    }
    void remove_folder(const fs::path& folder) override {
        count("remove_folder");
        FileSystem::remove_folder(folder);
    }

  private:
    void count(const char* call) {
        if (calls_++ != failing_call_) return;
        failed_ = true;
        failed_in_ = call;
        throw std::system_error{reason_, std::generic_category(), call};
    }

    int failing_call_;
    int reason_;
    int calls_ = 0;
    bool failed_ = false;
    std::string failed_in_;
};

using Prepare = std::function<FolderOrder(const fs::path&)>;

/// Fails each call in turn until none is left to fail; returns the calls that were seen to fail.
std::vector<std::string> fail_each_call(const Prepare& prepare) {
    std::vector<std::string> failed;
    for (int call = 0; call < 100; ++call) {
        const TemporaryFolder home;
        const FolderOrder order = prepare(home.path());
        const auto before = snapshot(home.path());
        FailingFileSystem disk{call, ENOSPC};
        CAPTURE(call);
        try {
            write_folder(order, disk);
            check_written(order.target);
            REQUIRE_FALSE(disk.has_failed());
            return failed;
        } catch (const FolderError& error) {
            REQUIRE(disk.has_failed());
            CAPTURE(disk.failed_in());
            failed.push_back(disk.failed_in());
            CHECK(error.cause().find("No space left on device") != std::string::npos);
            if (disk.failed_in() == "remove_folder")
                check_written(order.target);
            else
                CHECK(snapshot(home.path()) == before);
        }
    }
    FAIL("the folder was never written");
    return failed;
}

std::size_t count(const std::vector<std::string>& calls, const std::string& name) {
    return static_cast<std::size_t>(std::ranges::count(calls, name));
}

}  // namespace

TEST_CASE("whichever call fails, a new folder does not come to be and nothing is left") {
    const auto failed = fail_each_call([](const fs::path& home) { return order_for(home / "homes" / "packet"); });
    CHECK(count(failed, "make_folder") == 1);
    CHECK(count(failed, "create_file") == 3);
    CHECK(count(failed, "write_some") >= 4);
    CHECK(count(failed, "flush") == 6);  // the folder above, three files, the folder, its place
    CHECK(count(failed, "rename_to_new") == 1);
}

TEST_CASE("whichever call fails, the folder that was there stays as it was") {
    const auto failed = fail_each_call([](const fs::path& home) {
        put(home / "packet" / "packet.json", manifest("V-0412", "R3"));
        put(home / "packet" / "note.pdf", "older");
        FolderOrder order = order_for(home / "packet");
        order.other_files = OtherFiles::carry_over;
        return order;
    });
    CHECK(count(failed, "link") == 1);
    CHECK(count(failed, "exchange") == 1);
    CHECK(count(failed, "flush") == 5);
    CHECK(count(failed, "remove_folder") == 1);
}

TEST_CASE("a disk that takes one byte at a time gets all of them") {
    class SlowFileSystem : public FileSystem {
      public:
        std::size_t write_some(const Descriptor& file, std::string_view bytes) override {
            return FileSystem::write_some(file, bytes.substr(0, 1));
        }
    };
    const TemporaryFolder home;
    const std::vector<FolderFile> files{{"packet.json", manifest("V-0412", "R3")}};
    FolderOrder order = order_for(home / "packet");
    order.files = files;
    SlowFileSystem disk;
    write_folder(order, disk);
    CHECK(bytes_of(home.path() / "packet" / "packet.json") == files[0].bytes);
}

TEST_CASE("a disk that takes nothing is an error, not a loop") {
    class StuckFileSystem : public FileSystem {
      public:
        std::size_t write_some(const Descriptor&, std::string_view) override { return 0; }
    };
    const TemporaryFolder home;
    StuckFileSystem disk;
    CHECK_THROWS_AS(write_folder(order_for(home / "packet"), disk), FolderError);
    CHECK(fs::is_empty(home.path()));
}

TEST_CASE("a folder that another program puts there meanwhile is given back") {
    class BusyFileSystem : public FileSystem {
      public:
        explicit BusyFileSystem(fs::path target) : target_{std::move(target)} {}
        void exchange(const Descriptor& folder, const std::string& one, const std::string& other) override {
            if (!std::exchange(done_, true)) {
                fs::rename(target_, target_.parent_path() / "moved");
                put(target_ / "theirs.pdf", "their bytes");
            }
            FileSystem::exchange(folder, one, other);
        }

      private:
        fs::path target_;
        bool done_ = false;
    };
    const TemporaryFolder home;
    write_folder(order_for(home / "packet"));
    BusyFileSystem disk{home / "packet"};
    try {
        write_folder(order_for(home / "packet"), disk);
        FAIL("another program's folder was replaced");
    } catch (const FolderError& error) {
        CHECK(error.cause() == "was changed by another program at the same time");
    }
    CHECK(bytes_of(home.path() / "packet" / "theirs.pdf") == "their bytes");
    check_written(home / "moved");
    CHECK(std::distance(fs::directory_iterator{home.path()}, fs::directory_iterator{}) == 2);
}

TEST_CASE("a folder that appears while a new one is written is not overwritten") {
    class BusyFileSystem : public FileSystem {
      public:
        explicit BusyFileSystem(fs::path target) : target_{std::move(target)} {}
        void rename_to_new(const Descriptor& folder, const std::string& from, const std::string& to) override {
            fs::create_directory(target_);
            FileSystem::rename_to_new(folder, from, to);
        }

      private:
        fs::path target_;
    };
    const TemporaryFolder home;
    BusyFileSystem disk{home / "packet"};
    CHECK_THROWS_WITH_AS(write_folder(order_for(home / "packet"), disk),
                         ((home / "packet").string() + ": File exists").c_str(), FolderError);
    CHECK(fs::is_empty(home / "packet"));
}

TEST_CASE("when the swap cannot be undone, neither folder is lost") {
    class DyingFileSystem : public FileSystem {
      public:
        void flush(const Descriptor& file_or_folder) override {
            if (swapped_) throw std::system_error{EIO, std::generic_category()};
            FileSystem::flush(file_or_folder);
        }
        void exchange(const Descriptor& folder, const std::string& one, const std::string& other) override {
            if (swapped_) throw std::system_error{EIO, std::generic_category()};
            FileSystem::exchange(folder, one, other);
            swapped_ = true;
        }

      private:
        bool swapped_ = false;
    };
    const TemporaryFolder home;
    put(home.path() / "packet" / "packet.json", manifest("V-0412", "R3"));
    put(home.path() / "packet" / "note.pdf", "older");
    DyingFileSystem disk;
    CHECK_THROWS_AS(write_folder(order_for(home / "packet"), disk), FolderError);
    bool old_found = false;
    for (const auto& entry : fs::directory_iterator{home.path()})
        old_found = old_found || bytes_of(entry.path() / "note.pdf") == "older";
    CHECK(old_found);
    check_written(home / "packet");
}

TEST_CASE("a file system that cannot exchange folders says so") {
    class PlainFileSystem : public FileSystem {
      public:
        void exchange(const Descriptor&, const std::string&, const std::string&) override {
            throw std::system_error{EINVAL, std::generic_category()};
        }
    };
    const TemporaryFolder home;
    fs::create_directory(home / "packet");
    PlainFileSystem disk;
    CHECK_THROWS_WITH_AS(
        write_folder(order_for(home / "packet"), disk),
        ((home / "packet").string() + ": this file system cannot exchange two folders in one step").c_str(),
        FolderError);
    CHECK(fs::is_empty(home / "packet"));
}

}  // namespace ventfolio
