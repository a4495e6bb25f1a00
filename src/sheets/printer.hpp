#pragma once

#include <string>
#include <string_view>

#include "profile/field.hpp"
#include "sheets/printed_value.hpp"
#include "sheets/word_book.hpp"

namespace ventfolio {

/// Full: "15 seconds". Brief: "15 s", for narrow columns. Number: "15" alone, where the unit stands in the head.
/// Spoken: "8 liters per minute", for steps.
enum class UnitForm { full, brief, number_only, spoken };

/// Turns values into print in one language and region. A setting is printed in the number and the unit that the profile
/// gives, never converted.
class Printer {
  public:
    Printer(const WordBook& words, const Region& region) : words_{words}, region_{region} {}

    const WordBook& words() const { return words_; }
    const Region& region() const { return region_; }

    /// A given field, or one that is `none` or `off`. Missing fields have no print: see not_recorded.
    PrintedValue print(const FieldBase& field, const FieldInfo& info, std::string path,
                       UnitForm form = UnitForm::full) const;
    /// "NOT RECORDED - ASK the prescriber".
    PrintedValue not_recorded(const FieldInfo& info, std::string path) const;

    using Parts = std::vector<PrintedPart>;
    Parts measure(const Measure& measure, Zeros zeros, UnitForm form) const;
    Parts range(const MeasureRange& range, Zeros zeros, UnitForm form) const;
    Parts number(const Decimal& number, std::string_view unit, Zeros zeros = Zeros::drop,
                 UnitForm form = UnitForm::full) const;
    std::string date(Date date, UnitForm form = UnitForm::full) const;
    std::string time(ClockTime time) const;
    std::string moment(Moment moment) const { return date(moment.date) + ", " + time(moment.time); }
    std::string span(ClockSpan span) const;
    /// "12 h 15 min" in words of the language.
    Parts hours_and_minutes(long long minutes) const;
    /// The word of a choice: `choices.<key>.<word>`, else `choices.<word>`.
    std::string choice(std::string_view key, std::string_view word) const;

  private:
    Parts parts(const FieldBase& field, const FieldInfo& info, UnitForm form) const;
    std::string unit_word(std::string_view symbol, bool one, UnitForm form) const;

    const WordBook& words_;
    const Region& region_;
};

/// A value that a calculator made, under a name of its own; it may stand where all the fields it is made from may.
PrintedValue calculated(std::string name, Audiences audiences, Printer::Parts parts);
Printer::Parts plain_parts(std::string text);

}  // namespace ventfolio
