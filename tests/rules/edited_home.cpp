#include "edited_home.hpp"

#include <fmt/format.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <stdexcept>
#include <utility>

#include "rules/revisions.hpp"
#include "units/text.hpp"

namespace ventfolio::testing {
namespace {

/// Writes a tree back as block YAML. Quoted texts stay quoted, so that "no" never turns into no.
void write(const YAML::Node& node, std::size_t indent, std::string& out) {
    const std::string blanks(indent, ' ');
    if (node.IsMap()) {
        if (node.size() == 0) out += " {}";
        for (const auto& pair : node) {
            out += "\n" + blanks + pair.first.Scalar() + ":";
            write(pair.second, indent + 2, out);
        }
    } else if (node.IsSequence()) {
        if (node.size() == 0) out += " []";
        for (const auto& item : node) {
            out += "\n" + blanks + "-";
            write(item, indent + 2, out);
        }
    } else if (node.IsNull()) {
        out += " null";
    } else {
        const bool quote = node.Tag() == "!";
        out += quote ? " \"" + with_replaced(node.Scalar(), "\"", "\\\"") + "\"" : " " + node.Scalar();
    }
}

std::string written_out(const YAML::Node& root) {
    std::string out;
    write(root, 0, out);
    return out.substr(1) + "\n";
}

bool is_number(const std::string& step) { return step.find_first_not_of("0123456789") == std::string::npos; }

YAML::Node child(const YAML::Node& parent, const std::string& step) {
    if (parent.IsSequence() && is_number(step)) return parent[std::stoul(step)];
    return parent[step];
}

YAML::Node parent_of(const YAML::Node& root, const std::vector<std::string>& steps) {
    YAML::Node at = root;
    for (std::size_t step = 0; step + 1 < steps.size(); ++step) {
        const YAML::Node next = child(at, steps[step]);
        if (!next.IsDefined()) throw std::runtime_error{"no such path: " + steps[step]};
        at.reset(next);
    }
    return at;
}

void remove(YAML::Node& root, const std::string& path) {
    const auto steps = split(path, '.');
    YAML::Node parent = parent_of(root, steps);
    if (!child(parent, steps.back()).IsDefined()) throw std::runtime_error{"nothing to remove: " + path};
    if (!parent.IsSequence()) {
        parent.remove(steps.back());
        return;
    }
    YAML::Node rest{YAML::NodeType::Sequence};
    for (std::size_t at = 0; at < parent.size(); ++at)
        if (std::to_string(at) != steps.back()) rest.push_back(parent[at]);
    parent = rest;
}

void set(YAML::Node& root, const std::string& path, const std::string& value) {
    const auto steps = split(path, '.');
    YAML::Node parent = parent_of(root, steps);
    const YAML::Node node = YAML::Load(value);
    if (parent.IsSequence())
        parent[std::stoul(steps.back())] = node;
    else
        parent[steps.back()] = node;
}

void add_paths(const YAML::Node& node, const std::string& prefix, std::vector<std::string>& paths) {
    if (node.IsMap()) {
        for (const auto& pair : node) {
            paths.push_back(prefix + pair.first.Scalar());
            add_paths(pair.second, paths.back() + ".", paths);
        }
    } else if (node.IsSequence()) {
        for (std::size_t at = 0; at < node.size(); ++at) {
            paths.push_back(prefix + std::to_string(at));
            add_paths(node[at], paths.back() + ".", paths);
        }
    }
}

/// A demo home with edits as text and as it is read. Many tests ask for the same one, and reading costs more than
/// judging.
struct EditedHome {
    SourceText source;
    ReadResult read;
};

const EditedHome& edited_home(std::string_view home, std::string_view edits) {
    static std::map<std::pair<std::string, std::string>, EditedHome> known;
    const auto [found, is_new] = known.try_emplace({std::string{home}, std::string{edits}});
    EditedHome& kept = found->second;
    if (is_new) {
        const std::string text = demo_home(home);
        kept.source = {std::string{home} + ".yaml", edits.empty() ? text : edited(text, edits)};
        kept.read = read_profile(kept.source);
    }
    return kept;
}

Judged with_more(const EditedHome& home, const std::vector<Finding>& more) {
    Judged result{home.source, home.read, home.read.findings};
    result.findings.insert(result.findings.end(), more.begin(), more.end());
    return result;
}

}  // namespace

std::vector<std::string> paths_of(const std::string& yaml) {
    std::vector<std::string> paths;
    add_paths(YAML::Load(yaml), "", paths);
    return paths;
}

std::string demo_home(std::string_view home) {
    const std::string path = fmt::format("{}/profiles/{}.yaml", VENTFOLIO_SOURCE_DIR, home);
    std::ifstream file{path, std::ios::binary};
    if (!file) throw std::runtime_error{"cannot read " + path};
    return {std::istreambuf_iterator<char>{file}, std::istreambuf_iterator<char>{}};
}

std::string edited(const std::string& yaml, std::string_view edits) {
    YAML::Node root = YAML::Load(yaml);
    for (const std::string& line : split(edits, '\n')) {
        if (line.empty()) continue;
        const auto colon = line.find(": ");
        const std::string key = line.substr(0, colon);
        const std::string value = line.substr(colon + 2);
        if (key == "remove")
            remove(root, value);
        else
            set(root, key, value);
    }
    return written_out(root);
}

bool Judged::reports(std::string_view rule) const { return finding(rule) != nullptr; }

const Finding* Judged::finding(std::string_view rule) const {
    const auto found = std::ranges::find(findings, rule, &Finding::rule);
    return found == findings.end() ? nullptr : &*found;
}

std::vector<std::string> Judged::rules() const {
    std::set<std::string> names;
    for (const Finding& finding : findings) names.insert(finding.rule);
    return {names.begin(), names.end()};
}

Judged judged(std::string name, std::string text, std::string_view on) {
    EditedHome home{{std::move(name), std::move(text)}, {}};
    home.read = read_profile(home.source);
    return with_more(home, judge(home.read.profile, home.source, *Date::parse(on)));
}

Judged judged_home(std::string_view home, std::string_view edits, std::string_view on) {
    const EditedHome& edited = edited_home(home, edits);
    return with_more(edited, judge(edited.read.profile, edited.source, *Date::parse(on)));
}

Judged judged_update(std::string_view home, std::string_view edits, std::string_view on) {
    const EditedHome& was = edited_home(home, "");
    const EditedHome& is = edited_home(home, edits);
    Judged result{is.source, is.read, {}};
    result.findings = judge_update(was.read.profile, is.read.profile, is.source, *Date::parse(on));
    return result;
}

std::string summary(const std::vector<Finding>& findings) {
    std::string out;
    for (const Finding& finding : findings)
        out += fmt::format("\n  {} ({}{}): {}", finding.rule, name_of(finding.severity),
                           finding.accepted ? ", accepted" : "", finding.message);
    return out;
}

}  // namespace ventfolio::testing
