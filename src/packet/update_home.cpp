#include "packet/update_home.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <map>

#include "packet/chain.hpp"
#include "packet/documents.hpp"
#include "packet/drawn_sheets.hpp"
#include "packet/print_home.hpp"
#include "packet/record_home.hpp"
#include "packet/version.hpp"
#include "profile/refusal.hpp"
#include "record/history.hpp"
#include "record/sheet_code.hpp"
#include "rules/judge.hpp"
#include "rules/revisions.hpp"

namespace ventfolio {
namespace {

constexpr double kLargePrint = 1.5;

void require_usable(const PacketFolder& from) {
    if (!from.record.whole)
        throw FolderError{from.path, "holds single sheets; print the whole packet of this home into a folder first"};
    if (from.faults.empty()) return;
    std::string causes;
    for (const FolderError& fault : from.faults)
        causes += fmt::format("{}{} {}", causes.empty() ? "" : "; ", fault.path().filename().string(), fault.cause());
    throw FolderError{from.path, causes +
                                     "; restore it from a copy. Without one, print the whole packet into a new folder "
                                     "and replace all paper in the home"};
}

/// The home as it was when the packet before was printed.
CheckedHome home_before(const PacketFolder& from, const Stationery& stationery) {
    CheckedHome home = check_home(from.profile, *Date::parse(from.record.printed_on), &stationery.region);
    if (!home.readable)
        throw FolderError{from.profile.name, "cannot be read by this version of ventfolio: " +
                                                 std::ranges::find_if(home.findings, refuses)->message};
    return home;
}

using Codes = std::map<std::string, std::string>;

Codes codes_of(const Profile& profile, Date on, std::span<const Finding> findings, const Stationery& stationery) {
    std::vector<Finding> not_of_this_packet;
    Codes codes;
    for (const Document& document :
         make_documents(Household{profile, on}, findings, stationery, stationery.in_order(), not_of_this_packet))
        codes.emplace(document.name, sheet_code(document));
    return codes;
}

std::string code_in(const Codes& codes, const std::string& name) {
    const auto found = codes.find(name);
    return found == codes.end() ? std::string{} : found->second;
}

/// The same home word by word: as it was printed, as this program words it, and as it would read today. Where two
/// neighbours differ, that is a reason.
class Reasons {
  public:
    Reasons(const PacketFolder& from, const CheckedHome& was, Date on, const Stationery& stationery) {
        for (const RecordedSheet& sheet : from.record.sheets) printed_.emplace(sheet.full_name(), sheet.code);
        const Date then = *Date::parse(from.record.printed_on);
        const bool same_words =
            from.record.made.templates == stationery.digest && from.record.made.version == program_version();
        worded_ = same_words ? printed_ : codes_of(was.profile, then, was.findings, stationery);
        today_ = on == then ? worded_ : codes_today(from, was, on, stationery);
    }

    void explain(UpdatedSheet& sheet) const {
        const std::string worded = code_in(worded_, sheet.name);
        const std::string today = code_in(today_, sheet.name);
        sheet.by_words = code_in(printed_, sheet.name) != worded;
        sheet.by_time = worded != today;
        sheet.by_profile = today != sheet.code_now;
    }

  private:
    static Codes codes_today(const PacketFolder& from, const CheckedHome& was, Date on, const Stationery& stationery) {
        return codes_of(was.profile, on, judge(was.profile, from.profile, on), stationery);
    }

    Codes printed_;
    Codes worded_;
    Codes today_;
};

UpdatedSheet updated(const SheetChange& change) {
    UpdatedSheet sheet;
    sheet.name = change.name;
    sheet.state = change.state;
    if (change.before != nullptr) sheet.code_was = change.before->code;
    if (change.document != nullptr) sheet.code_now = sheet_code(*change.document);
    return sheet;
}

bool lists_others(const SheetChange& change) { return change.document != nullptr && change.document->front("lists"); }

std::vector<Document> without_kept(std::vector<Document> documents, const std::vector<UpdatedSheet>& sheets) {
    std::erase_if(documents, [&](const Document& document) {
        const auto sheet = std::ranges::find(sheets, document.name, &UpdatedSheet::name);
        return sheet->state == SheetChange::State::kept;
    });
    return documents;
}

RecordedSheet kept(const RecordedSheet& before, const PacketFolder& from, const std::filesystem::path& target) {
    RecordedSheet sheet = before;
    sheet.state = RecordedSheet::State::kept;
    sheet.folder = seen_from(from.path / before.folder, target);
    return sheet;
}

void add_sheets(PacketRecord& record, const std::vector<UpdatedSheet>& sheets, const std::vector<DrawnSheet>& drawn,
                const PacketFolder& from, const std::filesystem::path& target) {
    for (const UpdatedSheet& sheet : sheets) {
        if (sheet.state == SheetChange::State::withdrawn) continue;
        if (sheet.state == SheetChange::State::kept) {
            record.sheets.push_back(kept(*from.record.find(sheet.name), from, target));
            continue;
        }
        const auto made = std::ranges::find(drawn, sheet.name, [](const DrawnSheet& one) { return one.document.name; });
        record.sheets.push_back(recorded(*made, "packet.pdf", record));
    }
}

std::vector<const Document*> pointers(const std::vector<Document>& documents) {
    std::vector<const Document*> all;
    all.reserve(documents.size());
    for (const Document& document : documents) all.push_back(&document);
    return all;
}

class Update {
  public:
    Update(const SourceText& profile, Date on, const PacketFolder& from, const std::filesystem::path& target,
           const Stationery& stationery, Measurer& measurer)
        : source_{profile},
          on_{on},
          from_{from},
          target_{target},
          stationery_{stationery},
          measurer_{measurer},
          was_{home_before(from, stationery)},
          setup_{from.record.made.paper == "a4" ? Paper::a4 : Paper::letter,
                 from.record.made.large_print ? kLargePrint : 1.0} {}

    UpdatedHome run() {
        CheckedHome checked = check_home(source_, on_, &stationery_.region);
        home_.findings = std::move(checked.findings);
        home_.refused = !checked.readable;
        if (home_.refused) return std::move(home_);
        const Household now{checked.profile, on_};
        const Household was{was_.profile, on_};
        compare(was, now);
        home_.refused = !stopped_sheets(home_.findings).empty();
        if (!home_.refused) print(was, now);
        return std::move(home_);
    }

  private:
    void compare(const Household& was, const Household& now) {
        const Printer printer{stationery_.words, stationery_.region};
        home_.edited = edited_changes(was, now, printer);
        home_.derived = derived_changes(was, now, printer);
        const std::vector<Finding> of_update = judge_update(was.profile, now.profile, source_, on_);
        home_.findings.insert(home_.findings.end(), of_update.begin(), of_update.end());
        sort_by_place(home_.findings);
    }

    void print(const Household& was, const Household& now) {
        const FollowedPacket followed{&from_.record, &was, home_.edited, home_.derived};
        std::vector<Finding> of_sheets;
        std::vector<Document> documents =
            make_documents(now, home_.findings, stationery_, stationery_.in_order(), of_sheets, &followed);
        judge_sheets(followed, documents);
        const std::vector<DrawnSheet> drawn = draw_sheets(without_kept(std::move(documents), home_.sheets), now,
                                                          stationery_, setup_, measurer_, of_sheets);
        leave_one_of_each(of_sheets);
        const Printing printing = printing_for(drawn, true, now, stationery_, setup_, measurer_, of_sheets);
        home_.findings.insert(home_.findings.end(), of_sheets.begin(), of_sheets.end());
        home_.refused = any_refuses(of_sheets);
        if (home_.refused) return;
        for (const DrawnSheet& sheet : drawn) home_.pages += sheet.placed.pages.size();
        home_.files = drawn_files("packet", all_of(drawn), printing);
        record(now, drawn);
    }

    void judge_sheets(const FollowedPacket& followed, const std::vector<Document>& documents) {
        const Reasons reasons{from_, was_, on_, stationery_};
        for (const SheetChange& change : sheet_changes(followed, pointers(documents))) {
            home_.sheets.push_back(updated(change));
            if (change.state != SheetChange::State::kept && !lists_others(change)) reasons.explain(home_.sheets.back());
        }
    }

    void record(const Household& now, const std::vector<DrawnSheet>& drawn) {
        home_.record = record_of(now, home_.findings, stationery_, setup_);
        home_.record.follows = {seen_from(from_.path, target_), from_.record.revision, from_.checksums};
        add_sheets(home_.record, home_.sheets, drawn, from_, target_);
        take_history(home_.record, from_.record);
        add_record(home_.files, home_.record, source_);
    }

    const SourceText& source_;
    Date on_;
    const PacketFolder& from_;
    const std::filesystem::path& target_;
    const Stationery& stationery_;
    Measurer& measurer_;
    CheckedHome was_;
    PageSetup setup_;
    UpdatedHome home_;
};

}  // namespace

UpdatedHome update_home(const SourceText& profile, Date on, const PacketFolder& from,
                        const std::filesystem::path& target, const Stationery& stationery, Measurer& measurer) {
    require_usable(from);
    return Update{profile, on, from, target, stationery, measurer}.run();
}

}  // namespace ventfolio
