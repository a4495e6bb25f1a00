#include <fmt/format.h>

#include "cli/manual/pages.hpp"
#include "cli/manual/roff.hpp"
#include "profile/field_list.hpp"
#include "profile/field_paths.hpp"
#include "profile/profile.hpp"

namespace ventfolio {
namespace {

std::string about(const DeclaredField& field) {
    std::string text =
        fmt::format("{}.\nTakes {}.\n{}.", field.info.help, what_it_takes(field), name_of(field.info.grade));
    text += fmt::format("\nMay stand on paper for: {}.", names_of(field.info.on));
    if (!field.info.example.empty()) text += fmt::format("\nExample: {}", field.info.example);
    return text;
}

}  // namespace

std::string manual_of_profile() {
    std::string page = roff::head("VENTFOLIO-PROFILE", "5", "File formats");
    page += roff::section("NAME") + roff::text("ventfolio-profile - the profile of one person's home") + "\n";
    page += roff::section("DESCRIPTION");
    page += roff::paragraph(
        "A profile is a YAML file without anchors, tags and tabs. Every quantity is written with its unit. A field "
        "that "
        "is essential must be there; one that is expected and missing prints as NOT RECORDED, with whom to ask. The "
        "words unknown and none are answers. `ventfolio new` writes a profile to fill in, `ventfolio explain PATH` "
        "explains one field.");
    page += roff::section("FIELDS");
    for (const DeclaredField& field : declared_fields_of<Profile>()) page += roff::item(field.path, about(field));
    page += roff::section("SEE ALSO") + ".BR ventfolio (1),\n.BR ventfolio\\-rules (7)\n";
    return page;
}

}  // namespace ventfolio
