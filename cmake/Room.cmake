# ventfolio_room(name SOURCES … [USES room…] [LIBRARIES target…] [PUBLIC_LIBRARIES target…])
#
# A room is one static library. USES names rooms that stand left of it in the flow of data (DEVELOPERS.md); a room
# further right does not exist yet when this one is declared, so an arrow the wrong way does not configure.
function(ventfolio_room name)
  cmake_parse_arguments(arg "" "" "SOURCES;USES;LIBRARIES;PUBLIC_LIBRARIES" ${ARGN})
  set(target ventfolio_${name})
  add_library(${target} STATIC ${arg_SOURCES})
  target_include_directories(${target} PUBLIC "${PROJECT_SOURCE_DIR}/src")
  foreach(room IN LISTS arg_USES)
    if(NOT TARGET ventfolio_${room})
      message(FATAL_ERROR "room ${name} uses ${room}, which stands right of it")
    endif()
    target_link_libraries(${target} PUBLIC ventfolio_${room})
  endforeach()
  target_link_libraries(${target} PUBLIC fmt::fmt ${arg_PUBLIC_LIBRARIES} ventfolio_sanitizers
    PRIVATE ventfolio_warnings ${arg_LIBRARIES})
  # GCC 12 forgets that a precompiled header is the system's: optimised, it finds faults in <string> (GCC bug 105651).
  if(CMAKE_CXX_COMPILER_ID STREQUAL "Clang")
    ventfolio_precompile(${target} KIND rooms
      HEADERS <algorithm> <array> <cmath> <fmt/format.h> <functional> <map> <memory> <optional> <set> <span> <stdexcept>
        <string> <string_view> <utility> <variant> <vector>)
  endif()
endfunction()
