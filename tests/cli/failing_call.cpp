#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <cstdarg>
#include <cstdlib>
#include <cstring>
#include <new>

/// A library that is loaded before all others (LD_PRELOAD, ld.so(8)) and makes one call of a program fail:
///   FAIL_CALL  which function; "hpdf" is memory for the PDF library, "new" memory for the program
///   FAIL_AT    the how-manieth call of it, from 1
///   FAIL_WITH  the error number
///   FAIL_NOTE  a file that comes to be when the call was made to fail
/// It takes no memory of its own.
namespace {

struct Order {
    const char* call = std::getenv("FAIL_CALL");
    long at = call ? std::atol(std::getenv("FAIL_AT")) : 0;
    int reason = call ? std::atoi(std::getenv("FAIL_WITH")) : 0;
    const char* note = std::getenv("FAIL_NOTE");
};

/// A function, since the program's own constants may take memory before those of this file are made.
const Order& order() {
    static const Order given;
    return given;
}

bool is_watched(const char* call) { return order().call != nullptr && std::strcmp(order().call, call) == 0; }

bool fails(const char* call) {
    static std::atomic<long> calls{0};
    if (!is_watched(call) || ++calls != order().at) return false;
    // Not through the functions below.
    ::syscall(SYS_close, ::syscall(SYS_openat, AT_FDCWD, order().note, O_CREAT | O_WRONLY, S_IRUSR | S_IWUSR));
    errno = order().reason;
    return true;
}

bool called_by_the_pdf_library(void* place) {
    Dl_info library{};
    return ::dladdr(place, &library) != 0 && std::strstr(library.dli_fname, "libhpdf") != nullptr;
}

/// What the function would be if this library were not there.
template <typename Function>
Function* real(const char* name) {
    return reinterpret_cast<Function*>(::dlsym(RTLD_NEXT, name));
}

}  // namespace

extern "C" {

ssize_t read(int file, void* bytes, std::size_t size) {
    return fails("read") ? -1 : real<decltype(read)>("read")(file, bytes, size);
}
ssize_t write(int file, const void* bytes, std::size_t size) {
    return fails("write") ? -1 : real<decltype(write)>("write")(file, bytes, size);
}
int fsync(int file) { return fails("fsync") ? -1 : real<decltype(fsync)>("fsync")(file); }
int fchmod(int file, mode_t mode) noexcept {
    return fails("fchmod") ? -1 : real<decltype(fchmod)>("fchmod")(file, mode);
}
int openat(int folder, const char* name, int flags, ...) {
    std::va_list more;
    va_start(more, flags);
    const mode_t mode = (flags & O_CREAT) != 0 ? va_arg(more, mode_t) : 0;
    va_end(more);
    return fails("openat") ? -1 : real<decltype(openat)>("openat")(folder, name, flags, mode);
}
char* mkdtemp(char* name) noexcept { return fails("mkdtemp") ? nullptr : real<decltype(mkdtemp)>("mkdtemp")(name); }
int linkat(int from_folder, const char* from, int to_folder, const char* to, int flags) noexcept {
    return fails("linkat") ? -1 : real<decltype(linkat)>("linkat")(from_folder, from, to_folder, to, flags);
}
int rename(const char* from, const char* to) noexcept {
    return fails("rename") ? -1 : real<decltype(rename)>("rename")(from, to);
}
int renameat2(int from_folder, const char* from, int to_folder, const char* to, unsigned flags) noexcept {
    return fails("renameat2") ? -1 : real<decltype(renameat2)>("renameat2")(from_folder, from, to_folder, to, flags);
}
int unlinkat(int folder, const char* name, int flags) noexcept {
    return fails("unlinkat") ? -1 : real<decltype(unlinkat)>("unlinkat")(folder, name, flags);
}

void* malloc(std::size_t size) noexcept {
    static auto* const next = real<decltype(malloc)>("malloc");
    const bool watched = is_watched("hpdf") && called_by_the_pdf_library(__builtin_return_address(0));
    return watched && fails("hpdf") ? nullptr : next(size);
}
}

void* operator new(std::size_t size) {
    if (fails("new")) throw std::bad_alloc{};
    if (void* const memory = std::malloc(size)) return memory;
    throw std::bad_alloc{};
}
