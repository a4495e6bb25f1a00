#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <memory>
#include <set>

#include "every_one.hpp"
#include "followed_home.hpp"
#include "markup/render.hpp"
#include "packet/documents.hpp"
#include "packet/print_home_sheets.hpp"
#include "packet/stationery_shelf.hpp"
#include "packet/worded_home.hpp"
#include "rules/edited_home.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

/// What a template names is taken out of the data of a home, one name after the other. What a name means is found here
/// a second time, by the Mustache specification ("Dotted Names - Context Precedence"), and not by the room that is
/// tested.

namespace {

/// The data of one name: an entry of a group, or an item of a list.
struct Entry {
    TemplateData::Object* group = nullptr;  ///< null for an item of a list, which is named "."
    std::string key;
    TemplateData* data = nullptr;
};

/// The test owns the tree, and the renderer wants it constant.
TemplateData& changeable(const TemplateData& data) { return const_cast<TemplateData&>(data); }

class Levels {
  public:
    void push(TemplateData* data, bool item = false) { levels_.push_back({data, item}); }
    void pop() { levels_.pop_back(); }

    std::optional<Entry> find(const std::string& name) const {
        if (name == ".") return Entry{nullptr, {}, levels_.back().data};
        const bool own = name.starts_with('.');  // of the innermost group alone: src/markup/scope.hpp
        const std::vector<std::string> steps = split(name.substr(own ? 1 : 0), '.');
        for (auto level = levels_.rbegin(); level != levels_.rend(); ++level) {
            if (own && (level->data == nullptr || level->data->object() == nullptr)) continue;
            std::optional<Entry> entry = entry_in(level->data, steps.front());
            if (!entry && level->item && (name == "first" || name == "last")) return std::nullopt;
            if (!entry && own) return std::nullopt;
            if (!entry) continue;
            for (std::size_t step = 1; entry && step < steps.size(); ++step) entry = entry_in(entry->data, steps[step]);
            return entry;
        }
        return std::nullopt;
    }

  private:
    static std::optional<Entry> entry_in(TemplateData* data, const std::string& key) {
        TemplateData::Object* group = data == nullptr ? nullptr : data->object();
        if (group == nullptr) return std::nullopt;
        const auto found = group->find(key);
        if (found == group->end()) return std::nullopt;
        return Entry{group, key, &found->second};
    }

    struct Level {
        TemplateData* data;  ///< null for a section without data of its own
        bool item;           ///< of a list: `first` and `last` are the renderer's own
    };
    std::vector<Level> levels_;
};

/// A name where a template uses it, and what it means there.
struct Use {
    const TemplateNode& node;
    const Entry& entry;
    bool printed;  ///< in sections that this home prints
    bool guarded;  ///< stands in a section of the same data: without data it is skipped, not blank
};

/// Every use of a name that has data for a home, also in sections that it does not print.
class Reader {
  public:
    Reader(const std::vector<TemplateData*>& levels, std::function<void(const Use&)> visit) : visit_{std::move(visit)} {
        for (TemplateData* level : levels) levels_.push(level);
    }

    void walk(const std::vector<TemplateNode>& nodes, bool printed = true) {
        for (const TemplateNode& node : nodes) {
            if (node.kind == TemplateNode::Kind::piece) continue;
            const std::optional<Entry> entry = levels_.find(node.name);
            if (entry) visit_({node, *entry, printed, std::ranges::find(open_, entry->data) != open_.end()});
            if (node.kind == TemplateNode::Kind::section) section(node, entry ? entry->data : nullptr, printed);
            if (node.kind == TemplateNode::Kind::inverted)
                inside(node, nullptr, printed && entry && !opens(*entry->data));
        }
    }

  private:
    static bool opens(const TemplateData& data) {
        if (const bool* flag = data.flag()) return *flag;
        if (const TemplateData::Items* items = data.items()) return !items->empty();
        return !data.missing();
    }

    void section(const TemplateNode& node, TemplateData* data, bool printed) {
        const TemplateData::Items* items = data == nullptr ? nullptr : data->items();
        if (data == nullptr) return inside(node, data, printed);  // `first` and `last` of an item
        open_.push_back(data);
        if (items == nullptr) inside(node, data, printed && opens(*data));
        if (items != nullptr)
            for (const TemplateData& item : *items) inside(node, &changeable(item), printed, true);
        open_.pop_back();
    }

    void inside(const TemplateNode& node, TemplateData* data, bool printed, bool item = false) {
        levels_.push(data, item);
        walk(node.children, printed);
        levels_.pop();
    }

    Levels levels_;
    std::vector<const TemplateData*> open_;
    std::function<void(const Use&)> visit_;
};

Place place_of(const Template& from, TemplateSpan span) { return from.files[span.file].place(span.begin, span.end); }

std::string shown(const Template& from, const TemplateNode& node) {
    return fmt::format("{}:{}: {}", from.files[node.span.file].name, place_of(from, node.span).line, node.name);
}

/// Uses of a name in a template, as "file:line:column".
void add_places(const Template& from, const std::vector<TemplateNode>& nodes, const std::string& name,
                std::set<std::string>& places) {
    for (const TemplateNode& node : nodes) {
        const Place place = place_of(from, node.span);
        if (node.kind != TemplateNode::Kind::piece && node.name == name)
            places.insert(fmt::format("{}:{}:{}", from.files[node.span.file].name, place.line, place.column));
        add_places(from, node.children, name, places);
    }
}

/// A finding of this rule names the name, and the file, the line and the column of a use of it.
bool told(const std::vector<Finding>& findings, std::string_view rule, const Template& from, const std::string& name) {
    std::set<std::string> places;
    add_places(from, from.title, name, places);
    add_places(from, from.body, name, places);
    return std::ranges::any_of(findings, [&](const Finding& finding) {
        const Mark& mark = finding.marks.front();
        return finding.rule == rule && finding.severity == Severity::refuse &&
               finding.message.find(fmt::format("\"{}\"", name)) != std::string::npos &&
               places.contains(fmt::format("{}:{}:{}", mark.file, mark.place.line, mark.place.column));
    });
}

/// What was found over all homes.
struct Outcome {
    std::set<std::string> names;       ///< all uses
    std::set<std::string> proved;      ///< of these, what some home reports when it lacks the data
    std::set<std::string> unreported;  ///< printed in some home, which is silent about it
    std::set<std::string> printed_blank;
};

/// What a template asks of a home before there is a sheet at all.
std::vector<std::string> conditions_of(const Template& from) {
    const FrontMatterLine* line = from.front("only_if");
    std::vector<std::string> names = line == nullptr ? std::vector<std::string>{} : split(line->value, ' ');
    std::erase(names, "");
    return names;
}

std::string shown_condition(const Template& from, const std::string& name) {
    return fmt::format("{}:{}: {}", from.name(), from.front("only_if")->place.line, name);
}

void take_conditions(const Template& from, TemplateData& data, Outcome& outcome) {
    Levels levels;
    levels.push(&data);
    for (const std::string& name : conditions_of(from)) {
        const std::optional<Entry> entry = levels.find(name);
        if (!entry) continue;
        auto taken = entry->group->extract(entry->key);
        std::vector<Finding> findings;
        applies(from, data, findings);
        entry->group->insert(std::move(taken));
        const bool told = std::ranges::any_of(findings, [&](const Finding& finding) {
            const Mark& mark = finding.marks.front();
            return finding.rule == "template-name-unknown" && mark.file == from.name() &&
                   mark.place == from.front("only_if")->place &&
                   finding.message.find(fmt::format("\"{}\"", name)) != std::string::npos;
        });
        (told ? outcome.proved : outcome.unreported).insert(shown_condition(from, name));
    }
}

void add_names(const Template& from, const std::vector<TemplateNode>& nodes, Outcome& outcome) {
    for (const TemplateNode& node : nodes) {
        if (node.kind == TemplateNode::Kind::piece) continue;
        outcome.names.insert(shown(from, node));
        add_names(from, node.children, outcome);
    }
}

class Taker {
  public:
    Taker(const Template& from, TemplateData& data, TemplateData* item, Outcome& outcome)
        : from_{from}, data_{data}, item_{item}, outcome_{outcome} {}

    void take_each() {
        std::vector<TemplateData*> levels{&data_};
        if (item_ != nullptr) levels.push_back(item_);
        Reader reader{levels, [&](const Use& use) { take(use); }};
        reader.walk(from_.title);
        reader.walk(from_.body);
    }

  private:
    void take(const Use& use) {
        const std::string name = shown(from_, use.node);
        if (!outcome_.proved.contains(name)) {
            // An item itself, ".", can only be blank: see below.
            if (use.entry.group == nullptr || reports_without(use))
                outcome_.proved.insert(name);
            else if (use.printed)
                outcome_.unreported.insert(name);
        }
        const bool printed = use.printed && use.node.kind == TemplateNode::Kind::value && !use.guarded;
        if (printed && tried_blank_.insert(name).second) make_blank(use, name);
    }

    bool reports_without(const Use& use) {
        auto entry = use.entry.group->extract(use.entry.key);
        const bool reported = told(render(from_, data_, item_).findings, "template-name-unknown", from_, use.node.name);
        use.entry.group->insert(std::move(entry));
        return reported;
    }

    void make_blank(const Use& use, const std::string& name) {
        TemplateData value;
        std::swap(value, *use.entry.data);
        if (!told(render(from_, data_, item_).findings, "template-value-missing", from_, use.node.name))
            outcome_.printed_blank.insert(name);
        std::swap(value, *use.entry.data);
    }

    const Template& from_;
    TemplateData& data_;
    TemplateData* item_;
    Outcome& outcome_;
    std::set<std::string> tried_blank_;
};

/// Takes the names out of all templates that a home has.
void take_from_home(const Household& home, std::span<const Finding> of_profile, const Stationery& stationery,
                    const FollowedPacket* followed, Outcome& outcome) {
    std::vector<Finding> findings;
    const std::vector<Document> documents =
        make_documents(home, of_profile, stationery, stationery.in_order(), findings, followed);
    std::vector<const Document*> made;
    for (const Document& document : documents) made.push_back(&document);
    WordedHomes worded{home, of_profile, stationery, followed};
    for (const std::string& sheet : stationery.in_order()) {
        worded.know(lists_of(sheet, stationery), sheet, made, findings);
        TemplateData data = worded.of(sheet).data;
        for (const Stationery::Part& part : stationery.parts_of(sheet)) {
            take_conditions(*part.from, data, outcome);
            if (!applies(*part.from, data, findings)) continue;
            const FrontMatterLine* each = part.from->front("for_each");
            if (each == nullptr) Taker{*part.from, data, nullptr, outcome}.take_each();
            if (each != nullptr)
                for (const TemplateData& item : *data.object()->at(each->value).items())
                    Taker{*part.from, data, &changeable(item), outcome}.take_each();
        }
    }
}

struct Home {
    const char* name;
    const char* edits;
    const char* on;
};

constexpr const char* kNewOrder =
    "orders.revision: R2\norders.supersedes: R1\norders.effective_at: 2026-03-16 2:00 PM\n"
    "orders.order_date: 2026-03-13\norders.verified_by.date: 2026-03-13\norders.second_check.date: 2026-03-14\n"
    "orders.review_due: 2026-09-16\n";

/// Every demo home; a year on, when tasks are overdue; and what no demo home has.
constexpr Home kHomesToRead[] = {
    {"adult-tracheostomy", "", "2026-02-03"},
    {"child-tracheostomy", "", "2026-02-03"},
    {"adult-mask", "", "2026-02-03"},
    {"adult-long-names", "", "2026-02-03"},
    {"toddler-dual-limb", "", "2026-02-03"},
    {"adult-mains-only", "", "2026-02-03"},
    {"adult-tracheostomy", "", "2027-02-03"},
    {"adult-mask", "copies.0.sheet: bedside-card/porch", "2026-02-03"},
    {"adult-tracheostomy", "remove: batteries.0.tested_time\nhome.other_sites: [{name: Heron Day Center}]",
     "2026-02-03"},
    {"adult-tracheostomy",
     "prescriptions.0.backup_breaths: {rate: 14 breaths/min, after: 15 s, inspiratory_pressure: 15 cmH2O, "
     "tidal_volume: 480 mL, inspiratory_time: 1.2 s}",
     "2026-02-03"},
};

struct Update {
    const char* home;
    const char* before;
    const char* after;
};

/// The demo update; a machine takes over an order; an order ends, alone and while another goes on; a letter is new.
constexpr Update kUpdates[] = {
    {"adult-tracheostomy", "remove: devices.1.slots.1", ""},
    {"adult-tracheostomy", "", "remove: devices.1.slots.0\nremove: prescriptions.1"},
    {"adult-tracheostomy", "",
     "remove: devices.1.slots.0\nremove: prescriptions.1\nprescriptions.0.rate: 16 breaths/min\n"
     "prescriptions.0.changed_in: R2"},
    {"adult-mask", "remove: consent.fire_letter", ""},
};

void take_after(const SourceText& was, const SourceText& now, const Stationery& stationery, Outcome& outcome) {
    const FollowedHome followed{was, now, stationery};
    const CheckedHome next = check_home(now, update_day());
    take_from_home({next.profile, update_day()}, next.findings, stationery, &followed.followed(), outcome);
}

Outcome outcome_in(const std::string& language) {
    const StationeryShelf shelf{built_in_files()};
    const Stationery& stationery = shelf.at(language, {shelf.region_for(language)}).stationery;
    Outcome outcome;
    for (const auto& [name, from] : stationery.sheets) {
        add_names(from, from.title, outcome);
        add_names(from, from.body, outcome);
        for (const std::string& condition : conditions_of(from)) outcome.names.insert(shown_condition(from, condition));
    }
    for (const Home& home : kHomesToRead) {
        CAPTURE(home.name);
        const Date on = *Date::parse(home.on);
        const CheckedHome checked = check_home(edited_profile(home.name, home.edits), on);
        REQUIRE(checked.readable);
        take_from_home({checked.profile, on}, checked.findings, stationery, nullptr, outcome);
    }
    take_after(demo_profile("adult-tracheostomy"), demo_profile("adult-tracheostomy-revision-2"), stationery, outcome);
    for (const Update& update : kUpdates)
        take_after(edited_profile(update.home, update.before),
                   edited_profile(update.home, std::string{kNewOrder} + update.after), stationery, outcome);
    return outcome;
}

/// `first` and `last` of an item are told by the renderer, not by data.
bool is_the_renderers_own(const std::string& name) { return name.ends_with(": first") || name.ends_with(": last"); }

}  // namespace

// "Deleting any one template name's data is reported with file and line": all names of all templates, in variables,
// sections, inverted sections and conditions of the front matter.
TEST_CASE("each name of each template, when its data is taken away, is reported with file and line") {
    for (const char* language : {"en", "es"}) {
        // A translation names what its twin names: tests/language/twins_test.cpp.
        if (std::string_view{language} != "en" && !tries_every_one()) continue;
        CAPTURE(std::string{language});
        const Outcome outcome = outcome_in(language);
        std::vector<std::string> unproved;
        for (const std::string& name : outcome.names)
            if (!outcome.proved.contains(name) && !is_the_renderers_own(name)) unproved.push_back(name);
        CHECK_MESSAGE(unproved.empty(), joined(unproved, "\n"));
        const std::vector<std::string> silent{outcome.unreported.begin(), outcome.unreported.end()};
        CHECK_MESSAGE(silent.empty(), joined(silent, "\n"));
        const std::vector<std::string> blank{outcome.printed_blank.begin(), outcome.printed_blank.end()};
        CHECK_MESSAGE(blank.empty(), joined(blank, "\n"));
        CHECK(outcome.proved.size() > 2000);
    }
}
