# Every library comes from a Debian package. Each is found here, once, and a missing one says which package to install.

function(ventfolio_missing what package)
  message(FATAL_ERROR "ventfolio needs ${what}. Install the Debian package ${package}: apt-get install ${package}")
endfunction()

# ventfolio_header_library(NAME header PACKAGE package [LIBRARY name]): an imported target for a library that ships no
# CMake files of its own.
function(ventfolio_header_library target)
  cmake_parse_arguments(arg "" "HEADER;PACKAGE;LIBRARY" "" ${ARGN})
  find_path(${target}_INCLUDE "${arg_HEADER}")
  if(NOT ${target}_INCLUDE)
    ventfolio_missing("the header ${arg_HEADER}" "${arg_PACKAGE}")
  endif()
  add_library(${target} INTERFACE IMPORTED GLOBAL)
  target_include_directories(${target} SYSTEM INTERFACE "${${target}_INCLUDE}")
  if(arg_LIBRARY)
    find_library(${target}_LIBRARY "${arg_LIBRARY}")
    if(NOT ${target}_LIBRARY)
      ventfolio_missing("the library ${arg_LIBRARY}" "${arg_PACKAGE}")
    endif()
    target_link_libraries(${target} INTERFACE "${${target}_LIBRARY}")
  endif()
endfunction()

# ventfolio_package(NAME package): a library with CMake files of its own.
macro(ventfolio_package name package)
  find_package(${name} QUIET)
  if(NOT ${name}_FOUND)
    ventfolio_missing("${name}" "${package}")
  endif()
endmacro()

ventfolio_package(fmt libfmt-dev)
ventfolio_package(yaml-cpp libyaml-cpp-dev)
ventfolio_package(nlohmann_json nlohmann-json3-dev)
ventfolio_package(PNG libpng-dev)
ventfolio_package(CLI11 libcli11-dev)
find_package(OpenSSL QUIET COMPONENTS Crypto)
if(NOT OpenSSL_FOUND)
  ventfolio_missing("OpenSSL's libcrypto" libssl-dev)
endif()

ventfolio_header_library(ventfolio::mustache HEADER kainjow/mustache.hpp PACKAGE libkainjow-mustache-dev)
ventfolio_header_library(ventfolio::md4c HEADER md4c.h LIBRARY md4c PACKAGE libmd4c-dev)
ventfolio_header_library(ventfolio::libharu HEADER hpdf.h LIBRARY hpdf PACKAGE libhpdf-dev)
ventfolio_header_library(ventfolio::deflate HEADER libdeflate.h LIBRARY deflate PACKAGE libdeflate-dev)
ventfolio_header_library(ventfolio::jemalloc HEADER jemalloc/jemalloc.h LIBRARY jemalloc PACKAGE libjemalloc-dev)
ventfolio_header_library(ventfolio::harfbuzz HEADER harfbuzz/hb.h LIBRARY harfbuzz PACKAGE libharfbuzz-dev)
ventfolio_header_library(ventfolio::harfbuzz_subset HEADER harfbuzz/hb-subset.h LIBRARY harfbuzz-subset PACKAGE libharfbuzz-dev)
ventfolio_header_library(ventfolio::unibreak HEADER linebreak.h LIBRARY unibreak PACKAGE libunibreak-dev)
ventfolio_header_library(ventfolio::qrencode HEADER qrencode.h LIBRARY qrencode PACKAGE libqrencode-dev)
ventfolio_header_library(ventfolio::utf8proc HEADER utf8proc.h LIBRARY utf8proc PACKAGE libutf8proc-dev)

# For programs, not for rooms. A fifth of a packet's time went into the allocator of the C library; the sanitizers bring one
# of their own.
add_library(ventfolio_allocator INTERFACE)
if(NOT VENTFOLIO_SANITIZE)
  target_link_libraries(ventfolio_allocator INTERFACE ventfolio::jemalloc)
endif()

# Two weights of one family, embedded in the program.
function(ventfolio_font variable file package)
  find_file(${variable} "${file}" PATHS /usr/share/fonts/truetype/noto /usr/share/fonts/truetype/andika NO_DEFAULT_PATH)
  if(NOT ${variable})
    ventfolio_missing("the font ${file}" "${package}")
  endif()
endfunction()
ventfolio_font(VENTFOLIO_FONT_REGULAR NotoSans-Regular.ttf fonts-noto-core)
ventfolio_font(VENTFOLIO_FONT_BOLD NotoSans-Bold.ttf fonts-noto-core)
file(MAKE_DIRECTORY "${PROJECT_BINARY_DIR}/fonts")
file(COPY_FILE "${VENTFOLIO_FONT_REGULAR}" "${PROJECT_BINARY_DIR}/fonts/Regular.ttf" ONLY_IF_DIFFERENT)
file(COPY_FILE "${VENTFOLIO_FONT_BOLD}" "${PROJECT_BINARY_DIR}/fonts/Bold.ttf" ONLY_IF_DIFFERENT)
