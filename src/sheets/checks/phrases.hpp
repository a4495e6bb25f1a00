#pragma once

#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "profile/finding.hpp"
#include "profile/place.hpp"
#include "sheets/checks/passages.hpp"

namespace ventfolio {

/// What a sentence can tell its reader to do, or say. The words for each stand in `templates/<language>/phrases.yaml`.
enum class Saying {
    alarm_off,
    mouth_breaths,
    tube_back_in,
    fill_cuff,
    change_inner_tube,
    suction_neck_tube,
    turn_on_oxygen,
    uncover_port,
    plug_small_lines,
    fit_exchanger,
    start_second_ventilator,
    raise_oxygen,
    help_breathing,
    squeeze_interval,
    rated_time,
    treatment_limit,
    access_code,
};
inline constexpr std::array<std::string_view, 17> kSayingNames{
    "alarm_off",
    "mouth_breaths",
    "tube_back_in",
    "fill_cuff",
    "change_inner_tube",
    "suction_neck_tube",
    "turn_on_oxygen",
    "uncover_port",
    "plug_small_lines",
    "fit_exchanger",
    "start_second_ventilator",
    "raise_oxygen",
    "help_breathing",
    "squeeze_interval",
    "rated_time",
    "treatment_limit",
    "access_code",
};

/// One phrase of the file: words with blanks between. `a|b` is either word, `...` up to three further words,
/// `tube*` any ending, `<number>` a number, `<code>` a word with three digits or more. Signs do not count,
/// but no phrase reaches over a comma, colon, dash or bracket.
class Phrase {
  public:
    explicit Phrase(std::string_view text);
    /// A phrase begins and ends with a word.
    bool well_formed() const;

    /// The tokens [first, last] that say it, from `from` on.
    struct Found {
        std::size_t first = 0;
        std::size_t last = 0;
    };
    std::optional<Found> find(const std::vector<sheet_check::Token>& tokens, std::size_t from = 0) const;
    /// False where a look at the first letters of a text already rules it out.
    bool possible(sheet_check::FirstLetters letters) const;

  private:
    struct Word {
        bool gap = false;
        std::vector<std::string> choices;  ///< in capitals
        sheet_check::FirstLetters letters;
    };
    std::optional<std::size_t> end_of(const std::vector<sheet_check::Token>& tokens, std::size_t at,
                                      std::size_t word) const;
    static bool fits(std::string_view choice, std::string_view token);
    static bool fits(const Word& word, std::string_view token);

    std::vector<Word> words_;
};

/// A saying that was found in a sentence.
struct Said {
    std::size_t begin = 0;  ///< offsets in the text of the sentence
    std::size_t end = 0;
    std::vector<double> numbers;
};

/// A word that is not to be used, and what to write for it.
struct ErrorProneWord {
    Phrase phrase;
    std::string text;
    std::string instead;
    bool as_written = false;  ///< only in these very letters
};

/// The phrases of one language by which the checks of finished sheets know what a sentence says.
class PhraseBook {
  public:
    /// Faults of the file are appended to `findings`, with their place.
    static PhraseBook read(const SourceText& source, std::vector<Finding>& findings);

    /// The first place where a sentence says it and nothing excuses it; a sentence that forbids it does not say it.
    std::optional<Said> find(Saying saying, const sheet_check::Sentence& sentence) const;

    /// Words that name an alarm by its key in the profile: "high_pressure".
    bool names_alarm(std::string_view key, const sheet_check::Sentence& sentence) const;

    const std::vector<ErrorProneWord>& error_prone() const { return error_prone_; }
    const std::vector<std::string>& abbreviations() const { return abbreviations_; }

  private:
    struct Entry {
        std::vector<Phrase> phrases;
        std::vector<Phrase> unless;      ///< inside what was found
        std::vector<Phrase> excused_by;  ///< anywhere in the sentence
        bool forbidding = false;         ///< says it even where it forbids it
        bool over_stops = false;         ///< says it over commas and colons, too
    };
    bool forbidden(const std::vector<sheet_check::Token>& tokens, std::size_t first) const;
    std::optional<Said> find(const Entry& entry, const sheet_check::Sentence& sentence) const;

    std::array<Entry, kSayingNames.size()> entries_;
    std::map<std::string, std::vector<Phrase>, std::less<>> alarms_;
    std::vector<Phrase> forbids_before_;
    std::vector<Phrase> forbids_next_to_;
    std::vector<Phrase> new_thought_;
    std::vector<ErrorProneWord> error_prone_;
    std::vector<std::string> abbreviations_;
    friend class PhraseReader;
};

}  // namespace ventfolio
