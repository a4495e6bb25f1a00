#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace ventfolio {

/// An open file or folder, closed when it goes out of scope.
class Descriptor {
  public:
    Descriptor() = default;
    explicit Descriptor(int number) : number_{number} {}
    Descriptor(Descriptor&& other) noexcept : number_{other.number_} { other.number_ = kNone; }
    Descriptor& operator=(Descriptor&& other) noexcept;
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor();

    int number() const { return number_; }

  private:
    static constexpr int kNone = -1;
    int number_ = kNone;
};

/// The few calls by which a folder reaches the disk. Tests replace single calls to see what happens when one fails.
/// Each throws std::system_error with the reason of the system; names are of entries in an open folder and hold no
/// slash.
class FileSystem {
  public:
    virtual ~FileSystem() = default;

    /// The bytes of a plain file in an open folder, not through a link; no more than `most` and one. Nothing if there
    /// is no such file.
    virtual std::optional<std::string> read_file(const Descriptor& folder, const std::string& name, std::size_t most);

    /// A folder that nothing else uses, below `parent`, for its owner only (0700). Returns its name.
    virtual std::string make_staging_folder(const std::filesystem::path& parent);
    /// For its owner only (0700).
    virtual void make_folder(const std::filesystem::path& folder);
    /// A file that did not exist, for its owner only (0600); a link in its place is not followed.
    virtual Descriptor create_file(const Descriptor& folder, const std::string& name);
    /// Writes some of the bytes, at least one, and says how many.
    virtual std::size_t write_some(const Descriptor& file, std::string_view bytes);
    /// Waits until what was written is on the disk.
    virtual void flush(const Descriptor& file_or_folder);
    /// The same file under the same name in a second folder.
    virtual void link(const Descriptor& from, const Descriptor& to, const std::string& name);
    /// Fails if `to` exists.
    virtual void rename_to_new(const Descriptor& folder, const std::string& from, const std::string& to);
    /// Both names exist, and each then means what the other meant, in one step.
    virtual void exchange(const Descriptor& folder, const std::string& one, const std::string& other);
    /// With everything in it; links are removed, not followed.
    virtual void remove_folder(const std::filesystem::path& folder);
};

/// Opens a folder, not through a link in its last place. Throws std::system_error.
Descriptor open_folder(const std::filesystem::path& folder);

}  // namespace ventfolio
