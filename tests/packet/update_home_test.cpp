#include "packet/update_home.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

#include "packet/documents.hpp"
#include "packet/sheet_furniture.hpp"
#include "packet/temporary_folder.hpp"
#include "print_home_sheets.hpp"
#include "record/sheet_code.hpp"
#include "rules/edited_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

using State = SheetChange::State;
using Names = std::set<std::string>;

const char* const kHome = "adult-tracheostomy";
const char* const kNextHome = "adult-tracheostomy-revision-2";

Measurer& measurer() {
    static Measurer one;
    return one;
}

/// The words that a program of yesterday had: one line of two sheets reads otherwise.
Stationery stationery_of_yesterday() {
    TemplateFiles files = built_in_files();
    for (const char* sheet : {"en/supplies.md", "en/hookup.md"}) files.at(sheet) += "\nA line of yesterday.\n";
    std::vector<Finding> faults;
    Stationery one = read_stationery(files, "en", "us", faults);
    REQUIRE_MESSAGE(faults.empty(), summary(faults));
    return one;
}

PacketFolder printed_into(const fs::path& folder, const SourceText& profile, std::string_view on,
                          const Stationery& words) {
    const PrintedHome home = print_home(profile, *Date::parse(on), {}, words, measurer());
    REQUIRE_MESSAGE(!home.refused, summary(home.findings));
    const std::vector<FolderFile> files = folder_files(home, profile);
    write_folder({.target = folder,
                  .record_number = home.record.record_number,
                  .revision = home.record.revision,
                  .files = files,
                  .other_files = OtherFiles::leave_behind});
    return read_packet_folder(folder);
}

UpdatedHome updated(const PacketFolder& from, const SourceText& profile, std::string_view on) {
    UpdatedHome home =
        update_home(profile, *Date::parse(on), from, from.path.parent_path() / "next", stationery(), measurer());
    REQUIRE_MESSAGE(!home.refused, summary(home.findings));
    return home;
}

template <class Test>
Names named(const UpdatedHome& home, Test test) {
    Names names;
    for (const UpdatedSheet& sheet : home.sheets)
        if (test(sheet)) names.insert(sheet.name);
    return names;
}

/// Each sheet of a home as it is drawn, with the furniture of one home.
std::map<std::string, std::string> drawings_of(const CheckedHome& checked, const Household& home,
                                               const Household& furnished) {
    std::map<std::string, std::string> drawings;
    std::vector<Finding> ignored;
    for (const Document& document :
         make_documents(home, checked.findings, stationery(), stationery().in_order(), ignored)) {
        const Furniture furniture = furniture_for(document, furnished, stationery(), sheet_code(document));
        drawings[document.name] = dump(lay_out(document, furniture, {}, measurer(), ignored));
    }
    return drawings;
}

/// The next revision of a home, with nothing else changed.
SourceText raised(const char* edits = "") {
    return edited_profile(kHome, std::string{"orders.revision: R1a\norders.supersedes: R1\n"} + edits);
}

}  // namespace

TEST_CASE("a sheet of other words is printed again, and the reason is the wording") {
    const TemporaryFolder home;
    const PacketFolder from = printed_into(home / "R1", demo_profile(kHome), "2026-02-03", stationery_of_yesterday());
    const UpdatedHome next = updated(from, raised(), "2026-02-03");
    const Names expected{"supplies", "hookup/bed", "hookup/chair"};
    CHECK(named(next, [](const UpdatedSheet& sheet) { return sheet.by_words; }) == expected);
    CHECK(named(next, [](const UpdatedSheet& sheet) { return sheet.by_time; }).empty());
    // The wallet card prints the revision, and so has another code.
    CHECK(named(next, [](const UpdatedSheet& sheet) { return sheet.by_profile; }) == Names{"wallet-card"});
}

TEST_CASE("a sheet that depends on the day is printed again when the day has come") {
    const TemporaryFolder home;
    const PacketFolder from = printed_into(home / "R1", demo_profile(kHome), "2026-02-03", stationery());
    // Born on 11 February 1978: profiles/adult-tracheostomy.yaml.
    CHECK(
        named(updated(from, raised(), "2026-02-10"), [](const UpdatedSheet& sheet) { return sheet.by_time; }).empty());
    CHECK(named(updated(from, raised(), "2026-02-11"), [](const UpdatedSheet& sheet) { return sheet.by_time; }) ==
          Names{"responder-sheet", "wallet-card"});
}

TEST_CASE("a new revision with nothing else new prints what lists the others, and what prints the revision") {
    const TemporaryFolder home;
    const PacketFolder from = printed_into(home / "R1", demo_profile(kHome), "2026-02-03", stationery());
    const UpdatedHome next = updated(from, raised(), "2026-02-03");
    CHECK(named(next, [](const UpdatedSheet& sheet) { return sheet.state == State::replaced; }) ==
          Names{"folder-index", "verification", "wallet-card"});
    CHECK(named(next, [](const UpdatedSheet& sheet) { return sheet.state == State::added; }) == Names{"change-notice"});
    CHECK(named(next, [](const UpdatedSheet& sheet) { return sheet.state == State::withdrawn; }).empty());
}

TEST_CASE("a sheet that the home needs no more is withdrawn, and its code still known") {
    const TemporaryFolder home;
    const PacketFolder from = printed_into(home / "R1", demo_profile(kHome), "2026-02-03", stationery());
    const UpdatedHome next = updated(
        from, raised("consent.fire_letter.answer: refused\nconsent.utility_letter.answer: refused\n"), "2026-02-03");
    CHECK(named(next, [](const UpdatedSheet& sheet) { return sheet.state == State::withdrawn; }) ==
          Names{"notice-letters/fire", "notice-letters/utility"});
    REQUIRE(next.record.withdrawn.size() == 2);
    for (const RecordedSheet& sheet : next.record.withdrawn) {
        REQUIRE(sheet.earlier.size() == 1);
        CHECK(sheet.earlier.front().code == from.record.find(sheet.full_name())->code);
    }
}

TEST_CASE("a kept sheet rendered anew is the same page but for its furniture") {
    const TemporaryFolder home;
    const SourceText first = demo_profile(kHome);
    const SourceText second = demo_profile(kNextHome);
    const PacketFolder from = printed_into(home / "R1", first, "2026-02-03", stationery());
    const UpdatedHome next = updated(from, second, "2026-03-17");
    const Names kept = named(next, [](const UpdatedSheet& sheet) { return sheet.state == State::kept; });
    for (const char* name : {"hookup/bed", "hookup/chair", "supplies", "notice-letters/fire", "notice-letters/utility"})
        CHECK(kept.contains(name));

    // Both with the furniture of the first, so that everything else can be compared to the point.
    const CheckedHome before = check_home(first, *Date::parse("2026-02-03"));
    const CheckedHome after = check_home(second, *Date::parse("2026-03-17"));
    const Household household{before.profile, *Date::parse("2026-02-03")};
    const auto hung = drawings_of(before, household, household);
    const auto anew = drawings_of(after, {after.profile, *Date::parse("2026-03-17")}, household);
    for (const std::string& name : kept) {
        CAPTURE(name);
        CHECK((hung.at(name) == anew.at(name)));
    }
    CHECK((hung.at("bedside-card/bed") != anew.at("bedside-card/bed")));
}

TEST_CASE("a change that is refused is told all the same, and gives no file") {
    const TemporaryFolder home;
    const PacketFolder from = printed_into(home / "R1", demo_profile(kHome), "2026-02-03", stationery());
    const SourceText same_revision = edited_profile(kHome, "prescriptions.0.rate: 15 breaths/min\n");
    const UpdatedHome next = update_home(same_revision, demo_day(), from, home / "next", stationery(), measurer());
    CHECK(next.refused);
    CHECK(next.files.empty());
    CHECK(next.sheets.empty());
    REQUIRE(!next.edited.empty());
    CHECK(next.edited.front().path == "prescriptions.0.rate");
}
