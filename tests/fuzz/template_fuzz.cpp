#include <cstddef>
#include <cstdint>

#include "demo_home.hpp"
#include "layout/trial_furniture.hpp"
#include "markup/expansion.hpp"
#include "markup/markdown_source.hpp"
#include "markup/render.hpp"
#include "placed_sheet.hpp"
#include "promise.hpp"
#include "units/text.hpp"

namespace ventfolio::fuzz {
namespace {

Partials built_in_partials() {
    constexpr std::string_view kFolder = "en/partials/";
    Partials partials;
    for (auto& [path, text] : built_in_files()) {
        if (!path.starts_with(kFolder)) continue;
        std::string name = path.substr(kFolder.size());
        name.resize(name.rfind('.'));
        partials.emplace(std::move(name), SourceText{path, std::move(text)});
    }
    return partials;
}

std::size_t longest(const Template& from) {
    std::size_t size = 0;
    for (const SourceText& file : from.files) size = std::max(size, file.text.size());
    return size;
}

std::size_t values_in(const Inlines& inlines) {
    std::size_t count = 0;
    for (const Inline& piece : inlines) count += piece.kind == Inline::Kind::value ? 1U : 0U;
    return count;
}

std::size_t values_in(const TableRow& row) {
    std::size_t count = 0;
    for (const TableCell& cell : row.cells) count += values_in(cell.inlines);
    return count;
}

std::size_t values_in(const std::vector<Block>& blocks) {
    std::size_t count = 0;
    for (const Block& block : blocks) {
        count += values_in(block.inlines) + values_in(block.aside) + values_in(block.head) + values_in(block.children);
        for (const TableRow& row : block.rows) count += values_in(row);
    }
    return count;
}

/// The values that a template asks for, before Markdown has seen them.
std::size_t values_in_markdown(const Template& from) {
    Faults faults{from.files};
    const Expansion expansion{from, from.body, {&demo_data(), &demo_prescription()}, faults};
    std::size_t count = 0;
    for (const char32_t point : code_points(expansion.markdown())) count += point >= kFirstValueToken ? 1U : 0U;
    return count;
}

Document document_of(Rendered rendered) {
    Document document;
    document.name = document.sheet = "trial";
    document.language = "en";
    document.template_file = "sheet.md";
    document.front_matter = std::move(rendered.front_matter);
    document.title = std::move(rendered.title);
    document.blocks = std::move(rendered.blocks);
    return document;
}

void check_template(std::string text) {
    static const Partials partials = built_in_partials();
    const Template from = parse_template({"sheet.md", std::move(text)}, partials);
    check_findings(from.findings, longest(from));
    Rendered rendered = render(from, demo_data(), &demo_prescription());
    check_findings(rendered.findings, longest(from));
    promise(from.findings.empty() || !rendered.findings.empty(), "what cannot be parsed is not rendered");
    if (!rendered.findings.empty()) return;
    promise(values_in(rendered.blocks) == values_in_markdown(from),
            "no value is lost or doubled on its way to the tree");
    check_placed(document_of(std::move(rendered)), testing::trial_furniture(), {});
}

}  // namespace
}  // namespace ventfolio::fuzz

/// A template of a clinic's own, filled with a demo home: parsed, rendered, and set on pages where nothing refuses it.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    ventfolio::fuzz::check_template({reinterpret_cast<const char*>(data), size});
    return 0;
}
