#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

#include "calc/reading_grade.hpp"
#include "rules/thresholds.hpp"
#include "sheets/checks/checks.hpp"
#include "sheets/checks/reading_counts.hpp"
#include "sheets/checks/spanish_syllables.hpp"

namespace ventfolio::sheet_check {
namespace {

/// Highest school grade of what a family reads. Source: sixth-grade aim for health materials, American Medical
/// Association and National Institutes of Health (from memory).
constexpr double kGradeMost = 6.0;
/// Lowest ease of what a family reads in Spanish: from here on "quite easy", the level of primary school. Source:
/// INFLESZ scale, Barrio-Cantalejo et al. 2008 (from memory).
constexpr double kSpanishEaseLeast = 65.0;

constexpr std::array<std::string_view, 5> kEmergencySheets{"bedside-card", "responder-sheet", "wallet-card",
                                                           "alarm-response", "outage-plan"};
/// Written for the therapist and the clinic.
constexpr std::array<std::string_view, 3> kClinicSheets{"verification", "visit-check", "change-notice"};

bool one_of(std::span<const std::string_view> names, std::string_view name) {
    return std::ranges::find(names, name) != names.end();
}

bool for_a_family(const JudgedDocument& sheet) {
    return (sheet.audience == wall || sheet.audience == folder) && !one_of(kClinicSheets, sheet.document.sheet);
}

bool is_english(const JudgedDocument& sheet) { return sheet.document.language.starts_with("en"); }

/// A sheet may ask for more than its language does (`reading` in its front matter), for those at home never for less.
double limit_of(const JudgedDocument& sheet) {
    const double usual = is_english(sheet) ? kGradeMost : kSpanishEaseLeast;
    double own = usual;
    const std::string_view written = sheet.document.front("reading").value_or("");
    const auto read = std::from_chars(written.data(), written.data() + written.size(), own);
    if (read.ec != std::errc{}) return usual;
    if (!for_a_family(sheet)) return own;
    return is_english(sheet) ? std::min(own, usual) : std::max(own, usual);
}

std::string shown(double figure, const JudgedDocument& sheet) {
    return is_english(sheet) ? fmt::format("grade {:.1f}", figure) : fmt::format("{:.0f} on the INFLESZ scale", figure);
}

std::string shown_limit(double limit, const JudgedDocument& sheet) {
    return is_english(sheet) ? fmt::format("{:g} at most", limit) : fmt::format("{:g} at least", limit);
}

bool holds_a_word(const Sentence& sentence) {
    return std::ranges::any_of(sentence.tokens, [&](const Token& token) { return counts_as_word(sentence, token); });
}

}  // namespace

bool counts_as_word(const Sentence& sentence, const Token& token) {
    // What is beyond ASCII is a letter: "ÚTIL".
    const unsigned char first = static_cast<unsigned char>(token.folded.front());
    const bool letters = (first >= 'A' && first <= 'Z') || first >= 0x80;
    return letters && value_at(sentence.values, token.begin) == nullptr;
}

bool is_running_text(const Sentence& sentence) {
    const Passage::Kind kind = sentence.passage->kind;
    if (kind == Passage::Kind::paragraph || kind == Passage::Kind::item) return holds_a_word(sentence);
    return kind == Passage::Kind::cell && sentence.closed && holds_a_word(sentence);
}

calc::TextCounts text_counts(const std::vector<Sentence>& sentences, SyllableCounter syllables_of) {
    calc::TextCounts counts;
    for (const Sentence& sentence : sentences) {
        if (!is_running_text(sentence)) continue;
        ++counts.sentences;
        for (const Token& token : sentence.tokens) {
            if (!counts_as_word(sentence, token)) continue;
            ++counts.words;
            counts.syllables += syllables_of(token.folded);
        }
    }
    return counts;
}

std::optional<ReadingFigure> reading_figure(const JudgedDocument& sheet) {
    const bool english = is_english(sheet);
    if (!english && !sheet.document.language.starts_with("es")) return std::nullopt;
    const calc::TextCounts counts = text_counts(sheet.sentences, english ? syllables : spanish_syllables);
    if (counts.words < threshold::kReadingGradeWordsLeast) return std::nullopt;
    const auto figure = english ? calc::reading_grade(counts) : calc::spanish_reading_ease(counts);
    if (!figure) return std::nullopt;
    const double limit = limit_of(sheet);
    return ReadingFigure{*figure, limit, english ? *figure > limit : *figure < limit};
}

namespace {

int words_in(const Sentence& sentence) { return static_cast<int>(sentence.tokens.size()); }

void tell(const JudgedDocument& sheet, const Sentence& sentence, DocumentReport::Numbers numbers,
          DocumentReport& report) {
    numbers.emplace_back("sheet", sheet.document.sheet);
    numbers.emplace_back("words", std::to_string(words_in(sentence)));
    report.at(sentence, sentence.text.size(), std::move(numbers));
}

}  // namespace

void emergency_sentence_too_long(const JudgedDocument& sheet, DocumentReport& report) {
    if (!one_of(kEmergencySheets, sheet.document.sheet)) return;
    for (const Sentence& sentence : sheet.sentences)
        if (is_running_text(sentence) && words_in(sentence) > threshold::kSentenceWordsMostEmergency)
            tell(sheet, sentence, {}, report);
}

void family_text_hard_to_read(const JudgedDocument& sheet, DocumentReport& report) {
    if (!for_a_family(sheet) && !sheet.document.front("reading")) return;
    const std::optional<ReadingFigure> figure = reading_figure(sheet);
    if (!figure || !figure->hard) return;
    const Sentence* longest = nullptr;
    for (const Sentence& sentence : sheet.sentences)
        if (is_running_text(sentence) && (longest == nullptr || words_in(sentence) > words_in(*longest)))
            longest = &sentence;
    if (longest == nullptr) return;
    tell(sheet, *longest, {{"grade", shown(figure->value, sheet)}, {"limit", shown_limit(figure->limit, sheet)}},
         report);
}

}  // namespace ventfolio::sheet_check
