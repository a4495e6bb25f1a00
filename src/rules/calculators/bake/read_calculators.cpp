#include <algorithm>
#include <array>
#include <set>

#include "../../bake/source.hpp"
#include "calculator_book.hpp"

namespace bake {
namespace {

bool is_number(std::string_view text) {
    if (text.starts_with('-')) text.remove_prefix(1);
    return !text.empty() && text.find_first_not_of("0123456789.") == std::string_view::npos;
}

bool is_name(std::string_view name, std::size_t least_words) {
    const auto hyphens = static_cast<std::size_t>(std::ranges::count(name, '-'));
    return !name.empty() && name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string_view::npos &&
           name.front() != '-' && name.back() != '-' && name.find("--") == std::string_view::npos &&
           hyphens + 1 >= least_words;
}

std::string sentence(const Source& source, const YAML::Node& node, const char* key) {
    std::string text = source.text(node, key);
    if (!text.ends_with('.')) source.fail(node[key], fmt::format("'{}' ends with a full stop", key));
    return text;
}

std::string number_or_nothing(const Source& source, const YAML::Node& node, const char* key) {
    std::string text = source.optional_text(node, key);
    if (!text.empty() && !is_number(text)) source.fail(node[key], fmt::format("'{}' is no number", text));
    return text;
}

std::vector<std::pair<std::string, std::string>> named_texts(const YAML::Node& node) {
    std::vector<std::pair<std::string, std::string>> texts;
    if (node && node.IsScalar()) texts.emplace_back("", node.Scalar());
    if (node && node.IsMap())
        for (const auto& pair : node) texts.emplace_back(pair.first.Scalar(), pair.second.Scalar());
    return texts;
}

std::vector<Kind> read_kinds(const Source& source) {
    std::vector<Kind> kinds;
    for (const auto& node : source.root()["kinds"]) {
        source.only_keys(node, {"name", "says", "dimension", "units"});
        Kind kind{source.text(node, "name"), source.text(node, "says"), source.optional_text(node, "dimension"), {}};
        for (const auto& unit : node["units"]) kind.units.push_back({unit.first.Scalar(), unit.second.Scalar()});
        if (kind.dimension.empty() == kind.units.empty())
            source.fail(node, "a kind is a dimension of quantities, or has units of its own");
        kinds.push_back(std::move(kind));
    }
    return kinds;
}

bool has_unit(const CalculatorBook& book, const Argument& argument) {
    const auto kind = std::ranges::find(book.kinds, argument.takes, &Kind::name);
    if (kind == book.kinds.end()) return argument.unit.empty();
    if (!kind->dimension.empty()) return !argument.unit.empty();
    return std::ranges::find(kind->units, argument.unit, &CompoundUnit::symbol) != kind->units.end();
}

Argument read_argument(const Source& source, const YAML::Node& node, const CalculatorBook& book) {
    source.only_keys(node, {"name", "takes", "unit", "from", "to", "default", "optional", "many", "words", "help"});
    Argument argument;
    argument.name = source.text(node, "name");
    argument.takes = source.text(node, "takes");
    argument.unit = source.optional_text(node, "unit");
    argument.from = number_or_nothing(source, node, "from");
    argument.to = number_or_nothing(source, node, "to");
    argument.standard = source.optional_text(node, "default");
    argument.optional = source.flag(node, "optional");
    argument.many = source.flag(node, "many");
    for (const auto& word : node["words"]) argument.words.push_back(word.Scalar());
    argument.help = source.text(node, "help");
    constexpr std::array<std::string_view, 7> kPlain{"word", "whole", "number", "date", "interval", "measure", "unit"};
    const bool plain = std::ranges::find(kPlain, argument.takes) != kPlain.end();
    const bool measured = std::ranges::find(book.kinds, argument.takes, &Kind::name) != book.kinds.end();
    if (!is_name(argument.name, 1)) source.fail(node["name"], "an argument is named in small letters and hyphens");
    if (!plain && !measured) source.fail(node["takes"], fmt::format("nothing is known as '{}'", argument.takes));
    if (!has_unit(book, argument)) source.fail(node, fmt::format("'{}' has no unit of its kind", argument.name));
    if ((argument.takes == "word") == argument.words.empty()) source.fail(node, "words go with 'takes: word'");
    const bool counted = measured || argument.takes == "whole" || argument.takes == "number";
    if (counted && (argument.from.empty() || argument.to.empty()))
        source.fail(node, fmt::format("'{}' has no range", argument.name));
    if (argument.optional && !argument.standard.empty()) source.fail(node, "a default makes 'optional' meaningless");
    return argument;
}

Result read_result(const Source& source, const YAML::Node& node) {
    source.only_keys(node, {"name", "label", "form", "unit", "places", "round", "plan", "words"});
    Result result;
    result.name = source.text(node, "name");
    result.label = source.text(node, "label");
    result.form = node["form"] ? source.text(node, "form") : "number";
    result.unit = source.optional_text(node, "unit");
    result.places = node["places"] ? number_or_nothing(source, node, "places") : "0";
    result.round = node["round"] ? source.text(node, "round") : "nearest";
    result.plan = source.optional_text(node, "plan");
    result.words = named_texts(node["words"]);
    const auto among = [&](const std::string& word, std::initializer_list<std::string_view> all, const char* key) {
        if (std::ranges::find(all, word) == all.end()) source.fail(node, fmt::format("'{}': no such {}", word, key));
    };
    among(result.form, {"number", "hours", "word", "date", "ratio", "measure"}, "form");
    among(result.round, {"nearest", "up", "down"}, "rounding");
    among(result.plan, {"", "low", "high", "both"}, "plan");
    if ((result.form == "word") == result.words.empty()) source.fail(node, "words go with 'form: word'");
    return result;
}

void check_placeholders(const Source& source, const YAML::Node& node, const Calculator& calculator) {
    std::set<std::string> names;
    for (const Argument& argument : calculator.arguments) names.insert(argument.name);
    for (const Result& result : calculator.results)
        for (const char* end : {"", ".low", ".high"}) names.insert(result.name + end);
    for (const auto& [way, text] : calculator.works)
        for (auto at = text.find('{'); at != std::string::npos; at = text.find('{', at + 1)) {
            const std::string name = text.substr(at + 1, text.find('}', at) - at - 1);
            if (!names.contains(name)) source.fail(node["works"], fmt::format("nothing is named '{}'", name));
        }
}

Calculator read_calculator(const Source& source, const YAML::Node& node, const CalculatorBook& book) {
    source.only_keys(node, {"name", "purpose", "formula", "works", "range", "nothing", "source", "caution", "fire",
                            "arguments", "results", "example", "prints"});
    Calculator one;
    one.name = source.text(node, "name");
    one.subject = source.stem();
    if (!is_name(one.name, 2)) source.fail(node["name"], "a calculator's name is two small words or more with hyphens");
    one.purpose = sentence(source, node, "purpose");
    one.formula = source.text(node, "formula");
    one.works = named_texts(node["works"]);
    one.range = source.optional_text(node, "range");
    one.nothing = source.optional_text(node, "nothing");
    one.source = source.text(node, "source");
    one.caution = node["caution"] ? sentence(source, node, "caution") : std::string{};
    one.fire = source.flag(node, "fire");
    for (const auto& argument : node["arguments"]) one.arguments.push_back(read_argument(source, argument, book));
    for (const auto& result : node["results"]) one.results.push_back(read_result(source, result));
    one.example = source.text(node, "example");
    one.prints = source.text(node, "prints");
    if (one.arguments.empty() || one.results.empty() || one.works.empty())
        source.fail(node, fmt::format("'{}' lacks arguments, results or the worked formula", one.name));
    check_placeholders(source, node, one);
    return one;
}

}  // namespace

CalculatorBook read_calculators(const std::filesystem::path& shared,
                                const std::vector<std::filesystem::path>& subjects) {
    CalculatorBook book;
    const Source common{shared};
    common.only_keys(common.root(), {"limits", "fire", "kinds"});
    book.limits = sentence(common, common.root(), "limits");
    book.fire = sentence(common, common.root(), "fire");
    book.kinds = read_kinds(common);
    for (const std::filesystem::path& path : subjects) {
        const Source source{path};
        source.only_keys(source.root(), {"calculators"});
        for (const auto& node : source.root()["calculators"]) {
            Calculator one = read_calculator(source, node, book);
            if (std::ranges::find(book.calculators, one.name, &Calculator::name) != book.calculators.end())
                source.fail(node, fmt::format("there is already a calculator '{}'", one.name));
            book.calculators.push_back(std::move(one));
        }
    }
    return book;
}

}  // namespace bake
