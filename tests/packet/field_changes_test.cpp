#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "packet/documents.hpp"
#include "packet/sheet_furniture.hpp"
#include "print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "profile/read_profile.hpp"
#include "record/sheet_code.hpp"
#include "rules/judge.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

/// One field after the other is changed, alone. A sheet must get another code if and only if its pages differ when they
/// are drawn: a code that stays would leave wrong paper on the wall, one that changes would replace true paper.
namespace {

/// Values to put in the place of one, in the order in which they are tried: the reader refuses some.
std::vector<std::string> other_values(const FieldAt& at, const std::string& was) {
    const auto number = was.find_first_of("0123456789");
    switch (at.field->kind()) {
        case ValueKind::text:
            if (at.info.shape == TextShape::phone) return {"555-0199"};
            if (at.info.shape == TextShape::record_number) return {"DEMO-99"};
            return {"Otherwise", "other", "E", "AU", "R9"};
        case ValueKind::text_list:
            return {"[otherwise]"};
        case ValueKind::flag:
            return {was == "true" ? "false" : "true"};
        case ValueKind::date:
            return {"2026-01-20", "2026-02-20", "2027-03-01", "2019-04-05"};
        case ValueKind::moment:
            return {"2026-01-13 11:00"};
        case ValueKind::clock_span:
            return {"7 PM to 6 AM"};
        case ValueKind::interval:
            return {"5 weeks", "9 days", "2 months"};
        case ValueKind::revision:
            return {"R4"};
        case ValueKind::choice: {
            std::vector<std::string> words;
            for (const std::string_view word : at.field->choices())
                if (word != was) words.emplace_back(word);
            return words;
        }
        case ValueKind::measure:
        case ValueKind::range: {
            if (number == std::string::npos) return {};
            std::vector<std::string> others;
            // The first number of the text, one and two more or less; of a range this is its lower end.
            const std::size_t end = was.find_first_not_of("0123456789", number);
            const long long value = std::stoll(was.substr(number, end - number));
            for (const long long step : {-1, 1, -2, 2, 10, -10})
                if (value + step >= 0)
                    others.push_back(was.substr(0, number) + fmt::format("{}", value + step) +
                                     (end == std::string::npos ? "" : was.substr(end)));
            return others;
        }
    }
    return {};
}

/// A home in which one field differs, if the reader takes any other value for it.
struct ChangedHome {
    std::string value;
    SourceText source;
    Profile profile;
};

std::optional<ChangedHome> with_other_value(const FieldAt& at, const SourceText& source) {
    const std::size_t begin = at.field->place.begin;
    const std::size_t length = at.field->place.end - begin;
    for (const std::string& value : other_values(at, source.text.substr(begin, length))) {
        ChangedHome home{value, source, {}};
        home.source.text.replace(begin, length, value);
        ReadResult read = read_profile(home.source);
        const bool readable = std::ranges::none_of(
            read.findings, [](const Finding& finding) { return finding.severity == Severity::refuse; });
        if (!readable) continue;
        home.profile = std::move(read.profile);
        return home;
    }
    return std::nullopt;
}

struct Paper {
    Document document;
    std::string code;
    std::string drawing;
};
using Papers = std::map<std::string, Paper>;

Measurer& measurer() {
    static Measurer one;
    return one;
}

/// With the furniture of one home for all, so that revision, dates and codes at the foot are the same.
std::string drawing_of(const Document& document, const Household& furnished) {
    std::vector<Finding> ignored;
    const Furniture furniture = furniture_for(document, furnished, stationery(), "000-000");
    return dump(lay_out(document, furniture, {}, measurer(), ignored));
}

/// What the sheets of a home say, by name. Two equal trees have one drawing: that of `before` is taken then.
Papers papers_of(const Profile& profile, const SourceText& source, const Household& furnished, const Papers& before) {
    Papers papers;
    std::vector<Finding> ignored;
    const std::vector<Finding> findings = judge(profile, source, demo_day());
    const Household home{profile, demo_day()};
    for (Document& document : make_documents(home, findings, stationery(), stationery().in_order(), ignored)) {
        if (document.front("lists")) continue;  // always printed
        const auto known = before.find(document.name);
        const bool same = known != before.end() && known->second.document == document;
        Paper paper{document, sheet_code(document), same ? known->second.drawing : drawing_of(document, furnished)};
        papers.emplace(document.name, std::move(paper));
    }
    return papers;
}

using Names = std::set<std::string>;

template <class Part>
Names differing(const Papers& one, const Papers& other, Part part) {
    Names names;
    for (const auto& [name, paper] : one) {
        const auto found = other.find(name);
        if (found == other.end() || part(paper) != part(found->second)) names.insert(name);
    }
    for (const auto& [name, paper] : other)
        if (!one.contains(name)) names.insert(name);
    return names;
}

/// Changes each field of a home that no home before it had.
void check_every_field(const char* home, std::set<std::string>& known, std::size_t at_least) {
    CAPTURE(std::string{home});
    const SourceText source = demo_profile(home);
    const ReadResult read = read_profile(source);
    const Household household{read.profile, demo_day()};
    const Papers before = papers_of(read.profile, source, household, {});
    std::size_t changed = 0;
    std::size_t seen = 0;
    std::size_t untried = 0;
    for (const FieldAt& at : fields_of(read.profile)) {
        if (!at.reachable || !at.field->given() || known.contains(declared_path(at.path))) continue;
        const auto other = with_other_value(at, source);
        if (!other) {
            ++untried;
            continue;
        }
        ++changed;
        const Papers after = papers_of(other->profile, other->source, household, before);
        const Names reprinted = differing(before, after, [](const Paper& paper) { return paper.code; });
        const Names differ = differing(before, after, [](const Paper& paper) { return paper.drawing; });
        seen += differ.empty() ? 0U : 1U;
        CHECK_MESSAGE(reprinted == differ, fmt::format("{}: {}\n  other code:  {}\n  other pages: {}", at.path,
                                                       other->value, fmt::format("{}", fmt::join(reprinted, " ")),
                                                       fmt::format("{}", fmt::join(differ, " "))));
    }
    for (const FieldAt& at : fields_of(read.profile))
        if (at.field->given()) known.insert(declared_path(at.path));
    MESSAGE(changed << " fields changed, " << seen << " of them seen on paper, " << untried << " not changeable alone");
    CHECK(changed >= at_least);
    CHECK(seen * 2 > changed);
    CHECK(untried == 0);
}

}  // namespace

TEST_CASE("whichever field changes, the sheets with another code are those whose pages differ") {
    std::set<std::string> known;
    check_every_field("adult-tracheostomy", known, 700);
    check_every_field("child-tracheostomy", known, 30);
    check_every_field("adult-mask", known, 20);
}
