#pragma once

#include <vector>

#include "layout/blocks.hpp"
#include "layout/measures.hpp"

namespace ventfolio {

/// A column of a form: what is printed, or room for what is written by hand.
struct FormColumn {
    enum class Kind { group, words, write, tick };
    Kind kind = Kind::words;
    double width = 0;

    bool by_hand() const { return kind == Kind::write || kind == Kind::tick; }
};
using FormColumns = std::vector<FormColumn>;

struct FormStyles {
    TextStyle head;
    TextStyle words;
    TextStyle value;
};
FormStyles form_styles(double scale);

/// Right of the words in a column.
inline constexpr double kFormPad = mm(2);

/// The columns of a form of this width. Columns by hand have their size (`write` of the section, in mm), and give up
/// some of it only where a word would not fit. The first column of words takes what the others leave.
FormColumns form_columns(const Block& table, const FormStyles& styles, const SectionStyle& style, double width,
                         LayoutContext& context);

/// Whether a column names what its row is about: the first, or the one behind the groups.
bool is_item(const FormColumns& columns, std::size_t at);
/// Whether a cell is ticked, not written in.
bool has_check_box(const Inlines& inlines);

}  // namespace ventfolio
