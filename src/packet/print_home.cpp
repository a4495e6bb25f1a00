#include "packet/print_home.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <set>

#include "packet/documents.hpp"
#include "packet/drawn_sheets.hpp"
#include "packet/record_home.hpp"
#include "profile/read_profile.hpp"
#include "profile/refusal.hpp"
#include "record/history.hpp"
#include "rules/judge.hpp"

namespace ventfolio {
namespace {

/// Whether the findings stop any of these sheets. Only rules of the profile stop single sheets.
bool stops(const std::vector<Finding>& findings, const std::vector<std::string>& sheets) {
    const std::set<std::string> stopped = stopped_sheets(findings);
    return std::ranges::any_of(sheets, [&](const std::string& sheet) { return stopped.contains(sheet); });
}

/// The sheets that were asked for by name and that this home does not have.
std::vector<std::string> missing_of(const std::vector<std::string>& asked, const std::vector<Document>& documents) {
    std::vector<std::string> missing;
    for (const std::string& name : asked)
        if (std::ranges::find(documents, name, &Document::sheet) == documents.end()) missing.push_back(name);
    return missing;
}

void add_drawings(PrintedHome& home, const std::vector<DrawnSheet>& sheets, const std::vector<std::string>& names,
                  const PrintOrder& order, const Printing& printing) {
    const auto add = [&](const std::string& stem, const std::vector<const DrawnSheet*>& parts) {
        if (!parts.empty()) std::ranges::move(drawn_files(stem, parts, printing), std::back_inserter(home.drawings));
    };
    if (order.in_one_file())
        add("packet", all_of(sheets));
    else
        for (const std::string& name : names) add(name, all_of(sheets, name));
    for (const DrawnSheet& sheet : sheets) home.pages += sheet.placed.pages.size();
}

/// Single sheets beside a whole packet must be the sheets that it tells of.
void require_same_codes(const PacketRecord& now, const PacketFolder& whole) {
    for (const RecordedSheet& sheet : now.sheets) {
        const RecordedSheet* there = whole.record.find(sheet.full_name());
        if (there == nullptr || there->code != sheet.code)
            throw FolderError{whole.path,
                              fmt::format("holds a packet in which {} is {}, and it would be {} now; print the whole "
                                          "packet, or use update if the paper hangs already",
                                          sheet.full_name(), there ? there->code : "missing", sheet.code)};
    }
}

/// The sheets that were printed into this folder one by one stay beside these.
void join_sheets(PacketRecord& now, const PacketRecord& before) {
    std::vector<RecordedSheet> all = before.sheets;
    for (RecordedSheet& sheet : now.sheets) {
        const auto same = std::ranges::find(all, sheet.full_name(), &RecordedSheet::full_name);
        if (same == all.end())
            all.push_back(std::move(sheet));
        else
            *same = std::move(sheet);
    }
    now.sheets = std::move(all);
}

bool is_same_packet(const PacketRecord& one, const PacketRecord& other) {
    return one.record_number == other.record_number && one.revision == other.revision;
}

void give_emergency_number(Profile& profile, const Region& region) {
    Group<Contact>& emergency = profile.contacts->emergency;
    if (emergency.state != FieldState::absent) return;
    emergency.state = FieldState::given;
    emergency->phone.give(region.emergency_number, emergency.place);
}

}  // namespace

std::vector<std::string> PrintOrder::names(const Stationery& stationery) const {
    return sheets.empty() ? stationery.in_order() : sheets;
}

PageSetup PrintOrder::setup(const Stationery& stationery) const {
    return {paper.value_or(stationery.region.paper == "a4" ? Paper::a4 : Paper::letter), large_print ? 1.5 : 1.0};
}

CheckedHome check_home(const SourceText& source, Date on, const Region* region) {
    return check_home(read_profile(source), source, on, region);
}

CheckedHome check_home(ReadResult read, const SourceText& source, Date on, const Region* region) {
    if (region != nullptr) give_emergency_number(read.profile, *region);
    CheckedHome home;
    home.findings = std::move(read.findings);
    home.readable = !any_refuses(home.findings);
    if (home.readable) {
        const std::vector<Finding> judged = judge(read.profile, source, on);
        home.findings.insert(home.findings.end(), judged.begin(), judged.end());
        sort_by_place(home.findings);
    }
    home.profile = std::move(read.profile);
    return home;
}

std::vector<Finding> check_sheets(const CheckedHome& home, Date on, const Stationery& stationery) {
    std::vector<Finding> findings;
    if (!home.readable) return findings;
    std::vector<std::string> names = stationery.in_order();
    std::erase_if(names, [&](const std::string& name) { return stops(home.findings, needed_for({name}, stationery)); });
    make_documents(Household{home.profile, on}, home.findings, stationery, names, findings);
    leave_one_of_each(findings);
    return findings;
}

PrintedHome print_home(const SourceText& source, Date on, const PrintOrder& order, const Stationery& stationery,
                       Measurer& measurer) {
    return print_home(check_home(source, on, &stationery.region), on, order, stationery, measurer);
}

PrintedHome print_home(CheckedHome checked, Date on, const PrintOrder& order, const Stationery& stationery,
                       Measurer& measurer) {
    PrintedHome home;
    home.findings = std::move(checked.findings);
    const std::vector<std::string> names = order.names(stationery);
    home.refused = !checked.readable || stops(home.findings, needed_for(names, stationery));
    if (home.refused) return home;

    Household household{checked.profile, on};
    household.outage_start = order.outage_start;
    const PageSetup setup = order.setup(stationery);

    std::vector<Finding> of_sheets;
    std::vector<Document> documents = make_documents(household, home.findings, stationery, names, of_sheets);
    home.missing_sheets = missing_of(order.sheets, documents);
    const std::vector<DrawnSheet> sheets =
        draw_sheets(std::move(documents), household, stationery, setup, measurer, of_sheets);
    leave_one_of_each(of_sheets);
    Printing printing = printing_for(sheets, order.in_one_file(), household, stationery, setup, measurer, of_sheets);
    printing.dump_layout = order.dump_layout;
    home.findings.insert(home.findings.end(), of_sheets.begin(), of_sheets.end());
    home.refused = any_refuses(of_sheets) || !home.missing_sheets.empty();
    if (home.refused) return home;
    add_drawings(home, sheets, names, order, printing);

    home.record = record_of(household, home.findings, stationery, setup);
    home.record.whole = order.sheets.empty();
    for (const DrawnSheet& sheet : sheets)
        home.record.sheets.push_back(recorded(sheet, order.stem_of(sheet.document.sheet) + ".pdf", home.record));
    return home;
}

std::vector<FolderFile> folder_files(PrintedHome home, const SourceText& profile, const PacketFolder* before) {
    PacketRecord& record = home.record;
    std::vector<FolderFile> files = std::move(home.drawings);
    // Another home or revision: that folder will not be replaced.
    if (before != nullptr && !is_same_packet(record, before->record)) before = nullptr;
    const std::span<const Checksum> others =
        before != nullptr && !record.whole ? std::span<const Checksum>{before->files} : std::span<const Checksum>{};
    if (before != nullptr && before->record.whole && !record.whole) {
        require_same_codes(record, *before);
        add_checksums(files, others);  // the record and the profile stay as they are
        return files;
    }
    if (before != nullptr && record.whole) {
        record.follows = before->record.follows;
        take_history(record, before->record);
    }
    if (before != nullptr && !record.whole) join_sheets(record, before->record);
    add_record(files, record, profile, others);
    return files;
}

}  // namespace ventfolio
