#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "packet/documents.hpp"
#include "packet/sheet_furniture.hpp"
#include "print_home_sheets.hpp"
#include "profile/field_list.hpp"
#include "profile/field_paths.hpp"
#include "profile/read_profile.hpp"
#include "record/sheet_code.hpp"
#include "rules/judge.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

/// Every field of a home gets a value that stands nowhere else; then all paper is searched for it, whatever way it
/// took: through a template, a calculation, a finding, a title, the head or the foot of a page.
namespace {

struct Plant {
    std::string path;
    Audiences on = nobody;
    std::size_t begin = 0;
    std::size_t end = 0;
    std::string yaml;
    std::vector<std::string> seen_as;  ///< how paper would show it
};

/// Other fields refer to these, or they choose what is printed.
bool is_reference(const FieldAt& at) {
    for (const char* key : {"id", "unit", "prescription", "slot", "sheet", "rule", "call", "record_number", "revision",
                            "size", "country", "numbers"})
        if (at.info.key == key) return true;
    return at.path.starts_with("accepted.") && at.info.key != "reason" && at.info.key != "by";
}

/// Unit words in YAML stay; the number gets a fraction of its own.
std::optional<Plant> plant(const FieldAt& at, const std::string& text, std::size_t number) {
    Plant plant{at.path, at.info.on, at.field->place.begin, at.field->place.end, {}, {}};
    const std::string was = text.substr(plant.begin, plant.end - plant.begin);
    switch (at.field->kind()) {
        case ValueKind::text: {
            if (at.info.shape == TextShape::phone) {
                plant.yaml = fmt::format("555-01{:02}-{:04}", number % 100, 3000 + number);
                plant.seen_as = {plant.yaml};
                return plant;
            }
            if (at.info.shape != TextShape::free || at.info.longest < 8) return std::nullopt;
            plant.yaml = fmt::format("Qz{:04}kw", number);
            plant.seen_as = {plant.yaml};
            return plant;
        }
        case ValueKind::text_list:
            plant.yaml = fmt::format("[Qz{:04}kw]", number);
            plant.seen_as = {fmt::format("Qz{:04}kw", number)};
            return plant;
        case ValueKind::measure: {
            const std::size_t digits = was.find_first_not_of("-0123456789");
            if (digits == 0 || digits == std::string::npos || was[digits] != ' ') return std::nullopt;
            const std::string fraction = fmt::format("0{:04}7", number);
            plant.yaml = was.substr(0, digits) + "." + fraction + was.substr(digits);
            plant.seen_as = {"." + fraction};
            return plant;
        }
        case ValueKind::date: {
            // Steps of 37 days: no interval of a profile leads from one planted day to another.
            const Date day = Date::of(1931, 1, 1)->plus_days(37 * static_cast<int>(number));
            static constexpr const char* kMonths[] = {"January",   "February", "March",    "April",
                                                      "May",       "June",     "July",     "August",
                                                      "September", "October",  "November", "December"};
            const std::string month = kMonths[day.month() - 1];
            plant.yaml = day.iso();
            static constexpr const char* kSpanishMonths[] = {"enero",      "febrero", "marzo",     "abril",
                                                             "mayo",       "junio",   "julio",     "agosto",
                                                             "septiembre", "octubre", "noviembre", "diciembre"};
            plant.seen_as = {day.iso()};
            for (const std::string& name : {month, std::string{kSpanishMonths[day.month() - 1]}})
                for (const std::string& printed : {name, name.substr(0, 3)})
                    plant.seen_as.push_back(fmt::format("{} {} {}", day.day(), printed, day.year()));
            return plant;
        }
        default:
            return std::nullopt;
    }
}

std::string planted(std::string text, std::vector<Plant> plants) {
    std::ranges::sort(plants, std::greater{}, &Plant::begin);
    for (const Plant& one : plants) text.replace(one.begin, one.end - one.begin, one.yaml);
    return text;
}

/// Plants that the reader takes: a value out of its range, or a form that a field does not have, is left as it was.
struct Planted {
    SourceText source;
    ReadResult read;
    std::vector<Plant> plants;
};

Planted planted_home(std::string_view home) {
    const SourceText source = demo_profile(home);
    const ReadResult before = read_profile(source);
    Planted result;
    std::size_t number = 0;
    for (const FieldAt& at : fields_of(before.profile)) {
        if (!at.reachable || !at.field->given() || is_reference(at)) continue;
        if (auto one = plant(at, source.text, ++number)) result.plants.push_back(std::move(*one));
    }
    for (int round = 0; round < 4; ++round) {
        result.source = {source.name, planted(source.text, result.plants)};
        result.read = read_profile(result.source);
        std::set<std::string> refused;
        for (const Finding& finding : result.read.findings)
            if (finding.severity == Severity::refuse)
                for (const Mark& mark : finding.marks) refused.insert(mark.field);
        if (refused.empty()) return result;
        std::erase_if(result.plants, [&](const Plant& one) { return refused.contains(one.path); });
    }
    FAIL("the planted home cannot be read");
    return result;
}

std::string words_without_breaks(const PlacedSheet& sheet) { return plain_blanks(words_of(sheet)); }

/// Looks for every planted value on every sheet, and says how many of them stand somewhere.
std::size_t shown_on_paper(const Planted& planted, const Stationery& stationery) {
    CAPTURE(stationery.languages());
    const Household household{planted.read.profile, demo_day()};
    const std::vector<Finding> findings = judge(planted.read.profile, planted.source, demo_day());
    std::vector<Finding> of_sheets;
    Measurer measurer;
    std::set<std::string> shown;
    std::size_t sheets = 0;
    for (Document& document : make_documents(household, findings, stationery, stationery.in_order(), of_sheets)) {
        ++sheets;
        document.not_yet_checked = true;
        const Audience audience = *audience_from(*document.front("audience"));
        const Furniture furniture = furniture_for(document, household, stationery, sheet_code(document));
        const std::string words = words_without_breaks(lay_out(document, furniture, {}, measurer, of_sheets)) + " " +
                                  plain_text(document.title);
        for (const Plant& one : planted.plants) {
            const bool here = std::ranges::any_of(
                one.seen_as, [&](const std::string& text) { return words.find(text) != std::string::npos; });
            if (!here) continue;
            shown.insert(one.path);
            CHECK_MESSAGE((one.on & audience) != 0,
                          one.path << " stands on " << document.name << ", and may stand for " << names_of(one.on));
        }
    }
    CHECK(sheets >= 12);
    return shown.size();
}

}  // namespace

TEST_CASE("whatever a field holds stands only on sheets whose readers may know it, in every language") {
    std::size_t shown_somewhere = 0;
    std::size_t planted_in_all = 0;
    for (const char* home : kHomes) {
        CAPTURE(std::string{home});
        const Planted result = planted_home(home);
        CHECK(result.plants.size() > 150);
        planted_in_all += result.plants.size();
        const std::size_t shown = shown_on_paper(result, stationery());
        CHECK(shown_on_paper(result, spanish_stationery()) > shown * 9 / 10);
        CHECK(shown_on_paper(result, stationery_in_both()) > shown * 9 / 10);
        shown_somewhere += shown;
    }
    CHECK(planted_in_all > 500);
    CHECK(shown_somewhere > 300);
}
