#include "layout/furniture.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "layout/type_sizes.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr double kMargin = mm(12.7);
constexpr double kBinding = mm(20);  // holes are punched here
constexpr double kLiveWidth = mm(176);
constexpr double kLiveHeight = mm(254);  // of Letter
constexpr double kBesideName = mm(5);    // between a name read across the room and the identifier

Inlines page_and_revision(const Furniture& furniture, PageNumber number) {
    std::string text = with_replaced(furniture.page_of, "{page}", fmt::format("{}", number.page));
    text = with_replaced(text, "{pages}", fmt::format("{}", number.pages));
    Inlines line = words(with_replaced(text, " ", kNoBreakSpace));
    const Inlines gap = words("   ");
    line.insert(line.end(), gap.begin(), gap.end());
    line.insert(line.end(), furniture.revision.begin(), furniture.revision.end());
    return line;
}

struct HeaderLook {
    TextStyle who;
    TextStyle identifier;
    TextStyle title;
    TextStyle page;
    double height;
    double rule;
};

HeaderLook header_look(bool poster, double scale) {
    // The name of a poster header is not scaled: it is read at 2 m already.
    HeaderLook look{plain_style(poster ? 48 : 14 * scale, Face::bold),
                    plain_style((poster ? 14 : 10) * scale),
                    plain_style((poster ? 14 : 12) * scale, Face::bold),
                    plain_style((poster ? 11 : 10) * scale),
                    poster ? mm(20) : mm(13),
                    poster ? mm(0.5) : mm(0.25)};
    look.who.leading = poster ? 1.0 : 1.12;
    look.identifier.leading = look.title.leading = look.page.leading = 1.2;
    look.title.alignment = look.page.alignment = Alignment::right;
    return look;
}

Frame right_block(const Furniture& furniture, const Inlines& title, PageNumber number, const HeaderLook& look,
                  double width, LayoutContext& context) {
    Frame head = set_text(title, look.title, width, "header", context);
    Frame line = set_text(page_and_revision(furniture, number), look.page, width, "header", context);
    Frame block;
    block.width = width;
    block.height = head.height + line.height;
    const double top = head.height;
    block.put(std::move(head), 0, 0);
    block.put(std::move(line), 0, top);
    return block;
}

/// The name large, the identifier beside it where both fit, else below.
Frame left_block(const Furniture& furniture, const HeaderLook& look, bool poster, double width,
                 LayoutContext& context) {
    Frame who = set_text(furniture.who, look.who, width, "header", context);
    const double who_width = natural_width(furniture.who, look.who, context);
    const double id_width = natural_width(furniture.identifier, look.identifier, context);
    const bool beside = poster && who.height < 2 * look.who.words.size && who_width + kBesideName + id_width <= width;
    Frame id = set_text(furniture.identifier, look.identifier, beside ? id_width + 1 : width, "header", context);
    Frame block;
    block.width = width;
    block.height = beside ? who.height : who.height + id.height;
    const double top = beside ? first_baseline(who) - first_baseline(id) : who.height;
    block.put(std::move(who), 0, 0);
    block.put(std::move(id), beside ? who_width + kBesideName : 0, top);
    return block;
}

Frame set_mark(const Inlines& mark, double width, LayoutContext& context) {
    TextStyle look = plain_style(12 * context.scale, Face::bold);
    look.leading = 1.2;
    look.alignment = Alignment::center;
    Frame text = set_text(mark, look, width - mm(6), "mark", context);
    Frame frame;
    frame.width = width;
    frame.height = text.height + mm(2.4);
    frame.put_box({{mm(0.4), mm(0.4)}, width - mm(0.8), frame.height - mm(0.8), mm(0.8), false, Ink::black});
    frame.put(std::move(text), mm(3), mm(1.2));
    return frame;
}

}  // namespace

PageBox page_box(Paper paper, bool landscape) {
    if (landscape) {
        // The same box turned, holes along the upper edge: 254 x 176 mm.
        const PageBox upright = page_box(paper);
        const double bottom = kBinding + kLiveWidth;
        return {upright.page_height, upright.page_width, kMargin, kBinding, kLiveHeight, bottom, bottom};
    }
    const double page_width = paper == Paper::letter ? 612 : 595.28;
    const double page_height = paper == Paper::letter ? 792 : 841.89;
    // 176 mm from the binding margin leaves 14 mm on A4 and 19.9 mm on Letter.
    return {page_width, page_height, kBinding, kMargin, kLiveWidth, page_height - kMargin, kMargin + kLiveHeight};
}

bool is_landscape(const Document& document) { return document.front("orientation") == "landscape"; }

Frame set_header(const Furniture& furniture, const Inlines& title, PageNumber number, double width,
                 LayoutContext& context) {
    const HeaderLook look = header_look(number.poster, context.scale);
    const double right_natural = std::max(natural_width(title, look.title, context),
                                          natural_width(page_and_revision(furniture, number), look.page, context));
    const double gap = mm(4);
    const double left_natural = natural_width(furniture.who, look.who, context);
    const double id_natural = natural_width(furniture.identifier, look.identifier, context);
    // A title may have half of the width, and what name and identifier leave of the rest.
    const double left_wanted =
        number.poster ? left_natural + kBesideName + id_natural : std::max(left_natural, id_natural);
    const double left_least = std::max(widest_word(furniture.who, look.who, context),
                                       widest_word(furniture.identifier, look.identifier, context)) +
                              1;
    constexpr double kLeastTitle = 0.45;  // of the width, so that a long word at the left does not squeeze it
    const double half = std::max(kLeastTitle * width, std::min(0.5 * width, width - left_least - gap));
    const double right_width = std::min(right_natural + 1, std::max(half, width - left_wanted - 1 - gap));
    const bool side_by_side = left_natural <= width - right_width - gap || !number.poster;
    // A name too long to stand beside the sheet's title takes the whole width, and the title goes above it.
    const double left_room = width - right_width - gap;
    const bool wide_name = left_least - 1 > left_room || !side_by_side;
    Frame right = right_block(furniture, title, number, look, wide_name ? width : right_width, context);
    Frame left = left_block(furniture, look, number.poster, wide_name ? width : left_room, context);
    Frame header;
    header.width = width;
    const double content = wide_name ? left.height + right.height : std::max(left.height, right.height);
    header.height = std::max(look.height, content + mm(1.2));
    const double ground = header.height - mm(1.2);
    const double left_height = left.height;
    const double right_height = right.height;
    header.put(std::move(left), 0, ground - left_height);
    header.put(std::move(right), wide_name ? 0 : width - right_width,
               wide_name ? ground - left_height - right_height : ground - right_height);
    header.put_rule({{0, header.height}, {width, header.height}, look.rule, Ink::black});
    if (furniture.mark.empty()) return header;
    Frame mark = set_mark(furniture.mark, width, context);
    const double top = header.height + mm(2);
    header.height = top + mark.height;
    header.put(std::move(mark), 0, top);
    return header;
}

Frame set_footer(const Furniture& furniture, double width, LayoutContext& context) {
    TextStyle foot = plain_style(kFooterText * std::min(context.scale, 1.25));
    foot.leading = 1.3;
    TextStyle code = plain_style(11 * std::min(context.scale, 1.25), Face::bold);
    code.leading = 1.2;
    const Inlines code_words = words(furniture.code);
    const double code_width = natural_width(code_words, code, context) + 1;
    const double text_width = width - code_width - mm(4);
    Frame footer;
    footer.width = width;
    double y = mm(1.3);
    for (const Inlines& line : furniture.foot) {
        Frame text = set_text(line, foot, text_width, "footer", context);
        const double height = text.height;
        footer.put(std::move(text), 0, y);
        y += height;
    }
    Frame code_text = set_text(code_words, code, code_width, "code", context);
    footer.height = std::max(y, mm(1.3) + code_text.height);
    footer.put(std::move(code_text), width - code_width, mm(1.3));
    footer.put_rule({{0, 0}, {width, 0}, mm(0.25), Ink::black});
    return footer;
}

}  // namespace ventfolio
