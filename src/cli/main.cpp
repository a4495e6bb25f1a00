#include <cstdio>
#include <cstdlib>
#include <exception>
#include <new>
#include <stdexcept>
#include <string>

#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/world.hpp"

namespace {

/// The last thing that is said: where even that fails, the status is left.
int give_up(const std::string& message) {
    std::fputs(("ventfolio: " + message + "\n").c_str(), stderr);
    return ventfolio::kUnusable;
}

constexpr const char* kNoMemory = "there is not enough memory";

/// Some functions of libraries promise not to throw and take memory all the same. Where it ends there, nothing can be
/// caught.
[[noreturn]] void tell_and_end() {
    try {
        if (const std::exception_ptr fault = std::current_exception()) std::rethrow_exception(fault);
    } catch (const std::bad_alloc&) {
        give_up(kNoMemory);
        std::_Exit(ventfolio::kUnusable);
    } catch (...) {
        std::abort();
    }
    std::abort();
}

}  // namespace

int main(int count, char** words) {
    std::set_terminate(tell_and_end);
    ventfolio::report_files_that_grow_too_large();
    try {
        const int status = ventfolio::CommandLine{}.run(count, words);
        // What failed to be written before leaves nothing to flush.
        const bool written = std::fflush(stdout) == 0 && std::ferror(stdout) == 0;
        return written ? status : give_up("standard output cannot be written");
    } catch (const std::logic_error& fault) {
        return give_up(std::string{"this is a bug in ventfolio: "} + fault.what());
    } catch (const std::bad_alloc&) {
        return give_up(kNoMemory);
    } catch (const std::exception& fault) {
        return give_up(fault.what());
    }
}
