# cpack, in the build folder: a Debian package that names the packages it needs, and an archive that brings its libraries
# along and runs where nothing else is installed. FinishPackage.cmake does what differs between the two.
set(CPACK_GENERATOR DEB TGZ)
set(CPACK_PACKAGE_VENDOR "ventfolio contributors")
set(CPACK_PACKAGE_CONTACT "ventfolio packagers <packages@ventfolio.example>")
set(CPACK_PACKAGE_DESCRIPTION
"ventfolio makes the papers that hang and lie in a home where someone lives on
a ventilator. A respiratory therapist writes one person's profile in a text
file; calculators and rules check it, and what disagrees with what is said
before anything is printed. The papers are PDF files: a bedside card, charts
for each alarm, a sheet for the ambulance crew, a plan for power outages and
more. It opens no network connection and needs no font on the machine.
.
The prescriber's orders, the device's instructions and local protocol come
first. A qualified person checks every sheet before it hangs.")
set(CPACK_RESOURCE_FILE_LICENSE "${PROJECT_SOURCE_DIR}/LICENSE")
set(CPACK_PACKAGE_FILE_NAME "ventfolio-${PROJECT_VERSION}-linux-${CMAKE_SYSTEM_PROCESSOR}")
set(CPACK_STRIP_FILES ON)
set(CPACK_VERBATIM_VARIABLES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ
  WORLD_EXECUTE)

set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_RELEASE 1)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_COMPRESSION_TYPE xz)

set(CPACK_PRE_BUILD_SCRIPTS "${PROJECT_SOURCE_DIR}/cmake/FinishPackage.cmake")
# Of these only headers and a font are used, so they are inside the program.
set(CPACK_VENTFOLIO_INSIDE libcli11-dev libkainjow-mustache-dev nlohmann-json3-dev)
set(CPACK_VENTFOLIO_FONT_LICENSE "${PROJECT_SOURCE_DIR}/licenses/OFL-1.1.txt")
set(CPACK_SOURCE_IGNORE_FILES "/build/" "/[.]git/")
include(CPack)
