#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "layout/lay_out.hpp"
#include "layout/misplaced.hpp"
#include "sheets/document.hpp"
#include "sheets/template_data.hpp"

/// Small documents of the tests' own and what the layout makes of them.
namespace ventfolio::testing {

struct LaidOut {
    PlacedSheet sheet;
    std::vector<Finding> findings;
};

/// A sheet with this Markdown. `front` is more front matter, a line each.
Document document_of(const std::string& markdown, TemplateData::Object data = {}, std::string_view front = {},
                     std::shared_ptr<const Pictures> pictures = {});
LaidOut laid_out(const Document& document, const PageSetup& setup = {});
TemplateData value_of(std::string field, std::vector<PrintedPart> parts);

/// Words of the body in the order in which they are placed: header and footer are left out.
std::vector<std::string> body_words(const PlacedSheet& sheet);
std::string body_text(const PlacedPage& page);

}  // namespace ventfolio::testing
