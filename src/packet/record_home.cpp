#include "packet/record_home.hpp"

#include <algorithm>
#include <set>

#include "packet/version.hpp"
#include "profile/field_paths.hpp"
#include "rules/report.hpp"
#include "rules/rule_book.hpp"
#include "rules/workings.hpp"

namespace ventfolio {
namespace {

void add_findings(PacketRecord& record, std::span<const Finding> findings) {
    for (const Finding& finding : findings)
        record.findings.push_back(
            {finding.rule, std::string{name_of(finding.severity)}, finding.accepted, finding.message});
}

void add_acceptances(PacketRecord& record, const Profile& profile) {
    for (const Acceptance& one : profile.accepted)
        record.acceptances.push_back({one.rule.or_else(""), one.by.or_else(""), one.date.given() ? one.date->iso() : "",
                                      one.reason.or_else("")});
}

/// Each once, rules before calculators.
void add_sources(PacketRecord& record, std::span<const Finding> findings, const Household& household) {
    std::set<std::string> known;
    const auto add = [&](std::string_view about, std::string_view source) {
        if (known.emplace(about).second) record.sources.push_back({std::string{about}, std::string{source}});
    };
    for (const Finding& finding : findings)
        if (const RuleText* rule = find_rule(finding.rule)) add(rule->name, rule->source);
    for (const Working& working : workings(household))
        add(working.calculation.calculator->name, working.calculation.calculator->source);
}

}  // namespace

PacketRecord::Made made_with(const Stationery& stationery, const PageSetup& setup) {
    return {std::string{program_version()},
            stationery.digest,
            stationery.languages(),
            stationery.region_name,
            setup.paper == Paper::a4 ? "a4" : "letter",
            setup.scale > 1};
}

PacketRecord record_of(const Household& household, std::span<const Finding> findings, const Stationery& stationery,
                       const PageSetup& setup) {
    const Profile& profile = household.profile;
    const Orders& orders = *profile.orders;
    PacketRecord record;
    record.record_number = *profile.record_number;
    record.revision = orders.revision->text();
    record.effective = orders.effective_at.given() ? orders.effective_at->iso() : "";
    record.printed_on = household.on.iso();
    record.made = made_with(stationery, setup);
    add_findings(record, findings);
    add_acceptances(record, profile);
    add_sources(record, findings, household);
    return record;
}

RecordedSheet recorded(const DrawnSheet& sheet, std::string file, const PacketRecord& packet) {
    RecordedSheet entry;
    entry.name = sheet.document.sheet;
    entry.place = sheet.document.place;
    entry.title = plain_text(sheet.document.title);
    entry.code = sheet.code;
    entry.revision = packet.revision;
    entry.effective = packet.effective;
    entry.printed_on = packet.printed_on;
    entry.pages = sheet.placed.pages.size();
    entry.file = std::move(file);
    entry.folder = ".";
    return entry;
}

void add_checksums(std::vector<FolderFile>& files, std::span<const Checksum> others) {
    std::vector<Checksum> checksums;
    checksums.reserve(files.size() + others.size());
    for (const FolderFile& file : files) checksums.push_back(checksum_of(file.name, file.bytes));
    for (const Checksum& other : others)
        if (std::ranges::find(files, other.name, &FolderFile::name) == files.end()) checksums.push_back(other);
    files.push_back({std::string{kChecksumFile}, checksum_list(std::move(checksums))});
}

void add_record(std::vector<FolderFile>& files, const PacketRecord& record, const SourceText& profile,
                std::span<const Checksum> others) {
    files.push_back({std::string{kRecordFile}, packet_json(record)});
    files.push_back({std::string{kProfileFile}, profile.text});
    add_checksums(files, others);
}

}  // namespace ventfolio
