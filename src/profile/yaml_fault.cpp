#include "profile/yaml_fault.hpp"

#include <array>

namespace ventfolio {
namespace {

struct Row {
    std::string_view begins;  ///< first words of the library's message
    std::string_view rule;
    std::string_view message;
    std::string_view label;
    std::string_view to_do;
};

constexpr std::string_view kSyntax = "yaml-unreadable";

// The messages of yaml-cpp 0.7 (its header exceptions.h).
constexpr std::array kRows{
    Row{"illegal map value", kSyntax, "A colon stands where no new key can begin.", "this colon is not expected",
        "Check that the line begins in the same column as the keys around it and that the line above has its colon; "
        "put a text that holds a colon and a blank in quotation marks."},
    Row{"end of map not found", kSyntax, "This line does not fit under the lines above it.", "does not fit here",
        "Let all keys of one group begin in the same column, and write nothing after a closing quotation mark. A group "
        "that has none behind its colon has no keys inside: delete them."},
    Row{"end of sequence not found", kSyntax, "This line does not fit into the list above it.", "does not fit here",
        "Let all dashes of one list begin in the same column."},
    Row{"end of map flow not found", kSyntax, "A brace { is not closed, or a comma is missing.", "expected , or }",
        "Write it like {from: 12 cmH2O, to: 16 cmH2O}."},
    Row{"end of sequence flow not found", kSyntax, "A bracket [ is not closed, or a comma is missing.",
        "expected , or ]", "Write it like [first, second]."},
    Row{"illegal flow end", kSyntax, "A closing bracket or brace stands here, but none was opened.", "not opened",
        "Take it out, or put the text in quotation marks."},
    Row{"illegal block entry", kSyntax, "A list cannot begin on the line of its key.", "this dash is not expected",
        "Begin a new line before each dash; put a text that begins with a dash in quotation marks."},
    Row{"illegal map key", kSyntax, "A question mark stands where a value is due.", "not expected",
        "Put a text that begins with a question mark in quotation marks."},
    Row{"unknown token", kSyntax, "A value cannot begin with this character.", "cannot begin a value",
        "Put the text in quotation marks."},
    Row{"illegal EOF in scalar", "quotation-mark-not-closed", "The file ends inside a text in quotation marks.",
        "the file ends here", "Close the text with the mark that opened it."},
    Row{"illegal document indicator in scalar", "quotation-mark-not-closed",
        "Three dashes or dots stand inside a text in quotation marks.", "inside a quoted text",
        "Close the text with the mark that opened it."},
    Row{"unknown escape character", kSyntax,
        "After a backslash in double quotation marks stands a letter without meaning.", "unknown after a backslash",
        "Use single quotation marks, or write the backslash twice."},
    Row{"bad character found while scanning hex number", kSyntax,
        "The number of a character after a backslash is not complete.", "not a hexadecimal digit",
        "Write the character itself, or use single quotation marks."},
    Row{"invalid unicode", kSyntax, "The number after a backslash is not the number of a character.",
        "no such character", "Write the character itself."},
    Row{"cannot set zero indentation", kSyntax, "A block of text cannot have an indentation of 0.", "not possible",
        "Write | alone."},
    Row{"unexpected character in block scalar", kSyntax, "After | or > the line must end.", "not expected",
        "Begin the text on the next line; put a text that begins with | or > in quotation marks."},
    Row{"the referenced anchor", "alias-in-file", "The file repeats a part by a short name (*name).", "an alias",
        "Write the part out; put a text that begins with * in quotation marks."},
    Row{"alias not found", "alias-in-file", "A value begins with *.", "an alias",
        "Put a text that begins with * in quotation marks."},
    Row{"illegal character found while scanning alias", "alias-in-file", "A value begins with *.", "an alias",
        "Put a text that begins with * in quotation marks."},
    Row{"aliases can't have any content", "alias-in-file", "A value begins with *.", "an alias",
        "Put a text that begins with * in quotation marks."},
    Row{"anchor not found", "anchor-in-file", "A value begins with &.", "an anchor",
        "Put a text that begins with & in quotation marks."},
    Row{"illegal character found while scanning anchor", "anchor-in-file", "A value begins with &.", "an anchor",
        "Put a text that begins with & in quotation marks."},
    Row{"cannot assign multiple anchors", "anchor-in-file", "A value begins with &.", "an anchor",
        "Put a text that begins with & in quotation marks."},
    Row{"cannot assign the same alias", "anchor-in-file", "A value begins with &.", "an anchor",
        "Put a text that begins with & in quotation marks."},
    Row{"cannot assign multiple tags", "tag-in-file", "A value begins with !.", "a tag",
        "Put a text that begins with ! in quotation marks."},
    Row{"illegal character found while scanning tag", "tag-in-file", "A value begins with !.", "a tag",
        "Put a text that begins with ! in quotation marks."},
    Row{"tag handle with no suffix", "tag-in-file", "A value begins with !.", "a tag",
        "Put a text that begins with ! in quotation marks."},
    Row{"end of verbatim tag", "tag-in-file", "A value begins with !.", "a tag",
        "Put a text that begins with ! in quotation marks."},
    Row{"YAML", kSyntax, "The line %YAML at the top is not one that can be read.", "not readable",
        "Take the line out."},
    Row{"bad YAML version", kSyntax, "The line %YAML at the top is not one that can be read.", "not readable",
        "Take the line out."},
    Row{"repeated YAML", kSyntax, "The line %YAML stands twice.", "once more", "Take the line out."},
    Row{"TAG", "tag-in-file", "The file declares tags.", "a tag", "Take the line out."},
    Row{"repeated TAG", "tag-in-file", "The file declares tags.", "a tag", "Take the line out."},
    Row{"bad file", "nested-too-deep", "Groups are nested more than 32 deep.", "too deep", "Check the brackets here."},
};

}  // namespace

YamlFault explained(std::string_view library_message) {
    for (const Row& row : kRows)
        if (library_message.starts_with(row.begins))
            return {std::string{row.rule}, std::string{row.message}, std::string{row.label}, std::string{row.to_do}};
    return {std::string{kSyntax}, "The file cannot be read from here on.", "not readable",
            "Check the indentation, the colons and the quotation marks of this line and of the one above."};
}

}  // namespace ventfolio
