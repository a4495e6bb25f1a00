// Turns the calculators' texts into C++ tables. Runs on the building machine only.
#include <filesystem>
#include <iostream>

#include "../../bake/write_file.hpp"
#include "calculator_book.hpp"

int main(int count, char** arguments) {
    if (count < 4) {
        std::cerr << "usage: ventfolio_bake_calculators OUTPUT-FOLDER SHARED SUBJECT...\n";
        return 2;
    }
    try {
        const std::filesystem::path out{arguments[1]};
        const bake::CalculatorBook book = bake::read_calculators(arguments[2], {arguments + 3, arguments + count});
        std::filesystem::create_directories(out);
        bake::write_file(out / "calculator_bindings.hpp", bake::bindings_header(book));
        bake::write_file(out / "calculator_tables.cpp", bake::calculator_tables(book));
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 1;
    }
}
