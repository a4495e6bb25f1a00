#include "profile/place_finder.hpp"

#include <algorithm>

#include "units/text.hpp"

namespace ventfolio {

Place PlaceFinder::place(std::size_t begin, std::size_t end) {
    const std::string_view text = source_.text;
    begin = std::min(begin, text.size());
    end = std::clamp(end, begin, text.size());
    if (begin < last_.begin) last_ = {1, 1, 0, 0};
    std::string_view between = text.substr(last_.begin, begin - last_.begin);
    const auto newline = between.rfind('\n');
    if (newline != std::string_view::npos) {
        last_.line += static_cast<std::size_t>(std::ranges::count(between, '\n'));
        last_.column = 1;
        between.remove_prefix(newline + 1);
    }
    last_.column += display_cells(between);
    last_.begin = begin;
    return {last_.line, last_.column, begin, end};
}

}  // namespace ventfolio
