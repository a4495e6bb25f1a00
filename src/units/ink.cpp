#include "units/ink.hpp"

#include <utf8proc.h>
#include <algorithm>

#include "units/text.hpp"

namespace ventfolio {
namespace {

bool prints(char32_t point) {
    switch (utf8proc_category(static_cast<utf8proc_int32_t>(point))) {
        case UTF8PROC_CATEGORY_ZS:
        case UTF8PROC_CATEGORY_ZL:
        case UTF8PROC_CATEGORY_ZP:
        case UTF8PROC_CATEGORY_CC:
        case UTF8PROC_CATEGORY_CF:
        case UTF8PROC_CATEGORY_MN:
        case UTF8PROC_CATEGORY_ME:
        case UTF8PROC_CATEGORY_CN:
            return false;
        default:
            return true;
    }
}

}  // namespace

bool has_ink(std::string_view text) { return std::ranges::any_of(code_points(text), prints); }

}  // namespace ventfolio
