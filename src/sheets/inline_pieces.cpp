#include "sheets/inline_pieces.hpp"

#include <utility>

namespace ventfolio {

Inline text_piece(std::string text, bool strong) {
    Inline piece;
    piece.text = std::move(text);
    piece.strong = strong;
    return piece;
}

Inline value_piece(PrintedValue value, bool strong) {
    Inline piece;
    piece.kind = Inline::Kind::value;
    piece.value = std::move(value);
    piece.strong = strong;
    return piece;
}

Inline line_break() {
    Inline piece;
    piece.kind = Inline::Kind::line_break;
    return piece;
}

Inline box_to_tick() {
    Inline piece;
    piece.kind = Inline::Kind::check_box;
    return piece;
}

Inline line_to_write_on(std::size_t letters) {
    Inline piece;
    piece.kind = Inline::Kind::write_in;
    piece.text = std::string(letters, '_');
    return piece;
}

}  // namespace ventfolio
