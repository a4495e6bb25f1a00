#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>

#include "program.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

const std::filesystem::path kFaults = std::filesystem::path{VENTFOLIO_SOURCE_DIR} / "tests" / "faults";

struct FaultRow {
    const char* file;
    const char* rule;
    int line;
    int column;
    const char* marked;  ///< what the caret line stands under
};

/// One planted fault each; the places are counted by hand in the files.
constexpr FaultRow kFaultFiles[] = {
    {"tidal-volume-4500", "outside-typing-range", 55, 19, "4500 mL"},
    {"high-pressure-alarm-below-peak", "high-pressure-alarm-below-peak", 63, 22, "20 cmH2O"},
    {"heated-wire-with-water-trap", "heated-wire-with-water-trap", 48, 60, "true"},
    {"heated-humidifier-with-exchanger", "heated-humidifier-with-moisture-exchanger", 53, 7, "moisture_exchanger"},
    {"pulse-oxygen", "pulse-oxygen-on-ventilator", 72, 13, "pulse"},
    {"speaking-valve-with-filled-cuff", "speaking-valve-with-filled-cuff", 31, 31, "true"},
    {"essential-field-missing", "essential-field-missing", 26, 3, "neck_tube"},
    {"misspelt-key", "unknown-key", 63, 7, "high_presure"},
    {"number-without-unit", "unit-missing", 63, 22, "35"},
    {"date-that-does-not-exist", "date-that-does-not-exist", 16, 16, "2026-02-30"},
};

/// The message of one rule with the indented lines below it.
std::string message_of(const std::string& text, const std::string& head) {
    const std::size_t begin = text.find(head);
    if (begin == std::string::npos) return {};
    std::size_t end = text.find('\n', begin);
    while (end != std::string::npos && end + 1 < text.size() && text[end + 1] == ' ') end = text.find('\n', end + 1);
    return text.substr(begin, end - begin);
}

}  // namespace

TEST_CASE("check is content with the demo homes") {
    for (const char* home : {"adult-tracheostomy", "child-tracheostomy", "adult-mask"}) {
        const Scratch folder;
        const Ran ran = ventfolio_in(folder, fmt::format("check '{}' --on 2026-02-03", profile_path(home)));
        CAPTURE(ran.err);
        CHECK(ran.status == 0);
        CHECK(ran.out == "");
        CHECK(!holds(ran.err, "refuse:"));
        CHECK(!holds(ran.err, "acknowledge:"));  // an accepted one reads "acknowledge (accepted)"
        const Ran strict = ventfolio_in(folder, fmt::format("check '{}' --on 2026-02-03 --strict", profile_path(home)));
        CHECK(strict.status == 0);
    }
    const Scratch folder;
    const Ran second =
        ventfolio_in(folder, fmt::format("check '{}' --on 2026-03-17", profile_path("adult-tracheostomy-revision-2")));
    CHECK_MESSAGE(second.status == 0, second.err);
}

TEST_CASE("check answers each planted fault with file, line, column, the marked line, reason and source") {
    for (const FaultRow& row : kFaultFiles) {
        const Scratch folder;
        const std::string path = (kFaults / (std::string{row.file} + ".yaml")).string();
        const Ran ran = ventfolio_in(folder, fmt::format("check '{}' --on 2026-02-03", path));
        CAPTURE(std::string{row.file});
        CHECK(ran.status == 1);
        CHECK(ran.out == "");
        const std::string message = message_of(ran.err, fmt::format("{}:{}:{}: refuse: ", path, row.line, row.column));
        CAPTURE(message);
        REQUIRE(!message.empty());
        CHECK(holds(message, fmt::format("[{}]", row.rule)));
        const std::vector<std::string> lines = split(message, '\n');
        REQUIRE(lines.size() >= 5);
        // The line of the file, and carets under just the words that are meant.
        CHECK(lines[1].starts_with(fmt::format("{:>5} | ", row.line)));
        const std::size_t caret = lines[2].find('^');
        REQUIRE(caret != std::string::npos);
        const std::size_t carets = lines[2].find_first_not_of("^~", caret) - caret;
        const std::string marked = lines[1].substr(caret, carets);
        CHECK((marked == row.marked || marked == std::string(std::string_view{row.marked}.size(), '*')));
        CHECK(holds(message, "\n  why:    "));
        CHECK(holds(message, "\n  do:     "));
        CHECK(holds(message, "\n  source: "));
    }
}

TEST_CASE("every file of planted faults is in the table") {
    std::set<std::string> known{"no-fault"};
    for (const FaultRow& row : kFaultFiles) known.insert(row.file);
    std::set<std::string> there;
    for (const auto& entry : std::filesystem::directory_iterator{kFaults}) there.insert(entry.path().stem().string());
    CHECK(there == known);
    const Scratch folder;
    CHECK(
        ventfolio_in(folder, fmt::format("check '{}' --on 2026-02-03", (kFaults / "no-fault.yaml").string())).status ==
        0);
}

TEST_CASE("check gives the same findings as data") {
    for (const FaultRow& row : kFaultFiles) {
        const Scratch folder;
        const std::string path = (kFaults / (std::string{row.file} + ".yaml")).string();
        const Ran ran = ventfolio_in(folder, fmt::format("check '{}' --on 2026-02-03 --format json", path));
        CAPTURE(std::string{row.file});
        CHECK(ran.status == 1);
        CHECK(ran.err == "");
        const nlohmann::json report = nlohmann::json::parse(ran.out, nullptr, false);
        REQUIRE(report.is_object());
        const bool found = std::ranges::any_of(report.at("findings"), [&](const nlohmann::json& one) {
            const nlohmann::json& mark = one.at("marks").at(0);
            return one.at("rule") == row.rule && one.at("severity") == "refuse" && mark.at("line") == row.line &&
                   mark.at("column") == row.column;
        });
        CHECK_MESSAGE(found, ran.out);
    }
}

TEST_CASE("--strict stops at a danger that nobody has accepted") {
    const Scratch folder;
    std::string text = contents(profile_path("child-tracheostomy"));
    text.resize(text.find("\naccepted:") + 1);
    folder.save("home.yaml", text);
    CHECK(ventfolio_in(folder, "check home.yaml --on 2026-02-03").status == 0);
    CHECK(ventfolio_in(folder, "check home.yaml --on 2026-02-03 --strict").status == 1);
}

TEST_CASE("what is private does not stand in messages that may end up in a log") {
    const Scratch folder;
    std::string text = contents(profile_path("adult-tracheostomy"));
    text = with_replaced(text, "birth_date: 1978-02-11", "birth_date: 1978-02-31");
    text = with_replaced(text, "account: 20-4471-8", "account: 20-4471-8\n  acount: 20-4471-8");
    folder.save("home.yaml", text);
    const Ran ran = ventfolio_in(folder, "check home.yaml --on 2026-02-03");
    CHECK(ran.status == 1);
    CHECK(holds(ran.err, "birth_date"));
    CHECK(!holds(ran.err, "1978-02-31"));
    CHECK(!holds(ran.err, "20-4471-8"));
}

TEST_CASE("of several profiles the worst decides, and each is told apart") {
    const Scratch folder;
    const std::string good = profile_path("adult-mask");
    const std::string bad = (kFaults / "pulse-oxygen.yaml").string();
    const Ran two = ventfolio_in(folder, fmt::format("check '{}' '{}' --on 2026-02-03", good, bad));
    CHECK(two.status == 1);
    CHECK(holds(two.err, good + ": "));
    CHECK(holds(two.err, bad + ": "));
    const Ran three = ventfolio_in(folder, fmt::format("check '{}' missing.yaml '{}' --on 2026-02-03", good, bad));
    CHECK(three.status == 3);
    CHECK(holds(three.err, "missing.yaml"));
    CHECK(holds(three.err, "[pulse-oxygen-on-ventilator]"));
}
