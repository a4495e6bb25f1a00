#pragma once

#include <md4c.h>
#include <exception>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "markup/attributes.hpp"
#include "markup/expansion.hpp"
#include "markup/inline_runs.hpp"
#include "markup/markdown_position.hpp"

namespace ventfolio {

/// Makes blocks from the events of the Markdown parser.
///
/// The parser tells no positions, but every text it hands out points into its input; from there the expansion knows the
/// way to the template. What has no text (a line across, an empty row) stands in the next line that is not blank.
class TreeBuilder {
  public:
    /// `prefix` is put before the Markdown: "# " makes it one heading, whatever the words look like.
    TreeBuilder(const Expansion& from, std::string_view prefix, Faults& faults);
    TreeBuilder(const TreeBuilder&) = delete;
    TreeBuilder& operator=(const TreeBuilder&) = delete;

    std::vector<Block> build();

  private:
    struct Frame {
        enum class Role { document, call_out, list, item, words, table, row, cell, skipped };
        Role role = Role::skipped;
        Block block;
        InlineRuns runs;
        bool implicit = false;  ///< words of a list item that the parser gives no paragraph of their own
        std::size_t start = 0;  ///< a place in the first line
        Attributes next;        ///< for the block that follows
        std::optional<std::size_t> next_at;
    };
    struct Figure {
        std::string address;
        bool titled = false;
        std::string words;
        std::optional<std::size_t> first;
        bool holds_value = false;
    };

    // Events of the parser.
    void enter(MD_BLOCKTYPE type, const void* detail);
    void leave(MD_BLOCKTYPE type);
    void enter(MD_SPANTYPE type, const void* detail);
    void leave(MD_SPANTYPE type);
    void text(MD_TEXTTYPE type, const char* words, std::size_t size);
    template <typename Call>
    static int guarded(void* self, Call call);

    // Blocks.
    void push(Frame::Role role, Block::Kind kind);
    void enter_list(bool ordered, unsigned start);
    void enter_item(const MD_BLOCK_LI_DETAIL& item);
    void enter_table(unsigned columns);
    void enter_cell(const MD_BLOCK_TD_DETAIL& cell, bool head);
    void add_rule();
    void close_implicit();
    void leave_words();
    void leave_call_out();
    void leave_row();
    void leave_block();
    void append(Block block);
    void keep_for_next(AttributeGroup group, std::size_t at);
    bool take_marker(Frame& frame);
    void take_group(Frame& frame);
    void check_heading(const Frame& frame);
    void check_next_used(const Frame& frame);

    // Words.
    void words(std::size_t offset, std::string_view chunk);
    void entity(std::size_t offset, std::string_view name);
    void token(std::size_t offset, char32_t point);
    void check_value(const PrintedValue& value, std::size_t offset);
    void add(InlineRun run);
    void check_signs(std::size_t offset, std::string_view chunk);
    void report_spans(std::size_t offset);
    void end_figure();
    void name_picture(Inline& piece, std::string_view address, std::size_t begin, std::size_t end);
    Inline inline_at(Inline::Kind kind, std::size_t offset) const;

    void refuse(std::string_view rule, std::size_t begin, std::size_t end, std::string message, std::string label);
    void not_allowed(std::size_t begin, std::size_t end, std::string message, std::string label);
    std::size_t template_line(std::size_t offset) const;
    void check_nothing_lost();

    const Expansion& from_;
    Faults& faults_;
    std::size_t shift_;
    std::string markdown_;
    MarkdownPosition position_;
    std::vector<Frame> frames_;
    std::vector<MD_SPANTYPE> spans_to_report_;
    std::optional<Figure> figure_;
    std::vector<bool> covered_;
    int strong_ = 0;
    int figures_ = 0;
    bool in_head_ = false;
    bool too_large_ = false;
    std::exception_ptr error_;
};

}  // namespace ventfolio
