#include "packet/file_system.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <system_error>
#include <utility>

namespace ventfolio {
namespace {

constexpr mode_t kOwnerFile = S_IRUSR | S_IWUSR;
constexpr mode_t kOwnerFolder = S_IRWXU;

[[noreturn]] void fail(const char* call) { throw std::system_error{errno, std::generic_category(), call}; }

void require(int result, const char* call) {
    if (result < 0) fail(call);
}

template <typename Call>
auto unless_interrupted(Call call) {
    auto result = call();
    while (result < 0 && errno == EINTR) result = call();
    return result;
}

}  // namespace

Descriptor& Descriptor::operator=(Descriptor&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
}

Descriptor::~Descriptor() {
    if (number_ != kNone) ::close(number_);
}

Descriptor open_folder(const std::filesystem::path& folder) {
    const int number = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC);
    require(number, "open");
    return Descriptor{number};
}

std::optional<std::string> FileSystem::read_file(const Descriptor& folder, const std::string& name, std::size_t most) {
    // Without O_NONBLOCK a named pipe would wait for somebody to write.
    const Descriptor file{::openat(folder.number(), name.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC)};
    if (file.number() < 0 && errno == ENOENT) return std::nullopt;
    require(file.number(), "openat");
    struct stat status {};
    require(::fstat(file.number(), &status), "fstat");
    if (!S_ISREG(status.st_mode)) throw std::system_error{EINVAL, std::generic_category(), "openat"};
    std::string text;
    std::array<char, 65536> buffer;
    while (text.size() <= most) {
        const auto got = unless_interrupted([&] { return ::read(file.number(), buffer.data(), buffer.size()); });
        if (got < 0) fail("read");
        if (got == 0) break;
        text.append(buffer.data(), static_cast<std::size_t>(got));
    }
    return text;
}

std::string FileSystem::make_staging_folder(const std::filesystem::path& parent) {
    std::string name = ".ventfolio-XXXXXX";
    std::string path = (parent / name).string();
    if (::mkdtemp(path.data()) == nullptr) fail("mkdtemp");
    // Takes no memory, which could end and leave a folder that nobody knows.
    name.replace(0, name.size(), path, path.size() - name.size(), name.size());
    return name;
}

void FileSystem::make_folder(const std::filesystem::path& folder) {
    require(::mkdir(folder.c_str(), kOwnerFolder), "mkdir");
}

Descriptor FileSystem::create_file(const Descriptor& folder, const std::string& name) {
    constexpr int kFlags = O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC;
    const int number = ::openat(folder.number(), name.c_str(), kFlags, kOwnerFile);
    require(number, "openat");
    return Descriptor{number};
}

std::size_t FileSystem::write_some(const Descriptor& file, std::string_view bytes) {
    const auto written = unless_interrupted([&] { return ::write(file.number(), bytes.data(), bytes.size()); });
    if (written < 0) fail("write");
    return static_cast<std::size_t>(written);
}

void FileSystem::flush(const Descriptor& file_or_folder) {
    require(unless_interrupted([&] { return ::fsync(file_or_folder.number()); }), "fsync");
}

void FileSystem::link(const Descriptor& from, const Descriptor& to, const std::string& name) {
    require(::linkat(from.number(), name.c_str(), to.number(), name.c_str(), 0), "linkat");
}

void FileSystem::rename_to_new(const Descriptor& folder, const std::string& from, const std::string& to) {
    require(::renameat2(folder.number(), from.c_str(), folder.number(), to.c_str(), RENAME_NOREPLACE), "renameat2");
}

void FileSystem::exchange(const Descriptor& folder, const std::string& one, const std::string& other) {
    require(::renameat2(folder.number(), one.c_str(), folder.number(), other.c_str(), RENAME_EXCHANGE), "renameat2");
}

void FileSystem::remove_folder(const std::filesystem::path& folder) {
    std::error_code error;
    std::filesystem::remove_all(folder, error);
    if (error) throw std::system_error{error, "remove_all"};
}

}  // namespace ventfolio
