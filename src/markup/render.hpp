#pragma once

#include <string>
#include <utility>
#include <vector>

#include "markup/template.hpp"
#include "sheets/document.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What a template says for one home. With a finding in it, nothing of it may be printed.
struct Rendered {
    std::vector<std::pair<std::string, std::string>> front_matter;  ///< as written; `title` in words
    Inlines title;
    std::vector<Block> blocks;
    std::vector<Finding> findings;
};

/// Renders a template with a home's data. For a sheet that is made once for each item of a list (`for_each`), `item` is
/// that item: its names come before those of `data`, as inside a section.
///
/// Findings of names come first; Markdown is judged only when all names are right.
Rendered render(const Template& from, const TemplateData& data, const TemplateData* item = nullptr);

/// Whether a home has this sheet at all: each name of `only_if` in its front matter, blanks between, would open a
/// section. A name that does not exist is appended to `findings`.
bool applies(const Template& from, const TemplateData& data, std::vector<Finding>& findings);

}  // namespace ventfolio
