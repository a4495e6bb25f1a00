#include "sheets/printed_numbers.hpp"

#include <algorithm>
#include <string_view>

#include "units/ascii.hpp"

namespace ventfolio {
namespace {

constexpr std::string_view kNumber = "0123456789.,";

bool is_word(char letter) { return is_small_letter(letter) || is_capital_letter(letter); }

/// "2,000.5" in the format; what is no such number, such as "1.2.3", stays.
std::string rewritten(std::string_view number, const NumberFormat& format) {
    if (std::ranges::count(number, '.') > 1) return std::string{number};
    std::string out;
    for (const char letter : number) {
        if (letter == '.')
            out += format.decimal_sign;
        else if (letter == ',')
            out += format.group_sign;
        else
            out += letter;
    }
    return out;
}

}  // namespace

std::string with_printed_numbers(std::string text, const NumberFormat& format) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const bool inside_word = at > 0 && (is_word(text[at - 1]) || text[at - 1] == '.');
        if (!is_digit(text[at]) || inside_word) {
            out += text[at++];
            continue;
        }
        const std::size_t end = std::min(text.find_first_not_of(kNumber, at), text.size());
        std::size_t last = end;
        while (!is_digit(text[last - 1])) --last;  // a stop or a comma behind the number
        out += rewritten(std::string_view{text}.substr(at, last - at), format);
        at = last;
    }
    return out;
}

}  // namespace ventfolio
