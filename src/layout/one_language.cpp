#include "layout/one_language.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

constexpr std::string_view kBeside = " / ";

bool is_join(const Inline& piece) {
    return piece.kind == Inline::Kind::line_break || (piece.kind == Inline::Kind::text && piece.text == kBeside);
}

Inlines of_first(const Inlines& both) {
    Inlines words;
    for (std::size_t at = 0; at < both.size(); ++at) {
        const bool joins = is_join(both[at]) && at + 1 < both.size() && both[at + 1].second;
        if (!both[at].second && !joins) words.push_back(both[at]);
    }
    return words;
}

Inlines of_second(const Inlines& both) {
    Inlines words;
    bool apart = false;
    for (const Inline& piece : both) {
        if (piece.second) {
            if (apart && !words.empty()) {
                Inline blank;
                blank.text = " ";
                blank.second = true;
                words.push_back(std::move(blank));
            }
            words.push_back(piece);
        }
        apart = !piece.second;
    }
    return words;
}

}  // namespace

Inlines for_reader(const Inlines& both, Reader reader) {
    if (reader == Reader::of_both || std::ranges::none_of(both, &Inline::second)) return both;
    return reader == Reader::of_first ? of_first(both) : of_second(both);
}

std::string_view for_reader(std::string_view option, Reader reader) {
    const std::size_t join = option.find(kBeside);
    if (reader == Reader::of_both || join == std::string_view::npos) return option;
    return reader == Reader::of_first ? option.substr(0, join) : option.substr(join + kBeside.size());
}

}  // namespace ventfolio
