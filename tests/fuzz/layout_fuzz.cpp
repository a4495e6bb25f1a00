#include <algorithm>
#include <cstddef>
#include <cstdint>

#include "document_from_bytes.hpp"
#include "placed_sheet.hpp"
#include "promise.hpp"
#include "units/text.hpp"

namespace ventfolio::fuzz {
namespace {

/// Everything that is set on a sheet, without blanks: a long word may be broken.
std::string letters_of(const PlacedSheet& sheet) {
    std::string letters;
    for (const PlacedPage& page : sheet.pages)
        for (const PlacedItem& item : page.items)
            if (item.kind == PlacedItem::Kind::text)
                for (const char32_t letter : item.text.text)
                    if (letter != U' ' && letter != U'\u00A0') letters += utf8(letter);
    return letters;
}

}  // namespace
}  // namespace ventfolio::fuzz

/// A document tree made from bytes, set on pages: what is not refused keeps to its place, and every word is there.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace ventfolio;
    const fuzz::MadeDocument made = fuzz::document_from({data, size});
    const auto sheet = fuzz::check_placed(made.document, made.furniture, made.setup);
    if (!sheet) return 0;
    const std::string letters = fuzz::letters_of(*sheet);
    for (const std::string& word : made.words)
        fuzz::promise(letters.find(word) != std::string::npos, "every word of a document is placed",
                      word + " of\n" + fuzz::shown(made.document.blocks));
    return 0;
}
