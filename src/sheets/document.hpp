#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "sheets/picture.hpp"
#include "sheets/printed_value.hpp"

/// The document tree: what a sheet says, before anyone has decided where it stands on paper. Each value still knows the
/// field it comes from. It is made by markup/, judged by the checks in sheets/, hashed by record/, set by layout/.
namespace ventfolio {

/// Words in braces after a heading, a figure or a call-out: `{.act span=8 aside="Chest not moving"}`.
struct Attributes {
    std::vector<std::string> classes;                          ///< `.act`
    std::vector<std::pair<std::string, std::string>> options;  ///< `span=8`; the value may hold value tokens

    bool has(std::string_view name) const;
    std::optional<std::string_view> option(std::string_view name) const;
    friend bool operator==(const Attributes&, const Attributes&) = default;
};

/// Of what belongs to no element of a sheet's structure.
inline constexpr std::size_t kNoElement = static_cast<std::size_t>(-1);

struct Inline {
    enum class Kind {
        text,        ///< `text`
        value,       ///< `value`, from the profile or a calculator
        line_break,  ///< a hard break
        figure,      ///< `text` is the figure's name, `alternative` what it shows
        picture,     ///< a clinic's logo: `picture`, `alternative` says what it shows, `text` is its path
        check_box,   ///< drawn, empty
        write_in,    ///< a line to write on: three or more underscores; `text` holds them
    };
    Kind kind = Kind::text;
    std::string text;
    std::string alternative;
    bool strong = false;
    bool second = false;  ///< in the second language of a sheet that is printed in two
    PrintedValue value;
    std::shared_ptr<const Picture> picture;
    std::size_t line = 0;              ///< line of the template
    std::size_t element = kNoElement;  ///< that it belongs to; layout/ numbers them
    friend bool operator==(const Inline&, const Inline&) = default;
};
using Inlines = std::vector<Inline>;

/// Whether it is drawn, with words for those who do not see it: a figure or a picture.
bool is_shown(const Inline& piece);

enum class Alignment { automatic, left, center, right };

struct TableCell {
    Inlines inlines;
    friend bool operator==(const TableCell&, const TableCell&) = default;
};
struct TableRow {
    std::vector<TableCell> cells;
    std::size_t line = 0;
    friend bool operator==(const TableRow&, const TableRow&) = default;
};

struct Block {
    enum class Kind {
        heading,    ///< `level`, `inlines`, `attributes`; `aside` is set small at its right end
        paragraph,  ///< `inlines`
        list,       ///< `children` are items; `ordered`
        item,       ///< `children`; `task` items print a check box
        table,      ///< `head`, `rows`, `alignments`
        call_out,   ///< `label` is the marker in capitals (WARNING), `children`
        rule,       ///< a line across
    };
    Kind kind = Kind::paragraph;
    int level = 0;
    bool ordered = false;
    bool task = false;
    std::string label;
    Attributes attributes;
    Inlines inlines;
    Inlines aside;
    std::vector<Block> children;
    TableRow head;
    std::vector<TableRow> rows;
    std::vector<Alignment> alignments;
    std::size_t line = 0;              ///< line of the template
    std::size_t element = kNoElement;  ///< of the number or check box of an item; layout/ numbers them
    friend bool operator==(const Block&, const Block&) = default;
};

/// A finished sheet of one home.
struct Document {
    std::string name;             ///< "bedside-card/bed", "alarm-response/high-pressure"
    std::string sheet;            ///< "bedside-card"
    std::string place;            ///< "bed", or the leaf "high-pressure"; empty where the sheet has neither
    std::string language;         ///< BCP 47, "en"
    std::string second_language;  ///< of what is marked `second`; empty on a sheet in one language
    std::string template_file;
    std::vector<std::pair<std::string, std::string>> front_matter;
    Inlines title;
    std::vector<PrintedValue> identifiers;  ///< the two identifiers for the audience of the sheet
    bool not_yet_checked = false;           ///< each page says so, and that it may not be used
    std::vector<Block> blocks;

    std::optional<std::string_view> front(std::string_view key) const;
    friend bool operator==(const Document&, const Document&) = default;
};

/// The words of inlines as one line of text, for checks, codes and messages.
std::string plain_text(const Inlines& inlines);

}  // namespace ventfolio
