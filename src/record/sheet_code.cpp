#include "record/sheet_code.hpp"

#include "record/canonical_words.hpp"
#include "record/sha256.hpp"

namespace ventfolio {
namespace {

constexpr std::string_view kAlphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
constexpr int kSymbols = 6;
constexpr std::size_t kGroup = 3;

char heard(char letter) {
    if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
    if (letter == 'O') return '0';
    return letter == 'I' || letter == 'L' ? '1' : letter;
}

}  // namespace

std::string base32(std::uint64_t number, int symbols) {
    std::string text(static_cast<std::size_t>(symbols), '0');
    for (auto at = text.rbegin(); at != text.rend(); ++at, number >>= 5) *at = kAlphabet[number & 31U];
    return text;
}

std::string sheet_code(const Document& document) {
    const Sha256 digest = sha256(canonical_words(document));
    std::uint64_t first_bytes = 0;
    for (std::size_t at = 0; at < 4; ++at) first_bytes = first_bytes << 8U | digest[at];
    std::string code = base32(first_bytes >> (32 - 5 * kSymbols), kSymbols);
    return code.insert(kGroup, "-");
}

std::optional<std::string> read_sheet_code(std::string_view typed) {
    std::string code;
    for (const char letter : typed) {
        if (letter == '-' || letter == ' ') continue;
        code += heard(letter);
        if (kAlphabet.find(code.back()) == std::string_view::npos) return std::nullopt;
    }
    if (code.size() != kSymbols) return std::nullopt;
    return code.insert(kGroup, "-");
}

}  // namespace ventfolio
