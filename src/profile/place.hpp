#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace ventfolio {

/// Where something stands in a source text. Line and column count from 1, the column in display cells; begin and end
/// are byte offsets. A default Place points nowhere.
struct Place {
    std::size_t line = 0;
    std::size_t column = 0;
    std::size_t begin = 0;
    std::size_t end = 0;

    bool known() const { return line > 0; }
    friend auto operator<=>(const Place&, const Place&) = default;
};

/// A source text and the name under which messages cite it.
struct SourceText {
    std::string name;
    std::string text;

    /// The place of the bytes [begin, end).
    Place place(std::size_t begin, std::size_t end) const;
    /// One line without its line end; counts from 1.
    std::string_view line(std::size_t number) const;
};

}  // namespace ventfolio
