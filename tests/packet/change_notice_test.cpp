#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>

#include "followed_home.hpp"
#include "record/sheet_code.hpp"
#include "rules/edited_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// The second revision of the demo adult, made from the first: what a prescriber changes at the bed.
constexpr const char* kNewOrder =
    "orders.revision: R2\norders.effective_at: 2026-03-16 2:00 PM\norders.order_date: 2026-03-13\n"
    "orders.verified_by.date: 2026-03-13\norders.second_check.date: 2026-03-14\norders.review_due: 2026-09-16\n";

std::string cell_words(const TableRow& row, std::size_t column) {
    return column < row.cells.size() ? plain_blanks(plain_text(row.cells[column].inlines)) : std::string{};
}

/// All tables below the sections of a class.
std::vector<const Block*> tables_of(const Document& document, std::string_view name) {
    std::vector<const Block*> tables;
    bool inside = false;
    for (const Block& block : document.blocks) {
        if (block.kind == Block::Kind::heading) inside = block.attributes.has(name);
        if (inside && block.kind == Block::Kind::table) tables.push_back(&block);
    }
    return tables;
}

/// A row of a was-and-now table: "Breaths per minute | was 14 | now 16".
std::string in_line(const TableRow& row) {
    return fmt::format("{} | {} | {}", cell_words(row, 0), cell_words(row, 1), cell_words(row, 2));
}

std::vector<std::string> lines_of(const Document& notice, std::string_view name) {
    std::vector<std::string> lines;
    for (const Block* table : tables_of(notice, name))
        for (const TableRow& row : table->rows) lines.push_back(in_line(row));
    return lines;
}

bool has_line(const std::vector<std::string>& lines, const std::string& line) {
    return std::ranges::find(lines, line) != lines.end();
}

struct WalkedPaper {
    std::string place;
    std::string paper;
    std::string down;
    std::string up;
};

/// The rows of the take-down list. A place stands in the first of its rows only.
std::vector<WalkedPaper> walk_of(const Document& notice) {
    std::vector<WalkedPaper> walk;
    for (const Block* table : tables_of(notice, "form"))
        for (const TableRow& row : table->rows) {
            const bool opens = !row.cells[0].inlines.empty();
            walk.push_back({opens ? cell_words(row, 0) : walk.back().place, cell_words(row, 1), cell_words(row, 2),
                            cell_words(row, 3)});
        }
    return walk;
}

bool is_code(const std::string& words) { return read_sheet_code(words).has_value(); }

std::string trimmed_words(std::string words) {
    words = trimmed(words);
    return words;
}

std::string stays_of(const Document& notice) {
    std::string words;
    bool inside = false;
    for (const Block& block : notice.blocks) {
        if (block.kind == Block::Kind::heading) inside = block.attributes.has("codes");
        if (!inside) continue;
        for (const Block& item : block.children)
            for (const Block& part : item.children) words += plain_blanks(plain_text(part.inlines)) + "\n";
        for (const Block& item : block.children) words += plain_blanks(plain_text(item.inlines)) + "\n";
    }
    return words;
}

std::size_t count_boxes(const PlacedSheet& sheet, std::string_view role) {
    std::size_t count = 0;
    for (const PlacedPage& page : sheet.pages)
        count += static_cast<std::size_t>(
            std::ranges::count_if(page.items, [&](const PlacedItem& item) { return item.origin.role == role; }));
    return count;
}

std::string without_blanks(std::string words) {
    words = plain_blanks(std::move(words));
    std::erase_if(words, [](char letter) { return letter == ' ' || letter == '\n'; });
    return words;
}

/// Each passage of a document, as its words stand on paper.
void each_passage(const std::vector<Block>& blocks, const std::function<void(const std::string&)>& visit) {
    const auto say = [&](const Inlines& inlines) {
        if (const std::string words = without_blanks(plain_text(inlines)); !words.empty()) visit(words);
    };
    for (const Block& block : blocks) {
        say(block.inlines), say(block.aside);
        for (const TableCell& one : block.head.cells) say(one.inlines);
        for (const TableRow& row : block.rows)
            for (const TableCell& one : row.cells) say(one.inlines);
        each_passage(block.children, visit);
    }
}

void check_that_no_texts_overlap(const PlacedPage& page) {
    for (auto one = page.items.begin(); one != page.items.end(); ++one)
        for (auto two = std::next(one); is_text(*one) && two != page.items.end(); ++two)
            if (is_text(*two) && area_of(*one).overlaps(area_of(*two), 0.3))
                FAIL_CHECK(words_of(*one) << " and " << words_of(*two));
}

FollowedHome& demo_update() {
    static FollowedHome home{demo_profile("adult-tracheostomy"), demo_profile("adult-tracheostomy-revision-2")};
    return home;
}

}  // namespace

TEST_CASE("the change of the demo adult is told number by number, old and new") {
    const Document& notice = demo_update().named("change-notice");
    // Source: the two profiles, read by eye (profiles/adult-tracheostomy.yaml and its revision 2).
    const std::vector<std::string> lines = lines_of(notice, "was-now");
    for (const char* line : {
             "Pressure of one breath | was 16 cmH2O above baseline | now 18 cmH2O above baseline",
             "Breaths per minute | was 14 | now 16",
             "High-pressure alarm | was 31 cmH2O | now 33 cmH2O",
             "Low-volume alarm | was 300 mL | now 320 mL",
             "Low minute volume alarm | was 4.5 L/min | now 5.5 L/min",
             "Expected volume of one breath | was 440 to 520 mL | now 490 to 570 mL",
             "Expected minute volume | was 6.2 to 8 L/min | now 7.8 to 9.3 L/min",
             "Expected peak pressure, total | was 21 cmH2O | now 23 cmH2O",
             "Expected breaths per minute | was 14 to 16 | now 16 to 18",
         })
        CHECK_MESSAGE(has_line(lines, line), std::string{line});
    const std::vector<std::string> also = lines_of(notice, "dense");
    // Batteries: 910 min x 70 % = 637 min, in quarters of an hour 10 h 30 min; 637 - 2 x 25 - 120 = 467 min: 7 h 45
    // min.
    for (const char* line : {"Neck tube, last changed | was 26 January 2026 | now 26 February 2026",
                             "Time on batteries, Unit A | was 12 h 0 min | now 10 h 30 min",
                             "Leave by, after the power fails | was 9 h 15 min | now 7 h 45 min"})
        CHECK_MESSAGE(has_line(also, line), std::string{line});
}

TEST_CASE("every edited change of a home stands on its notice, old and new") {
    const FollowedHome& home = demo_update();
    const std::string words = words_of_blocks(home.named("change-notice").blocks);
    std::size_t told = 0;
    for (const ListedChange& change : home.followed().edited) {
        if (change.kind == ListedChange::Kind::order) continue;
        const std::string key = change.path.substr(change.path.rfind('.') + 1);
        if (key == "revision" || key == "measured_on") continue;  // marks of the revision itself
        CAPTURE(change.path);
        for (const auto* value : {&change.was, &change.now}) {
            REQUIRE(value->has_value());
            const std::string shown = (value == &change.was ? "was " : "now ") + plain_blanks((*value)->text());
            CHECK_MESSAGE(words.find(shown) != std::string::npos, shown);
        }
        ++told;
    }
    CHECK(told == 14);  // counted in the two profiles: 5 dialled, 4 expected, the ordered peak, tube, 3 care tasks
}

TEST_CASE("each machine and slot that holds the changed prescription has a cell for each number, and no other has") {
    struct Row {
        const char* home;
        const char* edits;
        std::vector<const char*> machines;
    };
    const Row rows[] = {
        {"adult-tracheostomy",
         "prescriptions.0.rate: 16 breaths/min\nprescriptions.0.changed_in: R2\n",
         {"Unit A, slot 1", "Unit B, slot 2"}},
        {"adult-tracheostomy",
         "prescriptions.1.rate: 15 breaths/min\nprescriptions.1.changed_in: R2\n",
         {"Unit B, slot 1"}},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.edits});
        FollowedHome home{demo_profile(row.home), edited_profile(row.home, std::string{kNewOrder} + row.edits)};
        const Document& notice = home.named("change-notice");
        const auto tables = tables_of(notice, "was-now");
        REQUIRE(tables.size() == 1);
        const TableRow& head = tables.front()->head;
        REQUIRE(head.cells.size() == 3 + row.machines.size());
        for (std::size_t at = 0; at < row.machines.size(); ++at) CHECK(cell_words(head, 3 + at) == row.machines[at]);
        std::size_t numbers = 0;
        for (const TableRow& one : tables.front()->rows)
            if (cell_words(one, 2).starts_with("now ")) ++numbers;
        // And one for each machine to say that it is saved and locked.
        CHECK(count_boxes(home.placed("change-notice").placed, "cell") == (numbers + 1) * row.machines.size());
    }
}

TEST_CASE("each recorded copy of a replaced sheet has one row with its old and its new code") {
    const FollowedHome& home = demo_update();
    const std::vector<WalkedPaper> walk = walk_of(home.named("change-notice"));
    const std::string stays = stays_of(home.named("change-notice"));
    std::size_t rows = 0;
    for (const Document& document : home.documents()) {
        if (document.sheet == "folder-index" || document.sheet == "change-notice") continue;
        CAPTURE(document.name);
        const RecordedSheet* before = home.record().find(document.name);
        REQUIRE(before != nullptr);
        const std::string code = sheet_code(document);
        std::vector<std::string> places;
        for (const PaperCopy& copy : home.profile_now().copies)
            if (copy.sheet.is(document.name) || copy.sheet.is(document.sheet)) places.push_back(*copy.place);
        std::size_t here = 0;
        for (const WalkedPaper& one : walk) {
            if (trimmed_words(one.up) != code) continue;
            ++here;
            CHECK(trimmed_words(one.down) == before->code);
            CHECK(one.paper.starts_with(plain_blanks(plain_text(document.title))));
            if (!places.empty()) CHECK(std::ranges::find(places, one.place) != places.end());
        }
        const bool kept = code == before->code && !document.front("lists");
        CHECK(here == (kept ? 0 : std::max<std::size_t>(places.size(), 1)));
        if (kept && document.sheet != "alarm-response") CHECK(stays.find(code) != std::string::npos);
        if (!kept) CHECK(stays.find(before->code) == std::string::npos);
        rows += here;
    }
    CHECK(rows > 10);
}

TEST_CASE("the counts of a notice are those of its rows, and of the index") {
    const FollowedHome& home = demo_update();
    const Document& notice = home.named("change-notice");
    std::size_t down = 0;
    std::size_t up = 0;
    for (const WalkedPaper& one : walk_of(notice)) {
        down += is_code(trimmed_words(one.down)) ? 1U : 0U;
        up += one.up.find("no new one") == std::string::npos ? 1U : 0U;
    }
    const std::string words = words_of_blocks(notice.blocks);
    CHECK(words.find(fmt::format("Old papers down: {}. New papers up: {}.", down, up)) != std::string::npos);
    CHECK(words.find(fmt::format("{} old papers down or filed", down)) != std::string::npos);
    // What goes up and what stays is what the index counts.
    std::size_t staying = 0;
    for (const Document& document : home.documents()) {
        const RecordedSheet* before = home.record().find(document.name);
        if (before == nullptr || document.front("lists") || before->code != sheet_code(document)) continue;
        std::size_t copies = 0;
        for (const PaperCopy& copy : home.profile_now().copies)
            if (copy.sheet.is(document.name) || copy.sheet.is(document.sheet)) ++copies;
        staying += std::max<std::size_t>(copies, 1);
    }
    std::string papers;
    for (const Block& block : home.named("folder-index").blocks)
        if (block.kind == Block::Kind::heading && papers.empty()) papers = plain_blanks(plain_text(block.aside));
    CHECK(papers == fmt::format("{} papers in all", up + staying));
}

TEST_CASE("paper that has been written on is filed, all other old paper is not") {
    for (const WalkedPaper& one : walk_of(demo_update().named("change-notice"))) {
        CAPTURE(one.paper);
        bool written_on = false;
        for (const char* title : {"Setting check", "Skills", "Home visit check", "Checking record"})
            written_on = written_on || one.paper.starts_with(title);
        CHECK((one.paper.find("file the old one") != std::string::npos) == written_on);
    }
}

TEST_CASE("a new oxygen flow tells on its notice how long a cylinder and all oxygen last then") {
    FollowedHome home{demo_profile("adult-tracheostomy"),
                      edited_profile("adult-tracheostomy-revision-2", "prescriptions.0.oxygen.flow: 2 L/min")};
    std::vector<std::string> parts = split(words_of(home.placed("change-notice").placed), ' ');
    std::erase(parts, "");  // several blanks in a row
    const std::string words = joined(parts, " ");
    // A size E cylinder from 2000 psi down to the 500 psi that are kept, at 0.28 L/psi (respiratory care handbooks):
    // (2000 - 500) x 0.28 / 1 = 420 min = 7 h, at 2 L/min half of it; there are two.
    for (const char* row :
         {"reserve cylinders was 7 h 0 min now 3 h 30 min", "Oxygen without wall power was 14 h 0 min now 7 h 0 min"}) {
        CAPTURE(std::string{row});
        CHECK_MESSAGE(words.find(row) != std::string::npos, words);
    }
}

TEST_CASE("a notice without a change on a machine says so, and asks for no number") {
    FollowedHome home{
        demo_profile("adult-mask"),
        edited_profile("adult-mask", std::string{kNewOrder} + "contacts.equipment_provider.phone: 555-0177")};
    const Document& notice = home.named("change-notice");
    const std::string words = words_of_blocks(notice.blocks);
    CHECK(words.find("No machine setting changes on 16 March 2026, 2 PM") != std::string::npos);
    CHECK(words.find("Leave all machine settings as they are.") != std::string::npos);
    CHECK(words.find("Set and read back") == std::string::npos);
    CHECK(tables_of(notice, "was-now").empty());
    CHECK(words.find("now 555-0177") != std::string::npos);
    CHECK(count_boxes(home.placed("change-notice").placed, "cell") == 0);
}

TEST_CASE("a machine that takes over an order is set and read back, although no number has changed") {
    const FollowedHome home{edited_profile("adult-tracheostomy", "remove: devices.1.slots.1"),
                            edited_profile("adult-tracheostomy", std::string{kNewOrder} + "orders.supersedes: R1")};
    const std::string words = words_of_blocks(home.named("change-notice").blocks);
    CHECK(words.find("BED New on Unit B, slot 2") != std::string::npos);
    CHECK(words.find("No machine setting changes") == std::string::npos);
    CHECK(words.find("Set and read back by:") != std::string::npos);
}

TEST_CASE("an order that ends is cleared from the machines that held it") {
    const FollowedHome home{demo_profile("adult-tracheostomy"),
                            edited_profile("adult-tracheostomy", std::string{kNewOrder} + "orders.supersedes: R1\n"
                                                                                          "remove: devices.1.slots.0\n"
                                                                                          "remove: prescriptions.1")};
    const std::string words = words_of_blocks(home.named("change-notice").blocks);
    CHECK(words.find("CHAIR settings end on 16 March 2026") != std::string::npos);
    CHECK(words.find("Unit B, slot 1: cleared or locked") != std::string::npos);
    CHECK(tables_of(home.named("change-notice"), "was-now").empty());
}

TEST_CASE("a notice is made whatever the new profile leaves out") {
    const std::string yaml = demo_home("adult-tracheostomy-revision-2");
    std::size_t made = 0;
    for (const std::string& path : paths_of(yaml)) {
        bool printed_there = false;
        for (const char* part : {"contacts", "orders", "caregivers.0"})
            printed_there = printed_there || path.starts_with(part);
        if (!printed_there) continue;
        const SourceText now = edited_profile("adult-tracheostomy-revision-2", "remove: " + path);
        if (!check_home(now, update_day()).readable) continue;
        CAPTURE(path);
        CHECK(FollowedHome(demo_profile("adult-tracheostomy"), now).has("change-notice"));
        ++made;
    }
    CHECK(made > 40);
}

TEST_CASE("a sheet that is withdrawn only comes down, and a new one only goes up") {
    const FollowedHome home{demo_profile("adult-mask"),
                            edited_profile("adult-mask", std::string{kNewOrder} + "remove: consent.fire_letter")};
    const FollowedHome back{edited_profile("adult-mask", "remove: consent.fire_letter"),
                            edited_profile("adult-mask", kNewOrder)};
    const auto letter = [](const FollowedHome& one) {
        for (const WalkedPaper& paper : walk_of(one.named("change-notice")))
            if (paper.paper == "Letter: fire and ambulance") return paper;
        return WalkedPaper{};
    };
    CHECK(is_code(trimmed_words(letter(home).down)));
    CHECK(letter(home).up == "no new one");
    CHECK(letter(back).down == "no old one");
    CHECK(trimmed_words(letter(back).up) == sheet_code(back.named("notice-letters/fire")));
    CHECK(words_of_blocks(back.named("change-notice").blocks).find("sent: Letter: fire and ambulance") !=
          std::string::npos);
}

TEST_CASE("the notice of the change before is filed, and the paper that it left up keeps its revision") {
    FollowedHome& home = demo_update();
    PacketRecord record = home.record();
    record.revision = "R1";
    RecordedSheet earlier = *record.find("supplies");
    earlier.name = earlier.title = "change-notice";
    earlier.code = "AAA-111";
    record.sheets.push_back(earlier);
    for (RecordedSheet& sheet : record.sheets)
        if (sheet.name == "hookup" && sheet.place == "bed") sheet.revision = "R0";
    std::size_t notices = 0;
    for (const Document& document : home.documents_after(record)) {
        if (document.sheet == "change-notice")
            for (const WalkedPaper& one : walk_of(document)) {
                if (!one.paper.starts_with("Change notice")) continue;
                CHECK(one.paper == "Change notice: file the old one");
                CHECK(trimmed_words(one.down) == "AAA-111");
                CHECK(trimmed_words(one.up) == "this paper");
                ++notices;
            }
        if (document.sheet == "folder-index")
            CHECK(words_of_blocks(document.blocks)
                      .find("Hook-up: BED\n" + record.find("hookup/bed")->code + "\nR0 stays\n") != std::string::npos);
    }
    CHECK(notices == 1);
}

TEST_CASE("what may not stand in the folder is not told by the notice, and does not stop it") {
    const std::string secret = "invented secret of the house";
    const FollowedHome home{demo_profile("adult-mask"),
                            edited_profile("adult-mask", std::string{kNewOrder} + "orders.supersedes: R1\n" +
                                                             "home.weapons_secured: " + secret)};
    REQUIRE(std::ranges::any_of(home.followed().edited,
                                [](const ListedChange& change) { return change.path == "home.weapons_secured"; }));
    CHECK(words_of_blocks(home.named("change-notice").blocks).find(secret) == std::string::npos);
    CHECK(home.refusals().find("change-notice") == std::string::npos);
}

TEST_CASE("every value of a notice and of an index may stand in the folder") {
    for (const char* name : {"change-notice", "folder-index"}) {
        std::size_t values = 0;
        const auto look = [&](const Inlines& inlines) {
            for (const Inline& piece : inlines) {
                if (piece.kind != Inline::Kind::value) continue;
                CHECK_MESSAGE((piece.value.audiences & folder) != 0, piece.value.field);
                ++values;
            }
        };
        const std::function<void(const std::vector<Block>&)> walk = [&](const std::vector<Block>& blocks) {
            for (const Block& block : blocks) {
                look(block.inlines), look(block.aside), walk(block.children);
                for (const TableRow& row : block.rows)
                    for (const TableCell& one : row.cells) look(one.inlines);
            }
        };
        walk(demo_update().named(name).blocks);
        CHECK(values > 50);
    }
}

TEST_CASE("the sheets of an update refuse nothing that the profile does not") {
    for (const char* name : kAllHomes) {
        CAPTURE(std::string{name});
        const FollowedHome home{demo_profile(name),
                                edited_profile(name, std::string{kNewOrder} + "orders.supersedes: R1\n"
                                                                              "prescriptions.0.rate: 17 breaths/min\n"
                                                                              "prescriptions.0.changed_in: R2\n")};
        for (const char* rule : {"misreadable-number", "private", "audience", "error-prone"})
            CHECK_MESSAGE(home.refusals().find(rule) == std::string::npos, home.refusals());
    }
}

TEST_CASE("a paper that stays and moves leaves its old place and comes to its new one") {
    const char* there = "copies.0.sheet: hookup/night\ncopies.0.place: linen cupboard\n";
    const char* here = "copies.0.sheet: hookup/night\ncopies.0.place: bathroom door\n";
    const FollowedHome home{edited_profile("adult-mask", there),
                            edited_profile("adult-mask", std::string{kNewOrder} + here)};
    const std::string code = sheet_code(home.named("hookup/night"));
    REQUIRE(home.record().find("hookup/night")->code == code);
    std::map<std::string, std::pair<std::string, std::string>> found;
    for (const WalkedPaper& one : walk_of(home.named("change-notice")))
        if (one.paper == "Hook-up: NIGHT") found[one.place] = {trimmed_words(one.down), trimmed_words(one.up)};
    CHECK(found.size() == 2);
    CHECK(found["linen cupboard"] == std::pair<std::string, std::string>{code, "no new one"});
    CHECK(found["bathroom door"] == std::pair<std::string, std::string>{"no old one", code});
}

TEST_CASE(
    "the index of an update says of each sheet whether its paper is new, and with which revision it was printed") {
    const FollowedHome& home = demo_update();
    const Document& index = home.named("folder-index");
    std::map<std::string, std::string> states;
    for (const Block& block : index.blocks)
        for (const TableRow& row : block.rows) states[cell_words(row, 1)] = cell_words(row, 2);
    std::size_t stay = 0;
    for (const Document& document : home.documents()) {
        if (document.sheet == "alarm-response") continue;
        CAPTURE(document.name);
        const RecordedSheet* before = home.record().find(document.name);
        const std::string code = sheet_code(document);
        const bool kept = before != nullptr && before->code == code && !document.front("lists");
        CHECK(states[code] == (kept ? "R1 stays" : "R2 new"));
        stay += kept ? 1U : 0U;
    }
    CHECK(stay > 5);
}

TEST_CASE("the notice of the demo adult has two sides: the machine, and the paper") {
    for (const Paper paper : kPapers) CHECK(demo_update().placed("change-notice", {paper}).placed.pages.size() == 2);
}

TEST_CASE("notice and index hold all their words on their pages, for every home, in normal and in large print") {
    for (const char* name : kAllHomes)
        for (const Paper paper : kPapers)
            for (const double scale : {kNormalPrint, kLargePrint}) {
                CAPTURE(std::string{name});
                CAPTURE(scale);
                FollowedHome home{
                    demo_profile(name),
                    edited_profile(name, std::string{kNewOrder} + "prescriptions.0.alarms.high_pressure: 39 cmH2O\n"
                                                                  "prescriptions.0.changed_in: R2\n")};
                for (const char* sheet : {"change-notice", "folder-index"}) {
                    const SetSheet set = home.placed(sheet, {paper, scale});
                    for (const PlacedPage& page : set.placed.pages) {
                        check_that_no_texts_overlap(page);
                        for (const PlacedItem& item : page.items) CHECK(area_of(item).within(live_area(page), 0.06));
                    }
                    const std::string placed = without_blanks(words_of(set.placed));
                    each_passage(set.document.blocks, [&](const std::string& words) {
                        CHECK_MESSAGE(placed.find(words) != std::string::npos, words);
                    });
                }
                const std::string refused = home.refusals();
                for (const char* rule : {"word-wider-than-column", "sheet-over-page-budget", "template-", "unprinted"})
                    CHECK_MESSAGE(refused.find(rule) == std::string::npos, refused);
            }
}
