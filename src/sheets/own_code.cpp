#include "sheets/own_code.hpp"

#include "sheets/printer.hpp"

namespace ventfolio {
namespace {

constexpr Audiences kEverywhere = 0xFF;  // a code tells nothing of the person

void fill_in(Inlines& inlines, const PrintedValue& code) {
    for (Inline& piece : inlines)
        if (piece.kind == Inline::Kind::value && is_own_code(piece.value)) piece.value = code;
}

void fill_in(TableRow& row, const PrintedValue& code) {
    for (TableCell& cell : row.cells) fill_in(cell.inlines, code);
}

void fill_in(std::vector<Block>& blocks, const PrintedValue& code) {
    for (Block& block : blocks) {
        fill_in(block.inlines, code);
        fill_in(block.aside, code);
        fill_in(block.head, code);
        for (TableRow& row : block.rows) fill_in(row, code);
        fill_in(block.children, code);
    }
}

}  // namespace

PrintedValue own_code(std::string code) {
    PrintedValue value = calculated("own-code", kEverywhere, {{PrintedPart::Kind::unit, std::move(code)}});
    value.quoted = true;  // letters and digits as they fall, such as 1E3
    return value;
}

bool is_own_code(const PrintedValue& value) { return value.field == "calc.own-code"; }

void fill_in_own_code(Document& document, const std::string& code) {
    const PrintedValue value = own_code(code);
    fill_in(document.title, value);
    fill_in(document.blocks, value);
}

}  // namespace ventfolio
