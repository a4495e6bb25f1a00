#include "sheets/document.hpp"

#include <algorithm>

namespace ventfolio {

bool Attributes::has(std::string_view name) const { return std::ranges::find(classes, name) != classes.end(); }

std::optional<std::string_view> Attributes::option(std::string_view name) const {
    for (const auto& [key, value] : options)
        if (key == name) return value;
    return std::nullopt;
}

std::optional<std::string_view> Document::front(std::string_view key) const {
    for (const auto& [word, value] : front_matter)
        if (word == key) return value;
    return std::nullopt;
}

bool is_shown(const Inline& piece) { return piece.kind == Inline::Kind::figure || piece.kind == Inline::Kind::picture; }

std::string plain_text(const Inlines& inlines) {
    std::string text;
    for (const Inline& piece : inlines) {
        switch (piece.kind) {
            case Inline::Kind::text:
                text += piece.text;
                break;
            case Inline::Kind::value:
                text += piece.value.text();
                break;
            case Inline::Kind::line_break:
                text += ' ';
                break;
            case Inline::Kind::figure:
            case Inline::Kind::picture:
                text += piece.alternative;
                break;
            case Inline::Kind::check_box:
            case Inline::Kind::write_in:
                break;
        }
    }
    return text;
}

}  // namespace ventfolio
