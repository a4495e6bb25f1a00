#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <optional>
#include <set>

#include "every_one.hpp"
#include "packet/documents.hpp"
#include "print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "profile/read_profile.hpp"
#include "rules/edited_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

/// Every field of every demo home is made bad in every way that its kind allows. A bad value is refused at its place,
/// or it prints: as itself, or as NOT RECORDED. That is our promise; what a reader of papers expects of it needs no
/// source.
namespace {

/// A scalar, list or group in YAML to put in the place of a value; nothing where this cannot happen to the field.
using Damage = std::function<std::optional<std::string>(const FieldAt&)>;

struct DamagedPart {
    FieldAt at;
    std::size_t begin = 0;  ///< in the damaged text
    std::size_t end = 0;
};

struct DamagedHome {
    SourceText source;
    std::vector<DamagedPart> parts;
};

/// Given fields in the order of the file.
std::vector<FieldAt> fields_in_file(const Profile& profile) {
    std::vector<FieldAt> fields = fields_of(profile);
    std::erase_if(fields, [](const FieldAt& at) { return !at.reachable || !at.field->given(); });
    std::ranges::sort(fields, {}, [](const FieldAt& at) { return at.field->place.begin; });
    return fields;
}

/// Fields by their declaration: "prescriptions.N.rate".
using Declared = std::set<std::string>;

/// Those that no home and no item of a list had before.
std::vector<FieldAt> new_fields(const Profile& profile, Declared& known) {
    std::vector<FieldAt> fields = fields_in_file(profile);
    if (!tries_every_one())
        std::erase_if(fields, [&](const FieldAt& at) { return !known.insert(declared_path(at.path)).second; });
    return fields;
}

DamagedHome damaged(const SourceText& source, std::span<const FieldAt> fields, const Damage& damage) {
    DamagedHome home{{source.name, {}}, {}};
    std::string& text = home.source.text;
    std::size_t copied = 0;
    for (const FieldAt& at : fields) {
        const auto value = damage(at);
        if (!value) continue;
        text += source.text.substr(copied, at.field->place.begin - copied);
        home.parts.push_back({at, text.size(), text.size() + value->size()});
        text += *value;
        copied = at.field->place.end;
    }
    text += source.text.substr(copied);
    return home;
}

/// The finding points at the value or at its key. What is no text at all is told before anyone knows whose value it is.
bool points_at(const Mark& mark, const DamagedPart& part, const SourceText& source) {
    const std::string key = std::string{part.at.info.key} + ":";
    const std::size_t first = mark.field.empty() ? part.begin : source.text.rfind(key, part.begin);
    return (mark.field.empty() || mark.field == part.at.path) && mark.place.begin >= first &&
           mark.place.begin <= part.end;
}

/// What is quoted in a message has to be short enough to be read in it.
constexpr std::size_t kLongestMessage = 2000;

/// Each damaged field is refused at its own place. Many are damaged in one text: the reader tells everything in one
/// run.
std::size_t check_refused(const DamagedHome& home) {
    const ReadResult read = read_profile(home.source);
    for (const DamagedPart& part : home.parts) {
        const bool told = std::ranges::any_of(read.findings, [&](const Finding& finding) {
            return finding.severity == Severity::refuse && !finding.marks.empty() &&
                   points_at(finding.marks.front(), part, home.source);
        });
        CHECK_MESSAGE(told, part.at.path << ": "
                                         << home.source.text.substr(part.begin,
                                                                    std::min<std::size_t>(part.end - part.begin, 60)));
    }
    for (const Finding& finding : read.findings) {
        CHECK_MESSAGE(finding.message.size() < kLongestMessage, finding.rule << ": " << finding.message.size());
        CHECK_MESSAGE(finding.to_do.size() < kLongestMessage, finding.rule << ": " << finding.to_do.size());
    }
    return home.parts.size();
}

/// The same with so many fields damaged at once.
std::size_t check_refused(const SourceText& source, std::span<const FieldAt> fields, const Damage& damage,
                          std::size_t at_once) {
    std::size_t checked = 0;
    for (std::size_t begin = 0; begin < fields.size(); begin += at_once)
        checked +=
            check_refused(damaged(source, fields.subspan(begin, std::min(at_once, fields.size() - begin)), damage));
    return checked;
}

bool is_measured(const FieldAt& at) {
    return at.field->kind() == ValueKind::measure || at.field->kind() == ValueKind::range;
}

bool is_free_text(const FieldAt& at) { return at.field->kind() == ValueKind::text && at.info.shape == TextShape::free; }

std::string first_unit(const FieldAt& at) {
    if (!at.info.units.empty()) return split(at.info.units, ' ').front();
    return std::string{units_of(*at.field->dimension()).front().symbol};
}

/// One measure, or both ends of a range.
std::string written(const FieldAt& at, const std::string& measure) {
    return at.field->kind() == ValueKind::range ? fmt::format("{{from: {0}, to: {0}}}", measure) : measure;
}

// --- ways of being bad that no reading can mend

std::optional<std::string> emptied(const FieldAt&) { return ""; }

std::optional<std::string> of_wrong_type(const FieldAt&) { return "{sort: of, a: group}"; }

std::optional<std::string> without_unit(const FieldAt& at) {
    if (!is_measured(at)) return std::nullopt;
    return written(at, "5");
}

std::optional<std::string> with_unit_of_another_kind(const FieldAt& at) {
    if (!is_measured(at)) return std::nullopt;
    return written(at, at.field->dimension() == Dimension::pressure ? "5 mL" : "5 cmH2O");
}

std::optional<std::string> below_range(const FieldAt& at) {
    if (!is_measured(at)) return std::nullopt;
    const double least = at.info.least.value_or(0);
    return written(at, fmt::format("{} {}", least > 0 ? least / 2 : least * 2 - 1, first_unit(at)));
}

std::optional<std::string> above_range(const FieldAt& at) {
    if (!is_measured(at)) return std::nullopt;
    return written(at, fmt::format("{} {}", at.info.most ? *at.info.most * 2 + 1 : 1e9, first_unit(at)));
}

std::optional<std::string> impossible(const FieldAt& at) {
    switch (at.field->kind()) {
        case ValueKind::date:
            return "2026-02-30";
        case ValueKind::moment:
            return "2026-02-29 10:00";
        case ValueKind::clock_span:
            return "25:00 to 26:00";
        case ValueKind::interval:
            return "0 days";
        case ValueKind::revision:
            return "0";
        case ValueKind::choice:
            return "zebra";
        case ValueKind::flag:
            return "maybe";
        case ValueKind::text:
            return is_free_text(at) ? std::nullopt : std::optional<std::string>{"'*|{{x}}<b>'"};
        default:
            return std::nullopt;
    }
}

std::optional<std::string> far_away(const FieldAt& at) {
    switch (at.field->kind()) {
        case ValueKind::date:
            return "2999-01-01";
        case ValueKind::moment:
            return "1066-10-14 10:00";
        case ValueKind::interval:
            return "99999999999999999999 days";
        case ValueKind::revision:
            return "R99999999999999999999";
        case ValueKind::measure:
        case ValueKind::range:
            return written(at, fmt::format("99999999999999999999 {}", first_unit(at)));
        default:
            return std::nullopt;
    }
}

/// Characters that turn the direction of writing or mean nothing, written so that the file itself is clean.
std::optional<std::string> with_unprintable(const FieldAt&) { return "\"\\u202E21\\uE000\""; }

std::optional<std::string> enormous(const FieldAt&) { return std::string(100'000, 'A'); }

struct Way {
    const char* name;
    Damage damage;
    std::size_t at_least;  ///< fields that it can happen to, of all homes
};

const Way kWays[] = {
    {"emptied", emptied, 3000},
    {"wrong type", of_wrong_type, 3000},
    {"no unit", without_unit, 500},
    {"unit of another kind", with_unit_of_another_kind, 500},
    {"below its range", below_range, 500},
    {"above its range", above_range, 500},
    {"impossible", impossible, 1000},
    {"far away", far_away, 500},
    {"unprintable", with_unprintable, 3000},
};

// --- bad values that are read and print

/// Texts that other fields refer to, or that name a sheet: another one is refused for that, as it should be.
bool is_referred_to(const FieldAt& at) {
    constexpr const char* kKeys[] = {"id",   "label", "prescription", "unit",    "slot",  "sheet",
                                     "name", "by",    "rule",         "numbers", "covers"};
    return std::ranges::find(kKeys, at.info.key) != std::end(kKeys);
}

std::string quoted_yaml(const std::string& text) {
    std::string yaml = "\"";
    for (const char letter : text) {
        if (letter == '\n') {
            yaml += "\\n";
            continue;
        }
        if (letter == '"' || letter == '\\') yaml += '\\';
        yaml += letter;
    }
    return yaml + "\"";
}

/// The text of each field, no two alike, so that another field's value would be seen.
using Texts = std::map<std::string, std::string>;

struct HomeWithTexts {
    SourceText source;
    Texts texts;
};

/// A word for each number that means nothing: 0 is "Zbbb". Digits would be judged ("<1" can be misread), and
/// at the start of a sentence a small letter would become a capital.
std::string word_of_number(std::size_t number) {
    constexpr std::string_view kLetters = "bdfghjkv";
    std::string word = "Z";
    for (std::size_t place = 64; place > 0; place /= 8) word += kLetters[number / place % 8];
    return word;
}

struct OddText {
    std::string opening;
    std::string ending;
    std::size_t turns = 1;  ///< a third of the fields at a time, where a page has no room for all
};

/// Every free text that has room for it and whose turn it is, with a word of its own between opening and ending.
HomeWithTexts with_texts(const SourceText& source, const OddText& odd, std::size_t turn = 0) {
    const ReadResult read = read_profile(source);
    HomeWithTexts home;
    std::size_t number = 0;
    home.source = damaged(source, fields_in_file(read.profile), [&](const FieldAt& at) -> std::optional<std::string> {
                      const std::string text = odd.opening + word_of_number(number++) + odd.ending;
                      if (number % odd.turns != turn || !is_free_text(at) || is_referred_to(at) ||
                          at.info.longest < code_points(text).size())
                          return std::nullopt;
                      home.texts[at.path] = text;
                      return quoted_yaml(text);
                  }).source;
    return home;
}

std::string without_blanks(const std::string& text) {
    std::string kept;
    for (const char letter : plain_blanks(text))
        if (letter != ' ' && letter != '\n') kept += letter;
    return kept;
}

/// A card or a page may have no room for what is there now: that is told with the sheet, and the sheet not printed.
bool refused_for_room_only(const SetHome& home) {
    return std::ranges::all_of(home.of_sheets, [](const Finding& finding) {
        return finding.severity != Severity::refuse || finding.rule == "card-too-full" ||
               finding.rule == "sheet-over-page-budget";
    });
}

void for_each_value(const std::vector<Block>& blocks, const std::function<void(const PrintedValue&)>& look) {
    const auto in = [&](const Inlines& inlines) {
        for (const Inline& piece : inlines)
            if (piece.kind == Inline::Kind::value) look(piece.value);
    };
    for (const Block& block : blocks) {
        in(block.inlines);
        in(block.aside);
        for (const TableCell& cell : block.head.cells) in(cell.inlines);
        for (const TableRow& row : block.rows)
            for (const TableCell& cell : row.cells) in(cell.inlines);
        for_each_value(block.children, look);
    }
}

/// Every value of these fields says its own text and that of no other; how many of the fields are on paper.
std::size_t check_print_as_themselves(const SetHome& home, const Texts& texts) {
    std::set<std::string> seen;
    for (const SetSheet& sheet : home.sheets) {
        CAPTURE(sheet.document.name);
        for_each_value(sheet.document.blocks, [&](const PrintedValue& value) {
            const auto own = texts.find(value.field);
            if (own == texts.end()) return;
            seen.insert(value.field);
            CHECK_MESSAGE(value.text() == own->second, value.field << ": " << value.text());
        });
        for (const PlacedPage& page : sheet.placed.pages) {
            std::map<std::string, std::string> placed;
            for (const PlacedItem& item : page.items)
                if (is_text(item) && texts.contains(item.origin.field))
                    placed[item.origin.field] += without_blanks(words_of(item));
            for (const auto& [field, words] : placed)
                CHECK_MESSAGE(words.find(without_blanks(texts.at(field))) != std::string::npos, field << ": " << words);
        }
    }
    return seen.size();
}

/// Fields whose values stand in a document, by its name.
std::map<std::string, std::set<std::string>> fields_of_sheets(const SetHome& home, bool not_recorded) {
    std::map<std::string, std::set<std::string>> fields;
    for (const SetSheet& sheet : home.sheets)
        for_each_value(sheet.document.blocks, [&](const PrintedValue& value) {
            CHECK_MESSAGE(!value.text().empty(), value.field);
            if (value.not_recorded == not_recorded) fields[sheet.document.name].insert(value.field);
        });
    return fields;
}

}  // namespace

TEST_CASE("whatever is bad about a value of any field of any home, it is refused at its place") {
    constexpr std::size_t kAtOnce = 400;  // more than 500 findings are not told
    for (const Way& way : kWays) {
        CAPTURE(std::string{way.name});
        std::size_t checked = 0;
        for (const char* name : kAllHomes) {
            CAPTURE(std::string{name});
            const SourceText source = demo_profile(name);
            const ReadResult read = read_profile(source);
            checked += check_refused(source, fields_in_file(read.profile), way.damage, kAtOnce);
        }
        CHECK(checked >= way.at_least);
    }
}

TEST_CASE("a value of 100 kB in any field is refused at its place, in words that can be read") {
    constexpr std::size_t kAtOnce = 9;  // a profile may hold 1 MiB
    Declared known;
    std::size_t checked = 0;
    for (const char* name : kAllHomes) {
        CAPTURE(std::string{name});
        const SourceText source = demo_profile(name);
        const ReadResult read = read_profile(source);
        checked += check_refused(source, new_fields(read.profile, known), enormous, kAtOnce);
    }
    CHECK(checked > 400);
}

TEST_CASE("a key that stands twice is refused at its second place, in any group") {
    std::size_t doubled = 0;
    Declared known;
    for (const char* name : kAllHomes) {
        CAPTURE(std::string{name});
        const SourceText source = demo_profile(name);
        const ReadResult read = read_profile(source);
        for (const FieldAt& at : new_fields(read.profile, known)) {
            // Written in one line: doubled by putting the same again behind it, in braces or on a line of its own.
            const std::size_t begin = source.text.rfind(std::string{at.info.key} + ":", at.field->place.begin);
            REQUIRE(begin != std::string::npos);
            const std::size_t line = source.text.rfind('\n', begin) + 1;
            const std::string_view before = std::string_view{source.text}.substr(line, begin - line);
            const std::string pair = source.text.substr(begin, at.field->place.end - begin);
            if (pair.find('\n') != std::string::npos) continue;
            const bool braces = before.find('{') != std::string_view::npos;
            SourceText twice = source;
            twice.text.insert(begin, pair + (braces ? ", " : "\n" + std::string(begin - line, ' ')));
            const std::size_t second = begin + pair.size();
            ++doubled;
            const ReadResult again = read_profile(twice);
            const bool told = std::ranges::any_of(again.findings, [&](const Finding& finding) {
                return finding.severity == Severity::refuse && finding.marks.front().place.begin >= second &&
                       finding.marks.front().place.begin <= second + pair.size() &&
                       finding.message.find("twice") != std::string::npos;
            });
            CHECK_MESSAGE(told, at.path << ": " << pair);
        }
    }
    CHECK(doubled > 400);
}

TEST_CASE("each bad value alone is refused as it is among others" * doctest::skip(!tries_every_one())) {
    for (const char* name : kAllHomes) {
        CAPTURE(std::string{name});
        const SourceText source = demo_profile(name);
        const ReadResult read = read_profile(source);
        for (const Way& way : kWays) {
            CAPTURE(std::string{way.name});
            check_refused(source, fields_in_file(read.profile), way.damage, 1);
        }
    }
}

TEST_CASE("odd texts in all fields of a home at once each print as themselves, and nowhere else") {
    const OddText kOdd[] = {
        {"*|{{x}}<b>", "\"'\\"},  // signs of templates, Markdown, HTML and YAML
        {"", "\nb", 3},           // a line break
    };
    for (const char* name : kAllHomes) {
        for (const OddText& odd : kOdd) {
            std::size_t seen = 0;
            for (std::size_t turn = 0; turn < odd.turns; ++turn) {
                CAPTURE(std::string{name});
                CAPTURE(odd.ending);
                const HomeWithTexts home = with_texts(demo_profile(name), odd, turn);
                const SetHome set = set_home(home.source);
                REQUIRE_MESSAGE((!set.refused_by_profile() && refused_for_room_only(set)), set.refusals());
                seen += check_print_as_themselves(set, home.texts);
            }
            CHECK(seen > 60);
        }
    }
}

TEST_CASE("a letter that no font has is refused with the field, for every text that a sheet shows") {
    for (const char* name : kAllHomes) {
        CAPTURE(std::string{name});
        // U+4E2D, a Chinese character: Noto Sans has Latin, Greek and Cyrillic letters.
        const HomeWithTexts odd = with_texts(demo_profile(name), {"\u4E2D", ""});
        const SetHome set = set_home(odd.source);
        REQUIRE_MESSAGE(!set.refused_by_profile(), set.refusals());
        std::set<std::string> refused;
        for (const Finding& finding : set.of_sheets)
            if (finding.rule == "character-not-in-font" || finding.rule == "script-cannot-be-set")
                refused.insert(finding.marks.front().field);
        std::size_t shown = 0;
        for (const auto& [sheet, fields] : fields_of_sheets(set, false))
            for (const std::string& field : fields)
                if (odd.texts.contains(field)) {
                    ++shown;
                    CHECK_MESSAGE(refused.contains(field), sheet << ": " << field);
                }
        CHECK(shown > 60);
    }
}

TEST_CASE("another name, number or label in a text that others refer to is refused with places, or prints as itself") {
    Declared known;
    std::size_t refused = 0;
    std::size_t printed = 0;
    for (const char* name : kAllHomes) {
        CAPTURE(std::string{name});
        const SourceText source = demo_profile(name);
        const ReadResult read = read_profile(source);
        for (const FieldAt& at : new_fields(read.profile, known)) {
            if (!is_free_text(at) || !is_referred_to(at)) continue;
            const std::string text = "*|{{x}}<b>Zq";
            const DamagedHome home =
                damaged(source, std::span{&at, 1}, [&](const FieldAt&) { return quoted_yaml(text); });
            const SetHome set = set_home_like(set_demo_home(name), home.source);
            CAPTURE(at.path);
            for (const auto* findings : {&set.checked.findings, &set.of_sheets})
                for (const Finding& finding : *findings) {
                    REQUIRE(!finding.marks.empty());
                    CHECK_MESSAGE(finding.marks.front().place.known(), finding.rule);
                }
            if (set.refused_by_profile()) {
                ++refused;
                continue;
            }
            CHECK_MESSAGE(refused_for_room_only(set), set.refusals());
            printed += check_print_as_themselves(set, {{at.path, text}});
        }
    }
    CHECK(refused >= 3);
    CHECK(printed > 10);
}

TEST_CASE("whatever may be unknown prints NOT RECORDED on every sheet that showed it, in the other homes, too") {
    Declared known;
    std::size_t told = 0;
    for (const char* name : {"adult-long-names", "toddler-dual-limb", "adult-mains-only"}) {
        CAPTURE(std::string{name});
        const SourceText source = demo_profile(name);
        const SetHome& whole = set_demo_home(name);
        const auto shown = fields_of_sheets(whole, false);
        for (const FieldAt& at : new_fields(whole.checked.profile, known)) {
            const bool printed =
                std::ranges::any_of(shown, [&](const auto& sheet) { return sheet.second.contains(at.path); });
            if (!printed || at.info.grade != Grade::expected) continue;
            CAPTURE(at.path);
            const DamagedHome home = damaged(source, std::span{&at, 1}, [](const FieldAt&) { return "unknown"; });
            const SetHome set = set_home_like(whole, home.source);
            if (set.refused_by_profile()) continue;  // the reader and the rules have tests of their own
            CHECK_MESSAGE(refused_for_room_only(set), set.refusals());
            const auto gaps = fields_of_sheets(set, true);
            for (const auto& [sheet, fields] : shown) {
                const bool there =
                    std::ranges::any_of(set.sheets, [&](const SetSheet& one) { return one.document.name == sheet; });
                if (!there || !fields.contains(at.path)) continue;
                ++told;
                CHECK_MESSAGE((gaps.contains(sheet) && gaps.at(sheet).contains(at.path)), sheet);
            }
        }
    }
    CHECK(told > 50);
}
