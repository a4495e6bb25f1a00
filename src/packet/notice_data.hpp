#pragma once

#include "packet/paper_walk.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What a sheet tells of papers that says `lists: changes` in its front matter, under the name `paperwork`.
///
///   stops    for each place of the home `place`, else `in_folder` or `not_recorded`, and `swaps`: `title`, `old` (code
///            of what comes down), `new` (code of what goes up), `at_its_foot` or `this_paper` in place of a code that
///            cannot be told, `file_it` for old paper that has been written on
///   down, up       how many papers; `any_down`, `any_up`
///   staying        what stays: `title`, `code`; of a sheet with many leaves that stay, `staying_groups`: `title`,
///                  `count`
///   to_others      letters that say something new: `title`
///   old_revision   of the packet before
void add_notice_data(TemplateData::Object& data, const PaperWalk& walk, const FollowedPacket& followed,
                     const Printer& printer);

}  // namespace ventfolio
