#include "pdf/content.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <optional>
#include <stdexcept>
#include <string_view>

#include "layout/fonts.hpp"
#include "pdf/number.hpp"

namespace ventfolio {
namespace {

/// The levels of grey of ISO 32000-1, 8.6.4.2. Grey is #595959.
std::string_view level(Ink ink) {
    switch (ink) {
        case Ink::black:
            return "0";
        case Ink::white:
            return "1";
        case Ink::grey:
            return "0.35";
    }
    throw std::logic_error{"an ink without a level"};
}

/// How two strokes meet (ISO 32000-1, 8.4.3.4).
enum class Join { miter, round };

/// Whether a width asks for a stroke; 0 means none.
bool stroked_with(double width) {
    if (!(width >= 0)) throw std::logic_error{fmt::format("{} is no width of a line", width)};
    return width > 0;
}

/// Writes one page. It remembers the graphics state, so that only what changes is written.
class ContentWriter {
  public:
    ContentWriter(double page_height, const FaceNames& faces, const PictureNames& pictures)
        : page_height_{page_height}, faces_{faces}, pictures_{pictures} {}

    void draw(const PlacedItem& item) {
        mark(item.origin);
        switch (item.kind) {
            case PlacedItem::Kind::text:
                return draw(item.text);
            case PlacedItem::Kind::box:
                return draw(item.box);
            case PlacedItem::Kind::rule:
                return draw(item.rule);
            case PlacedItem::Kind::path:
                return draw(item.path);
            case PlacedItem::Kind::picture:
                return draw(item.picture);
        }
    }

    PageContent take() {
        end_mark();
        return {std::move(out_), std::move(marked_)};
    }

  private:
    void mark(const Origin& origin);
    void end_mark();
    bool parts_words(const TextRun& run) const;
    void draw(const TextRun& run);
    void draw(const Box& box);
    void draw(const Rule& rule);
    void draw(const Path& path);
    void draw(const PlacedPicture& placed);

    void number(double value) {
        append_number(out_, value);
        out_ += ' ';
    }
    void point(Point at) {
        number(at.x);
        number(page_height_ - at.y);
    }
    void fill_with(Ink ink);
    void stroke_with(Ink ink, double width, Join join);
    void select(Face face, double size);
    void paint(bool filled, bool stroked);
    void letter(char32_t code_point);

    std::string out_;
    std::vector<std::size_t> marked_;
    std::optional<std::size_t> element_;  ///< of the stretch that is open
    std::string_view artifact_;           ///< how it began, if it has no element
    struct Last {
        std::size_t element = Origin::kNoElement;
        Point end;
        bool blank = false;  ///< ends with one
    };
    Last last_;  ///< text of an element
    double page_height_;
    const FaceNames& faces_;
    const PictureNames& pictures_;

    // What a page starts with (ISO 32000-1, table 52).
    Ink fill_ = Ink::black;
    Ink stroke_ = Ink::black;
    double width_ = 1;
    Join join_ = Join::miter;
    Face face_ = Face::regular;
    double size_ = 0;
};

void ContentWriter::end_mark() {
    if (element_) out_ += "EMC\n";
    element_.reset();
}

/// What stands on each page is said to do so (ISO 32000-1, 14.8.2.2.2): some readers let people hear it on demand.
std::string_view artifact(const std::string& role) {
    if (role == "header") return "/Artifact <</Type /Pagination /Subtype /Header>> BDC\n";
    if (role == "footer" || role == "code") return "/Artifact <</Type /Pagination /Subtype /Footer>> BDC\n";
    return "/Artifact BMC\n";
}

void ContentWriter::mark(const Origin& origin) {
    const bool is_artifact = origin.element == Origin::kNoElement;
    const std::string_view begin = is_artifact ? artifact(origin.role) : "";
    if (element_ == origin.element && artifact_ == begin) return;
    end_mark();
    element_ = origin.element;
    artifact_ = begin;
    if (is_artifact) {
        out_ += begin;
        return;
    }
    out_ += fmt::format("/Span <</MCID {}>> BDC\n", marked_.size());
    marked_.push_back(origin.element);
}

void ContentWriter::fill_with(Ink ink) {
    if (ink == fill_) return;
    fill_ = ink;
    out_ += fmt::format("{} g\n", level(ink));
}

void ContentWriter::stroke_with(Ink ink, double width, Join join) {
    if (ink != stroke_) {
        stroke_ = ink;
        out_ += fmt::format("{} G\n", level(ink));
    }
    if (width != width_) {
        width_ = width;
        number(std::max(width, 0.01));  // a width of 0 would mean as thin as the printer can
        out_ += "w\n";
    }
    if (join != join_) {
        join_ = join;
        out_ += join == Join::round ? "1 j\n" : "0 j\n";
    }
}

void ContentWriter::select(Face face, double size) {
    if (face == face_ && size == size_) return;
    face_ = face;
    size_ = size;
    out_ += fmt::format("/{} ", face == Face::regular ? faces_.regular : faces_.bold);
    number(size);
    out_ += "Tf\n";
}

void ContentWriter::paint(bool filled, bool stroked) {
    if (filled && stroked) out_ += "B\n";
    if (filled && !stroked) out_ += "f\n";
    if (!filled && stroked) out_ += "S\n";
}

void ContentWriter::letter(char32_t code_point) {
    for (const char32_t byte : {code_point >> 8U & 0xFFU, code_point & 0xFFU}) {
        if (byte == '\r') {  // a bare one would be read as a line feed
            out_ += "\\r";
            continue;
        }
        if (byte == '(' || byte == ')' || byte == '\\') out_ += '\\';
        out_ += static_cast<char>(byte);
    }
}

bool is_blank(char32_t letter) { return letter == U' ' || letter == U'\u00A0'; }

/// Whether this text and the last one of its element are words apart. On paper a line end or a gap shows that; whoever
/// hears the sheet, or copies from it, needs a blank.
bool ContentWriter::parts_words(const TextRun& run) const {
    constexpr double kGap = 0.1;  // of the type size: less is a kern
    if (!element_ || *element_ == Origin::kNoElement || last_.element != *element_) return false;
    const bool goes_on = run.origin.y == last_.end.y && std::abs(run.origin.x - last_.end.x) < kGap * run.size;
    return !goes_on && !last_.blank && !is_blank(run.text.front());
}

void ContentWriter::draw(const TextRun& run) {
    if (run.text.empty()) return;
    if (!run.kerns.empty() && run.kerns.size() != run.text.size())
        throw std::logic_error{"a text and its kerns differ in length"};
    if (!(run.size > 0)) throw std::logic_error{"a text without a size would not be seen"};
    fill_with(run.ink);
    out_ += "BT\n";
    select(run.face, run.size);
    point(run.origin);
    out_ += "Td\n[(";
    if (parts_words(run)) {
        letter(U' ');
        out_ += ')';
        append_number(out_, FontMetrics::of(run.face).advance(U" ").width);  // back to where the text begins
        out_ += '(';
    }
    for (std::size_t at = 0; at < run.text.size(); ++at) {
        letter(run.text[at]);
        const bool last = at + 1 == run.text.size();
        if (last || run.kerns.empty() || run.kerns[at] == 0) continue;
        out_ += ')';
        append_number(out_, -run.kerns[at]);
        out_ += '(';
    }
    out_ += ")] TJ\nET\n";
    last_ = {
        element_.value_or(Origin::kNoElement), {run.origin.x + run.width, run.origin.y}, is_blank(run.text.back())};
}

void ContentWriter::draw(const Box& box) {
    const bool stroked = stroked_with(box.stroke);
    if (!box.filled && !stroked) return;
    if (box.filled) fill_with(box.ink);
    if (stroked) stroke_with(box.ink, box.stroke, Join::miter);
    point({box.corner.x, box.corner.y + box.height});
    number(box.width);
    number(box.height);
    out_ += "re ";
    paint(box.filled, stroked);
}

void ContentWriter::draw(const Rule& rule) {
    if (!stroked_with(rule.stroke)) throw std::logic_error{"a rule without a width would not be seen"};
    stroke_with(rule.ink, rule.stroke, Join::miter);
    point(rule.from);
    out_ += "m ";
    point(rule.to);
    out_ += "l S\n";
}

void ContentWriter::draw(const Path& path) {
    const bool stroked = stroked_with(path.stroke);
    if (path.segments.empty() || (!path.filled && !stroked)) return;
    if (path.segments.front().kind != Path::Segment::Kind::move) throw std::logic_error{"a path that starts nowhere"};
    if (path.filled) fill_with(path.ink);
    if (stroked) stroke_with(path.ink, path.stroke, Join::round);
    for (const Path::Segment& segment : path.segments) {
        switch (segment.kind) {
            case Path::Segment::Kind::move:
                point(segment.a);
                out_ += "m\n";
                break;
            case Path::Segment::Kind::line:
                point(segment.a);
                out_ += "l\n";
                break;
            case Path::Segment::Kind::curve:
                point(segment.a);
                point(segment.b);
                point(segment.c);
                out_ += "c\n";
                break;
            case Path::Segment::Kind::close:
                out_ += "h\n";
                break;
        }
    }
    paint(path.filled, stroked);
}

/// A picture fills the unit square, which is stretched over its area (ISO 32000-1, 8.9.5).
void ContentWriter::draw(const PlacedPicture& placed) {
    const auto name = pictures_.find(placed.picture.get());
    if (name == pictures_.end() || !(placed.width > 0) || !(placed.height > 0))
        throw std::logic_error{"a picture that would not be seen"};
    out_ += "q ";
    number(placed.width);
    out_ += "0 0 ";
    number(placed.height);
    point({placed.corner.x, placed.corner.y + placed.height});
    out_ += fmt::format("cm /{} Do Q\n", name->second);
}

}  // namespace

PageContent page_content(const PlacedPage& page, const FaceNames& faces, const PictureNames& pictures) {
    ContentWriter writer{page.height, faces, pictures};
    for (const PlacedItem& item : page.items) writer.draw(item);
    return writer.take();
}

}  // namespace ventfolio
