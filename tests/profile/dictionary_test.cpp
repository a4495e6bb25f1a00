#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <functional>
#include <optional>
#include <set>

#include "profile/profile.hpp"
#include "profile/read_measure.hpp"
#include "profile/read_value.hpp"
#include "units/text.hpp"

using namespace ventfolio;

namespace {

/// One row of the dictionary.
struct Row {
    std::string path;
    FieldInfo info;
    std::optional<ValueKind> kind = {};  ///< nothing for groups and lists
    std::optional<Dimension> dimension = {};
    std::vector<std::string_view> choices = {};
};

/// Collects every row, those of list elements included.
class Collector final : public Visitor {
  public:
    void leaf(const FieldInfo& info, FieldBase& field) override {
        rows.push_back(
            {path(info), info, field.kind(), field.dimension(), {field.choices().begin(), field.choices().end()}});
    }
    void group(const FieldInfo& info, GroupBase& group) override {
        rows.push_back({path(info), info});
        below(info, [&] { group.describe(*this); });
    }
    void list(const FieldInfo& info, ListBase& list) override {
        rows.push_back({path(info), info});
        below(info, [&] { list.describe_element(*this); });
    }

    std::vector<Row> rows;

  private:
    std::string path(const FieldInfo& info) const { return prefix_ + std::string{info.key}; }
    void below(const FieldInfo& info, const std::function<void()>& walk) {
        const std::string outer = prefix_;
        prefix_ += std::string{info.key} + ".";
        walk();
        prefix_ = outer;
    }
    std::string prefix_;
};

std::vector<Row> all_rows() {
    Profile profile;
    Collector collector;
    profile.describe(collector);
    return std::move(collector.rows);
}

std::vector<Row> all_leaves() {
    std::vector<Row> rows = all_rows();
    std::erase_if(rows, [](const Row& row) { return !row.kind; });
    return rows;
}

const Row& leaf_at(const std::vector<Row>& leaves, std::string_view path) {
    const auto found = std::ranges::find(leaves, path, &Row::path);
    REQUIRE_MESSAGE(found != leaves.end(), path);
    return *found;
}

bool is_quantity(const Row& leaf) { return leaf.kind == ValueKind::measure || leaf.kind == ValueKind::range; }

template <class T>
bool reads(const Row& leaf, std::string_view text) {
    const Field<T> field;
    return !std::holds_alternative<ValueRemark>(read_value(text, true, leaf.info, field));
}

bool reads_measure(const Row& leaf, std::string_view text) {
    return !std::holds_alternative<ValueRemark>(read_measure(text, leaf.info, *leaf.dimension));
}

/// "{from: A, to: B}" taken apart.
bool reads_range(const Row& leaf, std::string_view text) {
    constexpr std::string_view kFrom = "{from: ";
    constexpr std::string_view kTo = ", to: ";
    const auto to = text.find(kTo);
    if (!text.starts_with(kFrom) || to == std::string_view::npos || !text.ends_with("}")) return false;
    const std::string_view low = text.substr(kFrom.size(), to - kFrom.size());
    const std::string_view high = text.substr(to + kTo.size(), text.size() - to - kTo.size() - 1);
    return reads_measure(leaf, low) && reads_measure(leaf, high);
}

bool reads_example(const Row& leaf) {
    const std::string_view text = leaf.info.example;
    switch (*leaf.kind) {
        case ValueKind::measure:
            return reads_measure(leaf, text);
        case ValueKind::range:
            return reads_range(leaf, text);
        case ValueKind::choice:
            return std::ranges::find(leaf.choices, text) != leaf.choices.end();
        case ValueKind::text:
            return reads<std::string>(leaf, text);
        case ValueKind::flag:
            return reads<bool>(leaf, text);
        case ValueKind::date:
            return reads<Date>(leaf, text);
        case ValueKind::moment:
            return reads<Moment>(leaf, text);
        case ValueKind::clock_span:
            return reads<ClockSpan>(leaf, text);
        case ValueKind::interval:
            return reads<Interval>(leaf, text);
        case ValueKind::revision:
            return reads<Revision>(leaf, text);
        case ValueKind::text_list:
            return text.starts_with("[") && text.ends_with("]");
    }
    return false;
}

/// Adds up what `describe` shows: a struct of fields is as large as its members together, so a member that `describe`
/// forgets makes the two differ.
class SizeCounter final : public Visitor {
  public:
    void leaf(const FieldInfo&, FieldBase&) override { bytes += sizeof(FieldBase); }
    void group(const FieldInfo&, GroupBase& group) override {
        bytes += sizeof(GroupBase);
        group.describe(*this);
    }
    void list(const FieldInfo&, ListBase&) override { bytes += sizeof(List<TimeOfUse>); }
    std::size_t bytes = 0;
};

template <class T>
std::size_t described_size() {
    T empty;
    SizeCounter counter;
    empty.describe(counter);
    return counter.bytes;
}

}  // namespace

TEST_CASE("describe names every member of every struct") {
    CHECK(described_size<Profile>() == sizeof(Profile));
    // Elements of lists, which the profile holds none of while it is empty.
    CHECK(described_size<Acceptance>() == sizeof(Acceptance));
    CHECK(described_size<AcceptedNumber>() == sizeof(AcceptedNumber));
    CHECK(described_size<AlarmOffByOrder>() == sizeof(AlarmOffByOrder));
    CHECK(described_size<Allergy>() == sizeof(Allergy));
    CHECK(described_size<AvoidedMedicine>() == sizeof(AvoidedMedicine));
    CHECK(described_size<Battery>() == sizeof(Battery));
    CHECK(described_size<BatteryTest>() == sizeof(BatteryTest));
    CHECK(described_size<BreathingBag>() == sizeof(BreathingBag));
    CHECK(described_size<Caregiver>() == sizeof(Caregiver));
    CHECK(described_size<CareTask>() == sizeof(CareTask));
    CHECK(described_size<Device>() == sizeof(Device));
    CHECK(described_size<EscalationStep>() == sizeof(EscalationStep));
    CHECK(described_size<Filter>() == sizeof(Filter));
    CHECK(described_size<Flame>() == sizeof(Flame));
    CHECK(described_size<GoBagItem>() == sizeof(GoBagItem));
    CHECK(described_size<Implant>() == sizeof(Implant));
    CHECK(described_size<Load>() == sizeof(Load));
    CHECK(described_size<Medicine>() == sizeof(Medicine));
    CHECK(described_size<OtherContact>() == sizeof(OtherContact));
    CHECK(described_size<OxygenSource>() == sizeof(OxygenSource));
    CHECK(described_size<PaperCopy>() == sizeof(PaperCopy));
    CHECK(described_size<Prescription>() == sizeof(Prescription));
    CHECK(described_size<Site>() == sizeof(Site));
    CHECK(described_size<Slot>() == sizeof(Slot));
    CHECK(described_size<SmallLine>() == sizeof(SmallLine));
    CHECK(described_size<Supply>() == sizeof(Supply));
    CHECK(described_size<TimeOfUse>() == sizeof(TimeOfUse));
    CHECK(described_size<Translation>() == sizeof(Translation));
    CHECK(described_size<WrittenFor>() == sizeof(WrittenFor));
}

TEST_CASE("every field, group and list has one line of help") {
    for (const Row& row : all_rows()) {
        INFO(row.path);
        CHECK(row.info.help.size() >= 4);
        CHECK(row.info.help.size() <= 120);
        CHECK(row.info.help.find('\n') == std::string_view::npos);
        CHECK_FALSE(row.info.help.ends_with('.'));
    }
}

TEST_CASE("keys are full words in small letters with underscores") {
    const std::set<std::string> not_words{
        "al",   "alg",  "bat",  "bp",   "cg",  "cm",   "com", "con",  "desc", "dev",  "dir",    "dob", "dx",
        "em",   "epap", "fio2", "fr",   "hme", "hr",   "hum", "ipap", "lpm",  "max",  "med",    "min", "ml",
        "mm",   "mon",  "mv",   "num",  "o2",  "od",   "ox",  "peep", "pip",  "pt",   "qty",    "rr",  "rx",
        "spo2", "suc",  "sup",  "temp", "tel", "vent", "vt",  "addr", "freq", "pres", "config", "info"};
    for (const Row& row : all_rows()) {
        INFO(row.path);
        const std::string_view key = row.info.key;
        CHECK(key.find_first_not_of("abcdefghijklmnopqrstuvwxyz_") == std::string_view::npos);
        CHECK(key.front() != '_');
        CHECK(key.back() != '_');
        for (const std::string& word : split(key, '_')) {
            CHECK_FALSE(word.empty());
            CHECK_MESSAGE(!not_words.contains(word), word);
        }
    }
}

TEST_CASE("no key is a word that YAML 1.1 tools read as true, false or nothing") {
    // YAML 1.1, bool type (yaml.org/type/bool.html) and null type.
    const std::set<std::string_view> taken{"y", "n", "yes", "no", "on", "off", "true", "false", "null"};
    for (const Row& row : all_rows()) CHECK_MESSAGE(!taken.contains(row.info.key), row.path);
}

TEST_CASE("a key stands once in its struct") {
    std::set<std::string> seen;
    for (const Row& row : all_rows()) CHECK_MESSAGE(seen.insert(row.path).second, row.path);
}

TEST_CASE("words of a choice are no answers of their own") {
    for (const Row& leaf : all_leaves())
        for (const std::string_view word : leaf.choices) {
            INFO(leaf.path);
            CHECK(word != "none");
            CHECK(word != "off");
            CHECK(word != "unknown");
            // Digits only where the word is the name of a size: "a4".
            CHECK(word.find_first_not_of("abcdefghijklmnopqrstuvwxyz_0123456789") == std::string_view::npos);
            CHECK(word.find_first_of("0123456789") != 0);
        }
}

TEST_CASE("a quantity names units of its own dimension and a range that catches slips of typing") {
    for (const Row& leaf : all_leaves()) {
        INFO(leaf.path);
        if (!is_quantity(leaf)) {
            CHECK(leaf.info.units.empty());
            CHECK_FALSE(leaf.info.least);
            CHECK_FALSE(leaf.info.most);
            continue;
        }
        REQUIRE(leaf.dimension);
        for (const std::string& symbol : split(leaf.info.units, ' ')) {
            const Unit* unit = find_unit(symbol);
            REQUIRE_MESSAGE(unit, symbol);
            CHECK(unit->symbol == symbol);
            CHECK(unit->dimension == *leaf.dimension);
        }
        REQUIRE(leaf.info.least);
        REQUIRE(leaf.info.most);
        CHECK(*leaf.info.least < *leaf.info.most);
    }
}

TEST_CASE("every field has an example that its own reader takes") {
    for (const Row& leaf : all_leaves()) {
        INFO(leaf.path, ": ", leaf.info.example);
        CHECK_FALSE(leaf.info.example.empty());
        CHECK(reads_example(leaf));
    }
}

TEST_CASE("NOT RECORDED always says whom to ask, and only roles that have words") {
    const std::set<std::string_view> roles{"family",  "prescriber", "equipment_provider", "clinic",
                                           "surgeon", "utility",    "decision_maker"};
    for (const Row& row : all_rows()) {
        INFO(row.path);
        if (row.info.grade == Grade::expected) CHECK_FALSE(row.info.ask.empty());
        if (!row.info.ask.empty()) CHECK_MESSAGE(roles.contains(row.info.ask), row.info.ask);
    }
}

TEST_CASE("every field has an audience, but those that are never printed") {
    // Keys to the home, weapons, other people's needs and a maker's claims never reach paper: minimum disclosure,
    // HHS Office for Civil Rights, 2017; common practice for rated battery times.
    const std::set<std::string> never_printed{"devices.asset_number", "home.entry.key_access", "home.weapons_secured",
                                              "home.others_needing_help", "batteries.rated_time",
                                              // How papers are written is seen, not told.
                                              "home.region", "home.paper", "home.date_order", "home.decimal_sign"};
    for (const Row& leaf : all_leaves()) {
        INFO(leaf.path);
        CHECK((leaf.info.on == nobody) == never_printed.contains(leaf.path));
    }
}

TEST_CASE("what must not hang in the room or lie in a wallet is not let onto it") {
    // Minimum disclosure, HHS Office for Civil Rights, 2017; two identifiers on a wall sheet, common practice.
    struct Ban {
        std::string_view below;
        Audiences not_on;
    };
    constexpr std::array kBans{
        Ban{"person.legal_name", wall},
        Ban{"person.birth_date", wall | wallet | utility | fire},
        Ban{"diagnosis.", wall | wallet | utility | fire},
        Ban{"directive.", wall | wallet | utility | fire},
        Ban{"home.address", wall},
        Ban{"home.", wallet},
        Ban{"allergies.substances.", wall},
        Ban{"medicines.", wall | utility | fire},
        Ban{"special_risks.infection_precautions", wall | wallet | utility | fire},
        Ban{"prescriptions.", utility | fire},
        Ban{"dependence.", utility},
        Ban{"baseline.", utility | fire | wallet},
        Ban{"caregivers.", utility | fire | wallet},
        Ban{"utility_company.account", wall | crew | wallet | fire},
        Ban{"orders.prescriber_licence", wall},
    };
    for (const Row& leaf : all_leaves())
        for (const Ban& ban : kBans)
            if (leaf.path.starts_with(ban.below)) CHECK_MESSAGE((leaf.info.on & ban.not_on) == 0, leaf.path);
}

TEST_CASE("the power company learns nothing but its own subject") {
    // Minimum disclosure, HHS Office for Civil Rights, 2017.
    const std::set<std::string> others{"record_number",
                                       "person.legal_name",
                                       "home.address",
                                       "orders.revision",
                                       "orders.verified_by.name",
                                       "orders.second_check.name",
                                       "orders.prescriber_licence"};
    for (const Row& leaf : all_leaves()) {
        if (!(leaf.info.on & utility)) continue;
        const bool a_contact =
            leaf.path.starts_with("contacts.") && (leaf.path.ends_with(".name") || leaf.path.ends_with(".phone"));
        CHECK_MESSAGE((leaf.path.starts_with("utility_company.") || a_contact || others.contains(leaf.path)),
                      leaf.path);
    }
}

TEST_CASE("without identity, orders, dependence, airway and phone numbers nothing is printed") {
    const std::vector<Row> rows = all_rows();
    for (const std::string_view path : {"record_number",
                                        "person",
                                        "person.legal_name",
                                        "person.preferred_name",
                                        "person.birth_date",
                                        "orders",
                                        "orders.revision",
                                        "orders.prescriber",
                                        "orders.order_date",
                                        "orders.effective_at",
                                        "dependence",
                                        "dependence.unaided_awake",
                                        "dependence.unaided_asleep",
                                        "airway",
                                        "airway.neck_tube",
                                        "prescriptions",
                                        "prescriptions.mode",
                                        "prescriptions.interface",
                                        "prescriptions.interface.kind",
                                        "prescriptions.alarms",
                                        "contacts",
                                        "contacts.emergency.phone",
                                        "contacts.equipment_provider",
                                        "contacts.equipment_provider.phone",
                                        "contacts.prescriber_on_call",
                                        "contacts.prescriber_on_call.phone"}) {
        const auto found = std::ranges::find(rows, path, &Row::path);
        REQUIRE_MESSAGE(found != rows.end(), path);
        CHECK_MESSAGE(found->info.grade == Grade::essential, path);
    }
}

TEST_CASE("sizes read off a box keep their zeros, everything else loses them") {
    // Error-prone notation list, Institute for Safe Medication Practices; the exception for tube sizes is from memory.
    const std::vector<Row> leaves = all_leaves();
    CHECK(leaf_at(leaves, "airway.neck_tube.inner_diameter").info.zeros == Zeros::keep);
    CHECK(leaf_at(leaves, "airway.neck_tube.spare_smaller.size").info.zeros == Zeros::keep);
    CHECK(leaf_at(leaves, "suction.catheter_size").info.zeros == Zeros::keep);
    for (const Row& leaf : leaves)
        if (leaf.dimension != Dimension::length) CHECK_MESSAGE(leaf.info.zeros == Zeros::drop, leaf.path);
}

TEST_CASE("the typing guards let published values through and stop slips") {
    struct Guard {
        std::string_view path;
        std::string_view published;
        std::string_view slip;
        std::string_view source;
    };
    constexpr std::array kGuards{
        Guard{"airway.neck_tube.cuff_order.pressure", "30 cmH2O", "61 cmH2O",
              "20 to 30 cmH2O, tracheostomy guidance (from memory)"},
        Guard{"suction.pressure", "200 mmHg", "1200 mmHg",
              "ceiling, AARC artificial airway suctioning guideline, 2022"},
        Guard{"prescriptions.humidity.temperature", "41 °C", "44 °C",
              "34 to 41 °C at the Y, AARC humidification guideline, 2012"},
        Guard{"prescriptions.humidity.temperature", "34 °C", "3.7 °C", "as above"},
        Guard{"cough_device.pressure_in", "40 cmH2O", "400 cmH2O",
              "40 cmH2O common, insufflation-exsufflation review, 2023"},
        Guard{"cough_device.pressure_out", "-40 cmH2O", "-400 cmH2O", "as above"},
        Guard{"prescriptions.baseline_pressure", "4 cmH2O", "50 cmH2O",
              "lowest for a port, mask titration task force, 2010 (from memory)"},
        Guard{"prescriptions.inspiratory_pressure", "30 cmH2O", "160 cmH2O", "highest for masks, the same task force"},
        Guard{"prescriptions.tidal_volume", "1500 mL", "4800 mL",
              "700 to 1500 mL by mouthpiece, mouthpiece studies 2014 to 2020"},
        Guard{"oxygen.call_below", "90 %", "9 %", "common practice, no source"},
        Guard{"airway.neck_tube.inner_diameter", "2.5 mm", "80 mm", "infant tube, common practice, no source"},
        Guard{"dependence.hours_per_day", "24 h", "25 h", "definition"},
        Guard{"person.weight", "12.4 kg", "0.06 kg", "common practice, no source"},
        Guard{"power.generator.distance", "20 ft", "2000 ft", "20 ft from openings, US FDA and CDC advice"},
        Guard{"oxygen.sources.gauge", "2000 psi", "20000 psi", "common practice, no source"},
    };
    const std::vector<Row> leaves = all_leaves();
    for (const Guard& guard : kGuards) {
        INFO(guard.path, ": ", guard.source);
        const Row& leaf = leaf_at(leaves, guard.path);
        CHECK(reads_measure(leaf, guard.published));
        CHECK_FALSE(reads_measure(leaf, guard.slip));
    }
}
