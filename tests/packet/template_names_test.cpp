#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <memory>
#include <set>

#include "every_one.hpp"
#include "followed_home.hpp"
#include "markup/template_lines.hpp"
#include "packet/documents.hpp"
#include "packet/print_home_sheets.hpp"
#include "packet/stationery_shelf.hpp"
#include "rules/edited_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// A tag of a template file and the line on which it stands first.
struct Tag {
    std::string file;  ///< "en/bedside-card.md"
    std::string name;
    std::size_t line = 0;
};

/// Names in sections that nothing of the demo homes opens: a prescription that ends while another goes on, a machine
/// that takes over an order. They are tried in taken_names_test.cpp.
bool is_out_of_reach(const Tag& tag) {
    return tag.name == "change.goes_on" || (tag.name == ".tag" && tag.file.ends_with("change-notice.md"));
}

/// The name with a letter more, at every tag of it in the file.
std::string misspelt(std::string text, const std::string& name) {
    for (const char* sign : {"", "#", "^", "/"})
        text = with_replaced(std::move(text), fmt::format("{{{{{}{}}}}}", sign, name),
                             fmt::format("{{{{{}{}q}}}}", sign, name));
    return text;
}

std::vector<Tag> tags_of(const Stationery& language, const TemplateFiles& files) {
    std::vector<Tag> tags;
    std::set<std::string> known;
    for (const auto& [sheet, from] : language.sheets)
        for (const UsedName& used : names_in(from)) {
            const SourceText& file = from.files[used.span.file];
            const std::string path = file.name.substr(std::string{"templates/"}.size());
            std::string name = used.name;
            if (name.front() == '#' || name.front() == '^') name.erase(0, 1);
            if (name == "." || !known.insert(path + " " + name).second) continue;
            const std::string& text = files.at(path);
            if (misspelt(text, name) == text) continue;  // written with blanks inside the braces
            std::size_t at = text.size();
            for (const char* sign : {"", "#", "^"})
                at = std::min(at, text.find(fmt::format("{{{{{}{}}}}}", sign, name)));
            tags.push_back({path, name,
                            static_cast<std::size_t>(
                                std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n')) +
                                1});
        }
    return tags;
}

/// The sheets that are made of a file, alone: what a template says of its names needs no other sheet.
Stationery sheets_with(const Stationery& language, const std::string& path, const std::string& text,
                       const TemplateFiles& files, const std::string& folder) {
    Stationery some = language;
    some.sheets.clear();
    Partials partials;
    const std::string below = folder + "partials/";
    for (const auto& [name, content] : files)
        if (name.starts_with(below))
            partials.emplace(name.substr(below.size(), name.size() - below.size() - 3),
                             SourceText{"templates/" + name, name == path ? text : content});
    const bool lists = path.find("index") != path.npos || path.find("change-notice") != path.npos;
    for (const auto& [sheet, from] : language.sheets) {
        // What lists others needs something to list: one sheet, and one of several leaves.
        const bool listed = lists && (sheet == "supplies" || sheet.starts_with("alarm-response"));
        const bool uses =
            std::ranges::any_of(from.files, [&](const SourceText& file) { return file.name == "templates/" + path; });
        if (!uses && !listed) continue;
        const std::string own = folder + sheet + ".md";
        some.sheets.emplace(sheet, parse_template({"templates/" + own, own == path ? text : files.at(own)}, partials));
    }
    return some;
}

bool reports(const std::vector<Finding>& findings, const Tag& tag) {
    return std::ranges::any_of(findings, [&](const Finding& finding) {
        return finding.rule == "template-name-unknown" && !finding.marks.empty() &&
               finding.marks.front().file == "templates/" + tag.file && finding.marks.front().place.known();
    });
}

std::vector<std::string> unreported_in(const std::string& language) {
    const TemplateFiles files = built_in_files();
    const StationeryShelf shelf{files};
    const Stationery& stationery = shelf.at(language, {shelf.region_for(language)}).stationery;
    std::vector<std::unique_ptr<Household>> homes;
    std::vector<std::unique_ptr<CheckedHome>> checked;
    for (const char* home : kAllHomes) {
        checked.push_back(std::make_unique<CheckedHome>(check_home(demo_profile(home), demo_day())));
        homes.push_back(std::make_unique<Household>(Household{checked.back()->profile, demo_day()}));
    }
    // A year on, tasks are overdue.
    homes.push_back(std::make_unique<Household>(Household{checked.front()->profile, *Date::parse("2027-02-03")}));
    checked.push_back(std::make_unique<CheckedHome>(*checked.front()));
    const FollowedHome followed{demo_profile("adult-tracheostomy"), demo_profile("adult-tracheostomy-revision-2"),
                                stationery};
    const CheckedHome next = check_home(demo_profile("adult-tracheostomy-revision-2"), update_day());
    const Household after{next.profile, update_day()};
    std::vector<std::string> unreported;
    std::size_t tried = 0;
    for (const Tag& tag : tags_of(stationery, files)) {
        if (is_out_of_reach(tag)) continue;
        ++tried;
        const Stationery some =
            sheets_with(stationery, tag.file, misspelt(files.at(tag.file), tag.name), files, language + "/");
        const auto told = [&](const Household& home, std::span<const Finding> of_profile,
                              const FollowedPacket* packet) {
            std::vector<Finding> findings;
            make_documents(home, of_profile, some, some.in_order(), findings, packet);
            return reports(findings, tag);
        };
        bool reported = told(after, next.findings, &followed.followed());
        for (std::size_t at = 0; at < homes.size() && !reported; ++at)
            reported = told(*homes[at], checked[at]->findings, nullptr);
        if (!reported) unreported.push_back(fmt::format("{}:{}: {}", tag.file, tag.line, tag.name));
    }
    CHECK(tried > 500);
    return unreported;
}

}  // namespace

TEST_CASE("a name that is misspelt in any template is reported in its file") {
    for (const char* language : {"en", "es"}) {
        // A translation names what its twin names: tests/language/twins_test.cpp.
        if (std::string_view{language} != "en" && !tries_every_one()) continue;
        const std::vector<std::string> unreported = unreported_in(language);
        CHECK_MESSAGE(unreported.empty(), joined(unreported, "\n"));
    }
}
