# Headers that most source files include, read once for all targets of a kind and not once for each source file. A source
# file still includes what it uses: the build of the preset asan, without precompiled headers, proves it.
option(VENTFOLIO_PRECOMPILED_HEADERS "Read the headers that most source files include once" ON)

# ventfolio_precompile(target KIND kind HEADERS header…): the first target of a kind makes the headers, the others use them, so
# all of one kind are compiled with the same options.
function(ventfolio_precompile target)
  cmake_parse_arguments(arg "" "KIND" "HEADERS" ${ARGN})
  if(NOT VENTFOLIO_PRECOMPILED_HEADERS)
    return()
  endif()
  get_property(maker GLOBAL PROPERTY ventfolio_precompiled_${arg_KIND})
  if(maker)
    target_precompile_headers(${target} REUSE_FROM ${maker})
  else()
    target_precompile_headers(${target} PRIVATE ${arg_HEADERS})
    set_property(GLOBAL PROPERTY ventfolio_precompiled_${arg_KIND} ${target})
  endif()
endfunction()
