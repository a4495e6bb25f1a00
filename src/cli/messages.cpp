#include "cli/messages.hpp"

#include <fmt/format.h>

#include "cli/world.hpp"
#include "packet/chain.hpp"
#include "profile/field_paths.hpp"
#include "profile/profile.hpp"
#include "rules/report_text.hpp"

namespace ventfolio {
namespace {

Audiences audiences_of(std::string_view path) {
    static const std::vector<DeclaredField> fields = declared_fields_of<Profile>();
    const std::string declared = declared_path(path);
    for (const DeclaredField& field : fields)
        if (field.path == declared) return field.info.on;
    return nobody;
}

}  // namespace

void print_chain_faults(const PacketFolder& packet) {
    const std::vector<FolderError> faults = chain_faults(packet);
    for (const FolderError& fault : faults)
        fmt::print(stderr, "ventfolio: the chain of packets is broken: {}\n", fault.what());
    if (!faults.empty())
        fmt::print(stderr,
                   "  {} still knows its own codes and the earlier ones. Restore the older packet from a copy.\n",
                   packet.path.string());
}

bool is_private_field(std::string_view path) { return (audiences_of(path) & wall) == 0; }

void print_findings(const std::vector<Finding>& findings, const SourceText* profile,
                    std::span<const SourceText> stationery, bool quiet, bool unmasked) {
    ReportStyle style;
    style.colour = standard_error_is_terminal();
    style.texts = !quiet;
    style.summary = false;
    std::vector<Finding> of_profile;
    std::vector<Finding> of_sheets;
    for (const Finding& finding : findings) {
        const bool in_profile = profile && !finding.marks.empty() && finding.marks.front().file == profile->name;
        (in_profile ? of_profile : of_sheets).push_back(finding);
    }
    if (!of_sheets.empty()) fmt::print(stderr, "{}", report_text(of_sheets, stationery, style));
    if (of_profile.empty()) return;
    if (!unmasked && !standard_error_is_terminal()) style.mask = audiences_of;
    fmt::print(stderr, "{}", report_text(of_profile, std::span{profile, 1}, style));
}

}  // namespace ventfolio
