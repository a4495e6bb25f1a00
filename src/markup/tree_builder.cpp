#include "markup/tree_builder.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "markup/markdown_source.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kDeepestBlock = 24;
constexpr std::string_view kNotAllowed = "template-markdown-not-allowed";
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
    if (!block.children.empty()) return block.children.front().line;
    return block.rows.empty() ? block.head.line : block.head.line;
}

}  // namespace

TreeBuilder::TreeBuilder(const Expansion& from, std::string_view prefix, Faults& faults)
    : from_{from},
      faults_{faults},
      shift_{prefix.size()},
      markdown_{std::string{prefix} + from.markdown()},
      position_{markdown_},
      covered_(markdown_.size(), false) {
    frames_.emplace_back().role = Frame::Role::document;
}

template <typename Call>
int TreeBuilder::guarded(void* self, Call call) {
    TreeBuilder& builder = *static_cast<TreeBuilder*>(self);
    try {
        call(builder);
    } catch (...) {
        builder.error_ = std::current_exception();
    }
    return builder.error_ || builder.too_deep_ ? 1 : 0;
}

std::vector<Block> TreeBuilder::build() {
    MD_PARSER parser{};
    // Raw HTML stays on so that it is seen, and can be refused.
    parser.flags = MD_FLAG_TABLES | MD_FLAG_TASKLISTS | MD_FLAG_NOINDENTEDCODEBLOCKS;
    parser.enter_block = [](MD_BLOCKTYPE type, void* detail, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.enter(type, detail); });
    };
    parser.leave_block = [](MD_BLOCKTYPE type, void*, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.leave(type); });
    };
    parser.enter_span = [](MD_SPANTYPE type, void* detail, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.enter(type, detail); });
    };
    parser.leave_span = [](MD_SPANTYPE type, void*, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.leave(type); });
    };
    parser.text = [](MD_TEXTTYPE type, const MD_CHAR* words, MD_SIZE size, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.text(type, words, size); });
    };
    const int status = md_parse(markdown_.data(), static_cast<MD_SIZE>(markdown_.size()), &parser, this);
    if (error_) std::rethrow_exception(error_);
    if (too_deep_) {
        const std::size_t at = position_.next_line();
        refuse("template-too-large", at, at + 1, "Lists and quotes are nested too deeply.", "too deep");
        return {};
    }
    if (status != 0) throw std::bad_alloc{};
    check_next_used(frames_.front());
    if (faults_.empty()) check_nothing_lost();
    return std::move(frames_.front().block.children);
}

// Blocks -------------------------------------------------------------------------------------------------------------

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
            return push(Frame::Role::table, Block::Kind::table);
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
    too_deep_ = frames_.size() > kDeepestBlock;
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

void TreeBuilder::enter_cell(const MD_BLOCK_TD_DETAIL& cell, bool head) {
    if (head) {
        Alignment alignment = Alignment::automatic;
        if (cell.align == MD_ALIGN_LEFT) alignment = Alignment::left;
        if (cell.align == MD_ALIGN_CENTER) alignment = Alignment::center;
        if (cell.align == MD_ALIGN_RIGHT) alignment = Alignment::right;
        frames_[frames_.size() - 2].block.alignments.push_back(alignment);
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

// Words --------------------------------------------------------------------------------------------------------------

void TreeBuilder::enter(MD_SPANTYPE type, const void* detail) {
    if (type == MD_SPAN_STRONG) {
        ++strong_;
    } else if (type == MD_SPAN_IMG) {
        if (figures_++ > 0) return;
        const auto& image = *static_cast<const MD_SPAN_IMG_DETAIL*>(detail);
        figure_.emplace();
        figure_->address.assign(image.src.text, image.src.size);
        figure_->titled = image.title.size > 0;
    } else {
        spans_to_report_.push_back(type);
    }
}

void TreeBuilder::leave(MD_SPANTYPE type) {
    if (type == MD_SPAN_STRONG) --strong_;
    if (type == MD_SPAN_IMG && --figures_ == 0) end_figure();
    report_spans(position_.read());
}

/// Spans are refused at their first text, since the parser does not say where they open.
void TreeBuilder::report_spans(std::size_t offset) {
    for (const MD_SPANTYPE type : std::exchange(spans_to_report_, {})) {
        std::size_t begin = offset;
        const std::string_view signs = type == MD_SPAN_EM ? "*_" : type == MD_SPAN_CODE ? "`" : "[<";
        while (begin > 0 && signs.find(markdown_[begin - 1]) != signs.npos) --begin;
        if (type == MD_SPAN_EM)
            not_allowed(begin, offset, "Italics are hard to read and are not used here.", "use ** for bold type");
        else if (type == MD_SPAN_CODE)
            not_allowed(begin, offset, "Code has no place on this paper.", "leave out the `");
        else
            not_allowed(begin, offset, "A link does nothing on paper.", "write the address or number out");
    }
}

void TreeBuilder::text(MD_TEXTTYPE type, const char* chunk, std::size_t size) {
    const std::less<> before;
    const char* const begin = markdown_.data();
    const bool inside = !before(chunk, begin) && before(chunk, begin + markdown_.size());
    const std::size_t offset = inside ? static_cast<std::size_t>(chunk - begin) : position_.read();
    if (inside) {
        std::fill_n(covered_.begin() + static_cast<std::ptrdiff_t>(offset), size, true);
        position_.reach(offset + size - 1);
        report_spans(offset);
    }
    switch (type) {
        case MD_TEXT_NORMAL:
            return words(offset, {chunk, size});
        case MD_TEXT_ENTITY:
            return entity(offset, {chunk, size});
        case MD_TEXT_BR:
            return add({inline_at(Inline::Kind::line_break, offset), offset, false, false});
        case MD_TEXT_SOFTBR: {
            Inline blank = inline_at(Inline::Kind::text, offset);
            blank.text = " ";
            return add({std::move(blank), offset, false, false});
        }
        case MD_TEXT_HTML:
            if (inside && chunk[0] == '<')
                not_allowed(offset, offset + size, "HTML has no place in a template.", "write \\< to print the sign");
            return;
        case MD_TEXT_CODE:
        case MD_TEXT_NULLCHAR:
        case MD_TEXT_LATEXMATH:
            return;
    }
}

Inline TreeBuilder::inline_at(Inline::Kind kind, std::size_t offset) const {
    Inline piece;
    piece.kind = kind;
    piece.strong = strong_ > 0;
    piece.line = template_line(offset);
    return piece;
}

void TreeBuilder::add(InlineRun run) {
    if (figure_) {
        if (!figure_->first) figure_->first = run.offset;
        figure_->words += run.piece.text;
        figure_->holds_value = figure_->holds_value || run.piece.kind == Inline::Kind::value;
        return;
    }
    if (frames_.back().role == Frame::Role::item) {
        push(Frame::Role::words, Block::Kind::paragraph);
        frames_.back().implicit = true;
    }
    if (frames_.back().role == Frame::Role::words || frames_.back().role == Frame::Role::cell)
        frames_.back().runs.add(std::move(run));
}

void TreeBuilder::words(std::size_t offset, std::string_view chunk) {
    check_signs(offset, chunk);
    bool escaped = position_.escaped(offset);
    std::size_t done = 0;
    const auto flush = [&](std::size_t end) {
        if (end == done) return;
        Inline piece = inline_at(Inline::Kind::text, offset + done);
        piece.text = chunk.substr(done, end - done);
        add({std::move(piece), offset + done, std::exchange(escaped, false), true});
    };
    for (std::size_t at = 0; at < chunk.size(); ++at) {
        // Planes 15 and 16 begin with these bytes in UTF-8; nothing else that a template may hold does.
        const auto lead = static_cast<unsigned char>(chunk[at]);
        if (lead != 0xF4 && !(lead == 0xF3 && static_cast<unsigned char>(chunk[at + 1]) >= 0xB0)) continue;
        flush(at);
        token(offset + at, code_points(chunk.substr(at, 4)).front());
        at += 3;
        done = at + 1;
    }
    flush(chunk.size());
}

void TreeBuilder::token(std::size_t offset, char32_t point) {
    if (point >= kFirstValueToken) {
        Inline value = inline_at(Inline::Kind::value, offset);
        value.value = from_.value(point);
        return add({std::move(value), offset, false, false});
    }
    const bool box = point == kCheckBoxToken;
    Inline piece = inline_at(box ? Inline::Kind::check_box : Inline::Kind::write_in, offset);
    if (!box) piece.text.assign(static_cast<std::size_t>(point - kCheckBoxToken), '_');
    add({std::move(piece), offset, false, false});
}

void TreeBuilder::entity(std::size_t offset, std::string_view name) {
    struct Known {
        std::string_view name;
        std::string_view text;
    };
    static constexpr Known kKnown[] = {
        {"&nbsp;", kNoBreakSpace}, {"&amp;", "&"}, {"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}};
    const auto known = std::ranges::find(kKnown, name, &Known::name);
    if (known == std::end(kKnown))
        return not_allowed(offset, offset + name.size(), fmt::format("The sign {} is not known.", name),
                           "type the sign itself");
    Inline piece = inline_at(Inline::Kind::text, offset);
    piece.text = known->text;
    add({std::move(piece), offset, true, false});
}

/// Signs that Markdown would print because they do not do what the writer meant.
void TreeBuilder::check_signs(std::size_t offset, std::string_view chunk) {
    const bool in_cell = frames_.back().role == Frame::Role::cell;
    for (std::size_t at = 0; at < chunk.size(); ++at) {
        if (at == 0 && position_.escaped(offset)) continue;
        const std::size_t begin = offset + at;
        if (chunk[at] == '*')
            not_allowed(begin, begin + 1, "This star makes nothing bold.",
                        "close it, put a blank beside it, or write \\* to print it");
        if (chunk[at] == '`') not_allowed(begin, begin + 1, "Code has no place on this paper.", "leave out the `");
        if (chunk[at] == '|' && !in_cell)
            not_allowed(begin, begin + 1, "This bar makes no table.", "check the line of dashes, or write \\|");
        if (chunk.substr(at).starts_with("]("))
            not_allowed(begin, begin + 2, "This looks like a figure or link and cannot be read.",
                        "like ![What it shows](figure:name)");
    }
}

void TreeBuilder::end_figure() {
    const Figure figure = std::move(*figure_);
    figure_.reset();
    const std::size_t begin =
        figure.first ? markdown_.rfind("![", *figure.first) : markdown_.find("![", position_.read());
    const std::size_t address = markdown_.find("](", std::max(begin, position_.read()));
    const std::size_t end =
        std::min(markdown_.find(')', std::min(address, markdown_.size())), markdown_.size() - 1) + 1;
    std::fill(covered_.begin() + static_cast<std::ptrdiff_t>(begin),
              covered_.begin() + static_cast<std::ptrdiff_t>(end), true);
    position_.reach(end - 1);
    constexpr std::string_view kScheme = "figure:";
    const std::string name = figure.address.substr(std::min(kScheme.size(), figure.address.size()));
    const bool named = !name.empty() && std::ranges::all_of(name, [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '/';
    });
    if (!figure.address.starts_with(kScheme) || !named || figure.titled)
        return not_allowed(begin, end, "This is not the address of a figure.", "like ![What it shows](figure:name)");
    if (figure.holds_value)
        return not_allowed(begin, end, "The description of a figure cannot hold values.", "describe it without names");
    Inline piece = inline_at(Inline::Kind::figure, begin);
    piece.text = name;
    piece.alternative = figure.words;
    if (trimmed(piece.alternative).empty())
        refuse("template-figure-without-description", begin, end,
               "A figure needs words that say what it shows, for those who cannot see it.", "no description");
    add({std::move(piece), begin, false, false});
}

// Places -------------------------------------------------------------------------------------------------------------

void TreeBuilder::refuse(std::string_view rule, std::size_t begin, std::size_t end, std::string message,
                         std::string label) {
    const auto back = [&](std::size_t offset) { return offset < shift_ ? 0 : offset - shift_; };
    faults_.refuse({rule, from_.span(back(begin), back(end)), std::move(message), std::move(label)});
}

void TreeBuilder::not_allowed(std::size_t begin, std::size_t end, std::string message, std::string label) {
    refuse(kNotAllowed, begin, end, std::move(message), std::move(label));
}

std::size_t TreeBuilder::template_line(std::size_t offset) const {
    return from_.line(offset < shift_ ? 0 : offset - shift_);
}

/// The last guard: every letter, figure and value of the Markdown must have been handed out. Markdown itself drops
/// cells beyond the last column and lines like `[name]: words`.
void TreeBuilder::check_nothing_lost() {
    for (std::size_t at = shift_; at < markdown_.size(); ++at) {
        const auto c = static_cast<unsigned char>(markdown_[at]);
        const bool prints = c >= 0x80 || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        if (!prints || covered_[at]) continue;
        const std::size_t begin = position_.line_begin(at);
        const std::string_view before = std::string_view{markdown_}.substr(begin, at - begin);
        const std::size_t number_end = std::min(markdown_.find_first_not_of("0123456789", at), markdown_.size());
        const bool number = before.find_first_not_of(" >-*+.)0123456789") == before.npos && number_end > at &&
                            number_end < markdown_.size() &&
                            (markdown_[number_end] == '.' || markdown_[number_end] == ')');
        if (number) {
            at = number_end;
            continue;
        }
        const std::size_t end = position_.line_end(at);
        refuse("template-words-lost", at, end, "Markdown would leave this out of the paper.",
               "too many cells in this row, or a line like [name]: words");
        at = end;
    }
}

}  // namespace ventfolio
