#pragma once

#include <map>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "profile/finding.hpp"
#include "profile/place.hpp"
#include "units/print.hpp"

namespace ventfolio {

/// The words of one language that templates do not hold: units, months, choices, roles, furniture. From
/// `templates/<language>/words.yaml`; nested keys are joined with dots ("units.breaths/min").
class WordBook {
  public:
    /// Faults of the file are appended to `findings`, with their place.
    static WordBook read(const SourceText& source, std::vector<Finding>& findings);

    /// A clinic's own words in the place of these, key by key. A key that there is not is a fault, but for the name of
    /// a new sheet; so is another wording of what each page says of its limits.
    void lay_over(const SourceText& source, std::vector<Finding>& findings);

    std::optional<std::string_view> find(std::string_view key) const;
    /// A word that every language must have; throws MissingWord when the file lacks it.
    std::string_view at(std::string_view key) const;
    const std::string& language() const { return language_; }
    /// As messages cite it.
    const std::string& file() const { return file_; }
    /// In the order of the alphabet.
    std::vector<std::string> keys() const;

  private:
    std::map<std::string, std::string, std::less<>> words_;
    std::string language_;
    std::string file_;
};

/// A word that words.yaml should have. The message names the file and the key.
class MissingWord : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// How a region writes: from `templates/regions/<region>.yaml`.
struct Region {
    enum class DateOrder { day_month_year, month_day_year };
    enum class Clock { twelve_hours, twenty_four_hours };
    NumberFormat numbers;
    DateOrder date_order = DateOrder::day_month_year;
    Clock clock = Clock::twelve_hours;
    std::string paper = "letter";
    std::string emergency_number;
    std::string language = "en";  ///< of its ambulance crews and offices

    static Region read(const SourceText& source, std::vector<Finding>& findings);
};

}  // namespace ventfolio
