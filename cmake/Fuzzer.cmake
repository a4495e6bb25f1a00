# libFuzzer is a part of clang; its library and the sanitizers' are in a package of their own.
if(NOT CMAKE_CXX_COMPILER_ID STREQUAL "Clang")
  message(FATAL_ERROR "The fuzz programs need clang as the compiler, in a build folder of their own: cmake --preset fuzz")
endif()
if(NOT VENTFOLIO_SANITIZE)
  message(FATAL_ERROR "The fuzz programs need the sanitizers: cmake --preset fuzz, or -DVENTFOLIO_SANITIZE=ON")
endif()
include(CheckCXXSourceCompiles)
set(CMAKE_REQUIRED_FLAGS -fsanitize=fuzzer,address,undefined)
check_cxx_source_compiles([=[
#include <cstddef>
#include <cstdint>
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t*, std::size_t) { return 0; }
]=] VENTFOLIO_HAS_LIBFUZZER)
unset(CMAKE_REQUIRED_FLAGS)
if(NOT VENTFOLIO_HAS_LIBFUZZER)
  message(FATAL_ERROR "clang has no libFuzzer here. Install the Debian package libclang-rt-14-dev: "
    "apt-get install libclang-rt-14-dev")
endif()
