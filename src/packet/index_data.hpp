#pragma once

#include <span>
#include <string>

#include "packet/followed_packet.hpp"
#include "rules/household.hpp"
#include "sheets/document.hpp"
#include "sheets/printer.hpp"
#include "sheets/template_data.hpp"

namespace ventfolio {

/// What a sheet names that says `lists: codes` in its front matter, from all other sheets in the order of the folder.
///
/// `index`: a row each, with `title`, `code`, `revision` and `places`. `leaf_groups`: sheets that have many leaves,
/// such as the charts of an alarm, with `title`, `revision`, `places`, `count` and `leaves` (`title`, `code`,
/// `revision`). In a packet that follows another, rows, groups and leaves say `is_new` or, where the paper in the home
/// stays, `is_kept`; `revision` is then the one that it was printed with, and a group has `leaves_differ`. A place has
/// `place`, where the profile says that a copy is kept; without one, `in_folder` or, for paper that hangs elsewhere,
/// `not_recorded`. `own_places` are further copies of the listing sheet itself, `papers` counts all copies,
/// `copies_without_sheet` are copies (`sheet`, `place`) of what is not printed.
void add_index_data(TemplateData::Object& data, const std::string& own_sheet,
                    std::span<const Document* const> documents, const Household& household, const Printer& printer,
                    const FollowedPacket* followed = nullptr);

}  // namespace ventfolio
