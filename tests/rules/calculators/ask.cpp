#include "ask.hpp"

#include <algorithm>

namespace ventfolio::testing {

std::vector<std::string> shell_words(std::string_view line) {
    std::vector<std::string> words;
    std::string word;
    bool quoted = false;
    bool begun = false;
    const auto finish = [&] {
        if (begun) words.push_back(word);
        word.clear();
        begun = false;
    };
    for (const char c : line) {
        if (c == '"') {
            quoted = !quoted;
            begun = true;
        } else if (c == ' ' && !quoted) {
            finish();
        } else {
            word += c;
            begun = true;
        }
    }
    finish();
    return words;
}

Date test_day() { return *Date::of(2026, 2, 3); }

const CalculatorText& the_calculator(std::string_view name) {
    const CalculatorText* calculator = find_calculator(name);
    CAPTURE(std::string{name});
    REQUIRE(calculator != nullptr);
    return *calculator;
}

std::variant<Inputs, ArgumentFaults> read(std::string_view name, const std::vector<std::string>& words) {
    return read_inputs(the_calculator(name), words, test_day());
}

Inputs inputs_for(std::string_view name, const std::vector<std::string>& words) {
    auto inputs = read(name, words);
    if (const auto* faults = std::get_if<ArgumentFaults>(&inputs)) {
        CAPTURE(std::string{name});
        FAIL(faults->sentences.front());
    }
    return std::get<Inputs>(std::move(inputs));
}

std::variant<Calculation, OutsideRange> asked(std::string_view name, std::string_view arguments) {
    return calculate(the_calculator(name), inputs_for(name, shell_words(arguments)));
}

Found found(const Calculation& calculation, std::string_view result) {
    const std::string_view name = result.substr(0, result.find('.'));
    for (const ShownResult& shown : calculation.results) {
        if (shown.result->name != name) continue;
        if (shown.exact.empty()) return {shown.text, 0};
        return {shown.text, result.ends_with(".high") ? shown.exact.back() : shown.exact.front()};
    }
    CAPTURE(std::string{result});
    FAIL("the calculator gives no such result");
    return {};
}

}  // namespace ventfolio::testing
