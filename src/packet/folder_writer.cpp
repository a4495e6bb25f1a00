#include "packet/folder_writer.hpp"

#include <fmt/format.h>
#include <sys/stat.h>
#include <algorithm>
#include <cerrno>
#include <optional>
#include <system_error>
#include <vector>

#include "packet/new_folders.hpp"
#include "packet/replaceable.hpp"

namespace ventfolio {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kNameLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789._-";

void require_plain_name(const fs::path& target, const std::string& name) {
    if (name.empty() || name.front() == '.' || name.find_first_not_of(kNameLetters) != std::string::npos)
        throw FolderError{target / name, "is not a plain file name"};
}

fs::path named_target(const fs::path& target) {
    fs::path path = target.lexically_normal();
    if (path.filename().empty()) path = path.parent_path();
    const fs::path name = path.filename();
    if (name.empty() || name == "." || name == ".." || path == path.root_path())
        throw FolderError{target, "give the folder a name of its own"};
    return path;
}

/// The folder in which the new one grows. It goes again unless its name has come to mean another folder.
class Staging {
  public:
    /// Once the other constructor is done, the destructor takes the folder away, whatever happens here.
    Staging(const fs::path& parent, FileSystem& files) : Staging{files} {
        parent_ = parent;
        name_ = on_path(parent, [&] { return files_.make_staging_folder(parent); });
        path_ = parent / name_;
    }
    Staging(const Staging&) = delete;
    Staging& operator=(const Staging&) = delete;
    ~Staging() {
        if (is_other_ || name_.empty()) return;
        try {
            files_.remove_folder(parent_ / name_);
        } catch (const std::exception&) {
            // A failure is already on its way to the caller; this one would hide it.
        }
    }

    const std::string& name() const { return name_; }
    const fs::path& path() const { return path_; }
    const Descriptor& folder() const { return folder_; }

    void open() {
        folder_ = on_path(path_, [&] { return open_folder(path_); });
    }

    void write(const FolderFile& file) {
        on_path(path_ / file.name, [&] {
            const Descriptor target = files_.create_file(folder_, file.name);
            for (std::string_view left = file.bytes; !left.empty();) {
                const std::size_t written = files_.write_some(target, left);
                if (written == 0) throw std::system_error{EIO, std::generic_category()};
                left.remove_prefix(written);
            }
            files_.flush(target);
        });
    }

    /// Runs a step after which the name means another folder, or none.
    template <typename Step>
    void swap_out(Step step) {
        step();
        is_other_ = true;
    }
    /// The step back. If it fails, what the name means must not be removed.
    template <typename Step>
    void swap_in(Step step) {
        on_path(path_, step);
        is_other_ = false;
    }

  private:
    explicit Staging(FileSystem& files) : files_{files} {}

    FileSystem& files_;
    fs::path parent_;
    std::string name_;
    fs::path path_;
    Descriptor folder_;
    bool is_other_ = false;
};

bool same_folder(const Descriptor& open, const fs::path& path) {
    struct stat one {};
    struct stat other {};
    return ::fstat(open.number(), &one) == 0 && ::lstat(path.c_str(), &other) == 0 && one.st_dev == other.st_dev &&
           one.st_ino == other.st_ino;
}

class FolderWriter {
  public:
    FolderWriter(const FolderOrder& order, FileSystem& files)
        : order_{order}, files_{files}, target_{named_target(order.target)} {
        for (const FolderFile& file : order.files) require_plain_name(target_, file.name);
    }

    void write() {
        const std::optional<Descriptor> old = replaceable_folder(target_, order_.record_number, order_.revision);
        const fs::path parent_path = folder_above(target_);
        NewFolders above{files_};
        above.make(parent_path);
        const Descriptor parent = on_path(parent_path, [&] { return open_folder(fs::canonical(parent_path)); });
        Staging staging{parent_path, files_};
        staging.open();
        for (const FolderFile& file : order_.files) staging.write(file);
        if (old && order_.other_files == OtherFiles::carry_over) carry_over(*old, staging);
        on_path(staging.path(), [&] { files_.flush(staging.folder()); });
        if (old)
            exchange(*old, parent, staging);
        else
            place_new(parent, staging);
        above.keep();
    }

  private:
    void carry_over(const Descriptor& old, const Staging& staging) {
        for (const std::string& name : entries_of(old, target_)) {
            const bool replaced =
                std::ranges::any_of(order_.files, [&](const FolderFile& file) { return file.name == name; });
            if (replaced) continue;
            if (!fs::is_regular_file(fs::symlink_status(target_ / name)))
                throw FolderError{target_ / name, "is not a file, and cannot be carried over"};
            on_path(target_ / name, [&] { files_.link(old, staging.folder(), name); });
        }
    }

    void place_new(const Descriptor& parent, Staging& staging) {
        const std::string name = target_.filename().string();
        on_path(target_, [&] { staging.swap_out([&] { files_.rename_to_new(parent, staging.name(), name); }); });
        undo_unless_flushed(parent, staging, [&] { files_.rename_to_new(parent, name, staging.name()); });
    }

    void exchange(const Descriptor& old, const Descriptor& parent, Staging& staging) {
        const auto swap = [&] { files_.exchange(parent, staging.name(), target_.filename().string()); };
        try {
            staging.swap_out(swap);
        } catch (const std::system_error& error) {
            if (error.code() == std::errc::invalid_argument)
                throw FolderError{target_, "this file system cannot exchange two folders in one step"};
            throw FolderError{target_, error.code().message()};
        }
        if (!same_folder(old, staging.path())) {
            staging.swap_in(swap);
            throw FolderError{target_, "was changed by another program at the same time"};
        }
        undo_unless_flushed(parent, staging, swap);
        remove_old(staging.path());
    }

    template <typename Undo>
    void undo_unless_flushed(const Descriptor& parent, Staging& staging, Undo undo) {
        try {
            files_.flush(parent);
        } catch (const std::system_error& error) {
            staging.swap_in(undo);
            throw FolderError{target_, error.code().message()};
        }
    }

    void remove_old(const fs::path& old) {
        try {
            files_.remove_folder(old);
        } catch (const std::system_error& error) {
            throw FolderError{old, fmt::format("the new folder is in place, but the old one could not be removed: {}",
                                               error.code().message())};
        }
    }

    const FolderOrder& order_;
    FileSystem& files_;
    fs::path target_;
};

}  // namespace

void write_folder(const FolderOrder& order, FileSystem& files) { FolderWriter{order, files}.write(); }

void write_folder(const FolderOrder& order) {
    FileSystem files;
    write_folder(order, files);
}

}  // namespace ventfolio
