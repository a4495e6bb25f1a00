#include <fmt/format.h>

#include <algorithm>
#include <array>

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

/// How a text reads by the formula of its language.
struct Ease {
    std::string shown;  ///< "7.3", or "58 on the INFLESZ scale"
    bool hard = false;
};

/// Nothing for a language that has no formula here.
std::optional<Ease> ease_of(const JudgedDocument& sheet) {
    const bool english = sheet.document.language.starts_with("en");
    if (!english && !sheet.document.language.starts_with("es")) return std::nullopt;
    const std::optional<ReadingFigure> figure = reading_figure(sheet);
    if (!figure) return Ease{"not counted for so few words", false};
    if (english) return Ease{fmt::format("{:.1f}", figure->value), figure->hard};
    return Ease{fmt::format("{:.0f} on the INFLESZ scale", figure->value), figure->hard};
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
    const bool english = sheet.document.language.starts_with("en");
    if (!english && !sheet.document.language.starts_with("es")) return std::nullopt;
    const calc::TextCounts counts = text_counts(sheet.sentences, english ? syllables : spanish_syllables);
    if (counts.words < threshold::kReadingGradeWordsLeast) return std::nullopt;
    const auto figure = english ? calc::reading_grade(counts) : calc::spanish_reading_ease(counts);
    if (!figure) return std::nullopt;
    return ReadingFigure{*figure, english ? *figure > kGradeMost : *figure < kSpanishEaseLeast};
}

void family_text_hard_to_read(const JudgedDocument& sheet, DocumentReport& report) {
    const auto ease = ease_of(sheet);
    if (!ease) return;
    const auto words = [](const Sentence& sentence) { return static_cast<int>(sentence.tokens.size()); };
    const auto found = [&](const Sentence& sentence) {
        report.at(
            sentence, sentence.text.size(),
            {{"sheet", sheet.document.sheet}, {"grade", ease->shown}, {"words", std::to_string(words(sentence))}});
    };
    bool reported = false;
    const Sentence* longest = nullptr;
    for (const Sentence& sentence : sheet.sentences) {
        if (!is_running_text(sentence)) continue;
        if (longest == nullptr || words(sentence) > words(*longest)) longest = &sentence;
        if (!one_of(kEmergencySheets, sheet.document.sheet)) continue;
        if (words(sentence) <= threshold::kSentenceWordsMostEmergency) continue;
        found(sentence);
        reported = true;
    }
    if (!reported && longest && for_a_family(sheet) && ease->hard) found(*longest);
}

}  // namespace ventfolio::sheet_check
