# Warnings for our own code only; libraries come in as SYSTEM includes.
add_library(ventfolio_warnings INTERFACE)
target_compile_options(ventfolio_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast
  -Wnon-virtual-dtor -Woverloaded-virtual -Wimplicit-fallthrough)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # GCC 12 sees overlapping copies in std::string concatenation that are not there (GCC bug 105651).
  target_compile_options(ventfolio_warnings INTERFACE -Wno-restrict)
endif()
if(VENTFOLIO_WARNINGS_AS_ERRORS)
  target_compile_options(ventfolio_warnings INTERFACE -Werror)
endif()

add_library(ventfolio_sanitizers INTERFACE)
if(VENTFOLIO_SANITIZE)
  target_compile_options(ventfolio_sanitizers INTERFACE -fsanitize=address,undefined -fno-sanitize-recover=all
    -fno-omit-frame-pointer)
  target_link_options(ventfolio_sanitizers INTERFACE -fsanitize=address,undefined)
endif()
if(VENTFOLIO_FUZZ)
  include(Fuzzer)
  target_compile_options(ventfolio_sanitizers INTERFACE -fsanitize=fuzzer-no-link)
endif()
