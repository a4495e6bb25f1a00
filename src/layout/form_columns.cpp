#include "layout/form_columns.hpp"

#include <algorithm>

#include "layout/table_row.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kWrite = 22;
constexpr double kTickColumn = mm(11);
constexpr double kMostGroup = 0.2;  // of the width
constexpr double kMostGroupOfWords = 0.28;
constexpr double kLeastByHand = 0.64;  // of a cell's own size

bool says_something(const Inlines& inlines) {
    return std::ranges::any_of(inlines, [](const Inline& piece) { return piece.kind != Inline::Kind::check_box; });
}

FormColumn::Kind kind_of(const Block& table, std::size_t column) {
    if (column == 0) return cell(table.head, 0).empty() ? FormColumn::Kind::group : FormColumn::Kind::words;
    if (std::ranges::any_of(table.rows, [&](const TableRow& row) { return says_something(cell(row, column)); }))
        return FormColumn::Kind::words;
    const bool ticked =
        std::ranges::any_of(table.rows, [&](const TableRow& row) { return has_check_box(cell(row, column)); });
    return ticked ? FormColumn::Kind::tick : FormColumn::Kind::write;
}

/// Groups of a form that is only ticked may take more of it than those beside cells to write in.
double most_group(const Block& table, double width) {
    bool by_hand = false;
    for (std::size_t at = 1; at < table.head.cells.size(); ++at)
        by_hand = by_hand || kind_of(table, at) != FormColumn::Kind::words;
    return (by_hand ? kMostGroup : kMostGroupOfWords) * width;
}

struct ColumnNeed {
    double least = 0;    ///< of the widest word
    double natural = 0;  ///< each cell on one line
};

ColumnNeed need_of(const Block& table, std::size_t column, const TextStyle& look, const FormStyles& styles,
                   LayoutContext& context) {
    const double head = widest_word(cell(table.head, column), styles.head, context) + kFormPad;
    ColumnNeed need{head, head};
    for (const TableRow& row : table.rows) {
        if (is_group_head(row)) continue;
        const Inlines& words = cell(row, column);
        need.least = std::max(need.least, widest_word(words, look, context) + kFormPad);
        need.natural = std::max(need.natural, natural_width(words, styles.value, context) + kFormPad);
    }
    return need;
}

/// The columns of words and what each of them needs.
struct Worded {
    std::vector<FormColumn*> columns;
    std::vector<ColumnNeed> needs;

    double least() const {
        double sum = 0;
        for (const ColumnNeed& need : needs) sum += need.least;
        return sum;
    }
};

/// Cells by hand become narrower where the words would not fit else. Returns the room that this gives.
double narrowed(FormColumns& columns, double missing) {
    double by_hand = 0;
    for (const FormColumn& column : columns)
        if (column.by_hand()) by_hand += column.width;
    if (by_hand == 0 || missing <= 0) return 0;
    const double share = std::max(kLeastByHand, 1 - missing / by_hand);
    for (FormColumn& column : columns)
        if (column.by_hand()) column.width *= share;
    return by_hand * (1 - share);
}

/// All but the first column of words get what they need, up to half of the room together if the first needs the rest.
void share_room(Worded& worded, double room) {
    if (worded.columns.empty()) return;
    const std::size_t others = worded.columns.size() - 1;
    const double most =
        others == 0 ? 0 : std::max(0.5 * room, room - worded.needs[0].natural) / static_cast<double>(others);
    double spare = room - worded.least();
    for (std::size_t at = 1; at <= others; ++at) {
        const ColumnNeed& need = worded.needs[at];
        const double wanted = std::max(need.least, std::min(need.natural, most));
        const double given = std::min(wanted, need.least + std::max(0.0, spare));
        worded.columns[at]->width = given;
        spare -= given - need.least;
        room -= given;
    }
    worded.columns[0]->width = room;
}

}  // namespace

FormStyles form_styles(double scale) {
    FormStyles styles{plain_style(kSmallestText * scale, Face::bold), plain_style(11 * scale),
                      value_style(tight(scale))};
    styles.head.leading = 1.15;
    styles.words.leading = 1.15;
    return styles;
}

bool is_item(const FormColumns& columns, std::size_t at) {
    return at == 0 || columns[at].kind == FormColumn::Kind::group || columns[at - 1].kind == FormColumn::Kind::group;
}

bool has_check_box(const Inlines& inlines) {
    return std::ranges::any_of(inlines, [](const Inline& piece) { return piece.kind == Inline::Kind::check_box; });
}

FormColumns form_columns(const Block& table, const FormStyles& styles, const SectionStyle& style, double width,
                         LayoutContext& context) {
    FormColumns columns(table.head.cells.size());
    Worded worded;
    double room = width;
    double group_can_give = 0;
    for (std::size_t at = 0; at < columns.size(); ++at) {
        FormColumn& column = columns[at];
        column.kind = kind_of(table, at);
        const TextStyle& look = is_item(columns, at) ? styles.words : styles.value;
        if (column.kind == FormColumn::Kind::write) {
            column.width = mm(static_cast<double>(style.number("write", kWrite))) * room_to_write(context.scale);
        } else if (column.kind == FormColumn::Kind::tick) {
            column.width = kTickColumn * context.scale;
        } else if (column.kind == FormColumn::Kind::group) {
            const ColumnNeed need = need_of(table, at, look, styles, context);
            column.width = std::max(need.least, std::min(need.natural + kFormPad, most_group(table, width)));
            group_can_give = column.width - need.least;
        } else {
            worded.columns.push_back(&column);
            worded.needs.push_back(need_of(table, at, look, styles, context));
        }
        room -= column.width;
    }
    const double given = std::clamp(worded.least() - room, 0.0, group_can_give);
    columns.front().width -= given;
    room += given;
    room += narrowed(columns, worded.least() - room);
    share_room(worded, room);
    return columns;
}

}  // namespace ventfolio
