#include "caseload/record_numbers.hpp"

#include <doctest/doctest.h>

#include <map>
#include <stdexcept>

using namespace ventfolio;

TEST_CASE("two profiles with one record number know of each other, wherever they stand") {
    const std::map<std::string, std::string> texts{
        {"a.yaml", "record_number: DEMO-1\n"},
        {"b.yaml", "record_number: DEMO-2\n"},
        {"c.yaml", "record_number: \"DEMO-1\"\n"},
        {"d.yaml", "person: {}\n"},
        {"e.yaml", "person: {}\nrecord_number: DEMO-1 # the third\n"},
        {"f.yaml", "record_number: [\n"},
        {"g.yaml", "# record_number: DEMO-2\n"},
    };
    std::vector<std::string> files;
    for (const auto& [name, text] : texts) files.push_back(name);
    files.push_back("missing.yaml");
    const auto read_file = [&](const std::string& name) {
        if (!texts.contains(name)) throw std::runtime_error{name + ": cannot be read"};
        return SourceText{name, texts.at(name)};
    };
    struct Row {
        const char* number;
        int other;  ///< -1: none
    };
    const Row rows[] = {{"DEMO-1", 2}, {"DEMO-2", -1}, {"DEMO-1", 0}, {"", -1},
                        {"DEMO-1", 0}, {"", -1},       {"", -1},      {"", -1}};
    for (const std::size_t jobs : {1U, 4U}) {
        std::size_t told = 0;
        const RecordNumbers numbers =
            RecordNumbers::read(files, jobs, read_file, [&](std::size_t done) { CHECK(done == ++told); });
        CHECK(told == files.size());
        for (std::size_t file = 0; file < files.size(); ++file) {
            CAPTURE(files[file]);
            CHECK(numbers.of(file) == rows[file].number);
            const auto other = numbers.other_with_number_of(file);
            CHECK((other ? static_cast<int>(*other) : -1) == rows[file].other);
        }
    }
}
