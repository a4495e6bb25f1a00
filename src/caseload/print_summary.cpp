#include "caseload/print_summary.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <numeric>

#include "caseload/csv.hpp"

namespace ventfolio {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array kOutcomes{Outcome::printed, Outcome::current, Outcome::refused, Outcome::unusable};

/// A file's name may hold bytes that are no UTF-8.
std::string dumped(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

std::string json_of(const HomeOutcome& home) {
    Json out{{"file", home.file}, {"outcome", name_of(home.outcome)}, {"record_number", home.record_number}};
    if (home.outcome == Outcome::refused || home.outcome == Outcome::unusable) {
        out["reason"] = home.reason;
    } else {
        out["revision"] = home.revision;
        out["sheets"] = home.sheets;
        out["pages"] = home.pages;
        out["folder"] = home.folder;
    }
    return dumped(out);
}

std::string csv_of(const HomeOutcome& home) {
    const bool there = home.outcome == Outcome::printed || home.outcome == Outcome::current;
    const std::array<std::string, 8> cells{home.file,
                                           std::string{name_of(home.outcome)},
                                           home.record_number,
                                           home.revision,
                                           there ? std::to_string(home.sheets) : "",
                                           there ? std::to_string(home.pages) : "",
                                           home.folder,
                                           home.reason};
    return csv_row(cells);
}

}  // namespace

std::size_t PrintSummary::count() const { return std::accumulate(counts_.begin(), counts_.end(), std::size_t{0}); }

std::string PrintSummary::of(const HomeOutcome& home) {
    const bool first = count() == 0;
    ++counts_[static_cast<std::size_t>(home.outcome)];
    switch (form_) {
        case SummaryForm::text:
            return text(home);
        case SummaryForm::json:
            return fmt::format("{}\n  {}", first ? head() : ",", json_of(home));
        case SummaryForm::csv:
            return (first ? head() : "") + csv_of(home);
    }
    return {};
}

std::string PrintSummary::end(int status) {
    std::string said = count() == 0 ? head() : "";
    if (form_ == SummaryForm::json) said += json_end(status);
    if (form_ == SummaryForm::text && !only_wrong_)
        said += fmt::format("{} {}: {} printed, {} current, {} refused, {} unusable\n", count(),
                            count() == 1 ? "home" : "homes", count(Outcome::printed), count(Outcome::current),
                            count(Outcome::refused), count(Outcome::unusable));
    return said;
}

std::string PrintSummary::text(const HomeOutcome& home) const {
    switch (home.outcome) {
        case Outcome::printed:
            if (only_wrong_) return {};
            return fmt::format("{}: printed: {}, {} sheets, {} pages, in {}\n", home.file, home.record_number,
                               home.sheets, home.pages, home.folder);
        case Outcome::current:
            if (only_wrong_) return {};
            return fmt::format("{}: current: {}, in {}\n", home.file, home.record_number, home.folder);
        case Outcome::refused:
        case Outcome::unusable:
            break;
    }
    return fmt::format("{}: {}: {}\n", home.file, name_of(home.outcome), home.reason);
}

std::string PrintSummary::head() const {
    switch (form_) {
        case SummaryForm::text:
            return {};
        case SummaryForm::json: {
            const std::string shard = shard_ ? fmt::format("\"{}/{}\"", shard_->number, shard_->of) : "null";
            return fmt::format("{{\"schema\": \"urn:ventfolio:print:1\", \"on\": \"{}\", \"shard\": {}, \"homes\": [",
                               on_.iso(), shard);
        }
        case SummaryForm::csv: {
            const std::array<std::string, 8> columns{"file",   "outcome", "record_number", "revision",
                                                     "sheets", "pages",   "folder",        "reason"};
            return csv_row(columns);
        }
    }
    return {};
}

std::string PrintSummary::json_end(int status) const {
    Json counts = Json::object();
    for (const Outcome outcome : kOutcomes) counts[std::string{name_of(outcome)}] = count(outcome);
    return fmt::format("\n], \"counts\": {}, \"status\": {}}}\n", dumped(counts), status);
}

}  // namespace ventfolio
