#pragma once

#include <cstddef>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "profile/finding.hpp"
#include "profile/place.hpp"
#include "sheets/picture.hpp"

namespace ventfolio {

/// Bytes [begin, end) of one of the files that a template is made of.
struct TemplateSpan {
    std::size_t file = 0;  ///< index into Template::files
    std::size_t begin = 0;
    std::size_t end = 0;
    friend bool operator==(const TemplateSpan&, const TemplateSpan&) = default;
};

/// A stretch of a template that is known before any home is. Text is cut at line ends, so that a piece has one line.
struct TemplatePiece {
    enum class Kind {
        words,      ///< printed as they stand in the file
        value,      ///< empty: the place of the value tag that follows it
        write_in,   ///< three or more underscores
        check_box,  ///< `[ ]` that does not open a list item
    };
    Kind kind = Kind::words;
    TemplateSpan span;
    std::string indent;    ///< blanks in front of a partial's tag, repeated before each of its lines
    std::size_t line = 0;  ///< in the template's own file; words of a partial have the line of the tag that names it
};

/// The tags of a template with what stands between them. Partials are already put in.
struct TemplateNode {
    enum class Kind { piece, value, section, inverted };
    Kind kind = Kind::piece;
    std::size_t piece = 0;  ///< index into Template::pieces
    std::string name;
    TemplateSpan span;  ///< of the name
    std::vector<TemplateNode> children;
};

struct FrontMatterLine {
    std::string key;
    std::string value;
    Place place;  ///< of the value, in the template's own file
};

/// A template that has been read once and can be rendered for many homes, also from several threads.
/// Line ends are LF in `files`, whatever they were on the disk.
struct Template {
    std::vector<SourceText> files;  ///< the template, then its partials in order of first use
    std::vector<FrontMatterLine> front_matter;
    std::vector<TemplatePiece> pieces;
    std::vector<TemplateNode> title;
    std::vector<TemplateNode> body;
    std::shared_ptr<const Pictures> pictures;  ///< that it may name; null: none
    std::vector<Finding> findings;             ///< with any of these it cannot be rendered

    const std::string& name() const { return files.front().name; }
    /// A key of the front matter as written; nothing where it does not stand there.
    const FrontMatterLine* front(std::string_view key) const;
};

/// Partials by the name a tag uses: `{{> rescue-steps}}`.
using Partials = std::map<std::string, SourceText, std::less<>>;

/// Reads front matter, tags and partials. All faults that do not depend on a home's data are in `findings`:
/// characters that may not stand in a template, tags that are not allowed or not closed, unknown or circular partials,
/// unknown keys of the front matter.
Template parse_template(SourceText source, const Partials& partials, std::shared_ptr<const Pictures> pictures = {});

}  // namespace ventfolio
