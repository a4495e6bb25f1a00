#include "layout/hookup.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "layout/figures/hookup_pieces.hpp"
#include "layout/figures/hookup_plan.hpp"
#include "layout/headings.hpp"
#include "layout/table_row.hpp"

namespace ventfolio {
namespace {

constexpr double kDisc = 7.6;            ///< mm, on the drawing; in large print its digits grow only
constexpr double kDigits = 12.5;         ///< pt
constexpr double kLargestDigits = 13.5;  ///< two of them fill a disc
constexpr double kRowDisc = mm(6.2);     ///< in the table
constexpr double kRowDigits = 11.5;
constexpr std::size_t kColumns = 4;
/// With more parts than these, part and size share a line.
constexpr std::size_t kRoomyRows = 6;

/// Rows that go on to another page together: fewer look lost there.
constexpr std::size_t kLeastOverleaf = 3;

/// A row of the table and the part that it is about.
struct Row {
    const TableRow* row;
    HookupPart part;
    std::size_t element;  ///< of its figure
};

TextStyle disc_style(double size) {
    TextStyle look = plain_style(size, Face::bold);
    look.ink = Ink::white;
    look.leading = 1;
    return look;
}

/// The number of a part, white on a black disc.
Frame numbered_disc(std::size_t number, double side, double size, LayoutContext& context) {
    const Inlines digits = words(std::to_string(number));
    const TextStyle look = disc_style(size);
    const double natural = natural_width(digits, look, context);
    Frame frame;
    frame.width = frame.height = side;
    HookupPen pen{frame, {context.node, "figure", {}}};
    const double radius = side / mm(1) / 2;
    pen.disc(radius, radius, radius, Ink::black);
    Frame text = set_text(digits, look, natural + 1, "figure", context);
    const double top = top_with_capitals_in_middle(text, side);
    frame.put(std::move(text), (side - natural) / 2, top);
    return frame;
}

// --- The list of parts

std::vector<HookupPart> parts_in(std::span<const Row> rows) {
    std::vector<HookupPart> parts(rows.size());
    std::ranges::transform(rows, parts.begin(), &Row::part);
    return parts;
}

void refuse_drawing(std::string_view why, const TableRow& row, LayoutContext& context) {
    std::string field;
    for (const TableCell& one : row.cells)
        if (field.empty()) field = first_field(one.inlines);
    const std::string about = field.empty() ? "" : fmt::format(" See {}.", field);
    context.refuse("hookup-not-drawable",
                   fmt::format("On {}, the parts cannot be drawn: {}{}", context.document.name, why, about), row.line,
                   field);
}

/// The rows with their parts; nothing, and a finding, if one of them is no part or all together do not work.
std::optional<std::vector<Row>> rows_of(const Block& table, LayoutContext& context) {
    std::vector<Row> rows;
    bool known = true;
    for (const TableRow& row : table.rows) {
        const Inlines& first = cell(row, 0);
        const auto figure = std::ranges::find(first, Inline::Kind::figure, &Inline::kind);
        if (figure == first.end()) {
            refuse_drawing("A row has no figure.", row, context);
            known = false;
            continue;
        }
        const auto part = hookup_part(figure->text);
        if (!part) {
            context.refuse("figure-unknown", "There is no part of a hook-up named " + figure->text + ".", row.line);
            known = false;
            continue;
        }
        rows.push_back({&row, *part, figure->element});
    }
    if (!known) return std::nullopt;
    const auto fault = fault_in(parts_in(rows));
    if (!fault) return rows;
    refuse_drawing(fault->why, rows.empty() ? table.head : *rows[std::min(fault->place, rows.size() - 1)].row, context);
    return std::nullopt;
}

// --- The drawing

TextStyle name_style(double scale) {
    TextStyle look = plain_style(kSmallestText * scale);
    look.leading = 1.1;
    return look;
}

/// Words that are said again on the drawing belong to no element: they are heard once, in the table.
Inlines said_again(Inlines inlines) {
    for (Inline& piece : inlines) piece.element = kNoElement;
    return inlines;
}

/// The name at the end of a line, in as narrow a column as its words allow.
Frame name_frame(const Row& row, bool right_aligned, LayoutContext& context) {
    constexpr double kNarrow = mm(20);
    const Inlines inlines = said_again(cell(*row.row, 1));
    TextStyle look = name_style(context.scale);
    const TextWidths widths = widths_of(inlines, look, context);
    const double width = std::max(widths.widest_word, std::min(widths.natural, kNarrow * context.scale)) + 0.5;
    if (right_aligned) look.alignment = Alignment::right;
    return set_text(inlines, look, width, "figure", context);
}

HookupSize size_of_name(std::span<const Row> rows, HookupPart part, LayoutContext& context) {
    const auto row = std::ranges::find(rows, part, &Row::part);
    if (row == rows.end()) return {};
    const Frame frame = name_frame(*row, false, context);
    return {frame.width / mm(1), frame.height / mm(1)};
}

/// The household's name of the machine on its screen, where it fits: it is the first thing to be found.
void put_screen_name(Frame& frame, const HookupPiece& machine, const Row& row, LayoutContext& context) {
    constexpr double kWidth = mm(12.8);
    constexpr double kHeight = mm(8.5);
    TextStyle look = plain_style(kSmallestText * context.scale, Face::bold);
    look.leading = 1.05;
    look.alignment = Alignment::center;
    const Inlines name = said_again(split_after_strong(cell(*row.row, 1)).first);
    if (name.empty() || widest_word(name, look, context) > kWidth - 2) return;
    Frame text = set_text(name, look, kWidth - 2, "figure", context);
    if (text.height > kHeight) return;
    const double left = mm(machine.left + 5.4) + 1;
    const double top = mm(machine.top + 4.5) + (kHeight - text.height) / 2;
    frame.put(std::move(text), left, top);
}

Frame draw_plan(const HookupPlan& plan, std::span<const Row> rows, bool lying, LayoutContext& context) {
    Frame frame;
    frame.width = mm(plan.width);
    frame.height = mm(plan.height);
    frame.put_bottom_rule(kBoxLine);
    HookupPen pen{frame, {context.node, "figure", {}}};
    for (const HookupScenery& one : plan.scenery) draw_scenery(pen, one);
    for (const HookupPipe& one : plan.pipes) {
        pen.of(rows[one.place].element);
        draw_pipe(pen, one, plan);
    }
    for (const HookupPiece& one : plan.pieces) {
        pen.of(rows[one.place].element);
        draw_piece(pen, one, lying, plan.disc);
        if (one.part == HookupPart::ventilator) put_screen_name(frame, one, rows[one.place], context);
    }
    pen.of(Origin::kNoElement);
    const double digits = std::min(kDigits * context.scale, kLargestDigits);
    for (const HookupDisc& one : plan.discs) {
        constexpr double kRing = 0.8;
        pen.disc(one.centre.x, one.centre.y, plan.disc / 2 + kRing, Ink::white);
        Frame disc = numbered_disc(one.place + 1, mm(plan.disc), digits, context);
        frame.put(std::move(disc), mm(one.centre.x - plan.disc / 2), mm(one.centre.y - plan.disc / 2));
    }
    for (const HookupName& one : plan.names)
        frame.put(name_frame(rows[one.place], one.right_aligned, context), mm(one.left), mm(one.top));
    return frame;
}

Piece set_drawing(const Section& section, std::span<const Row> rows, double width, LayoutContext& context) {
    const std::vector<HookupPart> parts = parts_in(rows);
    const auto posture = posture_from(section.heading->attributes.option("person").value_or("lying"));
    HookupOrder order{.parts = parts,
                      .posture = posture.value_or(Posture::lying),
                      .width = width / mm(1),
                      .disc = kDisc,
                      .pressure_name = size_of_name(rows, HookupPart::pressure_line, context),
                      .valve_name = size_of_name(rows, HookupPart::valve_line, context)};
    const HookupPlan plan = plan_hookup(order);
    Piece piece = section_piece(section, {}, width);
    if (plan.needed_width > plan.width + 0.01) {
        refuse_drawing(fmt::format("They are {:.0f} mm wider than the page.", plan.needed_width - plan.width + 0.5),
                       *rows.back().row, context);
        return piece;
    }
    piece.frame = draw_plan(plan, rows, order.posture == Posture::lying, context);
    piece.keep_with_next = true;
    return piece;
}

// --- The table

struct RowLook {
    TextStyle part;
    TextStyle words;
    double disc;
    double digits;
    double pad;
    double part_left;
    double act_left;
    double sense_left;
    double width;
    bool one_line;
};

RowLook row_look(std::size_t count, double width, double scale) {
    RowLook look{};
    look.one_line = count > kRoomyRows;
    look.part = plain_style((look.one_line ? 10.5 : 10) * scale);
    look.part.leading = 1.14;
    look.words = plain_style(11 * scale);
    look.words.leading = 1.14;
    look.disc = kRowDisc * scale;
    look.digits = kRowDigits * scale;
    look.pad = mm(look.one_line ? 0.6 : 1) * scale;
    look.part_left = look.disc + mm(2.4);
    const double rest = width - look.part_left;
    look.act_left = look.part_left + rest * 0.40;
    look.sense_left = look.part_left + rest * 0.71;
    look.width = width;
    return look;
}

/// The name of a part in bold, what else is said of it small: below it, or beside it where there are many parts.
Frame set_part(const Inlines& inlines, const RowLook& look, double width, LayoutContext& context) {
    const auto [name, rest] = split_after_strong(inlines);
    TextStyle bold = plain_style(12 * context.scale, Face::bold);
    bold.leading = 1.1;
    if (look.one_line) return set_text(inlines, look.part, width, "table cell", context);
    Frame frame;
    frame.append(set_text(name, bold, width, "table cell", context));
    if (!rest.empty()) frame.append(set_text(rest, look.part, width, "table cell", context));
    frame.width = width;
    return frame;
}

Piece set_row_of_part(const TableRow& row, std::size_t number, const RowLook& look, LayoutContext& context) {
    check_columns(row, kColumns, context);
    Piece piece = row_piece(row, look.width);
    const Inlines& first = cell(row, 0);
    for (const Inline& one : first)
        if (one.kind != Inline::Kind::figure && !plain_text({one}).empty() && one.text != " ")
            context.refuse_unprinted("a word beside the figure of a part", row.line, first_field(first));
    Frame disc = numbered_disc(number, look.disc, look.digits, context);
    Frame part = set_part(cell(row, 1), look, look.act_left - look.part_left - kColumnGap, context);
    Frame act = set_text(cell(row, 2), look.words, look.sense_left - look.act_left - kColumnGap, "table cell", context);
    Frame sense = set_text(cell(row, 3), look.words, look.width - look.sense_left, "table cell", context);
    const double words = std::max({part.height, act.height, sense.height}) + 2 * look.pad;
    piece.frame.height = std::max(disc.height + mm(1), words);
    piece.frame.put_in_middle(std::move(disc), 0);
    piece.frame.put_in_middle(std::move(part), look.part_left);
    piece.frame.put_in_middle(std::move(act), look.act_left);
    piece.frame.put_in_middle(std::move(sense), look.sense_left);
    piece.frame.put_bottom_rule(kThinLine);
    return piece;
}

Piece set_head(const TableRow& row, const RowLook& look, LayoutContext& context) {
    TextStyle head = plain_style(kSmallestText * context.scale, Face::bold);
    Piece piece = row_piece(row, look.width);
    piece.keep_with_next = true;
    piece.repeats = true;
    const double lefts[kColumns]{0, look.part_left, look.act_left, look.sense_left};
    for (std::size_t at = 0; at < kColumns; ++at) {
        const double right = at + 1 < kColumns ? lefts[at + 1] : look.width;
        Frame text = set_text(cell(row, at), head, right - lefts[at], "table head", context);
        piece.frame.height = std::max(piece.frame.height, text.height + mm(0.5));
        piece.frame.put(std::move(text), lefts[at], 0);
    }
    piece.frame.put_bottom_rule(kBoxLine);
    return piece;
}

Pieces set_parts(const Section& section, const Block& table, double width, LayoutContext& context) {
    Pieces pieces;
    if (const auto rows = rows_of(table, context)) {
        pieces.push_back(set_drawing(section, *rows, width, context));
        pieces.front().gap = mm(1);
    }
    const RowLook look = row_look(table.rows.size(), width, context.scale);
    pieces.push_back(set_head(table.head, look, context));
    pieces.back().gap = mm(1);
    pieces.back().repeats_for = table.rows.size();
    for (std::size_t at = 0; at < table.rows.size(); ++at) {
        ++context.node;
        pieces.push_back(set_row_of_part(table.rows[at], at + 1, look, context));
        pieces.back().keep_with_next = at + 1 < table.rows.size() && at + kLeastOverleaf >= table.rows.size();
    }
    return pieces;
}

}  // namespace

Pieces set_hookup(const Section& section, const SectionStyle& style, double width, LayoutContext& context) {
    Pieces pieces;
    if (section.has_words_in_heading())
        pieces.push_back(heading_piece(section, set_heading(section, heading_look(style.sizes), width, context)));
    else
        refuse_aside(section, context);
    for (const Block& block : section.blocks) {
        if (block.kind == Block::Kind::table) {
            ++context.node;
            std::ranges::move(set_parts(section, block, width, context), std::back_inserter(pieces));
        } else {
            std::ranges::move(set_blocks({&block, 1}, style, width, context), std::back_inserter(pieces));
        }
    }
    return pieces;
}

}  // namespace ventfolio
