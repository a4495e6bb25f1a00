#include <fmt/format.h>
#include <fstream>
#include <set>
#include <string>

#include "profile/field_paths.hpp"
#include "profile/profile.hpp"
#include "units/text.hpp"

/// libFuzzer reads printable ASCII, and everything else as \xHH; it knows no \n.
static std::string escaped(std::string_view word) {
    std::string out;
    for (const char letter : word) {
        const bool plain = letter >= ' ' && letter <= '~' && letter != '"' && letter != '\\';
        out += plain ? std::string{letter} : fmt::format("\\x{:02X}", static_cast<unsigned char>(letter));
    }
    return out;
}

/// make_dictionary FILE: all that a profile may say, as a dictionary of libFuzzer: keys, words of choices, units, and
/// what YAML and the reader treat in a way of their own.
int main(int count, char** arguments) {
    using namespace ventfolio;
    if (count != 2) return 2;
    std::set<std::string> words;
    for (const DeclaredField& field : declared_fields_of<Profile>()) {
        for (const std::string& step : split(field.path, '.')) words.insert(step == "N" ? "\n  - " : step + ": ");
        for (const std::string_view choice : field.choices) words.insert(std::string{choice});
        for (const std::string& unit : split(field.info.units, ' ')) words.insert(" " + unit);
    }
    for (const char* word : {"unknown",
                             "none",
                             "off",
                             "true",
                             "{from: ",
                             ", to: ",
                             "2026-02-30",
                             "2026-01-12 10:00",
                             "99999999999999999999 ",
                             "0.000000001 ",
                             "-1 ",
                             "\"\\n",
                             "\xE2\x80\xAE",
                             "\xEE\x80\x80",
                             "&a ",
                             "*a",
                             "!x ",
                             "<<: ",
                             "---\n",
                             "? ",
                             "|\n",
                             ">-\n",
                             "[]",
                             "{}",
                             "{{x}}",
                             "~"})
        words.insert(word);
    std::ofstream file{arguments[1]};
    for (const std::string& word : words) file << fmt::format("\"{}\"\n", escaped(word));
    return file.good() ? 0 : 1;
}
