#pragma once

#include <memory>
#include <string>
#include <vector>

#include "markup/faults.hpp"
#include "markup/markdown_source.hpp"
#include "markup/scope.hpp"
#include "sheets/printed_value.hpp"

namespace ventfolio {

/// A template's Markdown for one home, in which every value is one token (see markdown_source.hpp), with the way back
/// to the template's files.
class Expansion {
  public:
    /// Expands nodes whose names have been checked. Adds a fault where there are more values than tokens.
    Expansion(const Template& from, const std::vector<TemplateNode>& nodes, std::vector<const TemplateData*> data,
              Faults& faults);

    const std::string& markdown() const { return markdown_; }
    /// The value of a token.
    const PrintedValue& value(char32_t token) const { return *values_[token - kFirstValueToken]; }
    /// The pictures that the template may name; may be null.
    const Pictures* pictures() const { return pictures_.get(); }
    /// Where the bytes [begin, end) of the Markdown stand in the template.
    TemplateSpan span(std::size_t begin, std::size_t end) const;
    /// The template's line of a byte of the Markdown.
    std::size_t line(std::size_t offset) const;

  private:
    struct Segment {
        std::size_t begin;  ///< in the Markdown
        TemplateSpan span;
        std::size_t line;
        bool words;  ///< byte for byte as in the file
    };

    const Segment& segment(std::size_t offset) const;
    void add(const Template& from, const TemplatePiece& piece);

    std::string markdown_;
    std::vector<Segment> segments_;
    std::vector<const PrintedValue*> values_;
    std::shared_ptr<const Pictures> pictures_;
};

}  // namespace ventfolio
