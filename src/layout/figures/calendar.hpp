#pragma once

#include "layout/blocks.hpp"

namespace ventfolio {

/// Days in weeks, with room to write: a section `.calendar`. The head of the table names the days of the week; each
/// cell starts with the day in bold, then come its tasks, each behind a box:
///
///     | Mon | Tue |
///     |---|---|
///     | **16 Mar** | **17** [ ] Foam filters [ ] **Tube change** |
///
/// A task in bold is white on black: it may not slip. One piece for each week, at least `week` mm tall. The section is
/// left out of the sheet code (see canonical_words), since it changes with the day of printing.
Pieces set_calendar(const Block& table, const SectionStyle& style, double width, LayoutContext& context);

}  // namespace ventfolio
