#include "layout/line_breaker.hpp"

#include <linebreak.h>
#include <algorithm>

#include "layout/measures.hpp"

namespace ventfolio {
namespace {

bool is_digit(char32_t letter) { return letter >= U'0' && letter <= U'9'; }
bool is_letter(char32_t letter) {
    constexpr char32_t kFirstAccented = 0xC0;
    return (letter >= U'a' && letter <= U'z') || (letter >= U'A' && letter <= U'Z') || letter >= kFirstAccented;
}
bool is_blank(char32_t letter) { return letter == U' ' || is_line_end(letter); }

std::vector<char> unicode_breaks(const std::u32string& text) {
    static const bool ready = (init_linebreak(),
                               true);  // once: the library sets up its tables without a lock
    static_cast<void>(ready);
    std::vector<char> breaks(text.size());
    set_linebreaks_utf32(reinterpret_cast<const utf32_t*>(text.data()), text.size(), "en", breaks.data());
    return breaks;
}

double points_per_unit(const TextSpan& span) { return span.look.size / 1000; }

}  // namespace

LineBreaker::Passage LineBreaker::joined(const TextSpans& spans) {
    Passage passage;
    for (const TextSpan& span : spans) {
        passage.text += span.text;
        passage.owner.insert(passage.owner.end(), span.text.size(), &span);
    }
    const std::u32string& text = passage.text;
    passage.breaks = unicode_breaks(text);
    for (std::size_t at = 0; at + 1 < text.size(); ++at) {
        const bool inside_solid = passage.owner[at] == passage.owner[at + 1] && passage.owner[at]->solid;
        const bool after_slash = text[at] == U'/';
        const bool unit = !passage.owner[at + 1]->check_box && (is_letter(text[at + 1]) || text[at + 1] == U'%');
        const bool after_number = at > 0 && text[at] == U' ' && is_digit(text[at - 1]) && unit;
        // A box to tick stays with what it stands for.
        const bool behind_box =
            passage.owner[at]->check_box || (at > 0 && text[at] == U' ' && passage.owner[at - 1]->check_box);
        if ((inside_solid || after_slash || after_number || behind_box) && passage.breaks[at] == LINEBREAK_ALLOWBREAK)
            passage.breaks[at] = LINEBREAK_NOBREAK;
    }
    return passage;
}

LineBreaker::LineBreaker(const TextSpans& spans, Measurer& measurer) : measurer_{measurer}, passage_{joined(spans)} {
    std::size_t start = 0;
    for (std::size_t at = 0; at < passage_.text.size(); ++at) {
        const bool last = at + 1 == passage_.text.size();
        const bool must = passage_.breaks[at] == LINEBREAK_MUSTBREAK && !last;
        if (passage_.breaks[at] != LINEBREAK_ALLOWBREAK && !must && !last) continue;
        words_.push_back(word(start, at + 1, must));
        start = at + 1;
    }
}

template <class Visit>
void LineBreaker::for_each_fragment(std::size_t start, std::size_t end, Visit visit) const {
    const std::u32string_view text = passage_.text;
    while (start < end) {
        std::size_t stop = start;
        while (stop < end && passage_.owner[stop] == passage_.owner[start]) ++stop;
        visit(*passage_.owner[start], text.substr(start, stop - start));
        start = stop;
    }
}

LineBreaker::Word LineBreaker::word(std::size_t start, std::size_t end, bool ends_line) {
    const auto width_of = [&](const TextSpan& span, std::u32string_view text) {
        return span.object_width > 0 ? span.object_width
                                     : measurer_.advance(span.look.face, text).width * points_per_unit(span);
    };
    Word word{start, end, end, 0, 0, ends_line};
    while (word.core_end > start && is_blank(passage_.text[word.core_end - 1])) --word.core_end;
    for_each_fragment(start, word.core_end,
                      [&](const TextSpan& span, std::u32string_view text) { word.width += width_of(span, text); });
    word.width_in_line = word.width;
    for (std::size_t at = word.core_end; at < end; ++at)
        if (passage_.text[at] == U' ') word.width_in_line += width_of(*passage_.owner[at], U" ");
    return word;
}

std::vector<LineBreaker::Stretch> LineBreaker::stretches(double width) const {
    std::vector<Stretch> found;
    std::size_t first = 0;
    double used = 0;
    const auto end_line = [&](std::size_t last) {
        found.push_back({first, last});
        first = last;
        used = 0;
    };
    for (std::size_t at = 0; at < words_.size(); ++at) {
        if (at > first && used + words_[at].width > width + kFitTolerance) end_line(at);
        used += words_[at].width_in_line;
        if (words_[at].ends_line) end_line(at + 1);
    }
    if (first < words_.size()) end_line(words_.size());
    return found;
}

void LineBreaker::append(Line& line, const TextSpan& span, std::u32string_view text) const {
    if (line.fragments.empty() || line.fragments.back().span != &span) line.fragments.push_back({&span, {}, 0, {}});
    Fragment& fragment = line.fragments.back();
    double width = span.object_width;
    if (width == 0) {
        const FontMetrics::Advance& advance = measurer_.advance(span.look.face, text);
        width = advance.width * points_per_unit(span);
        if (!advance.kerns.empty()) {
            fragment.kerns.resize(fragment.text.size());
            fragment.kerns.insert(fragment.kerns.end(), advance.kerns.begin(), advance.kerns.end());
        }
    }
    fragment.text += text;
    if (!fragment.kerns.empty()) fragment.kerns.resize(fragment.text.size());
    fragment.width += width;
    line.width += width;
    line.size = std::max(line.size, span.look.size);
}

Line LineBreaker::line(Stretch words) const {
    Line line;
    for (std::size_t at = words.first; at < words.last; ++at) {
        const Word& word = words_[at];
        for_each_fragment(word.start, word.core_end,
                          [&](const TextSpan& span, std::u32string_view text) { append(line, span, text); });
        if (at + 1 == words.last) break;
        for (std::size_t blank = word.core_end; blank < word.end; ++blank)
            if (passage_.text[blank] == U' ') append(line, *passage_.owner[blank], U" ");
    }
    if (line.size == 0) line.size = passage_.owner[words_[words.first].start]->look.size;
    return line;
}

std::vector<Line> LineBreaker::lines(double width) const {
    std::vector<Line> lines;
    for (const Stretch words : stretches(width)) lines.push_back(line(words));
    return lines;
}

std::vector<Line> LineBreaker::balanced_lines(double width) const {
    constexpr double kNearEnough = 1;  // pt
    const std::size_t count = stretches(width).size();
    double low = std::min(width, std::max(width / 3, widest_word()));  // a word must still fit
    double high = width;
    while (high - low > kNearEnough) {
        const double middle = (low + high) / 2;
        (stretches(middle).size() > count ? low : high) = middle;
    }
    return lines(high);
}

double LineBreaker::natural_width() const {
    double widest = 0;
    double used = 0;
    for (const Word& word : words_) {
        widest = std::max(widest, used + word.width);
        used = word.ends_line ? 0 : used + word.width_in_line;
    }
    return widest;
}

double LineBreaker::widest_word() const {
    double widest = 0;
    for (const Word& word : words_) widest = std::max(widest, word.width);
    return widest;
}

std::vector<LineBreaker::WideWord> LineBreaker::words_wider_than(double width) const {
    std::vector<WideWord> wide;
    for (const Word& word : words_)
        if (word.width > width + kFitTolerance) wide.push_back({passage_.owner[word.start], word.width - width});
    return wide;
}

}  // namespace ventfolio
