#include <clocale>
#include <exception>
#include <iostream>
#include <locale>

#include "drawings.hpp"

namespace {

/// A language that writes "3,5" and groups thousands: what would leak into a file that is written with a locale.
class CommaForPoint : public std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

}  // namespace

int main() {
    try {
        std::setlocale(LC_ALL, "");
        std::locale::global(std::locale{std::locale::classic(), new CommaForPoint});
        std::cout << ventfolio::trial::sample();
        return std::cout.good() ? 0 : 1;
    } catch (const std::exception& problem) {
        std::cerr << problem.what() << '\n';
        return 1;
    }
}
