#include "layout/ladder_rungs.hpp"

#include <algorithm>
#include <utility>

#include "layout/blocks.hpp"
#include "layout/ladder_symbols.hpp"

namespace ventfolio {
namespace {

using Kind = LadderWords::Kind;

constexpr double kPadAbove = mm(1.9);  // between an outline and words, so that a scan can cut them apart
constexpr double kPadSide = mm(3.2);
constexpr double kLeastHeight = mm(10.9);
constexpr double kDiamondWidth = mm(66);
constexpr double kDiamondHeight = mm(14);
constexpr double kDiamondText = mm(39.5);  // longest question that a diamond holds

TextStyle label_style(double scale, Alignment alignment) {
    TextStyle look = plain_style(12 * scale, Face::bold);
    look.leading = 1.2;
    look.alignment = alignment;
    return look;
}

std::string first_field_of(const LadderStep& step) {
    std::string field = first_field(step.main.words);
    return field.empty() && step.exit ? first_field(step.exit->to.words) : field;
}

double least_height(const LayoutContext& context) { return kLeastHeight * context.scale; }

/// Between the left edge of a symbol and its words: the room of the number.
double number_column(const LayoutContext& context) { return mm(2) + step_mark_side(context) + mm(2.4); }

std::string_view role_of(Kind kind) {
    switch (kind) {
        case Kind::question:
            return "question";
        case Kind::end:
            return "end";
        case Kind::chart:
            return "chart";
        case Kind::steps:
            return "steps";
        case Kind::action:
            break;
    }
    return "action";
}

Origin shape_origin(Kind kind, const LayoutContext& context, std::size_t element = kNoElement) {
    return {context.node, std::string{role_of(kind)}, {}, element};
}

/// Words in their symbol, `height` high or as high as they need.
struct Symbol {
    Kind kind;
    Frame words;
    double left;  ///< of the words
    double width;
    double height;
    std::size_t figure = kNoElement;
};

double point_of(Kind kind) { return kind == Kind::chart ? kChartPoint : 0; }

Symbol measured(const LadderWords& what, double width, double left, LayoutContext& context,
                Alignment alignment = Alignment::left) {
    TextStyle look = ladder_style(context.scale);
    look.alignment = alignment;
    const double right = what.kind == Kind::question ? kQuestionPoint + mm(0.5) : kPadSide;
    Symbol symbol{what.kind,  set_text(what.words, look, width - left - right, "step", context), left, width, 0,
                  what.figure};
    symbol.height = std::max(least_height(context), symbol.words.height + 2 * kPadAbove + point_of(what.kind));
    return symbol;
}

Frame drawn(Symbol symbol, const LayoutContext& context) {
    Frame frame;
    frame.width = symbol.width;
    frame.height = symbol.height;
    put_symbol(frame, symbol.kind, shape_origin(symbol.kind, context, symbol.figure));
    const double top = (symbol.height - point_of(symbol.kind) - symbol.words.height) / 2;
    frame.put(std::move(symbol.words), symbol.left, top);
    return frame;
}

/// The label of an exit above its arrow, then the exit itself.
void put_exit(Rung& rung, const LadderExit& exit, Symbol symbol, double from, const LadderColumns& columns,
              LayoutContext& context) {
    const double middle = rung.frame.height / 2;
    Frame label = set_text(exit.label, label_style(context.scale, Alignment::center), columns.exit_left - columns.main,
                           "label", context);
    put_arrow(rung.frame, {from, middle}, {columns.exit_left, middle}, kArrowLine, {rung.node, "arrow", {}});
    rung.frame.put_above(std::move(label), columns.main, middle - kArrowLine / 2);
    const double height = symbol.height;
    const double top = (rung.frame.height - height) / 2;
    rung.exit_ends = exit.to.ends();
    rung.return_x = columns.exit_left + symbol.width / 2;
    rung.return_from = rung.exit_ends ? 0 : top + height;
    rung.frame.put(drawn(std::move(symbol), context), columns.exit_left, top);
}

/// A short question on one line.
bool fits_diamond(const LadderStep& step, LayoutContext& context) {
    return step.main.kind == Kind::question &&
           std::ranges::find(step.main.words, Inline::Kind::line_break, &Inline::kind) == step.main.words.end() &&
           natural_width(step.main.words, ladder_style(context.scale), context) <= kDiamondText;
}

Frame diamond(Frame words, LayoutContext& context) {
    Frame frame;
    frame.width = kDiamondWidth;
    frame.height = kDiamondHeight * context.scale;
    put_diamond(frame, shape_origin(Kind::question, context));
    frame.put_in_middle(std::move(words), (kDiamondWidth - kDiamondText) / 2);
    return frame;
}

/// The step's own symbol with its number; true if it is a diamond.
void put_main(Rung& rung, const LadderStep& step, std::size_t number, bool in_diamond, Symbol symbol,
              const LadderColumns& columns, LayoutContext& context) {
    const double side = step_mark_side(context);
    const bool numbered = !step.main.ends();
    if (in_diamond) {
        const double left = columns.way - kDiamondWidth / 2;
        rung.frame.put_in_middle(step_mark(number, true, step.main.number, context),
                                 std::max(0.0, left - side - mm(1)));
        Frame shape = diamond(std::move(symbol.words), context);
        rung.main_top = (rung.frame.height - shape.height) / 2;
        rung.main_bottom = rung.main_top + shape.height;
        rung.frame.put_in_middle(std::move(shape), left);
        return;
    }
    rung.main_bottom = symbol.height = rung.frame.height;
    Frame shape;
    shape.width = symbol.width;
    shape.height = symbol.height;
    if (numbered) shape.put_in_middle(step_mark(number, rung.question, step.main.number, context), mm(2));
    shape.put(drawn(std::move(symbol), context), 0, 0);
    rung.frame.put(std::move(shape), 0, 0);
}

}  // namespace

double least_ladder_gap(const LayoutContext& context) { return mm(5.4) * context.scale; }
double best_ladder_gap(const LayoutContext& context) { return mm(7) * context.scale; }

Rung set_rung(const LadderStep& step, std::size_t number, const LadderColumns& columns, double width,
              LayoutContext& context) {
    Rung rung;
    rung.node = ++context.node;
    rung.question = step.main.kind == Kind::question;
    rung.ends = step.main.ends();
    rung.field = first_field_of(step);
    rung.line = step.main.line;
    const bool in_diamond = fits_diamond(step, context);
    Symbol symbol = in_diamond ? Symbol{Kind::question,
                                        [&] {
                                            TextStyle look = ladder_style(context.scale);
                                            look.alignment = Alignment::center;
                                            return set_text(step.main.words, look, kDiamondText, "step", context);
                                        }(),
                                        0, kDiamondWidth, kDiamondHeight * context.scale}
                               : measured(step.main, columns.main, rung.ends ? kPadSide : number_column(context),
                                          context, rung.ends ? Alignment::center : Alignment::left);
    std::optional<Symbol> exit;
    if (step.exit) {
        ++context.node;
        exit = measured(step.exit->to, width - columns.exit_left, kPadSide, context);
    }
    rung.frame.width = width;
    rung.frame.height = std::max(symbol.height, exit ? exit->height : 0);
    const double from = in_diamond ? columns.way + kDiamondWidth / 2 - mm(0.8) : columns.main;
    const std::size_t exit_node = context.node;
    context.node = rung.node;
    put_main(rung, step, number, in_diamond, std::move(symbol), columns, context);
    context.node = exit_node;
    if (exit) put_exit(rung, *step.exit, std::move(*exit), from, columns, context);
    return rung;
}

void put_way_label(Frame& frame, std::string_view label, std::size_t node, double way, double top, double length,
                   LayoutContext& context) {
    constexpr double kBeside = mm(2.2);
    const std::size_t before = std::exchange(context.node, node);
    Frame text = set_text(words(label), label_style(context.scale, Alignment::right), way - kBeside, "label", context);
    context.node = before;
    const double y = top + (length - text.height) / 2;
    frame.put(std::move(text), 0, y);
}

namespace {

TextStyle first_question_style(double scale, bool large) {
    TextStyle look = plain_style((large ? 14 : 16) * scale);
    look.leading = 1.16;
    return look;
}

/// The biggest symbol of the page: the question about the person.
Frame set_first_question(const LadderStep& step, bool numbered, double width, double height, LayoutContext& context) {
    constexpr double kSide = mm(4);
    Frame content;
    if (numbered) content.append(step_mark(1, true, step.main.number, context));
    Frame text = set_text(step.main.words, first_question_style(context.scale, context.large_print()),
                          width - kSide - kQuestionPoint - mm(0.5), "step", context);
    content.append(std::move(text), 0, numbered ? mm(2.6) : 0);
    Frame frame;
    frame.width = width;
    frame.height = std::max(height, content.height + 2 * mm(3));
    put_symbol(frame, Kind::question, shape_origin(Kind::question, context));
    frame.put_in_middle(std::move(content), kSide);
    return frame;
}

}  // namespace

Rung set_first_rung(const std::vector<LadderStep>& steps, bool beside, std::string_view yes,
                    const LadderColumns& columns, double width, const BoxRoom& room, LayoutContext& context) {
    const LadderStep& first = steps.front();
    Rung rung;
    rung.node = ++context.node;
    rung.question = rung.exit_ends = true;
    rung.field = first_field_of(first);
    rung.line = first.main.line;
    const double gap = best_ladder_gap(context);
    // The further steps are as wide as the question without its point.
    const double step_width = columns.first - kQuestionPoint;
    std::vector<Symbol> below;
    double below_height = 0;
    for (std::size_t at = 1; beside && at < steps.size(); ++at) {
        below.push_back(measured(steps[at].main, step_width, kPadSide, context));
        below_height += gap + below.back().height;
    }
    auto [box, rest] = set_steps_box(*first.exit, width - columns.steps_left, room, context);
    rung.rest = std::move(rest);
    const std::size_t last = context.node;
    context.node = rung.node;
    Frame question =
        set_first_question(first, !beside, columns.first, std::max(0.0, box.height - below_height), context);
    rung.frame.width = width;
    rung.frame.height = std::max(question.height + below_height, box.height);
    const double middle = question.height / 2;
    double y = question.height;
    rung.frame.put(std::move(question), 0, 0);
    Frame label = set_text(first.exit->label, label_style(context.scale, Alignment::center),
                           columns.steps_left - columns.first, "label", context);
    put_arrow(rung.frame, {columns.first, middle}, {columns.steps_left, middle}, kArrowLine, {rung.node, "arrow", {}});
    rung.frame.put_above(std::move(label), columns.first, middle - kArrowLine / 2);
    context.node = last;
    rung.frame.put(std::move(box), columns.steps_left, 0);
    for (Symbol& symbol : below) {
        if (&symbol == &below.front()) put_way_label(rung.frame, yes, rung.node, columns.way, y, gap, context);
        put_arrow(rung.frame, {columns.way, y}, {columns.way, y + gap}, kArrowLine, {rung.node, "arrow", {}});
        const double height = symbol.height;
        ++context.node;
        for (PlacedItem& item : symbol.words.items) item.origin.node = context.node;
        rung.frame.put(drawn(std::move(symbol), context), 0, y + gap);
        y += gap + height;
    }
    rung.main_bottom = beside ? y : rung.frame.height;
    rung.question = !beside;
    return rung;
}

}  // namespace ventfolio
