#include <doctest/doctest.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <array>
#include <set>
#include <string>

#include "packet/print_home_sheets.hpp"
#include "sheets/checks/passages.hpp"
#include "units/text.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

using WordSet = std::set<std::string>;

bool has_letters(std::string_view word) {
    return std::ranges::none_of(word, [](char c) { return c >= '0' && c <= '9'; });
}

/// A template without what is no word of a sheet: front matter but its title, tags, attributes, addresses of figures.
std::string own_words(std::string_view text) {
    std::string words;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const std::string_view rest = text.substr(at);
        for (const auto& [open, close] : {std::pair{"{{", "}}"}, std::pair{"](", ")"}, std::pair{"{.", "}"}})
            if (rest.starts_with(open)) {
                const std::size_t end = text.find(close, at);
                // The words in an aside are read below from the printed sheets; here they are of no use.
                at = end == std::string_view::npos ? text.size() : end + std::string_view{close}.size() - 1;
                break;
            }
        words += at < text.size() && text[at] != '}' && text[at] != ')' ? text[at] : ' ';
    }
    return words;
}

/// The words of a file of words, without its keys.
std::string values_of(const YAML::Node& node) {
    if (node.IsScalar()) return node.Scalar() + "\n";
    std::string words;
    for (const auto& entry : node) words += values_of(node.IsMap() ? entry.second : entry);
    return words;
}

WordSet words_of_language(std::string_view language) {
    WordSet words;
    const std::string folder = std::string{language} + "/";
    for (const auto& [path, text] : built_in_files()) {
        if (!path.starts_with(folder) || path.ends_with("phrases.yaml")) continue;
        const std::size_t front = text.find("\n---\n", 3);
        const std::string own = path.ends_with(".yaml") ? values_of(YAML::Load(text))
                                : text.starts_with("---") && front != std::string::npos
                                    ? own_words(std::string_view{text}.substr(front + 5))
                                    : own_words(text);
        for (const sheet_check::Token& token : sheet_check::tokens_of(own))
            if (has_letters(token.folded) && token.folded.size() > 1) words.insert(token.folded);
    }
    return words;
}

/// WordSet by which one knows English: on the English sheets, and nowhere on the Spanish ones.
const WordSet& english_words() {
    static const WordSet known = [] {
        WordSet only = words_of_language("en");
        for (const std::string& word : words_of_language("es")) only.erase(word);
        return only;
    }();
    return known;
}

/// WordSet that the profile says are printed as they were written; so are texts of rules and calculators, which explain
/// themselves in English for now.
bool stands_as_written(const sheet_check::Passage& passage, std::size_t offset) {
    return sheet_check::value_at(passage.values, offset) != nullptr;
}

std::string english_in(const Document& document) {
    std::string found;
    for (const sheet_check::Passage& passage : sheet_check::passages_of(document))
        for (const sheet_check::Token& token : sheet_check::tokens_of(passage.text))
            if (english_words().contains(token.folded) && !stands_as_written(passage, token.begin))
                found += token.folded + " in \"" + passage.text + "\"; ";
    return found;
}

std::string english_in(const Inlines& furniture) {
    std::string found;
    for (const Inline& piece : furniture)
        if (piece.kind == Inline::Kind::text)
            for (const sheet_check::Token& token : sheet_check::tokens_of(piece.text))
                if (english_words().contains(token.folded)) found += token.folded + "; ";
    return found;
}

}  // namespace

TEST_CASE("no English word is left on a Spanish sheet but what the profile says") {
    REQUIRE(english_words().size() > 500);
    for (const char* word : {"THE", "SQUEEZE", "BREATHING", "HOSE", "CHEST", "WALL", "MOUTHPIECE"})
        CHECK_MESSAGE(english_words().contains(word), std::string{word});
    std::size_t sheets = 0;
    for (const char* home : kHomes)
        for (const SetSheet& sheet : set_spanish_home(home).sheets) {
            CAPTURE(std::string{home});
            CAPTURE(sheet.document.name);
            CHECK(english_in(sheet.document) == "");
            CHECK(english_in(sheet.furniture.identifier) == "");
            CHECK(english_in(sheet.furniture.mark) == "");
            for (const Inlines& line : sheet.furniture.foot) CHECK(english_in(line) == "");
            ++sheets;
        }
    CHECK(sheets > 80);
}

TEST_CASE("every demo home fits on its Spanish sheets") {
    for (const char* home : kAllHomes) {
        CAPTURE(std::string{home});
        CHECK(set_spanish_home(home).refusals() == "");
    }
}

TEST_CASE(
    "each page of an unreviewed language says that a translator must look at it; no page of a reviewed one does") {
    const std::string note{spanish_stationery().words.at("translation_unreviewed")};
    const std::string in_english{stationery().words.at("translation_unreviewed")};
    REQUIRE(note.size() > 20);
    for (const SetSheet& sheet : set_spanish_home("adult-mask").sheets) {
        CAPTURE(sheet.document.name);
        for (const PlacedPage& page : sheet.placed.pages) CHECK(words_of(page).find(note) != std::string::npos);
    }
    for (const SetSheet& sheet : set_demo_home("adult-mask").sheets) {
        CAPTURE(sheet.document.name);
        CHECK(words_of(sheet.placed).find(in_english) == std::string::npos);
        CHECK(words_of(sheet.placed).find(note) == std::string::npos);
    }
}

TEST_CASE("a person whose sex is not known is not called he or she, and no word means another thing") {
    // "once" is eleven, "respirador" a dust mask, "constipado" a cold. Common practice, no source.
    constexpr std::array kTraps{"ONCE",    "RESPIRADOR", "CONSTIPADO", "INTOXICADO", "SUCTIONAR",
                                "DORMIDO", "DORMIDA",    "ACOSTADO",   "SENTADO",    "SENTADA",
                                "CANSADO", "CANSADA",    "SOLA",       "ENTRENADO",  "SEDADO"};
    const WordSet spanish = words_of_language("es");
    REQUIRE(spanish.contains("DESPIERTO"));  // "despierto(a)" is said to both
    for (const char* trap : kTraps) CHECK_MESSAGE(!spanish.contains(trap), std::string{trap});
}
