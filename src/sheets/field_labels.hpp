#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "sheets/word_book.hpp"

namespace ventfolio {

/// What a field is called where a change of it is told, from `fields` and `fields_before` of the words: "Hospital,
/// phone" for "contacts.hospital.phone", "Breaths per minute" for "prescriptions.0.rate". Numbers in the path do not
/// count. Groups and lists have their names too. Throws MissingWord.
std::string field_label(const WordBook& words, std::string_view path);

/// The word before the name of an item of a list ("slot"); nothing where its own name is enough.
std::optional<std::string_view> item_word(const WordBook& words, std::string_view list);

/// The key of a section that counts for a path: the longest ending that has an entry. "fields.expected.tidal_volume"
/// for "prescriptions.1.expected.tidal_volume".
std::optional<std::string> word_key(const WordBook& words, std::string_view section, std::string_view path);

}  // namespace ventfolio
