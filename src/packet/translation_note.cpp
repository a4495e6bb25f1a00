#include "packet/translation_note.hpp"

#include <utility>

namespace ventfolio {

void add_translation_note(const WordBook& words, Furniture& furniture) {
    // Only a plain "yes" keeps the line away: a file that does not say has not been reviewed.
    if (words.find("reviewed") == "yes") return;
    Inline note;
    note.text = words.at("translation_unreviewed");
    // It goes on behind the last line: a landscape footer has room for both.
    if (furniture.foot.empty()) furniture.foot.emplace_back();
    Inlines& last = furniture.foot.back();
    if (!last.empty()) note.text.insert(0, " ");
    last.push_back(std::move(note));
}

}  // namespace ventfolio
