#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "sheets/document.hpp"

namespace ventfolio::sheet_check {

/// Where a value stands in a text.
struct ValueSpan {
    std::size_t begin = 0;
    std::size_t end = 0;
    const PrintedValue* value = nullptr;
    std::size_t line = 0;  ///< of the template
};

/// A word of a text, for comparing: letters in capitals, digits with the signs inside a number.
struct Token {
    std::string folded;
    std::size_t begin = 0;  ///< in the text
    std::size_t end = 0;
    bool after_stop = false;  ///< a comma, colon, dash or bracket stands before it
};

/// Which words a text may hold, by their first two letters: a quick look before words are compared.
class FirstLetters {
  public:
    void add(std::string_view folded);
    /// A word of a phrase: "TUBE", "TUBE*" (any ending), "<NUMBER>", "Q<NUMBER>H".
    void add_start(std::string_view pattern);
    bool meets(FirstLetters other) const { return (bits_ & other.bits_) != 0; }

  private:
    std::uint64_t bits_ = 0;
};

/// Words that stand together: one paragraph, item, heading, call-out's line, or cell. The document must outlive it.
struct Passage {
    enum class Kind { title, heading, paragraph, item, cell, figure };
    Kind kind = Kind::paragraph;
    std::string text;
    std::vector<ValueSpan> values;
    std::vector<std::pair<std::size_t, std::size_t>> lines;  ///< offsets from which a line of the template goes on
    std::size_t section = 0;                                 ///< passages below one heading share it
    std::size_t group = 0;  ///< cells of one row share it; any other passage has its own
    std::size_t head = 0;   ///< group of the table's head; 0 for what is no cell of a body
};

/// The template's line at an offset of a passage.
std::size_t line_at(const Passage& passage, std::size_t offset);

/// A sentence of a passage.
struct Sentence {
    const Passage* passage = nullptr;
    std::string text;
    std::vector<ValueSpan> values;  ///< with offsets in `text`
    std::vector<Token> tokens;
    FirstLetters letters;  ///< of the tokens
    std::size_t line = 0;
    bool closed = false;  ///< ends with a full stop, a question mark or an exclamation mark
};

/// All that a document says, in the order of reading.
std::vector<Passage> passages_of(const Document& document);

/// The sentences of a passage. A full stop behind one of `abbreviations` ("DR") or inside a value ends none.
std::vector<Sentence> sentences_of(const Passage& passage, const std::vector<std::string>& abbreviations);

std::vector<Token> tokens_of(std::string_view text);

/// A sentence for a message: a value that may not hang on the wall shows as the name of its field in braces.
std::string quoted(const Sentence& sentence);

/// The value that stands at this offset, or null.
const PrintedValue* value_at(const std::vector<ValueSpan>& values, std::size_t offset);

}  // namespace ventfolio::sheet_check
