#include "layout/scripts.hpp"

#include <fmt/format.h>
#include <harfbuzz/hb.h>
#include <utf8proc.h>
#include <algorithm>
#include <array>

namespace ventfolio {
namespace {

/// Scripts whose letters join, stack or change places (Unicode Standard, chapters 12 to 16).
constexpr std::array kShaped{HB_SCRIPT_DEVANAGARI, HB_SCRIPT_BENGALI, HB_SCRIPT_GURMUKHI, HB_SCRIPT_GUJARATI,
                             HB_SCRIPT_ORIYA,      HB_SCRIPT_TAMIL,   HB_SCRIPT_TELUGU,   HB_SCRIPT_KANNADA,
                             HB_SCRIPT_MALAYALAM,  HB_SCRIPT_SINHALA, HB_SCRIPT_THAI,     HB_SCRIPT_LAO,
                             HB_SCRIPT_TIBETAN,    HB_SCRIPT_MYANMAR, HB_SCRIPT_KHMER,    HB_SCRIPT_MONGOLIAN};

std::string name_of(hb_script_t script) {
    std::array<char, 5> tag{};
    hb_tag_to_string(hb_script_to_iso15924_tag(script), tag.data());
    return tag.data();
}

}  // namespace

std::string why_not_set(char32_t letter) {
    const hb_script_t script = hb_unicode_script(hb_unicode_funcs_get_default(), letter);
    if (hb_script_get_horizontal_direction(script) == HB_DIRECTION_RTL)
        return fmt::format("runs from right to left (script {})", name_of(script));
    if (std::ranges::find(kShaped, script) != kShaped.end())
        return fmt::format("changes its shape beside other letters (script {})", name_of(script));
    return {};
}

const char* kind_of(char32_t letter) {
    switch (*utf8proc_category_string(static_cast<utf8proc_int32_t>(letter))) {
        case 'L':
            return "letter";
        case 'M':
            return "mark";
        case 'N':
            return "number";
        case 'Z':
            return "blank";
        default:
            return "sign";
    }
}

}  // namespace ventfolio
