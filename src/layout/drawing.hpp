#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "sheets/picture.hpp"

/// The placed drawing: every letter, line and box of every page at its final place. Coordinates are points (1/72 inch)
/// from the top left corner of the paper, y downwards, snapped to 1/100 pt. Nothing here knows the profile or PDF.
namespace ventfolio {

enum class Face { regular, bold };
enum class Ink { black, white, grey };  ///< grey is for thin rules only, never for text

struct Point {
    double x = 0;
    double y = 0;
};

/// One line, or part of a line, of text in one face and size.
struct TextRun {
    Point origin;     ///< left end of the baseline
    double size = 0;  ///< pt
    Face face = Face::regular;
    Ink ink = Ink::black;
    std::u32string text;        ///< normal form C, each code point in the face, none above U+FFFF
    std::vector<double> kerns;  ///< added after each code point, in 1/1000 of the size; empty: none
    double width = 0;           ///< advance, kerns included
    double ascent = 0;          ///< height above the baseline that belongs to the run's line
    double descent = 0;         ///< depth below the baseline
};

struct Box {
    Point corner;  ///< top left
    double width = 0;
    double height = 0;
    double stroke = 0;  ///< line width; 0: no outline
    bool filled = false;
    Ink ink = Ink::black;
};

struct Rule {
    Point from;
    Point to;
    double stroke = 0;
    Ink ink = Ink::black;
};

/// A drawn sign: arrow, tick, pictogram.
struct Path {
    struct Segment {
        enum class Kind { move, line, curve, close };
        Kind kind = Kind::move;
        Point a;  ///< end point, or first control point of a curve
        Point b;  ///< second control point
        Point c;  ///< end point of a curve
    };
    std::vector<Segment> segments;
    double stroke = 0;
    bool filled = false;
    Ink ink = Ink::black;
};

/// Dots stretched over an area of the page. All pages share them.
struct PlacedPicture {
    Point corner;  ///< top left
    double width = 0;
    double height = 0;
    std::shared_ptr<const Picture> picture;
};

/// What an item belongs to. Accessibility tags and messages are written from it.
struct Origin {
    static constexpr std::size_t kFurniture = static_cast<std::size_t>(-1);
    static constexpr std::size_t kNoElement = static_cast<std::size_t>(-1);
    std::size_t node = kFurniture;     ///< number of the block in reading order; furniture: header, footer, ornament
    std::string role;                  ///< "heading", "paragraph", "table cell", "figure", "footer" …
    std::string field;                 ///< of a value; empty for the template's own words
    std::size_t element = kNoElement;  ///< of the sheet's structure; none: furniture, ornament, a head set again
};

struct PlacedItem {
    enum class Kind { text, box, rule, path, picture };
    Kind kind = Kind::text;
    TextRun text;
    Box box;
    Rule rule;
    Path path;
    PlacedPicture picture;
    Origin origin;
};

struct PlacedPage {
    double width = 0;
    double height = 0;
    double margin_left = 0;
    double margin_top = 0;
    double margin_right = 0;
    double margin_bottom = 0;
    std::vector<PlacedItem> items;  ///< in reading order; furniture first
};

/// A part of what a sheet says, as someone hears it who cannot see the page (ISO 32000-1, 14.8.4).
struct StructureElement {
    enum class Kind {
        sheet,    ///< the whole; always the first
        heading,  ///< `level`
        paragraph,
        list,
        item,
        label,  ///< number or check box of an item
        body,   ///< the rest of an item
        table,
        row,
        column_head,  ///< cell that heads a column
        row_head,     ///< cell that heads a row
        cell,
        note,    ///< a call-out
        figure,  ///< `instead` says what it shows
        span,    ///< a stretch of words beside a figure or a check box
    };
    Kind kind = Kind::sheet;
    std::size_t parent = 0;  ///< index; always a smaller one
    int level = 0;
    std::string instead;     ///< words for what is drawn: what a figure shows, the letter that a check box stands for
    std::string language{};  ///< BCP 47; empty: that of what it stands in
    bool numbered = false;   ///< of a list: the labels of its items count
};

/// The pages of one sheet.
struct PlacedSheet {
    std::string name;      ///< "bedside-card/bed"
    std::string title;     ///< for bookmarks, in the sheet's language
    std::string language;  ///< BCP 47
    std::vector<PlacedPage> pages;
    std::vector<StructureElement> structure;  ///< in reading order
};

}  // namespace ventfolio
