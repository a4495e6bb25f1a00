#include "trial_furniture.hpp"

namespace ventfolio::testing {
namespace {

Inlines plain(std::string text) {
    Inline piece;
    piece.text = std::move(text);
    return {piece};
}

}  // namespace

Furniture trial_furniture() {
    Furniture one;
    one.who = plain("Somebody");
    one.identifier = plain("Record X-1");
    one.page_of = "Page {page} of {pages}";
    one.revision = plain("R1");
    one.foot = {plain("The footer.")};
    one.code = "ABC-DEF";
    return one;
}

}  // namespace ventfolio::testing
