#include "layout/text_spans.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "layout/measures.hpp"
#include "layout/scripts.hpp"
#include "layout/type_sizes.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr char32_t kObject = U'\uFFFC';  // OBJECT REPLACEMENT CHARACTER: breaks lines as a word would
constexpr char32_t kLineSeparator = U'\u2028';
constexpr char32_t kNoBreakBlank = U'\u00A0';

/// A check box in a line, with the room on both sides of it: a little taller than the capitals beside it.
double check_box_width(double size, double scale) {
    constexpr double kSide = 1.2;  // in type sizes
    constexpr double kRoomAround = mm(2.6);
    return std::min(kSide * size, kTickBox * scale) + kRoomAround;
}
/// Each underscore of a line to write on stands for one letter of small handwriting; common practice, no source.
constexpr double kWriteInPerUnderscore = mm(3);

/// The second language is smaller than the first, so that the eye keeps to one of them; nothing is too small for it.
constexpr double kSecondLanguage = 0.85;  // in sizes of the first

double size_of(const Inline& piece, double size, double scale) {
    return piece.second ? std::min(size, std::max(kSecondLanguage * size, kSmallestText * scale)) : size;
}

TextStyle::Look look_of(PrintedPart::Kind kind, bool in_words, const TextStyle& style) {
    if (in_words) return style.answer.value_or(style.words);
    // Words beside a number ("12 to 16") are as light as its unit.
    return kind == PrintedPart::Kind::number ? style.number.value_or(style.words) : style.unit.value_or(style.words);
}

/// The unit of a value on a line of its own, if it does not begin one: the no-break space before it gives way to a line
/// end.
void move_below(const TextSpans& before, std::u32string& unit) {
    unit.erase(0, std::min(unit.find_first_not_of(kNoBreakBlank), unit.size()));
    const bool begins_line = before.empty() || (!before.back().text.empty() && is_line_end(before.back().text.back()));
    if (!begins_line) unit.insert(0, 1, kLineSeparator);
}

void add_value(TextSpans& spans, const Inline& piece, const TextStyle& style, double scale) {
    const bool in_words = std::ranges::all_of(
        piece.value.parts, [](const PrintedPart& part) { return part.kind == PrintedPart::Kind::word; });
    for (const PrintedPart& part : piece.value.parts) {
        TextSpan span;
        span.look = look_of(part.kind, in_words, style);
        span.look.size = size_of(piece, span.look.size, scale);
        if (piece.strong || piece.value.not_recorded) span.look.face = Face::bold;
        span.text = code_points(part.text);
        if (style.unit_below && part.kind == PrintedPart::Kind::unit) move_below(spans, span.text);
        span.solid = part.kind != PrintedPart::Kind::word;
        span.field = piece.value.field;
        span.line = piece.line;
        span.element = piece.element;
        spans.push_back(std::move(span));
    }
}

TextSpan object(double width, bool check_box) {
    TextSpan span;
    span.text = kObject;
    span.object_width = width;
    span.check_box = check_box;
    return span;
}

TextSpan words_in(std::u32string text) {
    TextSpan span;
    span.text = std::move(text);
    return span;
}

std::optional<TextSpan> span_of(const Inline& piece, double scale) {
    switch (piece.kind) {
        case Inline::Kind::text:
            return words_in(code_points(piece.text));
        case Inline::Kind::line_break:
            return words_in({kLineSeparator});
        case Inline::Kind::check_box:
            return object(0, true);
        case Inline::Kind::write_in:
            return object(kWriteInPerUnderscore * static_cast<double>(piece.text.size()) * scale, false);
        case Inline::Kind::value:
        case Inline::Kind::figure:
        case Inline::Kind::picture:
            break;
    }
    return std::nullopt;
}

}  // namespace

TextStyle plain_style(double size, Face face) {
    TextStyle style;
    style.words = {size, face};
    return style;
}

TextSpans spans_of(const Inlines& inlines, const TextStyle& style, double scale) {
    TextSpans spans;
    for (const Inline& piece : inlines) {
        if (piece.kind == Inline::Kind::value) {
            add_value(spans, piece, style, scale);
            continue;
        }
        auto span = span_of(piece, scale);
        if (!span) continue;
        span->look = style.words;
        span->look.size = size_of(piece, span->look.size, scale);
        if (span->check_box) span->object_width = check_box_width(style.words.size, scale);
        if (piece.strong) span->look.face = Face::bold;
        span->line = piece.line;
        span->element = piece.element;
        spans.push_back(std::move(*span));
    }
    return spans;
}

bool is_line_end(char32_t letter) {
    return letter == U'\n' || letter == kLineSeparator || letter == U'\u0085' || letter == U'\r';
}

void check_coverage(const TextSpans& spans, LayoutContext& context) {
    for (const TextSpan& span : spans) {
        const FontMetrics& face = FontMetrics::of(span.look.face);
        const std::string where = span.field.empty() ? "the template" : span.field;
        for (const char32_t letter : span.text) {
            if (is_line_end(letter) || letter == kObject) continue;
            const std::string cannot = why_not_set(letter);
            if (!cannot.empty())
                context.refuse("script-cannot-be-set",
                               fmt::format("The {} U+{:04X} \"{}\" in {} {}; these sheets cannot be set in it yet.",
                                           kind_of(letter), static_cast<unsigned>(letter), utf8(letter), where, cannot),
                               span.line, span.field);
            else if (!face.covers(letter))
                context.refuse("character-not-in-font",
                               fmt::format("The {} U+{:04X} \"{}\" in {} has no glyph in the fonts of these sheets.",
                                           kind_of(letter), static_cast<unsigned>(letter), utf8(letter), where),
                               span.line, span.field);
        }
    }
}

}  // namespace ventfolio
