#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "packet/folder_writer.hpp"
#include "packet/stationery.hpp"

namespace ventfolio {

/// A clinic's own templates: they lie over the built-in ones, path by path.
struct TemplateOverlay {
    std::filesystem::path folder;
    TemplateFiles files;  ///< "en/bedside-card.md"; "en/words.yaml" holds only the words that differ
    Pictures pictures{};  ///< PNG files anywhere in the folder: "logo.png"
};

/// Reads a folder of templates. Links are resolved, and what they lead to must lie inside the folder. Files beside the
/// templates, such as a README, are left alone; in a folder of a language or of regions nothing may be misnamed. A PNG
/// file that cannot be printed is a fault only where a template names it.
///
/// Throws FolderError for a folder or file that cannot be read, lies outside, or is too large.
TemplateOverlay read_template_folder(const std::filesystem::path& folder);

}  // namespace ventfolio
