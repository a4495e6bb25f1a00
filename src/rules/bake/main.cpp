// Turns the rule book into C++ tables. Runs on the building machine only.
#include <fstream>
#include <iostream>

#include "book.hpp"

namespace {

void write(const std::filesystem::path& path, const std::string& text) {
    std::ofstream file{path, std::ios::binary};
    file << text;
    if (!file.flush()) throw std::runtime_error{"cannot write " + path.string()};
}

}  // namespace

int main(int count, char** arguments) {
    if (count < 5) {
        std::cerr << "usage: ventfolio_bake_rules OUTPUT-FOLDER SHEETS THRESHOLDS SUBJECT...\n";
        return 2;
    }
    try {
        const std::filesystem::path out{arguments[1]};
        const bake::Book book = bake::read_book(arguments[2], arguments[3], {arguments + 4, arguments + count});
        std::filesystem::create_directories(out);
        write(out / "thresholds.hpp", bake::thresholds_header(book));
        write(out / "checks.hpp", bake::checks_header(book));
        write(out / "tables.cpp", bake::tables_source(book));
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 1;
    }
}
