#pragma once

#include <cstddef>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace bake {

struct ExamplePart {
    std::string text;  ///< may hold any byte
    std::size_t times = 1;
    friend bool operator==(const ExamplePart&, const ExamplePart&) = default;
};

struct Example {
    std::string form;  ///< a name of ExampleForm
    std::string home;
    std::string on;
    std::vector<ExamplePart> fires;
    std::vector<ExamplePart> silent;
    std::string sheet;
    std::string audience;
    std::string file;
    std::string edits;
};

struct Rule {
    std::string name;
    std::string subject;
    std::string judges;
    std::string severity;
    std::vector<std::string> stops;
    bool stops_judged_sheet = false;
    std::vector<std::string> bold_on;
    std::string says;
    std::string why;
    std::string to_do;
    std::string source;
    std::string formula;
    Example example;
};

struct Threshold {
    std::string name;
    std::string value;
    std::string unit;
    std::string source;
    std::vector<std::string> rules;
};

struct Sheets {
    std::vector<std::string> names;
    std::map<std::string, std::vector<std::string>> groups;
};

struct Book {
    Sheets sheets;
    std::vector<Threshold> thresholds;
    std::vector<Rule> rules;
};

/// Reads and checks all files of the book. Throws BookError on the first mistake.
Book read_book(const std::filesystem::path& sheets, const std::filesystem::path& thresholds,
               const std::vector<std::filesystem::path>& subjects);

/// Contents of the three generated files.
std::string thresholds_header(const Book& book);
std::string checks_header(const Book& book);
std::string tables_source(const Book& book);

}  // namespace bake
