#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iterator>

#include "profile/compare.hpp"
#include "profile/field_paths.hpp"
#include "profile/read_measure.hpp"
#include "profile/read_profile.hpp"
#include "units/text.hpp"

using namespace ventfolio;

namespace {

std::string text_of(std::string_view home) {
    const std::string path = fmt::format("{}/profiles/{}.yaml", VENTFOLIO_SOURCE_DIR, home);
    std::ifstream file{path, std::ios::binary};
    REQUIRE_MESSAGE(file, path);
    return {std::istreambuf_iterator<char>{file}, {}};
}

Profile profile_of(std::string text) { return read_profile({"home.yaml", std::move(text)}).profile; }

struct Says {
    std::string operator()(const std::string& text) const { return text; }
    std::string operator()(bool flag) const { return flag ? "true" : "false"; }
    std::string operator()(const Date& date) const { return date.iso(); }
    std::string operator()(const Revision& revision) const { return revision.text(); }
    std::string operator()(const Measure& measure) const {
        return measure.number.as_labelled() + " " + std::string{measure.unit.symbol};
    }
    std::string operator()(const MeasureRange& range) const { return (*this)(range.from) + " to " + (*this)(range.to); }
    std::string operator()(const Choice& choice) const { return std::string{choice.word}; }
    template <class T>
    std::string operator()(const T&) const {
        return "given";
    }
};

std::string said(const std::optional<ComparedPart>& part) {
    if (!part) return "-";
    constexpr std::array<std::string_view, 5> kStates{"absent", "unknown", "none", "off", "given"};
    if (part->state != FieldState::given || part->field == nullptr)
        return std::string{kStates[static_cast<std::size_t>(part->state)]};
    return std::visit(Says{}, part->field->value());
}

/// "prescriptions.0.rate: 14 breaths/min -> 16 breaths/min", one for each difference.
std::vector<std::string> lines(const std::vector<Difference>& differences) {
    std::vector<std::string> all;
    for (const Difference& one : differences)
        all.push_back(fmt::format("{}: {} -> {}", one.path, said(one.was), said(one.now)));
    return all;
}

struct Case {
    const char* what;
    const char* from;  ///< stands in the demo home once
    const char* to;
    std::vector<std::string> expected;
};

const std::string kSecondBag =
    "    - at: chair\n"
    "      place: pouch on the left side of the chair\n";

}  // namespace

TEST_CASE("a comparison names what was edited, and nothing else") {
    // Source of every row: the edit itself.
    const std::vector<Case> cases{
        {"a setting",
         "    high_pressure: 31 cmH2O",
         "    high_pressure: 33 cmH2O",
         {"prescriptions.0.alarms.high_pressure: 31 cmH2O -> 33 cmH2O"}},
        {"the same setting in another unit",
         "    volume_assured: {target_volume: 500 mL",
         "    volume_assured: {target_volume: 0.5 L",
         {"prescriptions.1.volume_assured.target_volume: 500 mL -> 0.5 L"}},
        {"zeros that nobody prints", "inspiratory_pressure: 16 cmH2O", "inspiratory_pressure: 16.0 cmH2O", {}},
        {"zeros as on the box of a tube",
         "inner_diameter: 8.0 mm",
         "inner_diameter: 8 mm",
         {"airway.neck_tube.inner_diameter: 8.0 mm -> 8 mm"}},
        {"one end of a range",
         "minute_volume: {from: 6.2 L/min, to: 8 L/min}",
         "minute_volume: {from: 6.2 L/min, to: 9 L/min}",
         {"prescriptions.0.expected.minute_volume: 6.2 L/min to 8 L/min -> 6.2 L/min to 9 L/min"}},
        {"off is not absent", "    high_alarm: off\n", "", {"monitors.oximeter.high_alarm: off -> -"}},
        {"unknown is not absent",
         "    outer_diameter: 11.3 mm",
         "    outer_diameter: unknown",
         {"airway.neck_tube.outer_diameter: 11.3 mm -> unknown"}},
        {"none is not unknown",
         "  carbon_dioxide: none\n",
         "  carbon_dioxide: unknown\n",
         {"monitors.carbon_dioxide: none -> unknown"}},
        {"a flag", "fenestrated: false", "fenestrated: true", {"airway.neck_tube.fenestrated: false -> true"}},
        {"a list that is none is not one that nobody asked about", "medicines: none\n", "", {"medicines: none -> -"}},
        {"a group that is none", "  generator: none", "  generator: unknown", {"power.generator: none -> unknown"}},
        {"a group that was none and is given",
         "  inverter: none",
         "  inverter: {waveform: pure_sine}",
         {"power.inverter.waveform: none -> pure_sine"}},
        {"a group that is gone",
         "remote_alarm: {where: hall outside the bedroom, tested_on: 2025-12-15}\n",
         "",
         {"remote_alarm.where: hall outside the bedroom -> -", "remote_alarm.tested_on: 2025-12-15 -> -"}},
        {"a group that is none now",
         "remote_alarm: {where: hall outside the bedroom, tested_on: 2025-12-15}",
         "remote_alarm: none",
         {"remote_alarm.where: hall outside the bedroom -> none", "remote_alarm.tested_on: 2025-12-15 -> none"}},
        {"an item in front",
         "loads:\n",
         "loads:\n  - {name: fan, kind: other, keep: switched_off}\n",
         {"loads.0.name: - -> fan", "loads.0.kind: - -> other", "loads.0.keep: - -> switched_off"}},
        {"an item taken out",
         "  - {item: letter board, number: 1 piece, checked_on: 2026-01-10}\n",
         "",
         {"go_bag.10.item: letter board -> -", "go_bag.10.number: 1 pieces -> -",
          "go_bag.10.checked_on: 2026-01-10 -> -"}},
        {"an item with a new name",
         "name: M. Osei-Lind (next door)",
         "name: Ada Osei-Lind (next door)",
         {"contacts.nearby_helper.name: M. Osei-Lind (next door) -> Ada Osei-Lind (next door)"}},
        {"a device with a new name, and nothing else of it",
         "  - label: Unit B\n",
         "  - label: Unit C\n",
         {"devices.1.label: Unit B -> Unit C"}},
        {"the second of two with one name",
         "place: ventilator stand, number: 1 piece",
         "place: window side, number: 1 piece",
         {"copies.1.place: ventilator stand -> window side"}},
        {"the first of two with one name, taken out",
         "  - {sheet: bedside-card/bed, place: wall at the head of the bed, number: 1 piece}\n",
         "",
         {"copies.0.sheet: bedside-card/bed -> -", "copies.0.place: wall at the head of the bed -> -",
          "copies.0.number: 1 pieces -> -"}},
        {"an item in an item",
         "      - {slot: 2, prescription: P1, revision: R1}",
         "      - {slot: 2, prescription: P1, revision: R2}",
         {"devices.1.slots.1.revision: R1 -> R2"}},
        {"a comment", "loads:\n", "# Read off the labels.\nloads:\n", {}},
        {"quotes", "relation: brother-in-law", "relation: \"brother-in-law\"", {}},
        {"the order of keys",
         "door: rear door, by the ramp\n    stairs: none\n",
         "stairs: none\n    door: rear door, by the ramp\n",
         {}},
    };
    const std::string text = text_of("adult-tracheostomy");
    const Profile was = profile_of(text);
    for (const Case& one : cases) {
        CAPTURE(one.what);
        const auto at = text.find(one.from);
        REQUIRE(at != std::string::npos);
        std::string edited = text;
        edited.replace(at, std::string_view{one.from}.size(), one.to);
        const Profile now = profile_of(edited);
        CHECK(lines(compare(was, now)) == one.expected);
        CHECK(compare(now, now).empty());
    }
}

TEST_CASE("line ends and the order of a list do not count") {
    const std::string text = text_of("adult-tracheostomy");
    const Profile was = profile_of(text);
    CHECK(compare(was, profile_of(with_replaced(text, "\n", "\r\n"))).empty());

    std::string turned = text;  // the second breathing bag to the front
    const auto bag = turned.find(kSecondBag);
    const auto end = turned.find("    - at: go_bag");
    REQUIRE(bag != std::string::npos);
    const std::string moved = turned.substr(bag, end - bag);
    turned.erase(bag, end - bag);
    turned.insert(turned.find("    - at: bed"), moved);
    CHECK(compare(was, profile_of(turned)).empty());
}

TEST_CASE("between two revisions of one home stands what the prescriber changed") {
    const Profile was = profile_of(text_of("adult-tracheostomy"));
    const Profile now = profile_of(text_of("adult-tracheostomy-revision-2"));
    const std::vector<std::string> all = lines(compare(was, now));
    const auto says = [&](std::string_view line) { return std::ranges::find(all, line) != all.end(); };
    // Source: the two files, side by side (diff).
    CHECK(all.size() == 28);
    CHECK(says("orders.revision: R1 -> R2"));
    CHECK(says("orders.supersedes: - -> R1"));
    CHECK(says("prescriptions.0.rate: 14 breaths/min -> 16 breaths/min"));
    CHECK(says("prescriptions.0.alarms.low_minute_volume: 4.5 L/min -> 5.5 L/min"));
    CHECK(says("devices.1.slots.1.revision: R1 -> R2"));
    for (const std::string& line : all) CHECK_MESSAGE(!line.starts_with("prescriptions.1"), line);
}

namespace {

/// Does something to one declared field of a profile, and opens the groups and lists that it stands in.
class AtField final : public Visitor {
  public:
    using Act = std::function<void(const FieldInfo&, FieldBase&)>;
    AtField(std::string_view declared, Act act) : steps_{split(declared, '.')}, act_{std::move(act)} {}

    void leaf(const FieldInfo& info, FieldBase& field) override {
        if (depth_ + 1 == steps_.size() && steps_[depth_] == info.key) act_(info, field);
    }
    void group(const FieldInfo& info, GroupBase& group) override {
        if (depth_ >= steps_.size() || steps_[depth_] != info.key) return;
        group.state = FieldState::given;
        ++depth_;
        group.describe(*this);
        --depth_;
    }
    void list(const FieldInfo& info, ListBase& list) override {
        if (depth_ >= steps_.size() || steps_[depth_] != info.key) return;
        if (list.size() == 0) list.add({});
        list.state = FieldState::given;
        depth_ += 2;  // over the N
        list.describe(0, *this);
        depth_ -= 2;
    }

  private:
    std::vector<std::string> steps_;
    Act act_;
    std::size_t depth_ = 0;
};

void at_field(Profile& profile, std::string_view declared, AtField::Act act) {
    AtField visitor{declared, std::move(act)};
    profile.describe(visitor);
}

/// A value of the field's kind that no demo home has.
Value foreign_value(const FieldInfo& info, const FieldBase& field, int number) {
    const auto measure = [&](int of) {
        return Measure{Decimal::whole(of), accepted_units(info, *field.dimension())[0]};
    };
    switch (field.kind()) {
        case ValueKind::text:
            return fmt::format("Something else {}", number);
        case ValueKind::flag:
            return number % 2 == 0;
        case ValueKind::date:
            return *Date::parse(fmt::format("19{}-05-04", number));
        case ValueKind::moment:
            return Moment{*Date::parse(fmt::format("19{}-05-04", number)), {}};
        case ValueKind::clock_span:
            return ClockSpan{{number}, {number + 1}};
        case ValueKind::interval:
            return Interval{number, Interval::Step::months};
        case ValueKind::revision:
            return Revision{number, ""};
        case ValueKind::measure:
            return measure(number);
        case ValueKind::range:
            return MeasureRange{measure(number), measure(number + 1)};
        case ValueKind::choice: {
            const std::size_t at = static_cast<std::size_t>(number) % field.choices().size();
            return Choice{at, field.choices()[at]};
        }
        case ValueKind::text_list:
            return TextList{fmt::format("Something else {}", number)};
    }
    return {};
}

}  // namespace

TEST_CASE("each declared field, set, changed or taken away alone, is the one difference") {
    const Profile home = profile_of(text_of("adult-tracheostomy"));
    std::size_t fields = 0;
    for (const DeclaredField& declared : declared_fields_of<Profile>()) {
        CAPTURE(declared.path);
        ++fields;
        const std::string expected = with_replaced(declared.path, ".N", ".0");
        // The home with a value, with another one, and without: what stands around the field is there in all of them.
        Profile with = home;
        Profile other = home;
        Profile without = home;
        at_field(with, declared.path,
                 [](const FieldInfo& info, FieldBase& field) { field.give(foreign_value(info, field, 76), {}); });
        at_field(other, declared.path,
                 [](const FieldInfo& info, FieldBase& field) { field.give(foreign_value(info, field, 77), {}); });
        at_field(without, declared.path, [](const FieldInfo&, FieldBase& field) { field.state = FieldState::absent; });
        for (const auto& [was, now] :
             {std::pair{&with, &other}, std::pair{&with, &without}, std::pair{&without, &with}}) {
            const std::vector<Difference> found = compare(*was, *now);
            // A choice of one word has no other.
            if (was == &with && now == &other && declared.choices.size() == 1) continue;
            REQUIRE_MESSAGE(found.size() == 1, joined(lines(found), "\n"));
            CHECK(found[0].path == expected);
            CHECK(found[0].was.has_value() == (was != &without));
            CHECK(found[0].now.has_value() == (now != &without));
        }
    }
    CHECK(fields > 600);
}
