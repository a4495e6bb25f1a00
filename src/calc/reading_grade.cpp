#include "calc/reading_grade.hpp"

#include <cmath>

namespace ventfolio::calc {
namespace {

struct Ratios {
    double words_per_sentence;
    double syllables_per_word;
};

std::optional<Ratios> ratios(const TextCounts& counts) {
    if (counts.sentences < 1 || counts.words < counts.sentences || counts.syllables < counts.words) return std::nullopt;
    const double words = counts.words;
    return Ratios{words / counts.sentences, counts.syllables / words};
}

}  // namespace

std::optional<double> reading_grade(const TextCounts& counts) {
    const auto text = ratios(counts);
    if (!text) return std::nullopt;
    return 0.39 * text->words_per_sentence + 11.8 * text->syllables_per_word - 15.59;
}

std::optional<double> reading_ease(const TextCounts& counts) {
    const auto text = ratios(counts);
    if (!text) return std::nullopt;
    return 206.835 - 1.015 * text->words_per_sentence - 84.6 * text->syllables_per_word;
}

std::optional<double> spanish_reading_ease(const TextCounts& counts) {
    const auto text = ratios(counts);
    if (!text) return std::nullopt;
    return 206.835 - 62.3 * text->syllables_per_word - text->words_per_sentence;
}

std::optional<double> smog_grade(int long_words, int sentences) {
    constexpr int kValidatedSentences = 30;
    if (sentences < kValidatedSentences || long_words < 0) return std::nullopt;
    return 3.1291 + 1.0430 * std::sqrt(long_words * 30.0 / sentences);
}

}  // namespace ventfolio::calc
