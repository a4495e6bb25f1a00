#include "layout/wallet.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "layout/facts.hpp"
#include "layout/figures/qr_code.hpp"

namespace ventfolio {
namespace {

// ISO/IEC 7810, ID-1 (as quoted).
constexpr double kFaceWidth = mm(85.60);
constexpr double kFaceHeight = mm(53.98);
constexpr double kSide = mm(4);  ///< text stays this far from a fold or a cut
constexpr double kFoot = mm(1.8);
constexpr double kBetween = mm(0.45);
constexpr double kLeading = 1.12;
constexpr double kStripHeight = mm(8);
/// Modules of half a millimetre at the largest version that fits, quiet zone included.
constexpr double kCodeSide = mm(36.5);
constexpr double kCodeEdge = mm(2.2);  ///< the quiet zone keeps the rest of the distance
constexpr double kMark = mm(4);
constexpr double kMarkOff = mm(2);
constexpr double kRulerLength = mm(50);

/// The words of the section between its lines across.
struct WalletParts {
    std::span<const Block> front;
    std::span<const Block> back;
    std::span<const Block> code;
    std::span<const Block> beside;
};

WalletParts parts_of(std::span<const Block> blocks, LayoutContext& context) {
    WalletParts parts;
    std::span<const Block>* const places[]{&parts.front, &parts.back, &parts.code, &parts.beside};
    std::size_t place = 0;
    std::size_t first = 0;
    for (std::size_t at = 0; at <= blocks.size(); ++at) {
        if (at < blocks.size() && blocks[at].kind != Block::Kind::rule) continue;
        const auto part = blocks.subspan(first, at - first);
        if (place < std::size(places))
            *places[place++] = part;
        else if (!part.empty())
            context.refuse_unprinted("a fifth part of a wallet card", part.front().line);
        first = at + 1;
    }
    return parts;
}

SectionStyle card_style() {
    SectionStyle style;
    style.sizes = on_card();
    return style;
}

Piece set_paragraph(const Block& block, double width, LayoutContext& context) {
    TextStyle look = plain_style(block.attributes.has("large") ? on_card().heading : on_card().body);
    look.leading = kLeading;
    return piece_of(set_text(block.inlines, look, width, "paragraph", context), kBetween, block);
}

Pieces set_card_blocks(std::span<const Block> blocks, double width, LayoutContext& context);

/// A call-out on a card: words in a thin box, without a sign.
Piece set_boxed_words(const Block& block, double width, LayoutContext& context) {
    constexpr double kPad = mm(1.2);
    Frame words = stacked(set_card_blocks(block.children, width - 2 * kPad, context), width - 2 * kPad);
    Frame frame;
    frame.width = width;
    frame.height = words.height + kPad;
    frame.put_outline(kBoxLine, {context.node, "call-out", {}});
    frame.put_in_middle(std::move(words), kPad);
    return piece_of(std::move(frame), kBetween, block);
}

/// Short facts on one line below a rule, such as numbers to call.
Piece set_line_of_facts(const Block& list, double width, LayoutContext& context) {
    constexpr double kBelowRule = mm(0.8);
    TextStyle look = plain_style(on_card().heading);
    look.leading = 1.15;
    Frame facts = set_facts(list, look, {.gap = mm(3), .least_if_spread = mm(2)}, width, context);
    Frame frame;
    frame.width = width;
    frame.put_rule({{0, 0}, {width, 0}, kThinLine, Ink::black});
    frame.append(std::move(facts), 0, kBelowRule);
    Piece piece = piece_of(std::move(frame), kBetween, list);
    for (const Block& item : list.children)
        if (piece.field.empty()) piece.field = first_field(inlines_of(item));
    return piece;
}

Pieces set_card_blocks(std::span<const Block> blocks, double width, LayoutContext& context) {
    Pieces pieces;
    for (const Block& block : blocks) {
        switch (block.kind) {
            case Block::Kind::paragraph:
                ++context.node;
                pieces.push_back(set_paragraph(block, width, context));
                break;
            case Block::Kind::list:
                ++context.node;
                pieces.push_back(set_line_of_facts(block, width, context));
                break;
            case Block::Kind::call_out:
                ++context.node;
                pieces.push_back(set_boxed_words(block, width, context));
                break;
            default:
                std::ranges::move(set_blocks({&block, 1}, card_style(), width, context), std::back_inserter(pieces));
        }
    }
    return pieces;
}

/// The field with the longest text in the blocks; empty when there is none.
struct LongestField {
    std::string field;
    std::size_t size = 0;

    void look_at(const Inlines& inlines) {
        for (const Inline& piece : inlines) {
            const std::size_t length = piece.kind == Inline::Kind::value ? piece.value.text().size() : 0;
            if (length <= size) continue;
            field = piece.value.field;
            size = length;
        }
    }
    void look_at(std::span<const Block> blocks) {
        for (const Block& block : blocks) {
            look_at(block.inlines);
            look_at(block.children);
            for (const TableRow& row : block.rows)
                for (const TableCell& one : row.cells) look_at(one.inlines);
        }
    }
};

void check_height(double height, double room, std::string_view side, std::span<const Block> blocks,
                  LayoutContext& context) {
    if (height <= room + kFitTolerance) return;
    LongestField longest;
    longest.look_at(blocks);
    const std::string about = longest.field.empty() ? "" : fmt::format(" The longest part is {}.", longest.field);
    context.refuse("card-too-full",
                   fmt::format("On {}, the {} of the card needs {:.0f} mm more than it has.{}", context.document.sheet,
                               side, std::max(1.0, (height - room) / mm(1)), about),
                   blocks.front().line, longest.field);
}

Frame empty_face() {
    Frame face;
    face.width = kFaceWidth;
    face.height = kFaceHeight;
    face.put_box({{0, 0}, kFaceWidth, kFaceHeight, kThinLine, false, Ink::black});
    return face;
}

Frame set_front(const Section& section, std::span<const Block> blocks, LayoutContext& context) {
    constexpr double kWidth = kFaceWidth - 2 * kSide;
    TextStyle look = plain_style(13, Face::bold);
    look.ink = Ink::white;
    Frame strip;
    strip.width = kFaceWidth;
    strip.height = kStripHeight;
    strip.put_black_field({context.node, "strip", {}});
    strip.put_in_middle(set_text(section.heading->inlines, look, kWidth, "heading", context), kSide);
    Frame face = empty_face();
    face.put(std::move(strip), 0, 0);
    Frame words = stacked(set_card_blocks(blocks, kWidth, context), kWidth);
    constexpr double kTop = kStripHeight + mm(1.2);
    if (!blocks.empty()) check_height(words.height, kFaceHeight - kTop - kFoot, "front", blocks, context);
    face.put(std::move(words), kSide, kTop);
    return face;
}

void refuse_code(const Block& list, LayoutContext& context) {
    LongestField longest;
    longest.look_at(list.children);
    const std::string about = longest.field.empty() ? "" : fmt::format(" The longest part is {}.", longest.field);
    context.refuse("code-text-too-long",
                   fmt::format("The square code holds 1 to {} bytes; these lines are {} bytes.{}", kCodeBytesMost,
                               code_text(list).size(), about),
                   list.line, longest.field);
}

/// The code, and what of the back stands below it.
Frame set_code(const Block* list, std::span<const Block> captions, LayoutContext& context) {
    Frame column;
    column.width = kCodeSide;
    column.height = kCodeSide;
    if (list != nullptr) {
        auto code = qr_code(code_text(*list), kCodeSide, context);
        if (code)
            column.put(std::move(*code), 0, 0);
        else
            refuse_code(*list, context);
    }
    for (const Block& block : captions) {
        ++context.node;
        TextStyle look = plain_style(on_card().label);
        look.leading = 1.15;
        column.append(set_text(block.inlines, look, kCodeSide - kSide + kCodeEdge, "paragraph", context),
                      kSide - kCodeEdge);
    }
    return column;
}

Frame set_back(std::span<const Block> blocks, const Block* list, LayoutContext& context) {
    constexpr double kGap = mm(1);
    constexpr double kTop = mm(3);
    constexpr double kLeft = kCodeEdge + kCodeSide + kGap;
    constexpr double kWidth = kFaceWidth - kLeft - kSide;
    const auto is_caption = [](const Block& block) {
        return block.kind == Block::Kind::paragraph && block.attributes.has("caption");
    };
    const auto first_caption = std::ranges::find_if(blocks, is_caption);
    const auto words = blocks.first(static_cast<std::size_t>(first_caption - blocks.begin()));
    const auto captions = blocks.subspan(words.size());
    for (const Block& block : captions)
        if (!is_caption(block)) context.refuse_unprinted("what follows the caption of a code", block.line);
    Frame face = empty_face();
    Frame column = stacked(set_card_blocks(words, kWidth, context), kWidth);
    if (!words.empty()) check_height(column.height, kFaceHeight - kTop - kFoot, "back", words, context);
    Frame code = set_code(list, captions, context);
    if (!captions.empty()) check_height(code.height, kFaceHeight - kCodeEdge - kFoot, "back", captions, context);
    face.put(std::move(code), kCodeEdge, kCodeEdge);
    face.put(std::move(column), kLeft, kTop);
    return face;
}

void put_mark(Frame& frame, double x, double top) {
    frame.put_rule({{x, top}, {x, top + kMark}, kThinLine, Ink::black});
}

/// Two short lines, one after the other: here the paper is folded.
void put_fold_mark(Frame& frame, double x, double top) {
    constexpr double kDash = kMark * 0.4;
    frame.put_rule({{x, top}, {x, top + kDash}, kBoldLine, Ink::black});
    frame.put_rule({{x, top + kMark - kDash}, {x, top + kMark}, kBoldLine, Ink::black});
}

/// Front and back with the marks for scissors and fold above and below them.
Piece set_card(const Section& section, const WalletParts& parts, double width, LayoutContext& context) {
    const auto list = std::ranges::find(parts.code, Block::Kind::list, &Block::kind);
    Frame front = set_front(section, parts.front, context);
    Frame back = set_back(parts.back, list == parts.code.end() ? nullptr : &*list, context);
    Piece piece = section_piece(section, {}, width);
    Frame& frame = piece.frame;
    constexpr double kTop = kMark + kMarkOff;
    constexpr double kBottom = kTop + kFaceHeight + kMarkOff;
    frame.height = kBottom + kMark;
    const double left = (width - 2 * kFaceWidth) / 2;
    for (const double top : {0.0, kBottom}) {
        put_mark(frame, left, top);
        put_mark(frame, left + 2 * kFaceWidth, top);
        put_fold_mark(frame, left + kFaceWidth, top);
    }
    frame.put(std::move(front), left, kTop);
    frame.put(std::move(back), left + kFaceWidth, kTop);
    return piece;
}

/// The code's lines, read down a bar, and what else stands in that part.
Pieces set_code_lines(std::span<const Block> blocks, double width, LayoutContext& context) {
    constexpr double kIndent = mm(3);
    SectionStyle style;
    style.sizes = at_arms_length(context.scale);
    Pieces pieces;
    for (const Block& block : blocks) {
        if (block.kind != Block::Kind::list) {
            std::ranges::move(set_blocks({&block, 1}, style, width, context), std::back_inserter(pieces));
            continue;
        }
        ++context.node;
        Frame lines;
        lines.width = width;
        for (const Block& item : block.children) {
            ++context.node;
            lines.append(set_text(inlines_of(item), body_style(style), width - kIndent, "list item", context), kIndent);
        }
        lines.put_rule({{kHeavyLine / 2, 0}, {kHeavyLine / 2, lines.height}, kHeavyLine, Ink::black});
        pieces.push_back(piece_of(std::move(lines), kParagraphGap, block));
    }
    return pieces;
}

Frame ruler(LayoutContext& context) {
    constexpr double kHeight = mm(5);
    constexpr double kHalf = kThinLine / 2;
    constexpr int kPieces = 5;
    Frame frame;
    frame.width = kRulerLength + kThinLine;
    frame.height = kHeight;
    const Origin origin{context.node, "figure", {}};
    frame.put_rule({{kHalf, kHeight / 2}, {kHalf + kRulerLength, kHeight / 2}, kThinLine, Ink::black}, origin);
    for (int at = 0; at <= kPieces; ++at) {
        const double x = kHalf + kRulerLength * at / kPieces;
        const double inset = at == 0 || at == kPieces ? 0 : mm(1.2);
        frame.put_rule({{x, inset}, {x, kHeight - inset}, kThinLine, Ink::black}, origin);
    }
    return frame;
}

Pieces set_beside(std::span<const Block> blocks, double width, LayoutContext& context) {
    SectionStyle style;
    style.sizes = at_arms_length(context.scale);
    Pieces pieces;
    if (blocks.empty()) return pieces;
    const bool headed = blocks.front().kind == Block::Kind::heading;
    if (headed) pieces = set_blocks(blocks.first(1), style, width, context);
    Piece scale;
    scale.frame = ruler(context);
    scale.gap = mm(1.6);
    pieces.push_back(std::move(scale));
    std::ranges::move(set_blocks(blocks.subspan(headed ? 1 : 0), style, width, context), std::back_inserter(pieces));
    return pieces;
}

/// What is to be checked before scissors are used.
Piece set_checks(const WalletParts& parts, double width, LayoutContext& context) {
    const double column = (width - kGutter) / 2;
    Pieces lines = set_code_lines(parts.code, column, context);
    Pieces beside = set_beside(parts.beside, column, context);
    Piece piece;
    piece.field = first_field(lines);
    piece.gap = kRowGap;
    if (!parts.code.empty()) piece.line = parts.code.front().line;
    Frame left = stacked(std::move(lines), column);
    Frame right = stacked(std::move(beside), column);
    piece.frame.width = width;
    piece.frame.height = std::max(left.height, right.height);
    piece.frame.put(std::move(left), 0, 0);
    piece.frame.put(std::move(right), column + kGutter, 0);
    return piece;
}

}  // namespace

Pieces set_wallet(const Section& section, double width, LayoutContext& context) {
    const WalletParts parts = parts_of(section.blocks, context);
    Pieces pieces{set_card(section, parts, width, context)};
    if (!section.heading->aside.empty()) context.refuse_unprinted("the aside of a card", section.heading->line);
    pieces.push_back(set_checks(parts, width, context));
    return pieces;
}

}  // namespace ventfolio
