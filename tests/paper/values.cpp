#include "values.hpp"

#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <map>

#include "packet/print_home_sheets.hpp"
#include "profile/field_paths.hpp"
#include "rules/edited_home.hpp"
#include "units/text.hpp"

namespace ventfolio::testing {
namespace {

YAML::Node at_path(const YAML::Node& root, std::string_view path) {
    YAML::Node node;
    node.reset(root);
    for (const std::string& step : split(path, '.')) {
        const bool index = std::ranges::all_of(step, [](char letter) { return letter >= '0' && letter <= '9'; });
        node.reset(index ? node[std::stoul(step)] : node[step]);
    }
    return node;
}

bool starts_with_number(std::string_view text) { return !text.empty() && text[0] >= '0' && text[0] <= '9'; }

/// What a unit may be called on paper. Those that are not here are written one way only.
std::vector<std::string> names_of(const std::string& unit) {
    static const std::map<std::string, std::vector<std::string>> names{
        {"breaths/min", {"breaths per minute", "per minute"}},
        {"L/min", {"L/min", "liters per minute"}},
        {"s", {"s", "seconds"}},
    };
    const auto found = names.find(unit);
    return found == names.end() ? std::vector{unit} : found->second;
}

WrittenValue measure(const std::string& path, const std::string& field, const std::string& number,
                     const std::string& unit) {
    WrittenValue value{path, field, {}, number};
    for (const std::string& name : names_of(unit)) value.whole.push_back(number + " " + name);
    return value;
}

/// "16 cmH2O" is a number and its unit; "2 of 5" and "Pressure A/C" are words.
WrittenValue written(const std::string& path, const std::string& text) {
    const std::vector<std::string> parts = split(text, ' ');
    if (starts_with_number(text) && parts.size() == 2) return measure(path, path, parts[0], parts[1]);
    return {path, path, {text}, ""};
}

/// {from: 19 cmH2O, to: 27 cmH2O} stands as one: "19 to 27 cmH2O".
WrittenValue range(const std::string& path, const std::string& field, const std::string& from, const std::string& to) {
    const std::vector<std::string> low = split(from, ' ');
    const std::vector<std::string> high = split(to, ' ');
    return measure(path, field, low.at(0) + " to " + high.at(0), high.at(1));
}

bool stands_in_other_words(ValueKind kind) { return kind == ValueKind::choice || kind == ValueKind::flag; }

void add_phones(const YAML::Node& node, const std::string& path, std::vector<WrittenValue>& values) {
    if (node.IsMap())
        for (const auto& entry : node) {
            const auto key = entry.first.as<std::string>();
            const std::string below = path.empty() ? key : path + "." + key;
            const bool phone = key == "phone" || key.ends_with("_phone");
            if (phone && entry.second.IsScalar())
                values.push_back({below, below, {entry.second.as<std::string>()}, ""});
            else
                add_phones(entry.second, below, values);
        }
    if (node.IsSequence())
        for (std::size_t at = 0; at < node.size(); ++at) add_phones(node[at], path + "." + std::to_string(at), values);
}

}  // namespace

std::vector<WrittenValue> written_values(std::string_view home) {
    const YAML::Node root = YAML::Load(demo_home(home));
    std::vector<WrittenValue> values;
    for (const FieldAt& at : fields_of(set_demo_home(home).checked.profile)) {
        const bool setting = at.info.setting && at.path.starts_with("prescriptions.") && at.reachable;
        if (!setting || at.field->missing() || at.field->is_none() || stands_in_other_words(at.field->kind())) continue;
        const YAML::Node node = at_path(root, at.path);
        const std::string group = at.path.substr(0, at.path.rfind('.'));
        if (at.info.key == "pressure_most") continue;  // stands in one with the least
        if (at.info.key == "pressure_least")
            values.push_back(range(at.path, "calc.pressure_range", node.as<std::string>(),
                                   at_path(root, group)["pressure_most"].as<std::string>()));
        else if (node.IsMap())
            values.push_back(range(at.path, at.path, node["from"].as<std::string>(), node["to"].as<std::string>()));
        else
            values.push_back(written(at.path, node.as<std::string>()));
    }
    add_phones(root, "", values);
    return values;
}

std::string for_reader(std::string_view text) {
    std::string plain = lower_ascii(plain_blanks(std::string{text}));
    std::erase_if(plain, [](char letter) { return letter == ' ' || letter == '\n'; });
    // O and 0, in this order, have one shape to a reader that expects words.
    plain = with_replaced(std::move(plain), "h20", "h2o");
    return with_replaced(std::move(plain), "\xE2\x80\x99", "'");
}

}  // namespace ventfolio::testing
