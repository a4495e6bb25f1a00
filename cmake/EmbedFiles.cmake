# ventfolio_embed(target function BASE folder FILES path…)
#
# Puts files into a target byte for byte and adds
#   std::span<const ventfolio::EmbeddedFile> ventfolio::<function>();
# which lists them by their path below BASE. See src/units/embedded_file.hpp.
function(ventfolio_embed target function)
  cmake_parse_arguments(arg "" "BASE" "FILES" ${ARGN})
  set(assembly "    .section .rodata\n")
  set(declarations "")
  set(entries "")
  set(number 0)
  foreach(file IN LISTS arg_FILES)
    cmake_path(ABSOLUTE_PATH file BASE_DIRECTORY "${arg_BASE}" NORMALIZE OUTPUT_VARIABLE path)
    cmake_path(RELATIVE_PATH path BASE_DIRECTORY "${arg_BASE}" OUTPUT_VARIABLE name)
    set(symbol "${function}_${number}")
    string(APPEND assembly
      "    .balign 16\n    .global ${symbol}_begin\n    .global ${symbol}_end\n"
      "${symbol}_begin:\n    .incbin \"${path}\"\n${symbol}_end:\n    .byte 0\n")
    string(APPEND declarations "extern const char ${symbol}_begin[];\nextern const char ${symbol}_end[];\n")
    string(APPEND entries "    {\"${name}\", view(${symbol}_begin, ${symbol}_end)},\n")
    list(APPEND paths "${path}")
    math(EXPR number "${number} + 1")
  endforeach()
  string(APPEND assembly "    .section .note.GNU-stack,\"\",%progbits\n")
  set(stem "${CMAKE_CURRENT_BINARY_DIR}/${function}")
  file(CONFIGURE OUTPUT "${stem}.S" CONTENT "${assembly}" @ONLY)
  file(CONFIGURE OUTPUT "${stem}.cpp" @ONLY CONTENT [=[
#include "units/embedded_file.hpp"

#include <array>

extern "C" {
@declarations@}

namespace ventfolio {
namespace {
std::string_view view(const char* begin, const char* end) {
    return {begin, static_cast<std::size_t>(end - begin)};
}
}  // namespace

std::span<const EmbeddedFile> @function@() {
    static const std::array<EmbeddedFile, @number@> files{{
@entries@    }};
    return files;
}
}  // namespace ventfolio
]=])
  set_source_files_properties("${stem}.S" PROPERTIES OBJECT_DEPENDS "${paths}")
  target_sources(${target} PRIVATE "${stem}.S" "${stem}.cpp")
endfunction()
