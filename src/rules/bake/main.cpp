// Turns the rule book into C++ tables. Runs on the building machine only.
#include <filesystem>
#include <iostream>

#include "book.hpp"
#include "write_file.hpp"

int main(int count, char** arguments) {
    if (count < 5) {
        std::cerr << "usage: ventfolio_bake_rules OUTPUT-FOLDER SHEETS THRESHOLDS SUBJECT...\n";
        return 2;
    }
    try {
        const std::filesystem::path out{arguments[1]};
        const bake::Book book = bake::read_book(arguments[2], arguments[3], {arguments + 4, arguments + count});
        std::filesystem::create_directories(out);
        bake::write_file(out / "thresholds.hpp", bake::thresholds_header(book));
        bake::write_file(out / "checks.hpp", bake::checks_header(book));
        bake::write_file(out / "tables.cpp", bake::tables_source(book));
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 1;
    }
}
