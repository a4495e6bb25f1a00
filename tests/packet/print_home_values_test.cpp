#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "layout/fonts.hpp"
#include "packet/documents.hpp"
#include "pdf/programs.hpp"
#include "print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "profile/read_profile.hpp"
#include "sheets/printer.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;
using ventfolio::trial::DrawnPage;
using ventfolio::trial::Scratch;

namespace {

std::string without_blanks(const std::string& text) {
    std::string kept;
    for (const char letter : plain_blanks(text))
        if (letter != ' ' && letter != '\n' && letter != '\f') kept += letter;
    return kept;
}

/// What the placed drawing says of one field, in reading order.
std::string placed_words(const SetHome& home, const std::string& field) {
    std::string words;
    for (const SetSheet& sheet : home.sheets)
        for (const PlacedPage& page : sheet.placed.pages)
            for (const PlacedItem& item : page.items)
                if (is_text(item) && item.origin.field == field) words += words_of(item);
    return words;
}

/// What a reader copies out of a whole file.
std::string read_back(const std::string& pdf) {
    const Scratch scratch;
    scratch.save("packet.pdf", pdf);
    const auto ran = scratch.run("pdftotext -raw -enc UTF-8 packet.pdf -");
    REQUIRE(ran.status == 0);
    REQUIRE(ran.err == "");
    return ran.out;
}

void collect(const std::vector<Block>& blocks, std::vector<Inlines>& all) {
    for (const Block& block : blocks) {
        all.push_back(block.inlines);
        all.push_back(block.aside);
        for (const TableCell& cell : block.head.cells) all.push_back(cell.inlines);
        for (const TableRow& row : block.rows)
            for (const TableCell& cell : row.cells) all.push_back(cell.inlines);
        collect(block.children, all);
    }
}

std::vector<FieldAt> given_settings(const Profile& profile) {
    std::vector<FieldAt> settings;
    for (const FieldAt& at : fields_of(profile))
        if (at.info.setting && at.reachable && at.path.starts_with("prescriptions.") && !at.field->missing() &&
            !at.field->is_none())
            settings.push_back(at);
    return settings;
}

}  // namespace

TEST_CASE("every setting and alarm limit of every prescription stands on paper as it was written") {
    const Printer printer{stationery().words, stationery().region};
    for (const char* home : kAllHomes) {
        const SourceText profile = demo_profile(home);
        const SetHome& set = set_demo_home(home);
        CAPTURE(std::string{home});
        REQUIRE_MESSAGE(!set.refused_by_sheets(), set.refusals());
        const std::string text = without_blanks(read_back(file_named(printed_home(profile), "packet.pdf")));
        const std::vector<FieldAt> settings = given_settings(set.checked.profile);
        CHECK(settings.size() >= 12);
        for (const FieldAt& setting : settings) {
            CAPTURE(setting.path);
            // The two ends of a pressure range stand in one: "14 to 22 cmH2O".
            const bool low = setting.info.key == "pressure_least";
            const bool high = setting.info.key == "pressure_most";
            const std::string placed =
                without_blanks(placed_words(set, low || high ? "calc.pressure_range" : setting.path));
            std::set<std::string> forms;
            for (const UnitForm form : {UnitForm::full, UnitForm::brief}) {
                const auto end = low ? UnitForm::number_only : form;
                const std::string value = printer.print(*setting.field, setting.info, setting.path, end).text();
                forms.insert(without_blanks(low ? value + "to" : high ? "to" + value : value));
            }
            CAPTURE(*forms.begin());
            CHECK_MESSAGE(std::ranges::any_of(
                              forms, [&](const std::string& form) { return placed.find(form) != std::string::npos; }),
                          "placed: " << placed);
            CHECK(std::ranges::any_of(forms,
                                      [&](const std::string& form) { return text.find(form) != std::string::npos; }));
        }
    }
}

TEST_CASE("no setting that a profile can hold is left off the paper") {
    // Any prescription may hold any of them; the rules have no part in this.
    for (const DeclaredField& declared : declared_fields_of<Profile>()) {
        if (!declared.info.setting || !declared.path.starts_with("prescriptions.N.")) continue;
        if (declared.path.ends_with("pressure_least") || declared.path.ends_with("pressure_most")) continue;
        const std::string path = "prescriptions.0" + declared.path.substr(std::string{"prescriptions.N"}.size());
        CAPTURE(path);
        const std::string parent = path.substr(0, path.rfind('.'));
        const bool new_group = parent.ends_with("volume_assured") || parent.ends_with("backup_breaths");
        const std::string example{declared.info.example};
        const SourceText source = edited_profile(
            "adult-tracheostomy", new_group ? fmt::format("{}: {{{}: {}}}", parent, declared.info.key, example)
                                            : fmt::format("{}: {}", path, example));
        const ReadResult read = read_profile(source);
        const std::vector<FieldAt> fields = fields_of(read.profile);
        const FieldAt* field = find_field(fields, path);
        REQUIRE(field != nullptr);
        REQUIRE(field->field->given());
        const Household household{read.profile, demo_day()};
        std::vector<Finding> findings;
        bool in_a_document = false;
        for (const Document& document :
             make_documents(household, {}, stationery(), stationery().in_order(), findings)) {
            std::vector<Inlines> all;
            collect(document.blocks, all);
            for (const Inlines& inlines : all)
                for (const Inline& piece : inlines) in_a_document = in_a_document || piece.value.field == path;
        }
        CHECK(findings.empty());
        CHECK(in_a_document);
    }
}

namespace {

constexpr int kDotsPerInch = 120;

/// Asks a drawn page whether each letter of a text left its mark.
class InkCheck {
  public:
    explicit InkCheck(const DrawnPage& picture) : picture_{picture} {}

    void look(const PlacedItem& item) const {
        const TextRun& run = item.text;
        double x = run.origin.x;
        for (std::size_t at = 0; at < run.text.size(); ++at) {
            const char32_t letter = run.text[at];
            const double width = FontMetrics::of(run.face).advance(std::u32string(1, letter)).width * run.size / 1000;
            if (letter != U' ' && letter != U'\u00A0') {
                // A point is a small square on the ground line: nothing else may pass for it.
                const bool point = letter == U'.';
                const double inset = point ? 0.15 * width : 0;
                const double height = (point ? 0.2 : 0.8) * run.size;
                const double depth = letter == U',' || letter == U'_' ? 0.2 * run.size : 0;
                const double seen = mark(x + inset, run.origin.y - height, width - 2 * inset, height + depth, run.ink);
                CHECK_MESSAGE(seen > (point ? 0.006 : 0.012) * pixels(run.size) * pixels(run.size),
                              "letter " << at << " of \"" << words_of(item) << "\" (" << item.origin.field
                                        << ") left a mark of " << seen << " pixels");
            }
            x += width + (run.kerns.empty() ? 0 : run.kerns[at] * run.size / 1000);
        }
        CHECK(std::abs(x - run.origin.x - run.width) < 0.05);
    }

  private:
    static double pixels(double points) { return points * kDotsPerInch / 72; }

    /// Black pixels of a rectangle in points, or white ones for white words.
    double mark(double left, double top, double width, double height, Ink ink) const {
        const auto from_x = static_cast<std::size_t>(pixels(left));
        const auto from_y = static_cast<std::size_t>(pixels(top));
        const auto to_x = static_cast<std::size_t>(pixels(left + width) + 1);
        const auto to_y = static_cast<std::size_t>(pixels(top + height) + 1);
        const double dark = picture_.ink(from_x, from_y, to_x - from_x, to_y - from_y);
        return ink == Ink::white ? static_cast<double>((to_x - from_x) * (to_y - from_y)) - dark : dark;
    }

    const DrawnPage& picture_;
};

}  // namespace

TEST_CASE("every letter, digit and decimal point that is placed is seen as ink") {
    std::size_t points = 0;
    for (const char* home : kAllHomes) {
        const SourceText profile = demo_profile(home);
        const SetHome& set = set_demo_home(home);
        CAPTURE(std::string{home});
        REQUIRE(!set.refused_by_sheets());
        const std::string pdf = file_named(printed_home(profile), "packet.pdf");
        std::size_t page_number = 2;  // behind the leaf of the print slip
        for (const SetSheet& sheet : set.sheets) {
            page_number += page_number % 2;  // a sheet begins on a front side
            for (const PlacedPage& page : sheet.placed.pages) {
                const DrawnPage picture = DrawnPage::of(pdf, kDotsPerInch, ++page_number);
                CAPTURE(sheet.placed.name);
                CAPTURE(page_number);
                for (const PlacedItem& item : page.items) {
                    if (!is_text(item)) continue;
                    InkCheck{picture}.look(item);
                    points += static_cast<std::size_t>(std::ranges::count(item.text.text, U'.'));
                }
            }
        }
    }
    CHECK(points > 100);
}

TEST_CASE("a bedside card shows no birth date, address, diagnosis, full name or directive") {
    const Printer printer{stationery().words, stationery().region};
    for (const char* home : kAllHomes) {
        const SourceText source = demo_profile(home);
        const SetHome& set = set_demo_home(home);
        CAPTURE(std::string{home});
        const Profile& profile = set.checked.profile;
        std::vector<std::string> secrets{printer.date(*profile.person->birth_date),
                                         printer.date(*profile.person->birth_date, UnitForm::brief),
                                         profile.person->birth_date->iso(),
                                         std::to_string(profile.person->birth_date->year()),
                                         *profile.person->legal_name,
                                         *profile.diagnosis->clinical,
                                         split(*profile.home->address, ',').front(),
                                         "diagnosis",
                                         "resuscitat",
                                         "directive"};
        const std::vector<std::string> names = split(*profile.person->legal_name, ' ');
        secrets.push_back(names.back());
        for (const std::string& part : split(*profile.diagnosis->clinical, ';')) secrets.emplace_back(trimmed(part));
        for (const std::string& part : split(*profile.diagnosis->plain, ';')) secrets.emplace_back(trimmed(part));
        if (profile.directive->decision_maker.given())
            secrets.push_back(profile.directive->decision_maker->name.or_else("no name"));

        PrintOrder order;
        order.sheets = {"bedside-card"};
        const std::string pdf = file_named(printed_home(source, order), "bedside-card.pdf");
        std::string text = lower_ascii(read_back(pdf));
        for (const SetSheet& sheet : set.sheets) {
            if (sheet.document.sheet != "bedside-card") continue;
            CAPTURE(sheet.placed.name);
            text += lower_ascii(words_of(sheet.placed));
            for (const PlacedPage& page : sheet.placed.pages) {
                for (const PlacedItem& item : page.items) {
                    for (const char* field : {"diagnosis.", "directive.", "person.birth_date", "person.legal_name",
                                              "home.address", "home.cross_street", "calc.age"})
                        CHECK_MESSAGE(!item.origin.field.starts_with(field), item.origin.field);
                }
            }
        }
        text = with_replaced(plain_blanks(text), "\n", " ");
        REQUIRE(text.find(lower_ascii(*profile.person->preferred_name)) != std::string::npos);
        for (const std::string& secret : secrets) {
            CAPTURE(secret);
            CHECK(text.find(lower_ascii(plain_blanks(secret))) == std::string::npos);
        }
    }
}
