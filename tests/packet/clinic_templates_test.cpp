#include <doctest/doctest.h>

#include <algorithm>
#include <memory>

#include "packet/cautions.hpp"
#include "packet/print_home_sheets.hpp"
#include "packet/stationery_shelf.hpp"
#include "packet/temporary_folder.hpp"
#include "packet/translation.hpp"
#include "rules/edited_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

std::string built_in(const std::string& path) { return built_in_files().at(path); }

/// The stationery of a clinic whose folder holds one file.
const ShelvedStationery& with_file(const TemporaryFolder& folder, const std::string& path, const std::string& text,
                                   std::vector<std::unique_ptr<StationeryShelf>>& shelves) {
    put(folder / path, text);
    shelves.push_back(std::make_unique<StationeryShelf>(built_in_files(), read_template_folder(folder.path())));
    return shelves.back()->at("en", {"us"});
}

PrintedHome printed_with(const Stationery& stationery, const std::string& sheet) {
    PrintOrder order;
    order.sheets = {sheet};
    order.dump_layout = true;
    Measurer measurer;
    return print_home(demo_profile("adult-tracheostomy"), demo_day(), order, stationery, measurer);
}

bool holds(const std::string& text, std::string_view words) { return text.find(words) != std::string::npos; }

}  // namespace

TEST_CASE("a clinic's sheet, partial, word and new sheet lie over the built-in ones") {
    const TemporaryFolder folder;
    put(folder / "en/supplies.md", built_in("en/supplies.md") + "\n## From our clinic\n\nOrder by Thursday.\n");
    put(folder / "en/pharmacy-list.md",
        "---\ntitle: Pharmacy list\naudience: folder\npages: 1\norder: 75\n---\n## Ask for\n\n"
        "- {{person.preferred_name}}'s box\n");
    put(folder / "en/words.yaml", "sheets:\n  pharmacy-list: Pharmacy list\nroles:\n  clinic: ward 7\n");
    put(folder / "README.txt", "not a template");
    const StationeryShelf shelf{built_in_files(), read_template_folder(folder.path())};
    const ShelvedStationery& clinic = shelf.at("en", {"us"});
    REQUIRE_MESSAGE(clinic.faults.empty(), summary(clinic.faults));
    CHECK(holds(file_named(printed_with(clinic.stationery, "supplies"), "supplies.layout.txt"), "Order by Thursday."));
    CHECK(holds(file_named(printed_with(clinic.stationery, "pharmacy-list"), "pharmacy-list.layout.txt"), "Toby"));
    CHECK(clinic.stationery.words.at("roles.clinic") == "ward 7");
    CHECK(clinic.stationery.words.at("roles.prescriber") == stationery().words.at("roles.prescriber"));
    // Another sheet is another paper: packets tell by the digest.
    CHECK(clinic.stationery.digest != stationery().digest);
    const std::vector<std::string> sheets = shelf.sheets();
    CHECK(std::ranges::find(sheets, "pharmacy-list") != sheets.end());
}

TEST_CASE("the built-in files laid over themselves change nothing") {
    TemplateOverlay same{"clinic", built_in_files()};
    const StationeryShelf shelf{built_in_files(), same};
    const ShelvedStationery& clinic = shelf.at("en", {"us"});
    CHECK_MESSAGE(clinic.faults.empty(), summary(clinic.faults));
    CHECK(clinic.stationery.sheets.size() == stationery().sheets.size());
}

TEST_CASE("an overlay without any one caution is refused, with the place of the caution and of the changed sheet") {
    std::size_t tried = 0;
    for (const auto& [name, sheet] : stationery().sheets) {
        const std::vector<Caution> cautions = cautions_of(sheet);
        for (const Caution& caution : cautions) {
            if (caution.file != sheet.name()) continue;  // partials are tried below
            const std::string path = caution.file.substr(std::string{"templates/"}.size());
            std::vector<std::string> lines = split(built_in(path), '\n');
            if (holds(lines[caution.place.line - 1], "{{#") || holds(lines[caution.place.line - 1], "{{/")) continue;
            lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(caution.place.line) - 1);
            CAPTURE(caution.file);
            CAPTURE(caution.place.line);
            TemplateFiles files = built_in_files();
            files[path] = joined(lines, "\n");
            std::vector<Finding> faults;
            const Stationery changed = read_stationery(files, "en", "us", faults, {{{path, "clinic/" + path}}, {}});
            check_cautions(changed, stationery(), faults);
            const auto dropped = std::ranges::find(faults, "template-caution-dropped", &Finding::rule);
            REQUIRE(dropped != faults.end());
            CHECK(dropped->marks.front().file == "clinic/" + path);
            CHECK(dropped->marks.back().file == caution.file);
            CHECK(dropped->marks.back().place.line <= caution.place.line);
            ++tried;
        }
    }
    CHECK(tried > 50);
}

TEST_CASE("rescue steps of a partial and the limits line are cautions, too") {
    std::vector<std::unique_ptr<StationeryShelf>> shelves;
    const TemporaryFolder one;
    const ShelvedStationery& steps =
        with_file(one, "en/partials/chart-rescue.md", "  1. Call {{contacts.emergency.phone}}.\n", shelves);
    CHECK(std::ranges::count(steps.faults, "template-caution-dropped", &Finding::rule) > 5);
    const TemporaryFolder two;
    const ShelvedStationery& limits = with_file(two, "en/words.yaml", "limits: Do as the paper says.\n", shelves);
    REQUIRE(limits.faults.size() == 1);
    CHECK(limits.faults.front().rule == "template-caution-dropped");
    CHECK(limits.faults.front().marks.front().file == (two / "en/words.yaml").string());
    CHECK(limits.faults.front().marks.front().place.line == 1);
}

TEST_CASE("a word that there is not is refused with the nearest") {
    std::vector<std::unique_ptr<StationeryShelf>> shelves;
    const TemporaryFolder folder;
    const ShelvedStationery& clinic = with_file(folder, "en/words.yaml", "\nroles:\n  clinik: ward 7\n", shelves);
    REQUIRE(clinic.faults.size() == 1);
    CHECK(clinic.faults.front().message == "There is no word `roles.clinik`; the nearest is `roles.clinic`.");
    CHECK(clinic.faults.front().marks.front().place.line == 3);
}

TEST_CASE("nothing outside the folder is read, and nothing misnamed is overlooked") {
    const TemporaryFolder outside;
    put(outside / "supplies.md", built_in("en/supplies.md"));
    const auto refused = [](const TemporaryFolder& folder) {
        try {
            read_template_folder(folder.path());
        } catch (const FolderError& fault) {
            return fault.cause();
        }
        return std::string{};
    };
    const TemporaryFolder link_out;
    fs::create_directories(link_out / "en");
    fs::create_symlink(outside / "supplies.md", link_out / "en/supplies.md");
    CHECK(holds(refused(link_out), "leads out of the folder"));
    const TemporaryFolder folder_out;
    fs::create_directory_symlink(outside.path(), folder_out / "en");
    CHECK(holds(refused(folder_out), "leads out of the folder"));
    const TemporaryFolder link_inside;
    put(link_inside / "en/supplies.md", built_in("en/supplies.md"));
    fs::create_symlink("supplies.md", link_inside / "en/hookup.md");
    CHECK(refused(link_inside).empty());
    const TemporaryFolder misnamed;
    put(misnamed / "en/supplies.mkd", "words");
    CHECK(holds(refused(misnamed), "is no template"));
    const TemporaryFolder large;
    put(large / "en/supplies.md", std::string(256 * 1024 + 1, 'x'));
    CHECK(holds(refused(large), "larger than 256 KiB"));
    CHECK_THROWS_AS(read_template_folder(misnamed / "not-there"), FolderError);
}

TEST_CASE("a translation that lacks a sheet, a word, a name or a step is told where it does") {
    struct Row {
        const char* path;
        const char* was;
        const char* now;
        const char* told;
    };
    const Row rows[] = {
        {"en/supplies.md", "## Know this {.act .tight}", "## Know this {.act}", "This section has"},
        {"en/words.yaml", "\n  clinic: ", "\n  clinick: ", "clinic"},
        {"en/partials/setting-mismatch.md", "{{contacts.equipment_provider.phone}}", "them",
         "\"contacts.equipment_provider.phone\" stands here"},
        {"en/partials/setting-mismatch.md", "1. Change nothing on the screen.\n", "", "numbered items"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.path});
        TemplateFiles files = built_in_files();
        REQUIRE(holds(files.at(row.path), row.was));
        files[row.path] = with_replaced(files.at(row.path), row.was, row.now);
        std::vector<Finding> faults;
        const Stationery translation = read_stationery(files, "en", "us", faults);
        compare_translation(stationery(), translation, faults);
        CHECK(std::ranges::any_of(faults, [&](const Finding& one) { return holds(one.message, row.told); }));
        for (const Finding& one : faults) CHECK(one.marks.front().place.known());
    }
    std::vector<Finding> none;
    compare_translation(stationery(), stationery(), none);
    CHECK_MESSAGE(none.empty(), summary(none));
}
