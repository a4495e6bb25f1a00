#pragma once

#include "profile/profile.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// Every field of a profile under its YAML path, ready for templates. A visitor over `describe`: a new field is there
/// without a line of code.
///
/// A field `x` gives `x` (to print), and by its kind also
///   measure, range  `x_brief` (short unit), `x_number` (no unit)
///   text, choice    `x_sentence` (with a capital, for the start of a sentence)
///   date            `x_brief` (month shortened)
///   choice          `x_is_WORD` for each word it may have
///   none            `x_is_none`, and `x_or_none`, which prints the answer "none"; `x` itself is then missing, so that
///   no
///                   step speaks of what a home does not have
///   off             `x_is_off`; `x` prints "off": an alarm that is off must be seen
///   every kind      `x_or_ask`, which prints NOT RECORDED for a missing optional field too, even in a group that the
///                   home does not have: for steps and rows that may not be left out
/// A missing expected field prints NOT RECORDED; a missing optional one is Missing. A group that the home does not have
/// is missing as a whole, its names known.
TemplateData::Object profile_data(const Profile& profile, const Printer& printer);

}  // namespace ventfolio
