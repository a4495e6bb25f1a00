#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "program.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

using Json = nlohmann::json;

const std::filesystem::path kRoot{VENTFOLIO_SOURCE_DIR};

std::vector<std::string> profiles_in(const char* folder) {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator{kRoot / folder})
        if (entry.path().extension() == ".yaml") names.push_back(entry.path().string());
    std::ranges::sort(names);
    return names;
}

std::string fault(const char* name) { return (kRoot / "tests" / "faults" / name).string() + ".yaml"; }

std::vector<std::string> lines_of(const std::string& text) { return split(text, '\n'); }

}  // namespace

TEST_CASE("what check writes as JSON keeps to its schema, whatever the profile") {
    std::vector<std::string> names = profiles_in("profiles");
    for (const std::string& name : profiles_in("tests/faults")) names.push_back(name);
    CHECK(names.size() >= 15);
    for (const std::string& name : names)
        for (const char* more : {"", "--strict", "--unmasked"}) {
            const Scratch folder;
            const Ran ran =
                ventfolio_in(folder, fmt::format("check '{}' --on 2026-02-03 --format json {}", name, more));
            CAPTURE(name);
            CHECK(ran.err == "");
            const Ran validation = validated_by(folder, "check", ran.out);
            CHECK_MESSAGE(validation.status == 0, validation.out << validation.err);
        }
    const Scratch folder;
    std::string all;
    for (const std::string& name : names) all += "'" + name + "' ";
    const Ran ran = ventfolio_in(folder, "check " + all + "missing.yaml --on 2026-02-03 --format json");
    CHECK(ran.status == 3);
    const Ran validation = validated_by(folder, "check", ran.out);
    CHECK_MESSAGE(validation.status == 0, validation.out << validation.err);
    const Json report = Json::parse(ran.out);
    CHECK(report.at("files").size() == names.size() + 1);
    CHECK(report.at("status") == 3);
}

TEST_CASE("the schema is a real one: it refuses a report that is not") {
    const Scratch folder;
    const Ran ran =
        ventfolio_in(folder, fmt::format("check '{}' --on 2026-02-03 --format json", fault("pulse-oxygen")));
    const Json good = Json::parse(ran.out);
    REQUIRE(validated_by(folder, "check", good.dump()).status == 0);
    struct Row {
        const char* pointer;
        Json value;
    };
    const Row rows[] = {
        {"/status", 2},
        {"/on", "3 Feb 2026"},
        {"/more", true},
        {"/findings/0/severity", "fatal"},
        {"/findings/0/rule", "Pulse Oxygen"},
        {"/findings/0/marks/0/line", 0},
        {"/findings/0/numbers", Json::array()},
        {"/files/0/state", "unusable"},  // then it needs a message
        {"/counts/refuse", -1},
    };
    for (const Row& row : rows) {
        Json bad = good;
        bad[Json::json_pointer{row.pointer}] = row.value;
        CHECK_MESSAGE(validated_by(folder, "check", bad.dump()).status == 1, row.pointer);
    }
    for (const char* key : {"schema", "on", "strict", "masked", "status", "files", "findings", "counts"}) {
        Json bad = good;
        bad.erase(key);
        CHECK_MESSAGE(validated_by(folder, "check", bad.dump()).status == 1, key);
    }
}

TEST_CASE("schema without a word is still that of the profile") {
    const Scratch folder;
    const Ran profile = ventfolio_in(folder, "schema");
    CHECK(profile.status == 0);
    CHECK(profile.out == ventfolio_in(folder, "schema --of profile").out);
    CHECK(profile.out != ventfolio_in(folder, "schema --of check").out);
    CHECK(profile.out != ventfolio_in(folder, "schema --of packet").out);
    CHECK(ventfolio_in(folder, "schema --of folder").status == 2);
}

TEST_CASE("values of private fields stand in no report, unless they are asked for") {
    const Scratch folder;
    folder.save("home.yaml", with_replaced(contents(profile_path("adult-tracheostomy")),
                                           "weight_date: ", "weight_date: 1977-12-24  # was "));
    const Ran text = ventfolio_in(folder, "check home.yaml --on 2026-02-03");
    const Ran json = ventfolio_in(folder, "check home.yaml --on 2026-02-03 --format json");
    CHECK(text.status == 1);
    CHECK(holds(text.err, "[impossible-date]"));
    CHECK(!holds(text.err, "1977-12-24"));
    CHECK(!holds(text.err, "1978-02-11"));
    CHECK(holds(json.out, "impossible-date"));
    CHECK(!holds(json.out, "1977-12-24"));
    CHECK(!holds(json.out, "1978-02-11"));
    CHECK(Json::parse(json.out).at("masked") == true);
    const Ran open_text = ventfolio_in(folder, "check home.yaml --on 2026-02-03 --unmasked");
    const Ran open_json = ventfolio_in(folder, "check home.yaml --on 2026-02-03 --format json --unmasked");
    CHECK(holds(open_text.err, "1977-12-24"));
    CHECK(holds(open_json.out, "1977-12-24"));
    CHECK(Json::parse(open_json.out).at("masked") == false);
}

TEST_CASE("many files end with a summary line each, sorted, whatever their order") {
    const Scratch folder;
    folder.save("b.yaml", contents(profile_path("adult-mask")));
    folder.save("c.yaml", contents(fault("pulse-oxygen")));
    folder.save("d.yaml", contents(profile_path("child-tracheostomy")));
    const Ran ran = ventfolio_in(folder, "check d.yaml c.yaml a.yaml b.yaml c.yaml --on 2026-02-03 --quiet");
    CHECK(ran.status == 3);
    CHECK(ran.out == "");
    std::vector<std::string> lines = lines_of(ran.err);
    REQUIRE(lines.size() > 6);
    lines.pop_back();  // behind the last line end
    const std::vector<std::string> last{lines.end() - 5, lines.end()};
    CHECK(last[0] == "a.yaml: unusable: cannot be read: No such file or directory");
    CHECK(last[1].starts_with("b.yaml: ready: "));
    CHECK(last[2].starts_with("c.yaml: stopped: "));
    CHECK(holds(last[2], "refuse"));
    CHECK(last[3].starts_with("d.yaml: ready: "));
    CHECK(last[4] == "4 profiles: 2 ready, 1 stopped, 1 unusable");
    CHECK(holds(ran.err, "[pulse-oxygen-on-ventilator]"));  // the others are still checked
    CHECK(ran.err == ventfolio_in(folder, "check b.yaml c.yaml d.yaml a.yaml --on 2026-02-03 --quiet").err);
}

TEST_CASE("one profile has one summary line and no total") {
    const Scratch folder;
    folder.save("home.yaml", contents(profile_path("adult-mask")));
    const Ran ran = ventfolio_in(folder, "check home.yaml --on 2026-02-03");
    CHECK(ran.status == 0);
    CHECK(holds(ran.err, "home.yaml: ready: "));
    CHECK(!holds(ran.err, "profiles: "));
}

TEST_CASE("the worst file decides the status, in text and as data") {
    const Scratch folder;
    folder.save("good.yaml", contents(profile_path("adult-mask")));
    folder.save("bad.yaml", contents(fault("pulse-oxygen")));
    std::string text = contents(profile_path("child-tracheostomy"));
    text.resize(text.find("\naccepted:") + 1);
    folder.save("open.yaml", text);
    struct Row {
        const char* words;
        int status;
    };
    const Row rows[] = {
        {"good.yaml", 0},
        {"good.yaml open.yaml", 0},
        {"good.yaml open.yaml --strict", 1},
        {"good.yaml --strict", 0},
        {"good.yaml bad.yaml", 1},
        {"good.yaml missing.yaml", 3},
        {"bad.yaml missing.yaml", 3},
        {".", 3},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        CHECK(ventfolio_in(folder, fmt::format("check {} --on 2026-02-03", row.words)).status == row.status);
        const Ran json = ventfolio_in(folder, fmt::format("check {} --on 2026-02-03 --format json", row.words));
        CHECK(json.status == row.status);
        CHECK(Json::parse(json.out).at("status") == row.status);
    }
}

TEST_CASE("check and print judge finished sheets, too: free text that gives a code away stops its sheet") {
    const Scratch folder;
    std::string text = contents(profile_path("adult-tracheostomy"));
    text = with_replaced(text, "upper_note: small mouth opening", "upper_note: side door code 4471");
    folder.save("home.yaml", text);
    const Ran check = ventfolio_in(folder, "check home.yaml --on 2026-02-03");
    CHECK(check.status == 1);
    CHECK(holds(check.err, "templates/en/responder-sheet.md:"));
    CHECK(holds(check.err, "[private-fact-in-wrong-place]"));
    CHECK(!holds(check.err, "4471"));
    const Ran print = ventfolio_in(folder, "print home.yaml --on 2026-02-03 -o papers");
    CHECK(print.status == 1);
    CHECK(holds(print.err, "[private-fact-in-wrong-place]"));
    CHECK(!holds(print.err, "4471"));
    const Ran explained = ventfolio_in(folder, "explain private-fact-in-wrong-place");
    CHECK(explained.status == 0);
    CHECK(holds(explained.out, "example:"));
    CHECK(holds(ventfolio_in(folder, "list rules").out, "mouth-step-without-mouth-route "));
}
