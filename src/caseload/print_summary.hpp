#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>

#include "caseload/homes.hpp"
#include "caseload/print_homes.hpp"
#include "units/calendar.hpp"

namespace ventfolio {

enum class SummaryForm { text, json, csv };

/// What a run of `print` over many homes says of each, and of all, piece by piece as it becomes known. The pieces one
/// after the other are
///   - text: a line a home, then one that counts;
///   - json: one object, in the form of print_schema.json, which `ventfolio schema --of print` prints;
///   - csv: a line that names the columns, then a line a home (csv.hpp):
///     file, outcome, record_number, revision, sheets, pages, folder, reason.
///
/// Example of text
///     homes/a.yaml: printed: DEMO-1, 37 sheets, 66 pages, in papers/DEMO-1
///     homes/b.yaml: refused: stopped by high-pressure-alarm-below-peak
///     2 homes: 1 printed, 0 current, 1 refused, 0 unusable
class PrintSummary {
  public:
    /// `only_wrong`: of text only the lines of homes that were not printed, without the count.
    PrintSummary(SummaryForm form, Date on, std::optional<Shard> shard, bool only_wrong)
        : form_{form}, on_{on}, shard_{shard}, only_wrong_{only_wrong} {}

    std::string of(const HomeOutcome& home);
    /// Behind the last home; `status` is the exit status of the program.
    std::string end(int status);

    std::size_t count(Outcome outcome) const { return counts_[static_cast<std::size_t>(outcome)]; }
    std::size_t count() const;

  private:
    std::string text(const HomeOutcome& home) const;
    std::string head() const;
    std::string json_end(int status) const;

    SummaryForm form_;
    Date on_;
    std::optional<Shard> shard_;
    bool only_wrong_;
    std::array<std::size_t, 4> counts_{};
};

}  // namespace ventfolio
