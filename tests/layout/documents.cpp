#include "documents.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "markup/render.hpp"
#include "trial_furniture.hpp"
#include "units/text.hpp"

namespace ventfolio::testing {
namespace {

std::string text_of(const TextRun& run) {
    std::string text;
    for (const char32_t letter : run.text) text += utf8(letter);
    return text;
}

bool is_body_text(const PlacedItem& item) {
    return item.kind == PlacedItem::Kind::text && item.origin.node != Origin::kFurniture;
}

}  // namespace

Document document_of(const std::string& markdown, TemplateData::Object data, std::string_view front,
                     std::shared_ptr<const Pictures> pictures) {
    const std::string text = fmt::format("---\ntitle: Trial\n{}---\n{}", front, markdown);
    Rendered rendered =
        render(parse_template({"trial.md", text}, {}, std::move(pictures)), TemplateData{std::move(data)});
    for (const Finding& finding : rendered.findings) FAIL(finding.message << " in " << text);
    Document document;
    document.name = document.sheet = "trial";
    document.language = "en";
    document.template_file = "trial.md";
    document.front_matter = std::move(rendered.front_matter);
    document.title = std::move(rendered.title);
    document.blocks = std::move(rendered.blocks);
    return document;
}

LaidOut laid_out(const Document& document, const PageSetup& setup) {
    static Measurer measurer;
    LaidOut out;
    out.sheet = lay_out(document, trial_furniture(), setup, measurer, out.findings);
    return out;
}

TemplateData value_of(std::string field, std::vector<PrintedPart> parts) {
    PrintedValue value;
    value.field = std::move(field);
    value.parts = std::move(parts);
    return value;
}

std::vector<std::string> body_words(const PlacedSheet& sheet) {
    std::vector<std::string> words;
    for (const PlacedPage& page : sheet.pages)
        for (const std::string& word : split(body_text(page), ' '))
            if (!word.empty()) words.push_back(word);
    return words;
}

std::string body_text(const PlacedPage& page) {
    std::string text;
    const PlacedItem* before = nullptr;
    for (const PlacedItem& item : page.items) {
        if (!is_body_text(item)) continue;
        // Runs of one line that touch are one text in two looks.
        const bool joined = before != nullptr && before->text.origin.y == item.text.origin.y &&
                            std::abs(before->text.origin.x + before->text.width - item.text.origin.x) < 0.05;
        text += (joined ? "" : " ") + text_of(item.text);
        before = &item;
    }
    return text;
}

}  // namespace ventfolio::testing
