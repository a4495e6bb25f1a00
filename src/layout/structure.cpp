#include "layout/structure.hpp"

#include <algorithm>
#include <utility>

namespace ventfolio {
namespace {

using Kind = StructureElement::Kind;

// Ballot box: what a drawn check box is called where letters stand for it.
constexpr std::string_view kBallotBox = "\u2610";

/// Everything of a sheet's tree below one element after the other.
class Numbering {
  public:
    explicit Numbering(std::string second_language) : second_language_{std::move(second_language)} {}

    std::vector<StructureElement> take() { return std::move(elements_); }

    std::size_t add(Kind kind, std::size_t parent, int level = 0) {
        elements_.push_back({kind, parent, level, {}});
        return elements_.size() - 1;
    }
    void number_words(Inlines& inlines, std::size_t element);
    void say_language(std::size_t element, std::string language) {
        elements_.at(element).language = std::move(language);
    }
    void number_blocks(std::vector<Block>& blocks, std::size_t parent);

  private:
    void number_block(Block& block, std::size_t parent);
    void number_list(Block& list, std::size_t parent);
    void number_item(Block& item, std::size_t parent);
    void number_table(Block& table, std::size_t parent);
    void say_drawn_times(const Block& table);
    void number_row(TableRow& row, std::size_t table, Kind first, Kind others);
    void number_drawn(Inline& piece, std::size_t parent);
    void number_beside(Inlines& inlines, std::size_t element);
    void number_spans(Inlines& inlines, std::size_t element);
    void add_span(const Inline& first, std::size_t parent);

    std::vector<StructureElement> elements_;
    std::string second_language_;
    bool in_timeline_ = false;
};

bool is_drawn(const Inline& piece) { return is_shown(piece) || piece.kind == Inline::Kind::check_box; }

bool has_no_words(const Inline& piece) { return piece.kind == Inline::Kind::line_break; }

bool is_in_second_language(const Inlines& inlines) {
    return std::ranges::any_of(inlines, &Inline::second) &&
           std::ranges::all_of(inlines, [](const Inline& piece) { return piece.second || has_no_words(piece); });
}

bool is_in_both_languages(const Inlines& inlines) {
    return std::ranges::any_of(inlines, &Inline::second) && !is_in_second_language(inlines);
}

bool is_empty(const TableRow& row) {
    return std::ranges::all_of(row.cells, [](const TableCell& cell) { return plain_text(cell.inlines).empty(); });
}

void Numbering::number_drawn(Inline& piece, std::size_t parent) {
    const bool figure = is_shown(piece);
    piece.element = add(figure ? Kind::figure : Kind::span, parent);
    elements_.back().instead = figure ? piece.alternative : std::string{kBallotBox};
    if (piece.second) say_language(piece.element, second_language_);
}

void Numbering::add_span(const Inline& first, std::size_t parent) {
    const std::size_t span = add(Kind::span, parent);
    if (first.second) say_language(span, second_language_);
}

/// Words beside something drawn, or beside words in another language, are spans, so that all keep their order.
void Numbering::number_spans(Inlines& inlines, std::size_t element) {
    const Inline* before = nullptr;  // of the open span
    for (Inline& piece : inlines) {
        if (is_drawn(piece)) {
            number_drawn(piece, element);
            before = nullptr;
            continue;
        }
        const bool goes_on = before && (has_no_words(piece) || before->second == piece.second);
        if (!goes_on) {
            add_span(piece, element);
            before = &piece;
        }
        piece.element = elements_.size() - 1;
    }
}

/// Words alone belong to the element itself.
void Numbering::number_words(Inlines& inlines, std::size_t element) {
    if (std::ranges::any_of(inlines, is_drawn) || is_in_both_languages(inlines)) return number_spans(inlines, element);
    for (Inline& piece : inlines) piece.element = element;
    if (is_in_second_language(inlines)) say_language(element, second_language_);
}

/// Words that share an element with others: what it says of the language would hold for those, too.
void Numbering::number_beside(Inlines& inlines, std::size_t element) {
    if (is_in_second_language(inlines)) return number_spans(inlines, element);
    number_words(inlines, element);
}

void Numbering::number_item(Block& item, std::size_t parent) {
    const std::size_t own = add(Kind::item, parent);
    item.element = add(Kind::label, own);
    if (item.task) elements_.back().instead = kBallotBox;
    const std::size_t body = add(Kind::body, own);
    number_words(item.inlines, body);
    // One paragraph is the body itself.
    const bool short_item = item.children.size() == 1 && item.children.front().kind == Block::Kind::paragraph;
    if (short_item && item.inlines.empty()) return number_words(item.children.front().inlines, body);
    number_blocks(item.children, body);
}

void Numbering::number_list(Block& list, std::size_t parent) {
    const std::size_t own = add(Kind::list, parent);
    elements_.back().numbered = list.ordered;
    for (Block& item : list.children) number_item(item, own);
}

void Numbering::number_row(TableRow& row, std::size_t table, Kind first, Kind others) {
    const std::size_t own = add(Kind::row, table);
    for (TableCell& cell : row.cells)
        number_words(cell.inlines, add(&cell == &row.cells.front() ? first : others, own));
}

/// The first cell of a row says what the others are about.
void Numbering::number_table(Block& table, std::size_t parent) {
    const std::size_t own = add(Kind::table, parent);
    if (!is_empty(table.head)) number_row(table.head, own, Kind::column_head, Kind::column_head);
    for (TableRow& row : table.rows) number_row(row, own, Kind::row_head, Kind::cell);
    if (in_timeline_) say_drawn_times(table);
}

/// The second and third cell of a chart are drawn: the ends of a bar stand for their words.
void Numbering::say_drawn_times(const Block& table) {
    for (const TableRow& row : table.rows)
        for (std::size_t at = 1; at < std::min<std::size_t>(3, row.cells.size()); ++at)
            if (const Inlines& time = row.cells[at].inlines; !time.empty())
                elements_.at(time.front().element).instead = plain_text(time);
}

void Numbering::number_block(Block& block, std::size_t parent) {
    switch (block.kind) {
        case Block::Kind::heading: {
            if (block.level <= 2) in_timeline_ = block.attributes.has("timeline");
            const std::size_t own = add(Kind::heading, parent, block.level);
            if (block.aside.empty()) return number_words(block.inlines, own);
            number_beside(block.inlines, own);
            return number_beside(block.aside, own);
        }
        case Block::Kind::paragraph:
            return number_words(block.inlines, add(Kind::paragraph, parent));
        case Block::Kind::list:
            return number_list(block, parent);
        case Block::Kind::item:
            return number_item(block, parent);
        case Block::Kind::table:
            return number_table(block, parent);
        case Block::Kind::call_out:
            return number_blocks(block.children, add(Kind::note, parent));
        case Block::Kind::rule:
            return;
    }
}

void Numbering::number_blocks(std::vector<Block>& blocks, std::size_t parent) {
    for (Block& block : blocks) number_block(block, parent);
}

/// No level of headings is left out on the way down (ISO 14289-1, 7.4.2).
void close_gaps_in_levels(std::vector<StructureElement>& elements) {
    int before = 1;
    for (StructureElement& element : elements) {
        if (element.kind != Kind::heading) continue;
        element.level = std::clamp(element.level, 1, before + 1);
        before = element.level;
    }
}

}  // namespace

std::vector<StructureElement> number_elements(Document& document) {
    Numbering numbering{document.second_language};
    const std::size_t sheet = numbering.add(Kind::sheet, 0);
    numbering.say_language(sheet, document.language);
    numbering.number_words(document.title, numbering.add(Kind::heading, sheet, 1));
    numbering.number_blocks(document.blocks, sheet);
    std::vector<StructureElement> elements = numbering.take();
    close_gaps_in_levels(elements);
    return elements;
}

}  // namespace ventfolio
