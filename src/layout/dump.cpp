#include <fmt/format.h>

#include "layout/lay_out.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

std::string quoted(const std::u32string& text) {
    std::string out;
    for (const char32_t c : text) out += c == U'"' || c == U'\\' ? "\\" + utf8(c) : utf8(c);
    return "\"" + out + "\"";
}

std::string ink_word(Ink ink) { return ink == Ink::black ? "" : ink == Ink::white ? " white" : " grey"; }

std::string at(const Point& point) { return fmt::format(" {:.2f} {:.2f}", point.x, point.y); }

/// In the letters of SVG 2, "Paths": M, L, C and Z.
std::string described(const Path& path) {
    std::string text = "path";
    for (const Path::Segment& segment : path.segments) {
        switch (segment.kind) {
            case Path::Segment::Kind::move:
                text += " M" + at(segment.a);
                break;
            case Path::Segment::Kind::line:
                text += " L" + at(segment.a);
                break;
            case Path::Segment::Kind::curve:
                text += " C" + at(segment.a) + at(segment.b) + at(segment.c);
                break;
            case Path::Segment::Kind::close:
                text += " Z";
                break;
        }
    }
    return text;
}

std::string described(const PlacedItem& item) {
    switch (item.kind) {
        case PlacedItem::Kind::text:
            return fmt::format("text {:.2f} {:.2f} {:.2f} wide {}{} {}{}", item.text.origin.x, item.text.origin.y,
                               item.text.width, item.text.size, item.text.face == Face::bold ? " bold" : "",
                               quoted(item.text.text), ink_word(item.text.ink));
        case PlacedItem::Kind::box:
            return fmt::format("box {:.2f} {:.2f} {:.2f} x {:.2f}{}{}", item.box.corner.x, item.box.corner.y,
                               item.box.width, item.box.height, item.box.filled ? " filled" : "",
                               ink_word(item.box.ink));
        case PlacedItem::Kind::rule:
            return fmt::format("rule {:.2f} {:.2f} to {:.2f} {:.2f} width {:.2f}{}", item.rule.from.x, item.rule.from.y,
                               item.rule.to.x, item.rule.to.y, item.rule.stroke, ink_word(item.rule.ink));
        case PlacedItem::Kind::path:
            return described(item.path) + ink_word(item.path.ink);
        case PlacedItem::Kind::picture:
            return fmt::format("picture {:.2f} {:.2f} {:.2f} x {:.2f} of {} x {} dots, SHA-256 {}",
                               item.picture.corner.x, item.picture.corner.y, item.picture.width, item.picture.height,
                               item.picture.picture->width, item.picture.picture->height, item.picture.picture->digest);
    }
    return {};
}

}  // namespace

std::string dump(const PlacedSheet& sheet) {
    std::string text = fmt::format("sheet {} \"{}\" {}\n", sheet.name, sheet.title, sheet.language);
    for (std::size_t number = 0; number < sheet.pages.size(); ++number) {
        const PlacedPage& page = sheet.pages[number];
        text += fmt::format("page {} {:.2f} x {:.2f}\n", number + 1, page.width, page.height);
        for (const PlacedItem& item : page.items) {
            text += "  " + described(item);
            text += item.origin.role.empty() ? "" : " [" + item.origin.role + "]";
            text += item.origin.field.empty() ? "\n" : " {" + item.origin.field + "}\n";
        }
    }
    return text;
}

}  // namespace ventfolio
