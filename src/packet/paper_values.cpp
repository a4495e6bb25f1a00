#include "packet/paper_values.hpp"

#include "sheets/printer.hpp"

namespace ventfolio {

PrintedValue code_value(std::string code) {
    PrintedValue value = calculated("sheet-code", folder, {{PrintedPart::Kind::unit, std::move(code)}});
    value.quoted = true;  // letters and digits as they fall, such as 1E3
    return value;
}

PrintedValue title_value(const Document& document, std::string_view without) {
    Audiences audiences = 0xFF;
    for (const Inline& piece : document.title)
        if (piece.kind == Inline::Kind::value) audiences &= piece.value.audiences;
    std::string title = plain_text(document.title);
    if (title.starts_with(without)) title.erase(0, without.size());
    return calculated("sheet-title", audiences, plain_parts(std::move(title)));
}

PrintedValue place_value(std::string words) {
    constexpr std::size_t kFitsOnLine = 34;
    const auto kind = words.size() <= kFitsOnLine ? PrintedPart::Kind::unit : PrintedPart::Kind::word;
    return calculated("copy-place", folder, {{kind, std::move(words)}});
}

}  // namespace ventfolio
