#include "markup/tree_builder.hpp"

#include <algorithm>
#include <utility>

namespace ventfolio {
namespace {

constexpr std::size_t kDeepestBlock = 24;
constexpr unsigned kMostColumns = 40;
constexpr std::string_view kAttributes = "template-attributes-unreadable";

/// The words of a call-out's marker: `[!WARNING]` at the start of a text.
std::optional<std::string> marker(std::string_view flat) {
    const std::size_t close = flat.find(']');
    if (!flat.starts_with("[!") || close == flat.npos || close == 2) return std::nullopt;
    const std::string_view label = flat.substr(2, close - 2);
    const bool capitals =
        std::ranges::all_of(label, [](char c) { return (c >= 'A' && c <= 'Z') || c == ' ' || c == '-'; });
    return capitals ? std::optional{std::string{label}} : std::nullopt;
}

template <typename To>
void move_to_front(To& to, To& from) {
    to.insert(to.begin(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
    from.clear();
}

std::size_t first_line(const Block& block) {
    return block.kind == Block::Kind::table || block.children.empty() ? block.head.line : block.children.front().line;
}

}  // namespace

void TreeBuilder::enter(MD_BLOCKTYPE type, const void* detail) {
    close_implicit();
    switch (type) {
        case MD_BLOCK_DOC:
        case MD_BLOCK_TBODY:
            in_head_ = false;
            return;
        case MD_BLOCK_THEAD:
            in_head_ = true;
            return;
        case MD_BLOCK_QUOTE:
            return push(Frame::Role::call_out, Block::Kind::call_out);
        case MD_BLOCK_UL:
            return enter_list(false, 1);
        case MD_BLOCK_OL:
            return enter_list(true, static_cast<const MD_BLOCK_OL_DETAIL*>(detail)->start);
        case MD_BLOCK_LI:
            return enter_item(*static_cast<const MD_BLOCK_LI_DETAIL*>(detail));
        case MD_BLOCK_HR:
            return add_rule();
        case MD_BLOCK_H:
            push(Frame::Role::words, Block::Kind::heading);
            frames_.back().block.level = static_cast<int>(static_cast<const MD_BLOCK_H_DETAIL*>(detail)->level);
            return;
        case MD_BLOCK_P:
            return push(Frame::Role::words, Block::Kind::paragraph);
        case MD_BLOCK_CODE: {
            const std::size_t at = position_.next_line();
            not_allowed(at, position_.line_end(at), "Code has no place on this paper.", "opens a block of code");
            return push(Frame::Role::skipped, Block::Kind::paragraph);
        }
        case MD_BLOCK_HTML:
            return push(Frame::Role::skipped, Block::Kind::paragraph);
        case MD_BLOCK_TABLE:
            return enter_table(static_cast<const MD_BLOCK_TABLE_DETAIL*>(detail)->col_count);
        case MD_BLOCK_TR:
            return push(Frame::Role::row, Block::Kind::table);
        case MD_BLOCK_TH:
        case MD_BLOCK_TD:
            return enter_cell(*static_cast<const MD_BLOCK_TD_DETAIL*>(detail), type == MD_BLOCK_TH);
    }
}

void TreeBuilder::leave(MD_BLOCKTYPE type) {
    close_implicit();
    switch (type) {
        case MD_BLOCK_DOC:
        case MD_BLOCK_THEAD:
        case MD_BLOCK_TBODY:
        case MD_BLOCK_HR:
            return;
        case MD_BLOCK_H:
        case MD_BLOCK_P:
            return leave_words();
        case MD_BLOCK_QUOTE:
            return leave_call_out();
        case MD_BLOCK_TR:
            return leave_row();
        case MD_BLOCK_TH:
        case MD_BLOCK_TD: {
            TableCell cell{frames_.back().runs.joined()};
            if (!frames_.back().runs.empty() && frames_.back().runs.all().front().offset < markdown_.size())
                frames_[frames_.size() - 2].start = frames_.back().runs.offset(0);
            frames_.pop_back();
            return frames_.back().block.head.cells.push_back(std::move(cell));
        }
        case MD_BLOCK_CODE:
        case MD_BLOCK_HTML:
            frames_.pop_back();
            return;
        case MD_BLOCK_UL:
        case MD_BLOCK_OL:
        case MD_BLOCK_LI:
        case MD_BLOCK_TABLE:
            return leave_block();
    }
}

void TreeBuilder::push(Frame::Role role, Block::Kind kind) {
    Frame frame;
    frame.role = role;
    frame.block.kind = kind;
    frame.start = position_.next_line();
    frames_.push_back(std::move(frame));
    too_large_ = frames_.size() > kDeepestBlock;
}

void TreeBuilder::enter_list(bool ordered, unsigned start) {
    push(Frame::Role::list, Block::Kind::list);
    Block& list = frames_.back().block;
    list.ordered = ordered;
    if (start != 1) list.attributes.options.emplace_back("start", std::to_string(start));
}

void TreeBuilder::enter_item(const MD_BLOCK_LI_DETAIL& item) {
    push(Frame::Role::item, Block::Kind::item);
    if (item.is_task == 0) return;
    frames_.back().block.task = true;
    frames_.back().start = item.task_mark_offset;
    if (item.task_mark == ' ') return;
    not_allowed(item.task_mark_offset - 1, item.task_mark_offset + 2, "A box on this paper is empty: a hand ticks it.",
                "write [ ]");
}

/// The parser fills short rows up, so that a wide head with many rows would grow beyond all memory.
void TreeBuilder::enter_table(unsigned columns) {
    push(Frame::Role::table, Block::Kind::table);
    too_large_ = too_large_ || columns > kMostColumns;
}

void TreeBuilder::enter_cell(const MD_BLOCK_TD_DETAIL& cell, bool head) {
    if (head) {
        Alignment alignment = Alignment::automatic;
        if (cell.align == MD_ALIGN_LEFT) alignment = Alignment::left;
        if (cell.align == MD_ALIGN_CENTER) alignment = Alignment::center;
        if (cell.align == MD_ALIGN_RIGHT) alignment = Alignment::right;
        frames_.back().block.alignments.push_back(alignment);
    }
    push(Frame::Role::cell, Block::Kind::paragraph);
}

void TreeBuilder::add_rule() {
    Block rule;
    rule.kind = Block::Kind::rule;
    const std::size_t at = position_.next_line();
    rule.line = template_line(at);
    position_.reach_line_end(at);
    append(std::move(rule));
}

void TreeBuilder::close_implicit() {
    if (frames_.back().implicit) leave_words();
}

void TreeBuilder::leave_words() {
    Frame frame = std::move(frames_.back());
    frames_.pop_back();
    position_.reach_line_end(frame.runs.empty() ? frame.start : position_.read());
    if (frame.block.kind == Block::Kind::heading) check_heading(frame);
    const bool opens_call_out = frames_.back().role == Frame::Role::call_out && frames_.back().block.children.empty() &&
                                frames_.back().block.label.empty() && frame.block.kind == Block::Kind::paragraph;
    if (opens_call_out && take_marker(frame) && frame.runs.joined().empty()) return;
    frame.block.line = template_line(frame.runs.empty() ? frame.start : frame.runs.offset(0));
    take_group(frame);
    if (frame.runs.empty() && frame.block.kind == Block::Kind::paragraph) return;
    frame.block.inlines = frame.runs.joined();
    append(std::move(frame.block));
}

/// Takes `[!WARNING] {.half}` off the first words of a quote.
bool TreeBuilder::take_marker(Frame& frame) {
    const std::string flat = frame.runs.flat();
    const auto label = marker(flat);
    if (!label) return false;
    Block& call_out = frames_.back().block;
    call_out.label = *label;
    call_out.line = template_line(frame.runs.offset(0));
    std::size_t end = label->size() + 3;
    const std::size_t next = std::min(flat.find_first_not_of(' ', end), flat.size());
    if (auto group = attribute_group(flat, next)) {
        if (group->has_aside)
            refuse(kAttributes, frame.runs.offset(group->begin), frame.runs.offset(group->end - 1) + 1,
                   "Only a heading can have words at its side.", "no aside here");
        call_out.attributes = std::move(group->attributes);
        end = group->end;
    }
    const std::size_t words = flat.find_first_not_of(' ', end);
    frame.runs = words == flat.npos ? InlineRuns{} : frame.runs.part(words, flat.size());
    return true;
}

/// Takes `{.act span=8}` off the end of a heading or paragraph. Alone in a paragraph it is for the next block.
void TreeBuilder::take_group(Frame& frame) {
    const std::string flat = frame.runs.flat();
    TrailingGroup found = trailing_group(flat);
    if (found.broken)
        refuse(kAttributes, frame.runs.offset(*found.broken), frame.runs.offset(flat.size() - 1) + 1,
               "The words in braces cannot be read as attributes.",
               "like {.act span=8 aside=\"words\"}, in straight quotes");
    if (!found.group) return;
    AttributeGroup& group = *found.group;
    const bool heading = frame.block.kind == Block::Kind::heading;
    const std::size_t at = frame.runs.offset(group.begin);
    if (group.has_aside && !heading)
        refuse(kAttributes, at, frame.runs.offset(group.end - 1) + 1, "Only a heading can have words at its side.",
               "no aside here");
    frame.block.aside = frame.runs.part(group.aside_begin, group.aside_end).joined();
    const bool alone = flat.find_first_not_of(' ') == group.begin;
    frame.runs = frame.runs.part(0, group.begin);
    if (alone && !heading) {
        frame.runs = InlineRuns{};
        return keep_for_next(std::move(group), at);
    }
    frame.block.attributes = std::move(group.attributes);
}

void TreeBuilder::keep_for_next(AttributeGroup group, std::size_t at) {
    Frame& parent = frames_.back();
    check_next_used(parent);
    parent.next = std::move(group.attributes);
    parent.next_at = at;
}

void TreeBuilder::check_next_used(const Frame& frame) {
    if (frame.next_at)
        refuse(kAttributes, *frame.next_at, position_.line_end(*frame.next_at),
               "These attributes stand alone and nothing follows that they could be for.", "for nothing");
}

void TreeBuilder::check_heading(const Frame& frame) {
    const std::size_t at = frame.runs.empty() ? frame.start : frame.runs.offset(0);
    const std::size_t begin = position_.line_begin(at);
    if (markdown_.substr(begin, at + 1 - begin).find('#') != std::string::npos) return;
    not_allowed(at, position_.line_end(at), "The line of signs below makes this a heading.",
                "leave an empty line below, or begin it with #");
}

void TreeBuilder::append(Block block) {
    Frame& parent = frames_.back();
    if (parent.next_at) {
        move_to_front(block.attributes.classes, parent.next.classes);
        move_to_front(block.attributes.options, parent.next.options);
        parent.next_at.reset();
    }
    parent.block.children.push_back(std::move(block));
}

void TreeBuilder::leave_call_out() {
    const Frame& frame = frames_.back();
    if (frame.block.label.empty())
        not_allowed(frame.start, frame.start + 1, "A quote has no place on this paper, unless it is a call-out.",
                    "open it with a word like [!WARNING]");
    leave_block();
}

void TreeBuilder::leave_row() {
    Frame frame = std::move(frames_.back());
    frames_.pop_back();
    TableRow row = std::move(frame.block.head);
    row.line = template_line(frame.start);
    position_.reach_line_end(frame.start);
    Block& table = frames_.back().block;
    if (!in_head_) return table.rows.push_back(std::move(row));
    table.head = std::move(row);
    table.alignments = std::move(frame.block.alignments);
    position_.reach_line_end(position_.next_line());  // the line of dashes below the head
}

void TreeBuilder::leave_block() {
    Frame frame = std::move(frames_.back());
    frames_.pop_back();
    check_next_used(frame);
    if (frame.block.line == 0) frame.block.line = first_line(frame.block);
    if (frame.block.line == 0 || frame.block.task) frame.block.line = template_line(frame.start);
    if (frame.role == Frame::Role::item && frame.block.children.empty()) position_.reach_line_end(frame.start);
    append(std::move(frame.block));
}

}  // namespace ventfolio
