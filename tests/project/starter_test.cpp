#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <vector>

#include "project/files.hpp"
#include "project/shell.hpp"

/// The profile of `new` can be filled in by hand until `check` is content, with nothing but what the two say.
namespace ventfolio::project {
namespace {

namespace fs = std::filesystem;

struct Row {
    const char* field;
    const char* value;
};

// An invented woman with a neck tube and pressure-controlled breaths. What is written here follows only the words of
// the file; the settings agree with one another by the definitions: peak 20 = 15 + 5, alarm above it.
constexpr Row kBlanks[] = {
    {"record_number", "DEMO-77"},
    {"orders.revision", "R1"},
    {"orders.prescriber", "Dr. Ada Thornquist"},
    {"orders.order_date", "2026-01-20"},
    {"orders.method", "written"},
    {"orders.effective_at", "2026-01-22 9:00 AM"},
    {"person.legal_name", "Marisol Vance Okerlund"},
    {"person.preferred_name", "Mari"},
    {"person.birth_date", "1961-05-30"},
    {"diagnosis.why_ventilated", "weak_muscles"},
    {"dependence.hours_per_day", "20 h"},
    {"dependence.unaided_awake.kind", "minutes"},
    {"dependence.unaided_awake.time", "40 min"},
    {"dependence.unaided_asleep.kind", "minutes"},
    {"dependence.unaided_asleep.time", "5 min"},
    {"airway.neck_tube.inner_diameter", "7.0 mm"},
    {"airway.neck_tube.cuff", "air"},
    {"airway.neck_tube.opening_healed", "true"},
    {"devices.0.label", "Machine one"},
    {"devices.0.slots.0.slot", "1"},
    {"devices.0.slots.0.prescription", "P1"},
    {"devices.0.slots.0.revision", "R1"},
    {"prescriptions.0.id", "P1"},
    {"prescriptions.0.place", "bed"},
    {"prescriptions.0.label", "Bed"},
    {"prescriptions.0.changed_in", "R1"},
    {"prescriptions.0.state", "both"},
    {"prescriptions.0.interface.kind", "neck_tube"},
    {"prescriptions.0.circuit.kind", "passive"},
    {"prescriptions.0.humidity.kind", "heated"},
    {"prescriptions.0.mode", "pc_ac"},
    {"prescriptions.0.alarms.high_pressure", "30 cmH2O"},
    {"prescriptions.0.alarms.low_pressure", "12 cmH2O"},
    {"prescriptions.0.alarms.no_breath", "20 s"},
    {"prescriptions.0.alarms.loudness", "8 of 10"},
    {"prescriptions.0.alarms.silence_time", "120 s"},
    {"oxygen.use", "none"},
    {"contacts.equipment_provider.phone", "555-0131"},
    {"contacts.prescriber_on_call.phone", "555-0132"},
    {"home.address", "\"7 Alder Lane #2, Larkmoor Falls\""},
};

// What these answers ask for, as `check` names it.
constexpr Row kAskedFor[] = {
    {"suction.depth", "9 cm"},
    {"prescriptions.0.rate", "14 breaths/min"},
    {"prescriptions.0.inspiratory_time", "1.2 s"},
    {"prescriptions.0.inspiratory_pressure", "15 cmH2O"},
    {"prescriptions.0.baseline_pressure", "5 cmH2O"},
    {"prescriptions.0.trigger", "flow 3 L/min"},
    {"prescriptions.0.circuit.exhalation_port", ""},
    {"prescriptions.0.alarms.low_minute_volume", "4 L/min"},
    {"prescriptions.0.alarms.disconnect", "15 s"},
};
// What stands inside of a group that is taken into use for them, and must be there then.
constexpr Row kInside[] = {
    {"suction.use", "neck_tube"},
    {"prescriptions.0.circuit.exhalation_port.place", "in_hose"},
};

// What the pressures ask for in turn.
constexpr Row kThen = {"prescriptions.0.pressure_reference", "above_baseline"};

/// The lines of a profile and the path of the key on each: with or without a # in front.
struct Keys {
    std::vector<std::string> lines;
    std::vector<std::string> paths;  ///< empty where no key stands; "PATH.0" at a dash

    explicit Keys(const std::string& text) : lines{lines_of(text)} {
        struct Around {
            std::size_t indent;
            std::string path;
        };
        std::vector<Around> around;
        const std::regex key{R"(^( *)#?(?:([a-z_0-9]+):.*|(-))$)"};
        for (const std::string& line : lines) {
            std::smatch found;
            paths.emplace_back();
            if (!std::regex_match(line, found, key)) continue;
            const auto indent = std::size_t(found[1].length());
            while (!around.empty() && around.back().indent >= indent) around.pop_back();
            const std::string name = found[3].matched ? "0" : found[2].str();
            paths.back() = around.empty() ? name : around.back().path + "." + name;
            around.push_back({indent, paths.back()});
        }
    }

    std::string text() const {
        std::string all;
        for (const std::string& line : lines) all += line + "\n";
        return all;
    }
    std::size_t line_of(const std::string& path) const {
        const auto found = std::ranges::find(paths, path);
        REQUIRE_MESSAGE(found != paths.end(), path);
        return std::size_t(found - paths.begin());
    }
    /// Takes the # away from a key and from the groups around it, and writes a value behind it.
    void use(const Row& row) {
        const std::string path = row.field;
        for (std::size_t dot = path.find('.'); dot != std::string::npos; dot = path.find('.', dot + 1))
            uncover(lines[line_of(path.substr(0, dot))]);
        std::string& line = lines[line_of(path)];
        uncover(line);
        CHECK(line.ends_with(":"));
        if (*row.value != '\0') line += std::string{" "} + row.value;
    }
    static void uncover(std::string& line) {
        const std::size_t at = line.find_first_not_of(' ');
        if (line[at] == '#') line.erase(at, 1);
    }
};

struct Checked {
    int status = -1;
    nlohmann::json findings;
};

Checked check(const Scratch& scratch, const Keys& keys) {
    save(scratch.path("home.yaml"), keys.text());
    const Ran ran =
        run_in(scratch.folder(), quoted(VENTFOLIO_PROGRAM) + " check home.yaml --on 2026-02-03 --format json");
    Checked checked{ran.status, nlohmann::json::parse(ran.out, nullptr, false)};
    REQUIRE(checked.findings.is_object());
    checked.findings = checked.findings.at("findings");
    return checked;
}

/// All that refusals point at, each path once, with the line.
std::map<std::string, std::size_t> refused(const Checked& checked) {
    std::map<std::string, std::size_t> fields;
    for (const auto& finding : checked.findings)
        if (finding.at("severity") == "refuse")
            for (const auto& mark : finding.at("marks")) fields.emplace(mark.at("field"), mark.at("line"));
    return fields;
}

std::string refusals(const Checked& checked) {
    std::string said;
    for (const auto& finding : checked.findings)
        if (finding.at("severity") == "refuse") said += finding.at("message").get<std::string>() + "\n";
    return said;
}

TEST_CASE("the starter profile is filled in by what it says and by what check asks for, and then prints") {
    const Scratch scratch;
    Keys keys{output_of(scratch.folder(), quoted(VENTFOLIO_PROGRAM) + " new")};

    const std::map<std::string, std::size_t> blanks = refused(check(scratch, keys));
    CHECK(blanks.size() == std::size(kBlanks));
    for (const Row& row : kBlanks) {
        CAPTURE(std::string{row.field});
        const auto blank = blanks.find(row.field);
        REQUIRE(blank != blanks.end());
        CHECK(blank->second == keys.line_of(row.field) + 1);
        keys.use(row);
    }

    // One value is left out: check names it, and nothing else that is blank.
    Keys forgotten = keys;
    std::string& line = forgotten.lines[forgotten.line_of("person.birth_date")];
    line.erase(line.find(':') + 1);
    const Checked one_blank = check(scratch, forgotten);
    CHECK(one_blank.status == 1);
    CHECK(refused(one_blank).size() == 1);
    CHECK(refused(one_blank).contains("person.birth_date"));

    const Checked filled = check(scratch, keys);
    CHECK(filled.status == 1);
    const std::map<std::string, std::size_t> asked = refused(filled);
    for (const Row& row : kAskedFor) {
        CAPTURE(std::string{row.field});
        CHECK(asked.contains(row.field));
        keys.use(row);
    }
    for (const Row& row : kInside) keys.use(row);

    const Checked then = check(scratch, keys);
    CAPTURE(refusals(then));
    CHECK(refused(then).contains(kThen.field));
    keys.use(kThen);

    const Checked done = check(scratch, keys);
    CAPTURE(refusals(done));
    CHECK(done.status == 0);
    CHECK(refused(done).empty());
    const Ran printed =
        run_in(scratch.folder(), quoted(VENTFOLIO_PROGRAM) + " print home.yaml --on 2026-02-03 -o papers");
    CHECK_MESSAGE(printed.status == 0, printed.err);
    const std::string words = output_of(scratch.folder(), "pdftotext papers/packet.pdf -");
    CHECK(words.find("7 Alder Lane #2") != std::string::npos);
}

TEST_CASE("none in place of a group is one line and the keys inside gone, as the starter says") {
    const Scratch scratch;
    const std::string starter = output_of(scratch.folder(), quoted(VENTFOLIO_PROGRAM) + " new");
    Keys keys{starter};
    for (const char* group : {"dependence.unaided_awake", "dependence.unaided_asleep", "airway.neck_tube"}) {
        CAPTURE(std::string{group});
        const std::size_t at = keys.line_of(group);
        CHECK(keys.lines[at - 1].find("Or none: write it behind the colon and delete the keys inside.") !=
              std::string::npos);
        keys.lines[at] += " none";
        for (std::size_t inside = at + 1; inside < keys.lines.size(); ++inside)
            if (keys.paths[inside].starts_with(std::string{group} + ".")) keys.lines[inside] = "";
    }
    for (const Row& row : kBlanks)
        if (keys.lines[keys.line_of(row.field)] != "") keys.use(row);
    std::string& hours = keys.lines[keys.line_of("dependence.hours_per_day")];
    hours.replace(hours.find("20 h"), 4, "24 h");  // who has no time without it
    const Checked checked = check(scratch, keys);
    CAPTURE(refusals(checked));
    for (const auto& [field, line] : refused(checked)) {
        CAPTURE(field);
        CHECK(!field.starts_with("dependence.unaided"));
        CHECK(field != "");  // a fault of YAML has no field
    }
}

}  // namespace
}  // namespace ventfolio::project
