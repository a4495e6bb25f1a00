#include <doctest/doctest.h>
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "profile/field_paths.hpp"
#include "profile/profile.hpp"
#include "program.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

TEST_CASE("each command has help with an example, and the program a version") {
    const Scratch folder;
    for (const char* command : {"check", "print", "update", "match", "explain", "list", "new", "schema"}) {
        CAPTURE(std::string{command});
        const Ran ran = ventfolio_in(folder, std::string{command} + " --help");
        CHECK(ran.status == 0);
        CHECK(ran.err == "");
        CHECK(holds(ran.out, fmt::format("Example: ventfolio {}", command)));
    }
    const Ran help = ventfolio_in(folder, "--help");
    CHECK(help.status == 0);
    CHECK(holds(help.out, "The prescriber's orders, the device's instructions and local protocol come first."));
    CHECK(ventfolio_in(folder, "--version").out.starts_with("ventfolio "));
}

TEST_CASE("list writes names first, and each of them can be explained") {
    const Scratch folder;
    for (const char* what : {"rules", "fields"}) {
        const Ran ran = ventfolio_in(folder, fmt::format("list {}", what));
        CHECK(ran.status == 0);
        CHECK(ran.err == "");
        std::size_t number = 0;
        std::string words;
        for (const std::string& line : split(ran.out, '\n')) {
            if (line.empty() || line[0] == ' ') continue;
            // A hundred and more; every ninth of them is asked for.
            if (number++ % 9 == 0) words += fmt::format(" && \"$V\" explain {}", split(line, ' ').front());
        }
        CHECK(number >= 40);
        const Ran explained = folder.run(fmt::format("V='{}'{}", VENTFOLIO_PROGRAM, words));
        CHECK_MESSAGE(explained.status == 0, explained.err);
    }
    const Ran sheets = ventfolio_in(folder, "list sheets");
    for (const char* sheet : {"bedside-card", "responder-sheet", "setting-check"}) CHECK(holds(sheets.out, sheet));
}

TEST_CASE("explain tells a rule's reason, formula or example, and source") {
    const Scratch folder;
    const Ran ran = ventfolio_in(folder, "explain high-pressure-alarm-below-peak");
    CHECK(ran.status == 0);
    CHECK(holds(ran.out, "refuse"));
    CHECK(holds(lower_ascii(ran.out), "source"));
    CHECK(holds(lower_ascii(ran.out), "example"));
    const Ran field = ventfolio_in(folder, "explain prescriptions.0.alarms.high_pressure");
    CHECK(field.status == 0);
    CHECK(holds(field.out, "cmH2O"));
}

TEST_CASE("schema is JSON that knows every field of the first level") {
    const Scratch folder;
    const Ran ran = ventfolio_in(folder, "schema");
    CHECK(ran.status == 0);
    const nlohmann::json schema = nlohmann::json::parse(ran.out, nullptr, false);
    REQUIRE(schema.is_object());
    for (const DeclaredField& field : declared_fields_of<Profile>())
        CHECK(schema.at("properties").contains(split(field.path, '.').front()));
}

TEST_CASE("the starter profile is read, and refused only for what is still to be filled in") {
    const Scratch folder;
    const Ran ran = folder.run(fmt::format("'{}' new > home.yaml && '{}' check home.yaml --on 2026-02-03",
                                           VENTFOLIO_PROGRAM, VENTFOLIO_PROGRAM));
    CHECK(ran.status == 1);
    CHECK(!holds(ran.err, "unknown-key"));
    CHECK(!holds(ran.err, "bug in ventfolio"));
}

TEST_CASE("the blank form goes to standard output or to a file, whole or not at all") {
    const Scratch folder;
    const Ran piped = ventfolio_in(folder, "new --paper");
    CHECK(piped.status == 0);
    CHECK(piped.err == "");
    CHECK(piped.out.starts_with("%PDF-"));
    const Ran written = ventfolio_in(folder, "new --paper -o intake.pdf");
    CHECK(written.status == 0);
    CHECK(written.out == "");
    CHECK(names_in(folder.path(".")) == "err intake.pdf out");  // two are the test's own
    CHECK(contents(folder.path("intake.pdf")) == piped.out);
    CHECK(folder.run("qpdf --check intake.pdf").status == 0);
    const Ran nowhere = ventfolio_in(folder, "new --paper -o missing/intake.pdf");
    CHECK(nowhere.status == 3);
    CHECK(holds(nowhere.err, "cannot be written"));
    CHECK(names_in(folder.path(".")) == "err intake.pdf out");  // two are the test's own
}
