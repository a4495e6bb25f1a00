#include "markup/tree_builder.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <functional>
#include <utility>

#include "markup/markdown_source.hpp"
#include "units/ascii.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// The name in the address of a figure; nothing for another address.
std::optional<std::string_view> figure_name(std::string_view address) {
    constexpr std::string_view kScheme = "figure:";
    if (!address.starts_with(kScheme)) return std::nullopt;
    const std::string_view name = address.substr(kScheme.size());
    const bool named = !name.empty() && std::ranges::all_of(name, [](char c) {
        return is_small_letter(c) || is_digit(c) || c == '-' || c == '/';
    });
    return named ? std::optional{name} : std::nullopt;
}

/// Of a file below the clinic's folder: "logo.png", "pictures/logo.png". Not of one elsewhere in the world.
bool is_picture_address(std::string_view address) {
    return address.ends_with(".png") && address.find(':') == address.npos;
}

}  // namespace

void TreeBuilder::enter(MD_SPANTYPE type, const void* detail) {
    if (type == MD_SPAN_STRONG) {
        ++strong_;
    } else if (type == MD_SPAN_IMG) {
        if (figures_++ > 0) return;
        const auto& image = *static_cast<const MD_SPAN_IMG_DETAIL*>(detail);
        figure_ = Figure{};
        figure_->address.assign(image.src.text, image.src.size);
        figure_->titled = image.title.size > 0;
    } else {
        spans_to_report_.push_back(type);
    }
}

void TreeBuilder::leave(MD_SPANTYPE type) {
    if (type == MD_SPAN_STRONG) --strong_;
    if (type == MD_SPAN_IMG && --figures_ == 0) end_figure();
    if (spans_to_report_.empty()) return;
    const std::size_t opens = markdown_.find_first_of("[<`*_", std::min(position_.read() + 1, markdown_.size()));
    report_spans(std::min(opens, markdown_.size() - 1) + 1);
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
        for (const char c : run.piece.text)
            if (c != ' ' || !figure_->words.ends_with(' ')) figure_->words += c;
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
        check_value(value.value, offset);
        return add({std::move(value), offset, false, false});
    }
    const bool box = point == kCheckBoxToken;
    Inline piece = inline_at(box ? Inline::Kind::check_box : Inline::Kind::write_in, offset);
    if (!box) piece.text.assign(static_cast<std::size_t>(point - kCheckBoxToken), '_');
    add({std::move(piece), offset, false, false});
}

/// A value that holds one of our tokens would not be mistaken for one here, but no font can print it.
void TreeBuilder::check_value(const PrintedValue& value, std::size_t offset) {
    const std::string text = value.text();
    const bool broken = first_invalid_utf8(text).has_value();
    if (!broken && std::ranges::none_of(code_points(text), [](char32_t point) { return point >= kFirstPieceToken; }))
        return;
    faults_.refuse({"value-character-not-allowed",
                    from_.span(offset - shift_, offset - shift_),
                    "This value holds a character that cannot be printed.",
                    "in this value",
                    {},
                    value.field});
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
        if (chunk[at] == '*' && (at == 0 || chunk[at - 1] != '*'))
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
    const auto name = figure_name(figure.address);
    const bool picture = is_picture_address(figure.address);
    if (figure.titled || (!name && !picture))
        return not_allowed(begin, end, "This is not the address of a figure or of a picture.",
                           "like ![What it shows](figure:name) or ![Our clinic](logo.png)");
    if (figure.holds_value)
        return not_allowed(begin, end, "The description of a figure cannot hold values.", "describe it without names");
    Inline piece = inline_at(Inline::Kind::figure, begin);
    if (name) piece.text = *name;
    piece.alternative = trimmed(figure.words);
    if (piece.alternative.empty())
        refuse("template-figure-without-description", begin, end,
               "A figure needs words that say what it shows, for those who cannot see it.", "no description");
    if (picture) name_picture(piece, figure.address, begin, end);
    add({std::move(piece), begin, false, false});
}

/// Looks for a picture among those of the clinic's folder. Nothing outside of it was read.
void TreeBuilder::name_picture(Inline& piece, std::string_view address, std::size_t begin, std::size_t end) {
    constexpr std::string_view kRule = "picture-not-printable";
    static const Pictures kNone;
    const Pictures& pictures = from_.pictures() == nullptr ? kNone : *from_.pictures();
    const auto found = pictures.find(address);
    piece.kind = Inline::Kind::picture;
    piece.text = address;
    if (found == pictures.end()) {
        std::vector<std::string> names;
        for (const auto& [name, file] : pictures) names.push_back(name);
        const auto near = nearest(address, names);
        return refuse(kRule, begin, end, fmt::format("The folder of templates holds no picture \"{}\".", address),
                      near ? fmt::format("the nearest is \"{}\"", *near) : "no such file below that folder");
    }
    const PictureFile& file = found->second;
    piece.picture = file.picture;
    if (!piece.picture)
        refuse(kRule, begin, end, fmt::format("The picture {} {}.", file.name, file.fault), "named here");
}

}  // namespace ventfolio
