#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "layout/measurer.hpp"
#include "profile/finding.hpp"
#include "sheets/document.hpp"

namespace ventfolio {

/// What all layout functions share: the measurer, where findings go, and the sheet they are about.
struct LayoutContext {
    Measurer& measurer;
    std::vector<Finding>& findings;
    const Document& document;
    double scale = 1;      ///< of all type: 1.5 for large print
    std::size_t node = 0;  ///< of the block being set; counts up in reading order

    /// Whether type is so large that things which stand side by side go below one another, and a row has two cells.
    bool large_print() const { return scale > kOneColumnAbove; }

    /// Adds a finding that stops the sheet, at a line of its template (0: none) and about a field (empty: none).
    Finding& refuse(std::string_view rule, std::string message, std::size_t line, std::string field = {});
    /// For words that the look of their section has no place for: nothing is ever left out in silence.
    void refuse_unprinted(std::string_view what, std::size_t line, std::string field = {});

  private:
    /// Half of the width then holds fewer than 40 letters of 12 pt.
    static constexpr double kOneColumnAbove = 1.2;
};

}  // namespace ventfolio
