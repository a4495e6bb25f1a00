#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <span>

#include "profile/compare.hpp"
#include "profile/field_paths.hpp"
#include "sheets/field_labels.hpp"
#include "sheets/listed_change.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

using Kind = ListedChange::Kind;

PrintedPart word(std::string text) { return {PrintedPart::Kind::word, std::move(text)}; }

bool is_number(std::string_view text) { return text.find_first_not_of("0123456789") == std::string_view::npos; }

/// "prescriptions.1" for a path within it; nothing elsewhere.
std::optional<std::string> prescription_of(std::string_view path) {
    const std::vector<std::string> steps = split(path, '.');
    if (steps.size() < 3 || steps[0] != "prescriptions") return std::nullopt;
    return fmt::format("prescriptions.{}", steps[1]);
}

/// Chosen on the machine, although they are no quantities.
constexpr std::array<std::string_view, 3> kChosenOnMachine{"mode", "mode_on_screen", "pressure_reference"};

/// Written in a prescription by its `pressure_reference`; all others say in their labels where they are counted from.
constexpr std::array<std::string_view, 3> kByReference{"inspiratory_pressure", "pressure_least", "pressure_most"};

Kind kind_of(std::string_view path, const FieldInfo& info) {
    if (path.starts_with("orders.")) return Kind::order;
    if (!prescription_of(path)) return Kind::other;
    const std::string declared = declared_path(path);
    if (declared.starts_with("prescriptions.N.alarms.")) return Kind::alarm;
    if (declared.starts_with("prescriptions.N.expected.")) return Kind::expected;
    if (info.key == "changed_in") return Kind::order;
    const bool chosen = std::ranges::find(kChosenOnMachine, info.key) != kChosenOnMachine.end();
    return info.setting || chosen ? Kind::setting : Kind::other;
}

/// Where everything in a group or list may stand. They have no audiences of their own.
Audiences audiences_within(std::string_view path) {
    const std::string inside = declared_path(path) + ".";
    Audiences all = PrintedValue{}.audiences;
    for (const DeclaredField& field : declared_fields_of<Profile>())
        if (field.path.starts_with(inside)) all &= field.info.on;
    return all;
}

/// One of the two profiles, and what it says of the parts of a difference.
class Side {
  public:
    Side(const Profile& profile, const Printer& printer) : fields_{fields_of(profile)}, printer_{printer} {}

    std::optional<PrintedValue> value(const std::optional<ComparedPart>& part, Audiences audiences,
                                      UnitForm form) const {
        if (!part) return std::nullopt;
        if (part->field != nullptr && !part->field->missing()) {
            PrintedValue value = printer_.print(*part->field, part->info, part->path, form);
            add_reference(value, *part);
            return value;
        }
        PrintedValue value;
        value.field = part->path;
        value.audiences = audiences;
        value.parts = {word(std::string{printer_.words().at(word_of(part->state))})};
        return value;
    }

    /// "bed", "Unit B, slot 2": the names of the items that a path runs through.
    PrintedValue item(std::string_view path) const {
        PrintedValue all;
        all.field = "calc.changed-item";
        const std::vector<std::string> steps = split(path, '.');
        for (std::size_t at = 1; at < steps.size(); ++at) {
            if (!is_number(steps[at])) continue;
            const FieldAt* name = name_of(joined(std::span{steps}.first(at + 1), "."));
            if (name == nullptr) continue;
            if (!all.parts.empty()) all.parts.push_back(word(", "));
            if (const auto before = item_word(printer_.words(), joined(std::span{steps}.first(at), ".")))
                all.parts.push_back(word(fmt::format("{} ", *before)));
            const PrintedValue printed = printer_.print(*name->field, name->info, name->path);
            all.parts.insert(all.parts.end(), printed.parts.begin(), printed.parts.end());
            all.audiences &= printed.audiences;
        }
        return all;
    }

    /// The id of the prescription that a path lies in, else empty.
    std::string prescription(std::string_view path) const {
        const auto order = prescription_of(path);
        const FieldAt* id = order ? given(*order + ".id") : nullptr;
        return id ? std::get<std::string>(id->field->value()) : std::string{};
    }

  private:
    static std::string_view word_of(FieldState state) {
        switch (state) {
            case FieldState::none:
                return "state.none";
            case FieldState::off:
                return "state.off";
            case FieldState::given:
                return "changes.recorded";
            case FieldState::unknown:
            case FieldState::absent:
                break;
        }
        return "changes.unknown";
    }

    const FieldAt* given(std::string_view path) const {
        const FieldAt* field = find_field(fields_, path);
        return field != nullptr && field->field->given() ? field : nullptr;
    }

    /// A prescription has its place on the card, other things the label that the household gave them; else the first
    /// thing that is said of an item names it.
    const FieldAt* name_of(const std::string& item) const {
        if (prescription_of(item + ".place"))
            if (const FieldAt* place = given(item + ".place")) return place;
        if (const FieldAt* label = given(item + ".label")) return label;
        const std::string inside = item + ".";
        const auto first = std::ranges::find_if(
            fields_, [&](const FieldAt& field) { return field.path.starts_with(inside) && field.field->given(); });
        return first == fields_.end() ? nullptr : &*first;
    }

    void add_reference(PrintedValue& value, const ComparedPart& part) const {
        if (!part.field->given() || std::ranges::find(kByReference, part.info.key) == kByReference.end()) return;
        const auto order = prescription_of(part.path);
        const FieldAt* reference = order ? given(*order + ".pressure_reference") : nullptr;
        if (reference == nullptr) return;
        const Choice& choice = std::get<Choice>(reference->field->value());
        value.parts.push_back(word(" " + printer_.choice(reference->info.key, choice.word)));
    }

    std::vector<FieldAt> fields_;
    const Printer& printer_;
};

std::optional<std::string_view> unit_of(const std::optional<ComparedPart>& part) {
    if (!part || part->field == nullptr || !part->field->given()) return std::nullopt;
    if (const auto* measure = std::get_if<Measure>(&part->field->value())) return measure->unit.symbol;
    if (const auto* range = std::get_if<MeasureRange>(&part->field->value()))
        return range->from.unit.symbol == range->to.unit.symbol ? std::optional{range->to.unit.symbol} : std::nullopt;
    return std::nullopt;
}

/// How many letters at the end of a label are the words of the unit: "Breaths per minute" lets a number stand alone.
std::size_t unit_at_end(const Difference& difference, std::string_view label, const WordBook& words) {
    const auto unit = unit_of(difference.now ? difference.now : difference.was);
    if (!unit || (difference.was && unit_of(difference.was) && unit_of(difference.was) != unit)) return 0;
    const auto said = words.find(fmt::format("units.{}", *unit));
    return said && lower_ascii(label).ends_with(lower_ascii(*said)) ? said->size() : 0;
}

/// The unit in a label is told from its other words, as it is beside a number.
Printer::Parts label_parts(const std::string& label, std::size_t unit) {
    Printer::Parts parts;
    if (label.size() > unit) parts.push_back(word(label.substr(0, label.size() - unit)));
    if (unit > 0) parts.push_back({PrintedPart::Kind::unit, label.substr(label.size() - unit)});
    return parts;
}

}  // namespace

std::vector<ListedChange> edited_changes(const Household& was, const Household& now, const Printer& printer) {
    const Side before{was.profile, printer};
    const Side after{now.profile, printer};
    std::vector<ListedChange> changes;
    for (const Difference& difference : compare(was.profile, now.profile)) {
        const ComparedPart& part = difference.now ? *difference.now : *difference.was;
        const Side& named = difference.gone ? before : after;
        const std::string label = field_label(printer.words(), difference.path);
        const std::size_t unit = unit_at_end(difference, label, printer.words());
        const UnitForm form = unit > 0 ? UnitForm::number_only : UnitForm::full;
        ListedChange change;
        change.kind = kind_of(difference.path, part.info);
        change.path = difference.path;
        change.prescription = named.prescription(difference.path);
        const Audiences audiences = part.is_field ? part.info.on : audiences_within(difference.path);
        change.label = calculated("changed-field", audiences, label_parts(label, unit));
        change.item = named.item(difference.path);
        change.was = before.value(difference.was, audiences, form);
        change.now = after.value(difference.now, audiences, form);
        changes.push_back(std::move(change));
    }
    return changes;
}

}  // namespace ventfolio
