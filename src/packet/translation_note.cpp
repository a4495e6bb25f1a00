#include "packet/translation_note.hpp"

namespace ventfolio {

void add_translation_note(const WordBook& words, Furniture& furniture) {
    // Only a plain "yes" keeps the line away: a file that does not say has not been reviewed.
    if (words.find("reviewed") == "yes") return;
    Inline note;
    note.text = words.at("translation_unreviewed");
    furniture.foot.push_back({std::move(note)});
}

}  // namespace ventfolio
