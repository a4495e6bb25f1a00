# cmake --build --preset release --target tidy: clang-tidy over the source, with the checks of .clang-tidy. About five
# minutes on two cores. Debian package clang-tidy.
find_program(VENTFOLIO_RUN_CLANG_TIDY run-clang-tidy)
if(VENTFOLIO_RUN_CLANG_TIDY)
  add_custom_target(tidy
    COMMAND "${VENTFOLIO_RUN_CLANG_TIDY}" -quiet -p "${PROJECT_BINARY_DIR}" "${PROJECT_SOURCE_DIR}/src/.*"
    DEPENDS ventfolio
    USES_TERMINAL
    VERBATIM)
else()
  add_custom_target(tidy
    COMMAND ${CMAKE_COMMAND} -E echo "tidy needs run-clang-tidy: apt-get install clang-tidy"
    COMMAND ${CMAKE_COMMAND} -E false
    VERBATIM)
endif()
