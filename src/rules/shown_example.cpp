#include "rules/shown_example.hpp"

#include <fmt/format.h>

#include "profile/yaml_guard.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

std::string shown_letters(std::string_view valid_utf8) {
    std::string out;
    for (const char32_t point : code_points(valid_utf8)) {
        const std::string letter = utf8(point);
        const auto unprintable = first_unprintable(letter);
        if (point == U'\t')
            out += "<tab>";
        else
            out += unprintable ? fmt::format("<{}>", *unprintable) : letter;
    }
    return out;
}

std::string shown_text(std::string_view text) {
    std::string out;
    while (const auto broken = first_invalid_utf8(text)) {
        out += shown_letters(text.substr(0, *broken));
        out += fmt::format("<byte {:02X}>", static_cast<unsigned char>(text[*broken]));
        text.remove_prefix(*broken + 1);
    }
    return out + shown_letters(text);
}

}  // namespace

std::string shown_fragment(ExampleFragment fragment) {
    std::string out;
    for (const ExamplePart& part : fragment) {
        const std::string text = shown_text(part.text);
        if (part.times == 1)
            out += text;
        else
            out += fmt::format("<{} times \"{}\">", part.times, with_replaced(text, "\n", "<line end>"));
    }
    return out;
}

}  // namespace ventfolio
