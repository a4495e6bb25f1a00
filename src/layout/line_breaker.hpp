#pragma once

#include <string>
#include <vector>

#include "layout/text_spans.hpp"

namespace ventfolio {

/// The part of a span that stands on one line.
struct Fragment {
    const TextSpan* span;
    std::u32string text;
    double width;               ///< kerns included
    std::vector<double> kerns;  ///< one for each letter, or none
};

struct Line {
    std::vector<Fragment> fragments;
    double width = 0;  ///< without the blanks at its end
    double size = 0;   ///< largest type in it
};

/// Breaks a passage into lines by the rules of Unicode (UAX 14), with three of our own: no line ends inside a number or
/// a unit, after a slash ("L/min"), or between a number and the word it counts ("1 minute"). The passage is measured
/// once, word by word, and may then be broken at any width. Words are measured without the words beside them, so a line
/// is as wide as the sum of its words and blanks, however it is broken.
///
/// Keeps the spans that it is given; they must outlive it and its lines.
class LineBreaker {
  public:
    LineBreaker(const TextSpans& spans, Measurer& measurer);

    /// Lines of at most `width`; a word that is wider stands on a line of its own.
    std::vector<Line> lines(double width) const;
    /// The same number of lines as at `width`, none much longer than another.
    std::vector<Line> balanced_lines(double width) const;

    /// Width of the longest line if lines end only where they must.
    double natural_width() const;
    /// Width of the widest part that cannot be broken.
    double widest_word() const;

    /// A word that is wider than a column: what to say about it.
    struct WideWord {
        const TextSpan* span;  ///< in which it begins
        double excess;
    };
    std::vector<WideWord> words_wider_than(double width) const;

  private:
    /// All characters in a row, each with the span it belongs to and whether a line may end after it.
    struct Passage {
        std::u32string text;
        std::vector<const TextSpan*> owner;
        std::vector<char> breaks;
    };
    /// Letters up to the next place where a line may end, trailing blanks included. The unit in which text is measured.
    struct Word {
        std::size_t start;
        std::size_t core_end;  ///< where the trailing blanks begin
        std::size_t end;
        double width;          ///< without the trailing blanks
        double width_in_line;  ///< with them
        bool ends_line;
    };
    /// The words [first, last).
    struct Stretch {
        std::size_t first;
        std::size_t last;
    };

    static Passage joined(const TextSpans& spans);
    Word word(std::size_t start, std::size_t end, bool ends_line);
    std::vector<Stretch> stretches(double width) const;
    Line line(Stretch words) const;
    void append(Line& line, const TextSpan& span, std::u32string_view text) const;
    template <class Visit>
    void for_each_fragment(std::size_t start, std::size_t end, Visit visit) const;

    Measurer& measurer_;
    Passage passage_;
    std::vector<Word> words_;
};

}  // namespace ventfolio
