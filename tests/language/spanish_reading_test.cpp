#include <doctest/doctest.h>

#include <string>

#include "calc/reading_grade.hpp"
#include "packet/documents.hpp"
#include "packet/print_home_sheets.hpp"
#include "sheets/checks/checks.hpp"
#include "sheets/checks/reading_counts.hpp"
#include "sheets/checks/spanish_syllables.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;
using sheet_check::spanish_syllables;

TEST_CASE("syllables of Spanish words are counted by the rules of spelling") {
    struct Row {
        const char* word;
        int syllables;
        const char* divided;  ///< by hand, after the rules of the Real Academia Española, 2010 (from memory)
    };
    const Row rows[] = {
        {"sol", 1, "sol"},
        {"mire", 2, "mi-re"},
        {"máquina", 3, "má-qui-na: the u of qui is silent"},
        {"manguera", 3, "man-gue-ra: the u of gue is silent"},
        {"pingüino", 3, "pin-güi-no: ü is heard, ui is one"},
        {"guante", 2, "guan-te: the u of gua is heard"},
        {"agua", 2, "a-gua"},
        {"aire", 2, "ai-re"},
        {"ruido", 2, "rui-do: two weak vowels are one"},
        {"ciudad", 2, "ciu-dad"},
        {"cuídese", 3, "cuí-de-se: two weak vowels are one, accent or not"},
        {"después", 2, "des-pués: the strong one bears the accent"},
        {"respiración", 4, "res-pi-ra-ción"},
        {"vacíe", 3, "va-cí-e: the weak one bears the accent"},
        {"día", 2, "dí-a"},
        {"batería", 4, "ba-te-rí-a"},
        {"baúl", 2, "ba-úl"},
        {"leer", 2, "le-er: two strong vowels"},
        {"aéreo", 4, "a-é-re-o"},
        {"oxígeno", 4, "o-xí-ge-no"},
        {"ahora", 3, "a-ho-ra: h between strong vowels"},
        {"ahí", 2, "a-hí: h before a weak one with accent"},
        {"búho", 2, "bú-ho"},
        {"prohibir", 2, "prohi-bir: h does not part o and i"},
        {"rehusar", 2, "rehu-sar: the same"},
        {"hueso", 2, "hue-so: silent h at the start"},
        {"pecho", 2, "pe-cho: ch is no silent h"},
        {"y", 1, "y"},
        {"muy", 1, "muy: a last y is a vowel"},
        {"ley", 1, "ley"},
        {"ayuda", 3, "a-yu-da: y before a vowel is a consonant"},
        {"buey", 1, "buey: three in one"},
        {"estudiáis", 3, "es-tu-diáis: three in one"},
        {"hacíais", 3, "ha-cí-ais: the accent parts them"},
        {"quédese", 3, "qué-de-se"},
        {"siga", 2, "si-ga"},
        {"ÚTIL", 2, "ú-til, in capitals"},
        {"OÍDO", 3, "o-í-do, in capitals"},
        {"humidificador", 6, "hu-mi-di-fi-ca-dor"},
        {"monóxido", 4, "mo-nó-xi-do"},
        {"RCP", 1, "no vowel: one at least"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.divided);
        CHECK(spanish_syllables(row.word) == row.syllables);
    }
}

TEST_CASE("longer Spanish sentences and words make a text harder") {
    // der: 206.835 - 62.3 x 2 - 10
    CHECK(*calc::spanish_reading_ease({100, 10, 200}) == doctest::Approx(72.235));
    for (int sentences = 1; sentences < 50; ++sentences)
        for (int syllables = 100; syllables < 300; syllables += 10) {
            CHECK(*calc::spanish_reading_ease({100, sentences, syllables}) <
                  *calc::spanish_reading_ease({100, sentences + 1, syllables}));
            CHECK(*calc::spanish_reading_ease({100, sentences, syllables}) >
                  *calc::spanish_reading_ease({100, sentences, syllables + 1}));
        }
    CHECK_FALSE(calc::spanish_reading_ease({0, 0, 0}));
    CHECK_FALSE(calc::spanish_reading_ease({5, 6, 9}));
    CHECK_FALSE(calc::spanish_reading_ease({6, 5, 5}));
}

TEST_CASE("what a family reads in Spanish is quite easy on the INFLESZ scale; what is not is warned about") {
    std::size_t graded = 0;
    for (const char* home : kHomes) {
        const SetHome& set = set_spanish_home(home);
        const Household household{set.checked.profile, demo_day()};
        for (const SetSheet& sheet : set.sheets) {
            const auto audience = audience_from(sheet.document.front("audience").value_or(""));
            const bool clinic = sheet.document.sheet == "verification" || sheet.document.sheet == "visit-check";
            if ((audience != wall && audience != folder) || clinic) continue;
            const sheet_check::JudgedDocument judged{sheet.document, wall, household, spanish_stationery().phrases};
            const calc::TextCounts counts = sheet_check::text_counts(judged.sentences, spanish_syllables);
            if (counts.words < 100) continue;
            CAPTURE(std::string{home});
            CAPTURE(sheet.document.name);
            CHECK(*calc::spanish_reading_ease(counts) >= 65);  // INFLESZ: "bastante fácil" from 65 (from memory)
            ++graded;
        }
        for (const Finding& finding : set.of_sheets) CHECK(finding.rule != "family-text-hard-to-read");
    }
    CHECK(graded > 10);
}
