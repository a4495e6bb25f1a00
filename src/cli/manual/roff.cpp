#include "cli/manual/roff.hpp"

#include <fmt/format.h>

#include "packet/version.hpp"
#include "units/text.hpp"

namespace ventfolio::roff {

std::string text(std::string_view plain) {
    std::string out;
    bool line_begins = true;
    for (const char letter : plain) {
        if (line_begins && (letter == '.' || letter == '\'')) out += "\\&";
        if (letter == '\\')
            out += "\\e";
        else if (letter == '-')
            out += "\\-";
        else
            out += letter;
        line_begins = letter == '\n';
    }
    return out;
}

std::string head(std::string_view name, std::string_view section, std::string_view title) {
    return fmt::format(".TH \"{}\" \"{}\" \"\" \"ventfolio {}\" \"{}\"\n", name, section, program_version(),
                       text(title));
}

std::string section(std::string_view title) { return fmt::format(".SH \"{}\"\n", text(title)); }

std::string subsection(std::string_view title) { return fmt::format(".SS \"{}\"\n", text(title)); }

std::string paragraph(std::string_view plain) { return fmt::format(".PP\n{}\n", text(plain)); }

std::string item(std::string_view term, std::string_view meaning) {
    return fmt::format(".TP\n.B \"{}\"\n{}\n", text(term), text(meaning));
}

std::string example(std::string_view lines) { return fmt::format(".PP\n.nf\n.RS 4\n{}\n.RE\n.fi\n", text(lines)); }

}  // namespace ventfolio::roff
