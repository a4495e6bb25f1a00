#include "copies.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "pdf/write_pdf.hpp"

namespace ventfolio::testing {

std::vector<trial::DrawnPage> copied(const std::vector<const PlacedSheet*>& sheets, const Copy& copy) {
    PdfRequest request{.title = "Papers", .language = "en-US", .sheets = {}};
    for (const PlacedSheet* sheet : sheets) request.sheets.push_back({sheet, ""});
    const trial::Scratch scratch;
    scratch.save("papers.pdf", write_pdf(request));
    const trial::Ran ran =
        scratch.run(fmt::format("pdftoppm {} -rx {} -ry {} papers.pdf page", copy.black_and_white ? "-mono" : "-gray",
                                copy.dots_across * copy.scale, copy.dots_down * copy.scale));
    REQUIRE(ran.status == 0);
    REQUIRE(ran.err == "");

    std::vector<std::filesystem::path> files;  // page-01.pbm, page-02.pbm …
    for (const auto& entry : std::filesystem::directory_iterator{scratch.path("")})
        if (entry.path().filename().string().starts_with("page-")) files.push_back(entry.path());
    std::ranges::sort(files);
    std::vector<trial::DrawnPage> pages;
    for (const auto& file : files) pages.push_back(trial::DrawnPage::read(file));
    return pages;
}

}  // namespace ventfolio::testing
