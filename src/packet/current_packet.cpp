#include "packet/current_packet.hpp"

#include <algorithm>
#include <set>

#include "packet/documents.hpp"
#include "packet/record_home.hpp"
#include "profile/refusal.hpp"
#include "record/sheet_code.hpp"
#include "rules/judge.hpp"

namespace ventfolio {
namespace {

bool has_file(const PacketFolder& packet, const std::string& name) {
    return std::ranges::find(packet.files, name, &Checksum::name) != packet.files.end();
}

bool holds(const PacketFolder& packet, const Document& document, const PrintOrder& order) {
    const RecordedSheet* sheet = packet.record.find(document.name);
    if (sheet == nullptr || sheet->state != RecordedSheet::State::printed) return false;
    const std::string stem = order.stem_of(document.sheet);
    return sheet->code == sheet_code(document) && sheet->file == stem + ".pdf" &&
           (!order.dump_layout || has_file(packet, stem + ".layout.txt"));
}

/// The sheets as they read on this day. Nothing if something refuses them: print_home tells what.
std::vector<Document> sheets_today(const SourceText& profile, Date on, const std::vector<std::string>& names,
                                   std::optional<Moment> outage_start, const Stationery& stationery) {
    const CheckedHome home = check_home(profile, on, &stationery.region);
    const std::set<std::string> stopped = stopped_sheets(home.findings);
    const auto is_stopped = [&](const std::string& name) { return stopped.contains(name); };
    if (!home.readable || std::ranges::any_of(needed_for(names, stationery), is_stopped)) return {};
    Household household{home.profile, on};
    household.outage_start = outage_start;
    std::vector<Finding> of_sheets;
    std::vector<Document> documents = make_documents(household, home.findings, stationery, names, of_sheets);
    if (any_refuses(of_sheets)) return {};
    return documents;
}

}  // namespace

bool is_current(const PacketFolder& packet, const SourceText& profile, Date on, const PrintOrder& order,
                const Stationery& stationery) {
    const bool whole = order.sheets.empty();
    if (!packet.faults.empty() || packet.profile.text != profile.text || packet.record.whole != whole ||
        packet.record.made != made_with(stationery, order.setup(stationery)))
        return false;
    const std::vector<std::string> names = order.names(stationery);
    const std::vector<Document> documents = sheets_today(profile, on, names, order.outage_start, stationery);
    if (documents.empty() || (whole && documents.size() != packet.record.sheets.size())) return false;
    const auto has_sheet = [&](const std::string& name) {
        return whole || std::ranges::find(documents, name, &Document::sheet) != documents.end();
    };
    return std::ranges::all_of(names, has_sheet) &&
           std::ranges::all_of(documents, [&](const Document& one) { return holds(packet, one, order); });
}

}  // namespace ventfolio
