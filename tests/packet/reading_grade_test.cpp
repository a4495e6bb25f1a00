#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <string>

#include "calc/reading_grade.hpp"
#include "packet/documents.hpp"
#include "pdf/programs.hpp"
#include "print_home_sheets.hpp"
#include "sheets/checks/checks.hpp"
#include "sheets/checks/reading_counts.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// Written for the therapist, a crew or a company.
constexpr std::array kNotForFamilies{"responder-sheet", "verification", "visit-check", "change-notice",
                                     "notice-letters"};
/// Fewer words have no grade worth the name; common practice for the formula is a sample of 100.
constexpr int kLeastWords = 100;

bool for_a_family(const Document& document) {
    return std::ranges::find(kNotForFamilies, document.sheet) == kNotForFamilies.end();
}

/// The words of the template in running text, without what comes from the profile: names and numbers are nobody's
/// choice.
std::string own_words(const sheet_check::Sentence& sentence) {
    std::string text;
    std::size_t at = 0;
    for (const sheet_check::ValueSpan& span : sentence.values) {
        text += sentence.text.substr(at, span.begin - at);
        at = span.end;
    }
    text += sentence.text.substr(at);
    return text;
}

/// The school grade by GNU style, an independent count of syllables and sentences.
double grade_by_style(const std::string& text) {
    const trial::Scratch folder;
    folder.save("text", text);
    const trial::Ran ran = folder.run("style text");
    REQUIRE(ran.status == 0);
    const auto at = ran.out.find("Kincaid:");
    REQUIRE(at != std::string::npos);
    double grade = 99;
    REQUIRE(std::sscanf(ran.out.c_str() + at, "Kincaid: %lf", &grade) == 1);
    return grade;
}

}  // namespace

TEST_CASE("what a family reads is of grade 6 or lower, by our own count and by GNU style's") {
    std::size_t graded = 0;
    for (const char* home : kAllHomes) {
        const CheckedHome checked = check_home(demo_profile(home), demo_day());
        const Household household{checked.profile, demo_day()};
        for (const SetSheet& sheet : set_demo_home(home).sheets) {
            if (!for_a_family(sheet.document)) continue;
            const sheet_check::JudgedDocument judged{sheet.document, wall, household, stationery().phrases};
            const calc::TextCounts counts = sheet_check::text_counts(judged.sentences);
            if (counts.words < kLeastWords) continue;
            std::string text;
            for (const sheet_check::Sentence& sentence : judged.sentences)
                if (sheet_check::is_running_text(sentence)) {
                    text += own_words(sentence);
                    text += sentence.closed ? "\n" : ".\n";
                }
            CAPTURE(std::string{home});
            CAPTURE(sheet.document.name);
            const double ours = *calc::reading_grade(counts);
            const double theirs = grade_by_style(text);
            CHECK(ours <= 6);
            CHECK(theirs <= 6);
            ++graded;
        }
    }
    CHECK(graded > 0);
}
