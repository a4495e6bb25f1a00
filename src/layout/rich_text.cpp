#include "layout/rich_text.hpp"

#include <fmt/format.h>
#include <linebreak.h>
#include <algorithm>

#include "layout/measures.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr char32_t kObject = U'\uFFFC';
constexpr double kAscent = 0.78;   // of the size: capitals reach 0.714, room for an accent on most
constexpr double kDescent = 0.22;  // of the size: the deepest letters

/// The part of a span that stands on one line.
struct Fragment {
    const TextSpan* span;
    std::u32string text;
    double width;
    std::vector<double> kerns;
};

struct Line {
    std::vector<Fragment> fragments;
    double width = 0;
    double size = 0;  ///< largest type in it
};

/// All characters of a passage in a row, each with the span it belongs to and whether a line may end after it.
struct Passage {
    std::u32string text;
    std::vector<const TextSpan*> owner;
    std::vector<char> breaks;
};

bool is_line_end(char32_t c) { return c == U'\n' || c == U'\u2028' || c == U'\u0085' || c == U'\r'; }

bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }
bool is_letter(char32_t c) { return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') || c >= 0xC0; }

Passage joined_spans(const TextSpans& spans) {
    Passage passage;
    for (const TextSpan& span : spans) {
        passage.text += span.text;
        passage.owner.insert(passage.owner.end(), span.text.size(), &span);
    }
    passage.breaks.resize(passage.text.size());
    static const bool ready = (init_linebreak(), true);
    static_cast<void>(ready);
    set_linebreaks_utf32(reinterpret_cast<const utf32_t*>(passage.text.data()), passage.text.size(), "en",
                         passage.breaks.data());
    for (std::size_t at = 0; at + 1 < passage.text.size(); ++at) {
        const bool inside_solid = passage.owner[at] == passage.owner[at + 1] && passage.owner[at]->solid;
        const bool after_slash = passage.text[at] == U'/';  // "L/min" and "assist/control" stay whole
        // A number and the word it counts stay together: "1 minute", "page 2".
        const bool after_number =
            at > 0 && passage.text[at] == U' ' && is_digit(passage.text[at - 1]) && is_letter(passage.text[at + 1]);
        if ((inside_solid || after_slash || after_number) && passage.breaks[at] == LINEBREAK_ALLOWBREAK)
            passage.breaks[at] = LINEBREAK_NOBREAK;
    }
    return passage;
}

/// Letters up to the next place where a line may end, trailing blanks included. The unit in which text is measured.
struct Word {
    std::size_t start;
    std::size_t end;
    double width;          ///< without the trailing blanks
    double width_in_line;  ///< with them
    bool ends_line;
};

class LineBreaker {
  public:
    LineBreaker(const TextSpans& spans, LayoutContext& context) : passage_{joined_spans(spans)}, context_{context} {
        std::size_t start = 0;
        for (std::size_t at = 0; at < passage_.text.size(); ++at) {
            const bool last = at + 1 == passage_.text.size();
            const bool must = passage_.breaks[at] == LINEBREAK_MUSTBREAK && !last;
            if (passage_.breaks[at] != LINEBREAK_ALLOWBREAK && !must && !last) continue;
            words_.push_back(word(start, at + 1, must));
            start = at + 1;
        }
    }

    std::vector<Line> lines(double width, bool report_wide_words) {
        std::vector<Line> lines;
        std::size_t first = 0;
        double used = 0;
        for (std::size_t at = 0; at < words_.size(); ++at) {
            if (at > first && used + words_[at].width > width + kFitTolerance) {
                lines.push_back(line(first, at));
                first = at;
                used = 0;
            }
            if (report_wide_words && words_[at].width > width + kFitTolerance) report_wide(words_[at], width);
            used += words_[at].width_in_line;
            if (words_[at].ends_line) {
                lines.push_back(line(first, at + 1));
                first = at + 1;
                used = 0;
            }
        }
        if (first < words_.size()) lines.push_back(line(first, words_.size()));
        return lines;
    }

    double widest_word() const {
        double widest = 0;
        for (const Word& word : words_) widest = std::max(widest, word.width);
        return widest;
    }

  private:
    template <class Visit>
    void for_each_fragment(std::size_t start, std::size_t end, Visit visit) const {
        while (start < end) {
            std::size_t stop = start;
            while (stop < end && passage_.owner[stop] == passage_.owner[start]) ++stop;
            visit(*passage_.owner[start], passage_.text.substr(start, stop - start));
            start = stop;
        }
    }

    static bool is_blank(char32_t c) { return c == U' ' || is_line_end(c); }

    Word word(std::size_t start, std::size_t end, bool ends_line) {
        std::size_t core_end = end;
        while (core_end > start && is_blank(passage_.text[core_end - 1])) --core_end;
        Word word{start, end, 0, 0, ends_line};
        for_each_fragment(start, core_end, [&](const TextSpan& span, const std::u32string& text) {
            word.width += measured(span, text).width * scale_of(span);
        });
        word.width_in_line = word.width;
        for (std::size_t at = core_end; at < end; ++at)
            if (passage_.text[at] == U' ')
                word.width_in_line += measured(*passage_.owner[at], U" ").width * scale_of(*passage_.owner[at]);
        return word;
    }

    static double scale_of(const TextSpan& span) { return span.object_width > 0 ? 1 : span.look.size / 1000; }

    FontMetrics::Advance measured(const TextSpan& span, const std::u32string& text) {
        if (span.object_width > 0) return {span.object_width, {}};
        return context_.measurer.advance(span.look.face, text);
    }

    void append(Line& line, const TextSpan& span, const std::u32string& text) {
        if (line.fragments.empty() || line.fragments.back().span != &span) line.fragments.push_back({&span, {}, 0, {}});
        Fragment& fragment = line.fragments.back();
        const FontMetrics::Advance advance = measured(span, text);
        const double width = advance.width * scale_of(span);
        if (!advance.kerns.empty()) {
            fragment.kerns.resize(fragment.text.size());
            fragment.kerns.insert(fragment.kerns.end(), advance.kerns.begin(), advance.kerns.end());
        }
        fragment.text += text;
        if (!fragment.kerns.empty()) fragment.kerns.resize(fragment.text.size());
        fragment.width += width;
        line.width += width;
        line.size = std::max(line.size, span.look.size);
    }

    Line line(std::size_t first, std::size_t last) {
        Line line;
        for (std::size_t at = first; at < last; ++at) {
            std::size_t end = words_[at].end;
            while (end > words_[at].start && is_blank(passage_.text[end - 1])) --end;
            for_each_fragment(words_[at].start, end,
                              [&](const TextSpan& span, const std::u32string& text) { append(line, span, text); });
            if (at + 1 == last) break;
            for (; end < words_[at].end; ++end)
                if (passage_.text[end] == U' ') append(line, *passage_.owner[end], U" ");
        }
        if (line.size == 0) line.size = passage_.owner[words_[first].start]->look.size;
        return line;
    }

    void report_wide(const Word& word, double width) {
        const TextSpan& span = *passage_.owner[word.start];
        const std::string about = span.field.empty() ? "a word of the template" : "the value of " + span.field;
        context_.refuse("word-wider-than-column",
                        fmt::format("On {}, {} is {:.0f} mm wider than its column and cannot be broken.",
                                    context_.document.sheet, about, std::max(1.0, (word.width - width) / mm(1))),
                        span.line, span.field);
    }

    Passage passage_;
    std::vector<Word> words_;
    LayoutContext& context_;
};

std::vector<Line> balanced_lines(LineBreaker& breaker, double width) {
    const std::size_t count = breaker.lines(width, false).size();
    double low = width / 3;
    double high = width;
    while (high - low > 1) {
        const double middle = (low + high) / 2;
        (breaker.lines(middle, false).size() > count ? low : high) = middle;
    }
    return breaker.lines(high, true);
}

void put_check_box(Frame& frame, double x, double baseline, double width) {
    const double side = width - mm(2.6);
    frame.put_box({{x, baseline - side + mm(0.5)}, side, side, mm(0.35), false, Ink::black});
}

void put_fragment(Frame& frame, Fragment& fragment, const TextStyle& style, double x, double baseline,
                  std::string_view role, const LayoutContext& context) {
    const TextSpan& span = *fragment.span;
    if (span.check_box) return put_check_box(frame, x, baseline, fragment.width);
    if (span.object_width > 0) {
        frame.put_rule({{x, baseline + mm(0.6)}, {x + fragment.width, baseline + mm(0.6)}, mm(0.25), style.ink});
        return;
    }
    PlacedItem item;
    item.kind = PlacedItem::Kind::text;
    item.text = {{x, baseline},  span.look.size,           span.look.face,
                 style.ink,      std::move(fragment.text), std::move(fragment.kerns),
                 fragment.width, kAscent * span.look.size, kDescent * span.look.size};
    item.origin = {context.node, std::string{role}, span.field};
    frame.items.push_back(std::move(item));
}

double start_of_line(Alignment alignment, double width, double line_width) {
    if (alignment == Alignment::right) return width - line_width;
    if (alignment == Alignment::center) return (width - line_width) / 2;
    return 0;
}

void check_coverage(const TextSpan& span, LayoutContext& context) {
    for (const char32_t c : span.text) {
        if (is_line_end(c) || c == kObject || FontMetrics::of(span.look.face).covers(c)) continue;
        const std::string where = span.field.empty() ? "the template" : span.field;
        context.refuse("character-not-in-font",
                       fmt::format("The character U+{:04X} \"{}\" in {} has no glyph in the fonts of these sheets.",
                                   static_cast<unsigned>(c), utf8(c), where),
                       span.line, span.field);
    }
}

TextStyle::Look look_of(const PrintedPart& part, const TextStyle& style) {
    switch (part.kind) {
        case PrintedPart::Kind::number:
            return style.number.value_or(style.words);
        case PrintedPart::Kind::unit:
            return style.unit.value_or(style.words);
        case PrintedPart::Kind::word:
            break;
    }
    return style.words;
}

void add_value(TextSpans& spans, const Inline& piece, const TextStyle& style) {
    const bool in_words = std::ranges::none_of(
        piece.value.parts, [](const PrintedPart& part) { return part.kind == PrintedPart::Kind::number; });
    for (const PrintedPart& part : piece.value.parts) {
        TextSpan span;
        span.look = in_words ? style.answer.value_or(style.words) : look_of(part, style);
        if (part.kind == PrintedPart::Kind::word && !in_words) span.look = style.unit.value_or(style.words);
        if (piece.strong || piece.value.not_recorded) span.look.face = Face::bold;
        span.text = code_points(part.text);
        if (style.unit_below && part.kind == PrintedPart::Kind::unit) {
            // The no-break space between number and unit gives way to a line end.
            while (!span.text.empty() && span.text.front() == U'\u00A0') span.text.erase(0, 1);
            span.text.insert(0, 1, U'\u2028');
        }
        span.solid = part.kind != PrintedPart::Kind::word;
        span.field = piece.value.field;
        span.line = piece.line;
        spans.push_back(std::move(span));
    }
}

}  // namespace

const FontMetrics::Advance& Measurer::advance(Face face, const std::u32string& text) {
    auto& known = known_[face == Face::regular ? 0 : 1];
    const auto found = known.find(text);
    if (found != known.end()) return found->second;
    return known.emplace(text, FontMetrics::of(face).advance(text)).first->second;
}

Finding& LayoutContext::refuse(std::string_view rule, std::string message, std::size_t line, std::string field) {
    Finding finding;
    finding.rule = rule;
    finding.severity = Severity::refuse;
    finding.message = std::move(message);
    Mark mark;
    mark.file = document.template_file;
    mark.place.line = line;
    mark.place.column = line > 0 ? 1 : 0;
    mark.field = std::move(field);
    finding.marks.push_back(std::move(mark));
    findings.push_back(std::move(finding));
    return findings.back();
}

TextStyle plain_style(double size, Face face) {
    TextStyle style;
    style.words = {size, face};
    return style;
}

TextSpans spans_of(const Inlines& inlines, const TextStyle& style, LayoutContext& context) {
    TextSpans spans;
    for (const Inline& piece : inlines) {
        TextSpan span;
        span.look = style.words;
        if (piece.strong) span.look.face = Face::bold;
        span.line = piece.line;
        switch (piece.kind) {
            case Inline::Kind::value:
                add_value(spans, piece, style);
                continue;
            case Inline::Kind::text:
                span.text = code_points(piece.text);
                break;
            case Inline::Kind::line_break:
                span.text = U"\u2028";
                break;
            case Inline::Kind::check_box:
                span.text = kObject;
                span.check_box = true;
                span.object_width = mm(7.6) * context.scale;
                break;
            case Inline::Kind::write_in:
                span.text = kObject;
                span.object_width = mm(3) * static_cast<double>(piece.text.size()) * context.scale;
                break;
            case Inline::Kind::figure:
                continue;  // figures stand in cells of their own, not in lines of text
        }
        spans.push_back(std::move(span));
    }
    for (const TextSpan& span : spans) check_coverage(span, context);
    return spans;
}

double natural_width(const Inlines& inlines, const TextStyle& style, LayoutContext& context) {
    const TextSpans spans = spans_of(inlines, style, context);
    double widest = 0;
    for (const Line& line : LineBreaker{spans, context}.lines(mm(10000), false)) widest = std::max(widest, line.width);
    return widest;
}

double widest_word(const Inlines& inlines, const TextStyle& style, LayoutContext& context) {
    const TextSpans spans = spans_of(inlines, style, context);
    return LineBreaker{spans, context}.widest_word();
}

Frame set_text(const Inlines& inlines, const TextStyle& style, double width, std::string_view role,
               LayoutContext& context) {
    Frame frame;
    frame.width = width;
    TextSpans spans = spans_of(inlines, style, context);
    // A line to write on may be shorter than it was asked for, but not longer than its column.
    for (TextSpan& span : spans) span.object_width = std::min(span.object_width, width);
    LineBreaker breaker{spans, context};
    for (Line& line : style.balanced ? balanced_lines(breaker, width) : breaker.lines(width, true)) {
        const double pitch = style.leading * line.size;
        const double baseline = frame.height + (pitch - line.size) / 2 + kAscent * line.size;
        double x = start_of_line(style.alignment, width, line.width);
        for (Fragment& fragment : line.fragments) {
            const double advance = fragment.width;
            put_fragment(frame, fragment, style, x, baseline, role, context);
            x += advance;
        }
        frame.height += pitch;
    }
    return frame;
}

double first_baseline(const Frame& frame) {
    for (const PlacedItem& item : frame.items)
        if (item.kind == PlacedItem::Kind::text) return item.text.origin.y;
    return frame.height;
}

std::string first_field(const Inlines& inlines) {
    for (const Inline& piece : inlines)
        if (piece.kind == Inline::Kind::value) return piece.value.field;
    return {};
}

Inlines words(std::string_view text, bool strong) {
    Inline piece;
    piece.text = text;
    piece.strong = strong;
    return {piece};
}

}  // namespace ventfolio
