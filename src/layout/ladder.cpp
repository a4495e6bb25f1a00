#include "layout/ladder.hpp"

#include <algorithm>
#include <utility>

#include "layout/ladder_legend.hpp"
#include "layout/ladder_rungs.hpp"
#include "layout/ladder_symbols.hpp"
#include "layout/ladder_way.hpp"
#include "layout/type_sizes.hpp"

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

Frame set_before(const std::vector<const Block*>& paragraphs, double width, LayoutContext& context) {
    Frame frame;
    frame.width = width;
    for (const Block* paragraph : paragraphs) {
        ++context.node;
        frame.append(set_text(paragraph->inlines, use_style(context.scale), width, "paragraph", context));
    }
    if (!paragraphs.empty()) frame.height += kBelowWords;
    return frame;
}

/// What stands on a later side again is no second part of the sheet's structure.
Frame set_again(Frame frame) {
    for (PlacedItem& item : frame.items) item.origin.element = kNoElement;
    return frame;
}

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
        before_ = set_before(plan_.before, width, context);
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
        } while (from < rungs_.size());
        return pieces;
    }

  private:
    /// Rungs [from, to) on one side.
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

    void set_steps() {
        std::size_t number = 1;
        for (const LadderStep& step : plan_.steps) {
            const bool first = &step == &plan_.steps.front();
            if (first && step.exit && step.exit->steps) {
                first_ = set_first_rung(plan_, onward_, options_.yes, columns_, width_,
                                        room_.first - before_.height - kOnward, context_);
                if (onward_) return;
                again_ = context_.large_print() ? pointer_to_steps(step) : *first_;
                again_->frame = set_again(std::move(again_->frame));
            } else {
                rungs_.push_back(set_rung(step, number, columns_, width_, context_));
            }
            ++number;
        }
    }

    /// In large print the box of steps would leave no room for others: later sides send to the first one.
    Rung pointer_to_steps(LadderStep step) {
        const std::vector<Finding>::size_type known = context_.findings.size();
        LadderWords& to = step.exit->to;
        to.kind = LadderWords::Kind::chart;
        to.words = split_after_strong(to.words).first;
        const Inlines where = words(" " + std::string{options_.again});
        to.words.insert(to.words.end(), where.begin(), where.end());
        Rung rung = set_rung(step, 1, columns_, width_, context_);
        context_.findings.resize(known);  // reported with the step itself
        return rung;
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

    /// Height of what a side always has: its head, and the letter where it goes on from the side before.
    double head_height(std::size_t number) const {
        double height = number == 0 ? before_.height : 0;
        if (first_) height += (number == 0 ? *first_ : *again_).frame.height;
        if (number > 0) height += (first_ ? least_gap() : 0) + connector_side(context_);
        return height;
    }

    /// Rungs [from, to) with the least gaps between them and above the first, if anything stands there.
    double rungs_height(std::size_t from, std::size_t to, std::size_t number) const {
        double height = 0;
        for (std::size_t at = from; at < to; ++at)
            height += (at > from || first_ || number > 0 ? least_gap() : 0) + rungs_[at].frame.height;
        return height;
    }

    double end_height() const {
        return (remarks_.height > 0 ? kBelowWords + remarks_.height : 0) +
               (legend_.height > 0 ? kBelowWords + legend_.height : 0);
    }

    Side next_side(std::size_t from, std::size_t number, double space, double foot) const {
        const std::size_t all = rungs_.size();
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
        Piece piece;
        piece.line = line_;
        piece.frame = std::move(before_);
        piece.frame.width = width_;
        if (!first_) return {std::move(piece)};
        const double top = piece.frame.height;
        const double end = top + first_->frame.height + kOnward;
        piece.field = first_->field;
        piece.frame.append(std::move(first_->frame));
        piece.frame.height = end;
        put_arrow(piece.frame, {columns_.way, top + first_->main_bottom}, {columns_.way, end}, kArrowLine,
                  {first_->node, "arrow", {}});
        Pieces pieces{std::move(piece)};
        if (first_->rest.height == 0) return pieces;
        Piece rest;
        rest.line = line_;
        rest.frame.width = width_;
        rest.frame.append(std::move(first_->rest), columns_.steps_left);
        pieces.push_back(std::move(rest));
        return pieces;
    }

    Frame overleaf(std::size_t letter, bool leaves) {
        Frame frame;
        const double side = connector_side(context_);
        frame.width = width_;
        frame.height = side;
        ++context_.node;
        frame.put(connector(letter, context_), columns_.way - side / 2, 0);
        if (!leaves || options_.overleaf.empty()) return frame;
        TextStyle look = plain_style(12 * context_.scale, Face::bold);
        look.leading = 1.2;
        const double left = columns_.way + side / 2 + mm(3);
        frame.put_in_middle(set_text(words(options_.overleaf), look, width_ - left, "connector", context_), left);
        return frame;
    }

    /// The gap between the symbols of a side, so that they use its room.
    double gap_on(const Side& side, std::size_t number, double space) const {
        const bool last = side.to == rungs_.size();
        const double fixed = head_height(number) + rungs_height(side.from, side.to, number) +
                             (last ? end_height() : least_gap() + connector_side(context_));
        const std::size_t parts = (first_ ? 1U : 0U) + (number > 0 ? 1U : 0U) + side.to - side.from + (last ? 0U : 1U);
        const double free = (space - side.foot - fixed) / static_cast<double>(std::max<std::size_t>(parts, 2) - 1);
        return std::clamp(least_gap() + free, least_gap(), best_ladder_gap(context_));
    }

    /// The letter where a side goes on from the one before.
    Rung entry(std::size_t number) {
        Rung circle;
        circle.frame = overleaf(number - 1, false);
        circle.main_bottom = circle.frame.height;
        circle.node = context_.node;
        return circle;
    }

    Piece drawn(const Side& side, std::size_t number, double space) {
        const bool last = side.to == rungs_.size();
        Piece piece;
        piece.line = side.to > side.from ? rungs_[side.from].line : line_;
        piece.frame.width = width_;
        if (number == 0) piece.frame.append(Frame{before_});
        LadderWay way{piece.frame, columns_, options_.yes, gap_on(side, number, space), context_};
        if (first_) way.add(number == 0 ? *first_ : *again_);
        if (number > 0) way.add(entry(number));
        for (std::size_t at = side.from; at < side.to; ++at) {
            if (piece.field.empty()) piece.field = rungs_[at].field;
            way.add(rungs_[at]);
        }
        if (piece.field.empty() && first_) piece.field = first_->field;
        if (!last) way.end_in(overleaf(number, true));
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
    Frame before_;
    std::optional<Rung> first_;  ///< a first question with a box of steps
    std::optional<Rung> again_;  ///< what stands for it on later sides
    std::vector<Rung> rungs_;
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
