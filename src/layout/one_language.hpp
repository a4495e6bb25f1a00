#pragma once

#include <string>
#include <string_view>

#include "sheets/document.hpp"

/// Taking one language out of words that say everything twice: see sheets/two_languages.hpp.
namespace ventfolio {

enum class Reader {
    of_both,
    of_first,
    of_second,
};

/// What a reader of one language needs of a passage. What both share stays; a passage that says nothing in the second
/// language is shared whole.
///
/// Example: "Hose off." over "Quite la manguera." gives the one or the other.
Inlines for_reader(const Inlines& both, Reader reader);

/// The same of an option of a heading, whose words stand beside one another: "on page 1 / en la página 1".
std::string_view for_reader(std::string_view option, Reader reader);

}  // namespace ventfolio
