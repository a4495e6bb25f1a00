#include "layout/figures/timeline.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

#include "layout/figures/hatch.hpp"
#include "layout/headings.hpp"
#include "layout/table_row.hpp"
#include "units/ascii.hpp"

namespace ventfolio {
namespace {

constexpr double kBar = mm(6.8);
constexpr double kBetweenBars = mm(1.4);
constexpr double kDividerGap = mm(3);
constexpr double kHeavyMark = mm(1.1);
constexpr double kDashedMark = mm(0.7);
constexpr double kWhiteAtMark = mm(0.45);  // on each side, so that a mark shows on black
constexpr double kWordsInBar = mm(3);      // left and right of words in a bar
constexpr double kWordsBesideBar = mm(1.6);
constexpr double kRightOfPlot = mm(4);  // half of the last hour's number
constexpr double kTick = mm(1.4);
constexpr double kRoundingRoom = 1;  // a text set to its own natural width must not wrap

/// A row of the table that is a bar, or a rule across.
struct Bar {
    Inlines label;
    Inlines words;
    Hatch hatch = Hatch::open;
    double from = 0;  ///< hours
    double to = 0;
    bool divider = false;
    Origin origin;  ///< of what is drawn
    Origin start;   ///< of its left end, which stands for the time in the second cell
    Origin finish;  ///< likewise of its right end
};

struct Mark {
    Inlines words;
    double at = 0;  ///< hours
    bool heavy = false;
    Origin origin;
    Origin line;  ///< which stands for the time in the third cell
};

struct Chart {
    std::vector<Bar> bars;
    std::vector<Mark> marks;
    double end = 0;   ///< of the axis, hours
    double step = 2;  ///< between its numbers
};

/// The two numbers of "6 h 15 min", whatever words stand between them, in hours.
std::optional<double> hours_of(const Inlines& inlines) {
    std::vector<double> numbers;
    bool in_number = false;
    for (const char letter : plain_text(inlines)) {
        const bool digit = is_digit(letter);
        if (digit && !in_number) numbers.push_back(0);
        if (digit) numbers.back() = 10 * numbers.back() + (letter - '0');
        in_number = digit;
    }
    if (numbers.size() != 2 || numbers[1] >= 60) return std::nullopt;
    return numbers[0] + numbers[1] / 60;
}

/// The figure that the fourth cell names, and the words behind it.
std::pair<Inline, Inlines> figure_and_words(const Inlines& inlines) {
    Inline figure;
    Inlines words;
    for (const Inline& piece : inlines) {
        if (piece.kind == Inline::Kind::figure)
            figure = piece;
        else
            words.push_back(piece);
    }
    // The blank between figure and words.
    if (!words.empty() && words.front().kind == Inline::Kind::text)
        words.front().text.erase(0, words.front().text.find_first_not_of(' '));
    std::erase_if(words, [](const Inline& piece) { return piece.kind == Inline::Kind::text && piece.text.empty(); });
    return {std::move(figure), std::move(words)};
}

class Reader {
  public:
    explicit Reader(LayoutContext& context) : context_{context} {}

    Chart read(const Block& table) {
        for (std::size_t at = 1; at < table.head.cells.size(); ++at)
            if (!cell(table.head, at).empty()) context_.refuse_unprinted("a second head of a chart", table.head.line);
        for (const TableRow& row : table.rows) read(row);
        set_axis();
        return std::move(chart_);
    }

  private:
    void read(const TableRow& row) {
        ++context_.node;
        check_columns(row, 4, context_);
        if (std::ranges::all_of(row.cells, [](const TableCell& one) { return one.inlines.empty(); })) {
            Bar divider;
            divider.divider = true;
            chart_.bars.push_back(std::move(divider));
            return;
        }
        auto [figure, words] = figure_and_words(cell(row, 3));
        if (figure.text == "mark-heavy" || figure.text == "mark-dashed") return add_mark(row, figure, words);
        add_bar(row, figure, std::move(words));
    }

    Origin origin_of(const Inlines& time) const {
        return {context_.node, "figure", {}, time.empty() ? kNoElement : time.front().element};
    }
    Origin origin_of(const Inline& figure) const { return {context_.node, "figure", {}, figure.element}; }

    void add_mark(const TableRow& row, const Inline& figure, const Inlines& words) {
        const auto at = hours_of(cell(row, 2));
        if (!at || !cell(row, 1).empty()) return refuse_time(row);
        if (!words.empty()) context_.refuse_unprinted("words behind a mark", row.line, first_field(words));
        chart_.marks.push_back(
            {cell(row, 0), *at, figure.text == "mark-heavy", origin_of(figure), origin_of(cell(row, 2))});
    }

    void add_bar(const TableRow& row, const Inline& figure, Inlines words) {
        const auto hatch = hatch_named(figure.text);
        if (!hatch) {
            context_.refuse("figure-unknown", "There is no bar or mark named \"" + figure.text + "\".", row.line);
            return;
        }
        const auto from = hours_of(cell(row, 1));
        const auto to = hours_of(cell(row, 2));
        if (!from || !to || *to < *from) return refuse_time(row);
        chart_.bars.push_back({cell(row, 0), std::move(words), *hatch, *from, *to, false, origin_of(figure),
                               origin_of(cell(row, 1)), origin_of(cell(row, 2))});
    }

    void refuse_time(const TableRow& row) {
        context_.refuse("chart-time-unreadable",
                        "From \"" + plain_text(cell(row, 1)) + "\" to \"" + plain_text(cell(row, 2)) +
                            "\" cannot be drawn to scale.",
                        row.line, first_field(cell(row, 2)));
    }

    void set_axis() {
        double most = 0;
        for (const Bar& bar : chart_.bars) {
            if (bar.divider && most > 0) break;
            most = std::max(most, bar.to);
        }
        for (const Mark& mark : chart_.marks) most = std::max(most, mark.at);
        constexpr std::array kSteps{2.0, 6.0, 12.0, 24.0};
        constexpr double kMostNumbers = 13;
        const auto fits = std::ranges::find_if(kSteps, [&](double step) { return most <= kMostNumbers * step; });
        chart_.step = fits == kSteps.end() ? kSteps.back() * std::ceil(most / kMostNumbers / kSteps.back()) : *fits;
        chart_.end = std::max(1.0, std::ceil(most / chart_.step - 1e-9)) * chart_.step;
    }

    LayoutContext& context_;
    Chart chart_;
};

struct Styles {
    TextStyle label;
    TextStyle words;
    TextStyle number;
    TextStyle flag;
};

Styles styles_for(double scale) {
    Styles styles{plain_style(11 * scale, Face::bold), plain_style(11 * scale, Face::bold),
                  plain_style(10 * scale, Face::bold), plain_style(12 * scale, Face::bold)};
    for (TextStyle* style : {&styles.label, &styles.words, &styles.number, &styles.flag}) style->leading = 1.15;
    return styles;
}

/// A place on the frame that a line may not cross.
struct Obstacle {
    Stretch across;
    Stretch down;
};

class Drawer {
  public:
    Drawer(Chart chart, const Inlines& caption, double width, LayoutContext& context)
        : chart_{std::move(chart)},
          caption_{caption},
          context_{context},
          styles_{styles_for(context.scale)},
          bar_{kBar * context.scale} {
        frame_.width = width;
        caption_node_ = context.node;
        measure_columns();
    }

    Frame drawn() {
        put_caption_later();
        put_flags();
        rows_top_ = frame_.height;
        for (const Bar& bar : chart_.bars) bar.divider ? put_divider() : put_row(bar);
        put_axis();
        put_lines();
        return std::move(frame_);
    }

  private:
    double x_of(double hours) const { return plot_.from + plot_.width() * std::min(1.0, hours / chart_.end); }
    Origin axis() const { return {caption_node_, "figure", {}}; }

    Frame words_of(const Inlines& inlines, const TextStyle& style, double width, std::size_t node) {
        // A row's words belong to the row, not to the block that happens to be set last.
        const std::size_t now = std::exchange(context_.node, node);
        Frame text = set_text(inlines, style, width, "chart", context_);
        context_.node = now;
        return text;
    }
    Frame on_one_line(const Inlines& inlines, const TextStyle& style, std::size_t node) {
        return words_of(inlines, style, natural_width(inlines, style, context_) + kRoundingRoom, node);
    }

    Frame label_of(const Bar& bar, double width) {
        const auto [tag_words, name] = split_after_strong(bar.label);
        Frame label;
        label.width = width;
        double indent = 0;
        if (!tag_words.empty()) {
            const std::size_t now = std::exchange(context_.node, bar.origin.node);
            Frame tag = set_tag(tag_words, styles_.label.words.size, context_);
            context_.node = now;
            indent = tag.width + mm(2) * context_.scale;
            label.height = tag.height;
            label.put(std::move(tag), 0, 0);
        }
        Frame text = words_of(name, styles_.label, width - indent, bar.origin.node);
        label.height = std::max(label.height, text.height);
        label.put_in_middle(std::move(text), indent);
        return label;
    }

    double natural_label(const Bar& bar) {
        const auto [tag, name] = split_after_strong(bar.label);
        const double indent = tag.empty() ? 0 : natural_width(tag, styles_.label, context_) + mm(6) * context_.scale;
        return indent + natural_width(name, styles_.label, context_) + kRoundingRoom;
    }

    void measure_columns() {
        // Of the width; twice the words in large type would make tall rows else.
        const bool wide = context_.large_print() && !context_.document.second_language.empty();
        const double most_label = wide ? 0.42 : 0.3;
        double label = natural_width(caption_, plain_style(10 * context_.scale), context_) + kRoundingRoom;
        for (const Bar& bar : chart_.bars)
            if (!bar.divider) label = std::max(label, natural_label(bar));
        label_width_ = std::min(label, most_label * frame_.width);
        plot_ = {label_width_ + kColumnGap, frame_.width - kRightOfPlot};
    }

    /// The caption stands at the foot, beside the axis, but it is said first.
    void put_caption_later() {
        Frame caption = words_of(caption_, plain_style(10 * context_.scale), label_width_, caption_node_);
        caption_height_ = caption.height;
        caption_items_ = caption.items.size();
        frame_.put(std::move(caption), 0, 0);
    }

    double half_of(const Mark& mark) const { return (mark.heavy ? kHeavyMark : kDashedMark) / 2; }
    Stretch corridor(const Mark& mark) const {
        const double x = x_of(mark.at);
        return {x - half_of(mark) - kWhiteAtMark, x + half_of(mark) + kWhiteAtMark};
    }

    /// Where flags stand: left or right of their lines, in one row if that can be, else in two or more.
    struct Flags {
        std::vector<Obstacle> places;  ///< by mark
        bool clear = true;             ///< no flag stands on the line of another
    };

    void put_flags() {
        const double height = 1.5 * styles_.flag.words.size;
        std::vector<Frame> texts;
        for (const Mark& mark : chart_.marks) {
            TextStyle look = styles_.flag;
            if (mark.heavy) look.ink = Ink::white;
            texts.push_back(on_one_line(mark.words, look, mark.origin.node));
        }
        const Flags flags = places_of_flags(texts, height);
        double bottom = 0;
        for (const Obstacle& place : flags.places) bottom = std::max(bottom, place.down.to);
        if (!flags.places.empty()) frame_.height = std::max(frame_.height, bottom + mm(1.4));
        for (std::size_t at = 0; at < texts.size(); ++at) {
            const Obstacle& place = flags.places[at];
            put_flag(chart_.marks[at], std::move(texts[at]), place);
            double from = flags.clear ? place.down.to : bottom;
            // Another flag on the same line hides its upper part.
            for (const Obstacle& other : flags.places)
                if (other.across.from < x_of(chart_.marks[at].at) + mm(1) &&
                    x_of(chart_.marks[at].at) - mm(1) < other.across.to && other.down.from >= place.down.to)
                    from = std::max(from, other.down.to);
            line_tops_.push_back(from);
        }
        obstacles_.insert(obstacles_.end(), flags.places.begin(), flags.places.end());
    }

    void put_flag(const Mark& mark, Frame text, const Obstacle& place) {
        Frame flag;
        flag.width = place.across.width();
        flag.height = place.down.width();
        if (mark.heavy)
            flag.put_black_field(mark.origin);
        else
            flag.put_outline(kBoldLine, mark.origin);
        const double top = top_with_capitals_in_middle(text, flag.height);
        flag.put(std::move(text), kWordsInBar, top);
        frame_.put(std::move(flag), place.across.from, place.down.from);
    }

    /// Tries the marks in every order until no flag is in the way of another.
    Flags places_of_flags(const std::vector<Frame>& texts, double height) const {
        constexpr std::size_t kMostToTry = 5;
        std::vector<std::size_t> order(texts.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        do {
            Flags flags{std::vector<Obstacle>(texts.size()), true};
            std::vector<std::size_t> placed;
            for (const std::size_t mark : order) {
                const auto place = place_for_flag(mark, texts[mark].width + 2 * kWordsInBar, height, flags, placed);
                if (!place) break;
                flags.places[mark] = *place;
                placed.push_back(mark);
            }
            if (placed.size() == texts.size()) return flags;
        } while (texts.size() <= kMostToTry && std::ranges::next_permutation(order).found);
        return one_below_another(texts, height);
    }

    /// A row for each flag; all lines then begin below the last.
    Flags one_below_another(const std::vector<Frame>& texts, double height) const {
        Flags flags{{}, false};
        for (std::size_t at = 0; at < texts.size(); ++at) {
            const double width = texts[at].width + 2 * kWordsInBar;
            const double left = std::clamp(x_of(chart_.marks[at].at) - width / 2, 0.0, frame_.width - width);
            const double top = static_cast<double>(at) * (height + mm(1));
            flags.places.push_back({{left, left + width}, {top, top + height}});
        }
        return flags;
    }

    std::optional<Obstacle> place_for_flag(std::size_t mark, double width, double height, const Flags& flags,
                                           const std::vector<std::size_t>& placed) const {
        const double x = x_of(chart_.marks[mark].at);
        const double half = half_of(chart_.marks[mark]);
        const Stretch right{x - half, x - half + width};
        const Stretch left{x + half - width, x + half};
        const Stretch at_edge{frame_.width - width, frame_.width};
        std::vector<Stretch> sides{left, right};
        if (chart_.marks[mark].heavy) std::swap(sides[0], sides[1]);
        if (at_edge.holds(x)) sides.push_back(at_edge);
        for (std::size_t row = 0; row <= placed.size(); ++row) {
            const double top = static_cast<double>(row) * (height + mm(1));
            for (const Stretch& across : sides) {
                if (across.from < 0 || across.to > frame_.width + kFitTolerance) continue;
                const Obstacle place{across, {top, top + height}};
                const bool clear = std::ranges::none_of(placed, [&](std::size_t other) {
                    return in_the_way(place, flags.places[other], x, x_of(chart_.marks[other].at));
                });
                if (clear) return place;
            }
        }
        return std::nullopt;
    }

    /// Whether two flags touch, or one stands on the line that comes down from the other.
    static bool in_the_way(const Obstacle& one, const Obstacle& other, double x_one, double x_other) {
        const bool level = one.down.from < other.down.to && other.down.from < one.down.to;
        const bool beside = one.across.to + mm(2) <= other.across.from || other.across.to + mm(2) <= one.across.from;
        // Two flags back to back stand on either side of their lines.
        const bool back_to_back = one.across.to <= other.across.from || other.across.to <= one.across.from;
        if (level) return !beside && !(back_to_back && std::abs(x_one - x_other) > mm(2));
        if (std::abs(x_one - x_other) < mm(1)) return false;
        const auto on_line = [](const Obstacle& lower, double x) {
            return lower.across.from < x + mm(1) && x - mm(1) < lower.across.to;
        };
        return one.down.from >= other.down.to ? on_line(one, x_other) : on_line(other, x_one);
    }

    void put_divider() {
        const double y = frame_.height + kDividerGap / 2 - kBetweenBars / 2;
        frame_.put_rule({{0, y}, {frame_.width, y}, kThinLine, Ink::black});
        frame_.height += kDividerGap;
    }

    /// Where the words of a bar go. `below_name`: there was no room in or beside the bar.
    struct WordsPlace {
        double x = 0;
        bool inside = false;
        bool below_name = false;
    };

    bool crossed(Stretch across) const {
        return std::ranges::any_of(chart_.marks, [&](const Mark& mark) {
            const Stretch line = corridor(mark);
            return line.from < across.to && across.from < line.to;
        });
    }

    WordsPlace place_for_words(const Bar& bar, Stretch across, double width) const {
        if (bar.hatch != Hatch::solid) {
            std::vector<Stretch> lines;
            for (const Mark& mark : chart_.marks) lines.push_back(corridor(mark));
            for (const Stretch& part : without(across, lines))
                if (part.width() >= width + 2 * kWordsInBar)
                    return {part.from + (part.width() - width) / 2, true, false};
        }
        std::vector<double> beside{across.to + kWordsBesideBar};
        for (const Mark& mark : chart_.marks)
            if (corridor(mark).to > across.to) beside.push_back(corridor(mark).to + kWordsBesideBar);
        beside.push_back(across.from - kWordsBesideBar - width);
        for (const Mark& mark : chart_.marks)
            if (corridor(mark).from < across.from) beside.push_back(corridor(mark).from - kWordsBesideBar - width);
        for (const double x : beside) {
            const bool in_plot = x >= plot_.from + mm(1) && x + width <= frame_.width;
            if (in_plot && !crossed({x, x + width})) return {x, false, false};
        }
        return {0, false, true};
    }

    void put_row(const Bar& bar) {
        const Stretch across{x_of(bar.from), std::max(x_of(bar.to), x_of(bar.from) + kBoxLine)};
        Frame label = label_of(bar, label_width_);
        Frame words = on_one_line(bar.words, styles_.words, bar.origin.node);
        const double words_width = words.width;
        const WordsPlace place = place_for_words(bar, across, words_width);
        if (place.below_name)
            label.append(words_of(bar.words, styles_.words, label_width_, bar.origin.node), 0, mm(0.4));
        const double top = frame_.height;
        const double height = std::max(bar_, label.height);
        const Stretch down{top + (height - bar_) / 2, top + (height + bar_) / 2};
        frame_.height += height;
        std::vector<Stretch> free;
        for (const Mark& mark : chart_.marks) free.push_back(corridor(mark));
        if (place.inside) free.push_back({place.x - mm(1.2), place.x + words_width + mm(1.2)});
        put_bar(frame_, bar.hatch, across, down, free, bar.origin);
        put_end(across.from, down, bar, bar.start);
        put_end(across.to, down, bar, bar.finish);
        if (bar.to > chart_.end) put_goes_on(down, bar.origin);
        obstacles_.push_back({across, down});
        const double label_top = top + (height - label.height) / 2;
        frame_.put(std::move(label), 0, label_top);
        if (!place.below_name) {
            obstacles_.push_back({{place.x - mm(0.8), place.x + words_width + mm(0.8)}, down});
            const double words_top = down.from + top_with_capitals_in_middle(words, bar_);
            frame_.put(std::move(words), place.x, words_top);
        }
        frame_.height += kBetweenBars;
    }

    void put_end(double x, Stretch down, const Bar& bar, const Origin& origin) {
        if (bar.hatch == Hatch::open) return put_dashed(frame_, {x, down.from}, {x, down.to}, kBoldLine, origin);
        frame_.put_rule({{x, down.from}, {x, down.to}, kBoldLine, Ink::black}, origin);
    }

    /// An arrow at the end of the axis: this one lasts longer than the chart is wide.
    void put_goes_on(Stretch down, const Origin& origin) {
        const double x = plot_.to + mm(0.8);
        const double middle = (down.from + down.to) / 2;
        using Kind = Path::Segment::Kind;
        Path arrow;
        arrow.filled = true;
        arrow.segments = {{Kind::move, {x, middle - mm(2)}, {}, {}},
                          {Kind::line, {x + mm(3), middle}, {}, {}},
                          {Kind::line, {x, middle + mm(2)}, {}, {}},
                          {Kind::close, {}, {}, {}}};
        frame_.put_path(std::move(arrow), origin);
    }

    void put_axis() {
        rows_bottom_ = frame_.height;
        const Origin origin = axis();
        frame_.put_rule({{plot_.from, rows_bottom_}, {plot_.to, rows_bottom_}, kBoldLine, Ink::black}, origin);
        const double text_top = rows_bottom_ + kTick + mm(0.6);
        double text_height = 0;
        TextStyle look = styles_.number;
        look.alignment = Alignment::center;
        const auto half_steps = static_cast<std::size_t>(std::floor(2 * chart_.end / chart_.step + 1e-9));
        for (std::size_t at = 0; at <= half_steps; ++at) {
            const double hour = static_cast<double>(at) * chart_.step / 2;
            const double x = x_of(hour);
            const bool numbered = at % 2 == 0;
            frame_.put_rule(
                {{x, rows_bottom_}, {x, rows_bottom_ + (numbered ? kTick : kTick / 2)}, kBoxLine, Ink::black}, origin);
            if (!numbered) continue;
            const double room = 2 * kRightOfPlot;
            Frame number = words_of(words(std::to_string(std::lround(hour))), look, room, caption_node_);
            text_height = number.height;
            frame_.put(std::move(number), x - room / 2, text_top);
            if (hour > 0 && hour < chart_.end) hours_.push_back(x);
        }
        frame_.height = text_top + std::max(text_height, caption_height_);
        for (std::size_t at = 0; at < caption_items_; ++at) move(frame_.items[at], 0, text_top);
    }

    /// Lines down the chart, interrupted where words, bars and flags stand.
    void put_lines() {
        for (const double x : hours_)
            if (!crossed({x - mm(1), x + mm(1)}))
                for (const Stretch& part : clear_of(x, {rows_top_, rows_bottom_}))
                    frame_.put_rule({{x, part.from}, {x, part.to}, kHairline, Ink::grey}, axis());
        for (std::size_t at = 0; at < chart_.marks.size(); ++at) {
            const Mark& mark = chart_.marks[at];
            const double x = x_of(mark.at);
            const Stretch down{line_tops_[at], rows_bottom_};
            if (mark.heavy)
                frame_.put_rule({{x, down.from}, {x, down.to}, kHeavyMark, Ink::black}, mark.line);
            else
                put_dashed(frame_, {x, down.from}, {x, down.to}, kDashedMark, mark.line);
        }
    }

    std::vector<Stretch> clear_of(double x, Stretch down) const {
        std::vector<Stretch> taken;
        for (const Obstacle& one : obstacles_)
            if (one.across.from - mm(0.3) < x && x < one.across.to + mm(0.3)) taken.push_back(one.down);
        return without(down, std::move(taken));
    }

    Chart chart_;
    const Inlines& caption_;
    LayoutContext& context_;
    Styles styles_;
    double bar_;
    Frame frame_;
    std::size_t caption_node_ = 0;
    double label_width_ = 0;
    double caption_height_ = 0;
    std::size_t caption_items_ = 0;
    Stretch plot_;
    double rows_top_ = 0;
    double rows_bottom_ = 0;
    std::vector<double> hours_;
    std::vector<double> line_tops_;
    std::vector<Obstacle> obstacles_;
};

}  // namespace

Pieces set_timeline(const Block& table, const SectionStyle&, double width, LayoutContext& context) {
    const std::size_t caption_node = context.node;
    Chart chart = Reader{context}.read(table);
    if (chart.bars.empty()) return {};
    const std::size_t last_node = std::exchange(context.node, caption_node);
    Piece piece;
    piece.line = table.line;
    for (const TableRow& row : table.rows)
        if (piece.field.empty()) piece.field = first_field(cell(row, 2));
    piece.frame = Drawer{std::move(chart), cell(table.head, 0), width, context}.drawn();
    context.node = last_node;
    return {std::move(piece)};
}

}  // namespace ventfolio
