#pragma once

#include <span>
#include <string>

#include "profile/finding.hpp"
#include "rules/masking.hpp"

namespace ventfolio {

struct ReportStyle {
    std::size_t width = 100;  ///< columns at which why, do and source are wrapped
    bool colour = false;      ///< terminal colours
    bool texts = true;        ///< why, do and source lines; once for each rule
    bool summary = true;      ///< a last line that counts the findings
    /// Set when the reader of the messages is not known to be at the terminal: quoted lines then show the value of a
    /// field only if the field may hang on the wall.
    AudiencesOf mask;
};

/// Findings as a good compiler prints them: place, severity, message and rule; the source line with carets; why, what
/// to do, source. `sources` are the texts that marks cite by name; a text that is not among them is not quoted.
///
/// Example
///     home.yaml:41:14: refuse: The gauge reads 20000 psi; a full cylinder holds 2200 psi. [oxygen-gauge-above-full]
///        41 |       gauge: 20000 psi
///           |              ^~~~~~~~~ full is 2200 psi
///       why:    a reading above …
std::string report_text(std::span<const Finding> findings, std::span<const SourceText> sources,
                        const ReportStyle& style = {});
/// "2 refuse, 1 warn", "no findings".
std::string summary_line(std::span<const Finding> findings);
/// Words to `width` columns; every line but the first begins with `indent` blanks.
std::string wrapped(std::string_view text, std::size_t first_column, std::size_t indent, std::size_t width);

}  // namespace ventfolio
