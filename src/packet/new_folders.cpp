#include "packet/new_folders.hpp"

namespace ventfolio {

namespace fs = std::filesystem;

NewFolders::~NewFolders() {
    std::error_code ignored;  // an empty folder left behind harms nobody
    for (auto folder = made_.rbegin(); !kept_ && folder != made_.rend(); ++folder) fs::remove(*folder, ignored);
}

void NewFolders::make(const fs::path& folder) {
    std::error_code error;
    const fs::file_status status = fs::status(folder, error);
    if (fs::is_directory(status)) return;
    if (fs::exists(status)) throw FolderError{folder, "is not a folder"};
    if (status.type() != fs::file_type::not_found) throw FolderError{folder, error.message()};
    const fs::path above = folder_above(folder);
    if (above != folder) make(above);
    on_path(folder, [&] {
        try {
            files_.make_folder(folder);
        } catch (const std::system_error& fault) {
            // Another run, of another part of a caseload, made it in the meantime.
            if (fault.code() == std::errc::file_exists && fs::is_directory(folder)) return;
            throw;
        }
        made_.push_back(folder);
        files_.flush(open_folder(fs::canonical(above)));
    });
}

fs::path folder_above(const fs::path& path) { return path.has_parent_path() ? path.parent_path() : "."; }

}  // namespace ventfolio
