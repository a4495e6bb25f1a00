#include <fmt/format.h>
#include <stdexcept>

#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/world.hpp"
#include "packet/intake_form.hpp"
#include "profile/field_list.hpp"
#include "profile/field_paths.hpp"
#include "profile/profile.hpp"
#include "profile/schema.hpp"
#include "profile/starter.hpp"
#include "rules/calculators/report.hpp"
#include "rules/explain.hpp"
#include "units/embedded_file.hpp"
#include "units/text.hpp"

namespace ventfolio {

std::span<const EmbeddedFile> embedded_schemas();

namespace {

std::string_view schema_file(std::string_view name) {
    for (const EmbeddedFile& file : embedded_schemas())
        if (file.name.ends_with(name)) return file.contents;
    throw std::logic_error{fmt::format("there is no {}", name)};
}

void show_blank_profile(Visitor& visitor) {
    Profile blank;
    blank.describe(visitor);
}

int list_sheets() {
    const StationeryShelf shelf = open_shelf();
    const Stationery* chosen = without_faults(at_choice(shelf, {}), false);
    if (chosen == nullptr) return kUnusable;
    const Stationery& stationery = *chosen;
    for (const std::string& name : stationery.in_order()) {
        const std::vector<Stationery::Part> parts = stationery.parts_of(name);
        const Template& sheet = *parts.front().from;
        const FrontMatterLine* audience = sheet.front("audience");
        const FrontMatterLine* each = sheet.front("for_each");
        fmt::print(
            "{:<18} for {}{}{}\n", name, audience ? audience->value : "nobody",
            each ? ", one for each of " + each->value : "",
            parts.size() > 1 ? fmt::format(", {} leaves", parts.size() - (parts.front().leaf.empty() ? 1 : 0)) : "");
    }
    return kDone;
}

std::string explained(const DeclaredField& field) {
    const std::string example = field.info.example.empty() ? "" : fmt::format("  example: {}\n", field.info.example);
    return fmt::format("{}\n  {}\n  grade:   {}\n  takes:   {}\n{}  may stand on paper for: {}\n", field.path,
                       field.info.help, name_of(field.info.grade), what_it_takes(field), example,
                       names_of(field.info.on));
}

}  // namespace

int list_command(ListOf what) {
    switch (what) {
        case ListOf::sheets:
            return list_sheets();
        case ListOf::rules:
            fmt::print("{}", list_rules());
            return kDone;
        case ListOf::fields:
            fmt::print("{}", field_list(declared_fields_of<Profile>()));
            return kDone;
        case ListOf::calculators:
            fmt::print("{}", list_calculators());
            return kDone;
    }
    return kUsage;
}

int explain_command(const std::string& name) {
    if (const auto text = explain_rule(name)) {
        fmt::print("{}\n", *text);
        return kDone;
    }
    if (const auto text = explain_calculator(name)) {
        fmt::print("{}", *text);
        return kDone;
    }
    const std::vector<DeclaredField> fields = declared_fields_of<Profile>();
    std::vector<std::string> paths;
    for (const DeclaredField& field : fields) {
        paths.push_back(field.path);
        if (field.path != declared_path(name)) continue;
        fmt::print("{}", explained(field));
        return kDone;
    }
    std::vector<std::string> near;
    for (const auto& one : {nearest_rule(name), nearest_calculator(name), nearest(name, paths)})
        if (one) near.push_back(*one);
    const auto nearest_of_all = nearest(name, near);
    fmt::print(stderr, "ventfolio: there is no rule, calculator or field \"{}\"{}\n", name,
               nearest_of_all
                   ? fmt::format("; did you mean \"{}\"?", *nearest_of_all)
                   : "; see `ventfolio list rules`, `ventfolio list calculators` and `ventfolio list fields`");
    return kUsage;
}

int schema_command(SchemaOf what) {
    switch (what) {
        case SchemaOf::profile:
            fmt::print("{}\n", json_schema(show_blank_profile));
            break;
        case SchemaOf::check:
            fmt::print("{}", schema_file("report_schema.json"));
            break;
        case SchemaOf::packet:
            fmt::print("{}", schema_file("packet_schema.json"));
            break;
        case SchemaOf::print:
            fmt::print("{}", schema_file("print_schema.json"));
            break;
    }
    return kDone;
}

int new_command(const NewOptions& options) {
    if (!options.paper) {
        write_output(options.output, starter_profile(show_blank_profile));
        return kDone;
    }
    if (options.output.empty() && standard_output_is_terminal()) {
        fmt::print(stderr, "ventfolio: a PDF is nothing for a terminal; write it to a file with -o FILE\n");
        return kUsage;
    }
    const StationeryShelf shelf = open_shelf(options.stationery);
    const std::optional<StationeryChoice> choice = chosen_stationery(options.stationery, shelf);
    if (!choice) return kUsage;
    const Stationery* chosen = without_faults(at_choice(shelf, *choice), false);
    if (chosen == nullptr) return kUnusable;
    const Stationery& stationery = *chosen;
    std::vector<Finding> faults;
    Measurer measurer;
    const std::string form =
        intake_form(show_blank_profile, stationery, PrintOrder{}.setup(stationery).paper, measurer, faults);
    print_findings(faults, nullptr, stationery.sources, false);
    if (form.empty()) return kUnusable;
    write_output(options.output, form);
    return kDone;
}

}  // namespace ventfolio
