#include "layout/ladder.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <limits>
#include <utility>

#include "layout/ladder_legend.hpp"
#include "layout/ladder_rungs.hpp"
#include "layout/ladder_symbols.hpp"
#include "layout/ladder_way.hpp"
#include "layout/one_language.hpp"
#include "layout/type_sizes.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr double kBelowWords = mm(2);
constexpr double kOnward = mm(4);  // how far the way leads on below a chart that goes on in the section below it

struct Options {
    std::string_view yes;
    std::string_view overleaf;
    std::string_view again;
};

Options options_of(const Section& section) {
    const Attributes& given = section.heading->attributes;
    return {given.option("yes").value_or(""), given.option("overleaf").value_or(""),
            given.option("again").value_or("")};
}

TextStyle use_style(double scale) {
    TextStyle look = plain_style(12 * scale);
    look.leading = 1.2;
    return look;
}

Frame set_before(const std::vector<const Block*>& paragraphs, Reader reader, double width, LayoutContext& context) {
    Frame frame;
    frame.width = width;
    for (const Block* paragraph : paragraphs) {
        ++context.node;
        frame.append(
            set_text(for_reader(paragraph->inlines, reader), use_style(context.scale), width, "paragraph", context));
    }
    if (!paragraphs.empty()) frame.height += kBelowWords;
    return frame;
}

/// The name of a box and what stands small beside it, each as one reader needs it.
Inlines name_for(const Inlines& both, Reader reader) {
    auto [name, aside] = split_after_strong(both);
    Inlines words = for_reader(name, reader);
    const Inlines rest = for_reader(aside, reader);
    words.insert(words.end(), rest.begin(), rest.end());
    return words;
}

Block box_for(const Block& both, Reader reader) {
    Block one = both;
    one.inlines = for_reader(both.inlines, reader);
    for (Block& child : one.children) child = box_for(child, reader);
    return one;
}

/// What stands on a later side again is no second part of the sheet's structure.
Frame set_again(Frame frame) {
    for (PlacedItem& item : frame.items) item.origin.element = kNoElement;
    return frame;
}

/// What a side begins with: words, and the first question with its box of steps.
struct Head {
    Frame before;
    std::optional<Rung> first;
};

/// Everything of a chart, set but not yet on sides.
class Ladder {
  public:
    Ladder(const Section& section, double width, const LadderRoom& room, LayoutContext& context)
        : options_{options_of(section)},
          onward_{section.has("onward")},
          width_{width},
          room_{room},
          context_{context},
          plan_{ladder_plan(section.blocks, onward_, context)} {
        line_ = section.heading->line;
        set_columns();
        set_heads();
        set_steps();
        set_remarks();
        if (plan_.legend) legend_ = set_ladder_legend(*plan_.legend, width, context);
        if (onward_) check_onward();
    }

    Pieces sides() {
        Pieces pieces;
        if (onward_) return onward_pieces();
        std::size_t from = 0;
        do {
            const double space = pieces.empty() ? room_.first : room_.later;
            const Side side = next_side(from, pieces.size(), space, room_.foot);
            pieces.push_back(drawn(side, pieces.size(), space));
            from = side.to;
        } while (from < rungs_.size() || pieces.size() < heads_.size());
        return pieces;
    }

  private:
    /// Rungs [from, to) on one side. A side may hold the box of steps alone, where no step has room beside it.
    struct Side {
        std::size_t from;
        std::size_t to;
        double foot = 0;    ///< stays free below
        bool fills = true;  ///< reaches down to the foot
    };

    /// Large type needs another share between the first question and its box: a long word, or many steps.
    void set_columns() {
        const double apart = context_.large_print() ? mm(11) : columns_.steps_left - columns_.first;
        if (context_.large_print()) columns_.first = onward_ ? mm(43) : mm(52);
        columns_.steps_left = columns_.first + apart;
        if (onward_) columns_.way = (columns_.first - kQuestionPoint) / 2;
    }

    bool has_box() const { return !plan_.steps.empty() && plan_.steps.front().exit && plan_.steps.front().exit->steps; }

    /// The first sides: on one of them the first question with its box of steps. Where both languages find no room on
    /// it, each has a side of its own; where the words before the question take too much of the first, they stand
    /// alone.
    void set_heads() {
        const std::vector<Finding>::size_type known = context_.findings.size();
        heads_.push_back(head_for(Reader::of_both));
        if (!has_box() || fits_first_side(heads_.front())) return;
        if (!context_.document.second_language.empty()) {
            context_.findings.resize(known);
            heads_.front() = head_for(Reader::of_first);
            heads_.push_back(head_for(Reader::of_second));
        }
        Head& front = heads_.front();
        if (onward_ || fits_first_side(front) || front.before.height == 0 || front.before.height > room_.first) return;
        heads_.insert(heads_.begin(), Head{std::exchange(front.before, {}), {}});
    }

    bool fits_first_side(const Head& head) const {
        if (context_.large_print() && !head.first->rest.empty()) return false;
        const double onward = onward_ ? kOnward : least_gap() + connector_side(context_);
        return head.before.height + head.first->frame.height + onward <= room_.first + kFitTolerance;
    }

    Head head_for(Reader reader) {
        Head head;
        head.before = set_before(plan_.before, reader, width_, context_);
        if (!has_box()) return head;
        std::vector<LadderStep> steps{plan_.steps};
        LadderStep& question = steps.front();
        for (LadderStep& step : steps) step.main.words = for_reader(step.main.words, reader);
        question.exit->label = for_reader(question.exit->label, reader);
        question.exit->to.words = name_for(question.exit->to.words, reader);
        const Block box = box_for(*question.exit->steps, reader);
        question.exit->steps = &box;
        // Only a chart that leads on below may be cut.
        constexpr double kWhole = std::numeric_limits<double>::max();
        const BoxRoom room = onward_ ? BoxRoom{room_.first - head.before.height - kOnward, room_.later - kOnward}
                                     : BoxRoom{kWhole, kWhole};
        head.first = set_first_rung(steps, onward_, for_reader(options_.yes, reader), columns_, width_, room, context_);
        return head;
    }

    void set_steps() {
        std::size_t number = 1;
        for (const LadderStep& step : plan_.steps) {
            if (number > 1 || !has_box()) {
                rungs_.push_back(set_step(step, number));
            } else {
                if (onward_) return;
                const bool repeats = !context_.large_print() && heads_.size() == 1;
                again_ = repeats ? *heads_.front().first : pointer_to_steps(step);
                again_->frame = set_again(std::move(again_->frame));
            }
            ++number;
        }
    }

    /// A step, with more of the width for its exit where a side could not hold it otherwise.
    Rung set_step(const LadderStep& step, std::size_t number) {
        constexpr double kLeastMain = mm(62);
        constexpr double kStep = mm(10);
        const double most =
            room_.later - (again_ ? again_->frame.height : 0) - 3 * least_gap() - 2 * connector_side(context_);
        LadderColumns columns = columns_;
        Rung rung = set_rung(step, number, columns, width_, context_);
        while (step.exit && rung.frame.height > most && columns.main - kStep >= kLeastMain) {
            columns.main -= kStep;
            columns.exit_left -= kStep;
            const std::vector<Finding>::size_type known = context_.findings.size();
            Rung wider = set_rung(step, number, columns, width_, context_);
            const bool worse = context_.findings.size() > known || wider.frame.height >= rung.frame.height;
            context_.findings.resize(known);  // reported with the first try
            if (worse) break;
            rung = std::move(wider);
        }
        return rung;
    }

    /// In large print the box of steps would leave no room for others: later sides send to the first one.
    Rung pointer_to_steps(LadderStep step) {
        const std::vector<Finding>::size_type known = context_.findings.size();
        LadderWords& to = step.exit->to;
        const Inlines name = split_after_strong(to.words).first;
        to.kind = LadderWords::Kind::chart;
        to.words = pointer_for(Reader::of_first, name);
        if (!context_.document.second_language.empty()) {
            Inline below;
            below.kind = Inline::Kind::line_break;
            to.words.push_back(below);
            const Inlines second = pointer_for(Reader::of_second, name);
            to.words.insert(to.words.end(), second.begin(), second.end());
        }
        Rung rung = set_rung(step, 1, columns_, width_, context_);
        context_.findings.resize(known);  // reported with the step itself
        return rung;
    }

    /// "Rescue steps on page 1": the page on which this reader finds them.
    Inlines pointer_for(Reader reader, const Inlines& name) const {
        std::vector<std::size_t> pages;
        for (std::size_t at = 0; at < heads_.size(); ++at)
            if (heads_[at].first) pages.push_back(room_.page + at);
        const std::size_t page = reader == Reader::of_second ? pages.back() : pages.front();
        const std::string where{for_reader(options_.again, reader)};
        Inlines pointer = for_reader(name, reader);
        const Inlines on_page = words(" " + with_replaced(where, "{page}", fmt::format("{}", page)));
        pointer.insert(pointer.end(), on_page.begin(), on_page.end());
        return pointer;
    }

    /// Remarks stand in the free place beside the last step.
    void set_remarks() {
        if (plan_.remarks.empty()) return;
        const bool beside = !rungs_.empty() && rungs_.back().return_x == 0;
        const double left = beside ? columns_.exit_left + mm(3.2) : 0;
        Frame words;
        words.width = width_ - left;
        for (const Block* paragraph : plan_.remarks) {
            ++context_.node;
            words.append(set_text(paragraph->inlines, use_style(context_.scale), words.width, "paragraph", context_));
        }
        if (!beside) {
            remarks_ = std::move(words);
            return;
        }
        Frame& last = rungs_.back().frame;
        if (words.height <= last.height) return last.put_in_middle(std::move(words), left);
        last.height = words.height;
        last.put(std::move(words), left, 0);
    }

    /// What an onward chart has no place for.
    void check_onward() {
        if (!plan_.remarks.empty()) context_.refuse_unprinted("a remark to such a chart", plan_.remarks.front()->line);
        if (plan_.legend) context_.refuse_unprinted("the legend of such a chart", plan_.legend->line);
        for (const Rung& rung : rungs_) context_.refuse_unprinted("a chart without a box of steps", rung.line);
        for (const LadderStep& step : plan_.steps)
            if (&step != &plan_.steps.front() && step.exit)
                context_.refuse_unprinted("a second question", step.main.line);
    }

    double least_gap() const { return least_ladder_gap(context_); }

    /// The first question on a side, if it has one.
    const std::optional<Rung>& first_on(std::size_t number) const {
        return number < heads_.size() ? heads_[number].first : again_;
    }
    double before_on(std::size_t number) const { return number < heads_.size() ? heads_[number].before.height : 0; }

    /// Height of what a side always has: its head, and the letter where its steps go on from the side before.
    double head_height(std::size_t number, bool entered) const {
        const std::optional<Rung>& first = first_on(number);
        double height = before_on(number) + (first ? first->frame.height : 0);
        if (entered) height += (first ? least_gap() : 0) + connector_side(context_);
        return height;
    }
    double head_height(std::size_t number) const { return head_height(number, number > 0); }

    /// Rungs [from, to) with the least gaps between them and above the first, if anything stands there.
    double rungs_height(std::size_t from, std::size_t to, std::size_t number) const {
        double height = 0;
        for (std::size_t at = from; at < to; ++at)
            height += (at > from || first_on(number) || number > 0 ? least_gap() : 0) + rungs_[at].frame.height;
        return height;
    }

    double end_height() const {
        return (remarks_.height > 0 ? kBelowWords + remarks_.height : 0) +
               (legend_.height > 0 ? kBelowWords + legend_.height : 0);
    }

    Side next_side(std::size_t from, std::size_t number, double space, double foot) const {
        const std::size_t all = rungs_.size();
        const bool more_heads = number + 1 < heads_.size();
        if (more_heads) return {from, from, 0};
        const double head = head_height(number);
        const double whole = head + rungs_height(from, all, number) + end_height();
        // Without a step there is nothing to break before: what is too tall is told where it is placed.
        if (from == all || whole + foot <= space + kFitTolerance) return {from, all, foot};
        constexpr std::size_t kLeastOnSide = 2;
        // Two steps that fit without the foot are not torn apart for it.
        if (all - from <= kLeastOnSide && whole <= space + kFitTolerance) return {from, all, 0, false};
        std::size_t to = from;
        const double over = least_gap() + connector_side(context_);
        while (to < all && head + rungs_height(from, to + 1, number) + over <= space + kFitTolerance) ++to;
        if (to == from && number < heads_.size() && first_on(number)) return {from, from, 0};
        const std::size_t most = all - from > kLeastOnSide ? all - kLeastOnSide : all - 1;
        to = std::min(to, std::max(most, from + 1));
        return {from, good_break(from, std::max(to, from + 1)), 0};
    }

    /// A chart breaks after an exit that ends rather than elsewhere, and not between an action and the question that
    /// checks it, if it has the choice.
    std::size_t good_break(std::size_t from, std::size_t to) const {
        if (to < rungs_.size() && to - from > 2 && !rungs_[to - 1].exit_ends && rungs_[to - 2].exit_ends) return to - 1;
        for (std::size_t at = to; at > from + 1 && at < rungs_.size(); --at)
            if (rungs_[at - 1].question || !rungs_[at].question) return at;
        return to;
    }

    Pieces onward_pieces() {
        Pieces pieces;
        for (Head& head : heads_) std::ranges::move(onward_pieces(head), std::back_inserter(pieces));
        if (pieces.empty()) pieces.push_back(empty_piece());
        return pieces;
    }

    Piece empty_piece() const {
        Piece piece;
        piece.line = line_;
        piece.frame.width = width_;
        return piece;
    }

    /// The first question with what fits beside it, then the rest of its box.
    Pieces onward_pieces(Head& head) {
        Piece piece = empty_piece();
        piece.frame.append(std::move(head.before));
        if (!head.first) return {std::move(piece)};
        const Rung& first = *head.first;
        const double top = piece.frame.height;
        const double end = top + first.frame.height + kOnward;
        piece.field = first.field;
        piece.frame.append(Frame{first.frame});
        piece.frame.height = end;
        put_arrow(piece.frame, {columns_.way, top + first.main_bottom}, {columns_.way, end}, kArrowLine,
                  {first.node, "arrow", {}});
        Pieces pieces{std::move(piece)};
        for (const Frame& box : first.rest) {
            Piece rest = empty_piece();
            rest.frame.append(Frame{box}, columns_.steps_left);
            pieces.push_back(std::move(rest));
        }
        return pieces;
    }

    /// The letter where the chart is left on side `number`, with the page on which it goes on. The third page is not
    /// overleaf.
    Frame leaving(std::size_t number) {
        return connection(letters_, with_replaced(std::string{options_.overleaf}, "{page}",
                                                  fmt::format("{}", room_.page + number + 1)));
    }

    Frame connection(std::size_t letter, const std::string& where) {
        Frame frame;
        const double side = connector_side(context_);
        frame.width = width_;
        frame.height = side;
        ++context_.node;
        frame.put(connector(letter, context_), columns_.way - side / 2, 0);
        if (where.empty()) return frame;
        TextStyle look = plain_style(12 * context_.scale, Face::bold);
        look.leading = 1.2;
        const double left = columns_.way + side / 2 + mm(3);
        frame.put_in_middle(set_text(words(where), look, width_ - left, "connector", context_), left);
        return frame;
    }

    /// A side that holds the box of steps alone is not entered at a letter: the steps go on at it overleaf.
    static bool entered(const Side& side, std::size_t number) { return number > 0 && side.to > side.from; }

    /// The gap between the symbols of a side, so that they use its room.
    double gap_on(const Side& side, std::size_t number, double space) const {
        const bool last = side.to == rungs_.size();
        const bool letter = entered(side, number);
        const double fixed = head_height(number, letter) + rungs_height(side.from, side.to, number) +
                             (last ? end_height() : least_gap() + connector_side(context_));
        const std::size_t parts =
            (first_on(number) ? 1U : 0U) + (letter ? 1U : 0U) + side.to - side.from + (last ? 0U : 1U);
        const double free = (space - side.foot - fixed) / static_cast<double>(std::max<std::size_t>(parts, 2) - 1);
        return std::clamp(least_gap() + free, least_gap(), best_ladder_gap(context_));
    }

    /// The letter where a side goes on from the one before.
    Rung entry() {
        Rung circle;
        circle.frame = connection(letters_++, {});
        circle.main_bottom = circle.frame.height;
        circle.node = context_.node;
        return circle;
    }

    Piece drawn(const Side& side, std::size_t number, double space) {
        const bool last = side.to == rungs_.size() && number + 1 >= heads_.size();
        const std::optional<Rung>& first = first_on(number);
        Piece piece;
        piece.line = side.to > side.from ? rungs_[side.from].line : line_;
        piece.frame.width = width_;
        if (number < heads_.size()) piece.frame.append(Frame{heads_[number].before});
        LadderWay way{piece.frame, columns_, options_.yes, gap_on(side, number, space), context_};
        if (first) way.add(*first);
        if (entered(side, number)) way.add(entry());
        for (std::size_t at = side.from; at < side.to; ++at) {
            if (piece.field.empty()) piece.field = rungs_[at].field;
            way.add(rungs_[at]);
        }
        if (piece.field.empty() && first) piece.field = first->field;
        if (!last && (first || side.to > side.from)) way.end_in(leaving(number));
        if (last) put_end(piece.frame, side, space);
        return piece;
    }

    /// Remarks below the steps, the legend at the foot of the room.
    void put_end(Frame& frame, const Side& side, double space) {
        if (remarks_.height > 0) frame.append(std::move(remarks_), 0, kBelowWords);
        const double bottom = side.fills ? std::max(frame.height, space - side.foot) : 0;
        if (legend_.height > 0) {
            const double top = std::max(frame.height + kBelowWords, bottom - legend_.height);
            frame.height = top + legend_.height;
            frame.put(std::move(legend_), 0, top);
        }
        frame.height = std::max(frame.height, bottom);
    }

    Options options_;
    bool onward_;
    double width_;
    LadderRoom room_;
    LayoutContext& context_;
    LadderPlan plan_;
    LadderColumns columns_;
    std::size_t line_ = 0;
    std::vector<Head> heads_;    ///< of the first sides; one, unless it needs more
    std::optional<Rung> again_;  ///< what stands for the first question on the sides after these
    std::vector<Rung> rungs_;
    std::size_t letters_ = 0;  ///< at which sides went on so far
    Frame remarks_;
    Frame legend_;
};

}  // namespace

Pieces set_ladder(const Section& section, double width, const LadderRoom& room, LayoutContext& context) {
    ++context.node;
    if (section.has_words_in_heading()) context.refuse_unprinted("the heading of a chart", section.heading->line);
    refuse_aside(section, context);
    return Ladder{section, width, room, context}.sides();
}

}  // namespace ventfolio
