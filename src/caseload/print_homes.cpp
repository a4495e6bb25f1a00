#include "caseload/print_homes.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <exception>
#include <new>
#include <stdexcept>

#include "caseload/ordered_work.hpp"
#include "packet/current_packet.hpp"
#include "packet/documents.hpp"
#include "packet/folder_writer.hpp"
#include "packet/new_folders.hpp"
#include "profile/refusal.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

namespace fs = std::filesystem;

/// A measurer remembers every word that it has seen. After so many homes a new one is taken, so that names and notes
/// of a large caseload do not pile up.
constexpr std::size_t kHomesForOneMeasurer = 200;

std::string rules_that_refuse(const std::vector<Finding>& findings) {
    std::vector<std::string> rules;
    for (const Finding& finding : findings)
        if (refuses(finding) && std::ranges::find(rules, finding.rule) == rules.end()) rules.push_back(finding.rule);
    return joined(rules, ", ");
}

std::string reason_of(const HomeResult& home) {
    const std::string rules = rules_that_refuse(home.findings);
    if (!rules.empty()) return "stopped by " + rules;
    return fmt::format("there is no {} for this home", joined(home.missing_sheets, ", "));
}

/// The homes of one part, and where they stand among all.
std::vector<std::size_t> part_of(const CaseloadOrder& order) {
    std::vector<std::size_t> part;
    for (std::size_t at = 0; at < order.homes.files.size(); ++at)
        if (!order.shard || order.shard->holds(order.homes.files[at])) part.push_back(at);
    return part;
}

/// One thread of a run.
class HomePrinter {
  public:
    /// Without `numbers` nothing is known of other homes: there is only one.
    HomePrinter(const CaseloadOrder& order, const StationeryShelf& shelf, const RecordNumbers* numbers)
        : order_{order}, shelf_{shelf}, numbers_{numbers} {}

    HomeResult print(std::size_t at) {
        HomeResult home;
        home.outcome.file = order_.homes.files[at];
        try {
            if (numbers_ != nullptr) home.outcome.record_number = numbers_->of(at);
            if (!refuse_twin(at, home)) print(home);
        } catch (const std::logic_error& fault) {
            unusable(home, std::string{"this is a bug in ventfolio: "} + fault.what());
        } catch (const std::bad_alloc&) {
            unusable(home, "there is not enough memory");
        } catch (const std::exception& fault) {  // the world: a file, a folder, the disk
            unusable(home, fault.what());
        }
        return home;
    }

  private:
    bool refuse_twin(std::size_t at, HomeResult& home) const {
        const auto other = numbers_ == nullptr ? std::nullopt : numbers_->other_with_number_of(at);
        if (!other) return false;
        home.outcome.outcome = Outcome::refused;
        home.outcome.reason =
            fmt::format("record number {} is also that of {}", home.outcome.record_number, order_.homes.files[*other]);
        return true;
    }

    static void unusable(HomeResult& home, std::string fault) {
        home.outcome.outcome = Outcome::unusable;
        home.outcome.reason = without_name(fault, home.outcome.file);
        home.fault = std::move(fault);
    }

    void print(HomeResult& home) {
        home.profile = order_.read_file(home.outcome.file);
        home.profile.text.shrink_to_fit();  // it was made for the largest profile
        if (order_.resume && leave_current(home)) return;
        ReadResult read = read_profile(home.profile);
        if (auto fault = shelf_.fault_of_region(read.profile, home.profile)) read.findings.push_back(std::move(*fault));
        if (!use(shelf_.for_home(read.profile, order_.stationery), home)) return;
        CheckedHome checked = check_home(std::move(read), home.profile, order_.on, &home.stationery->region);
        require_translated(*home.stationery, needed_for(order_.sheets.names(*home.stationery), *home.stationery));
        PrintedHome printed = print_home(std::move(checked), order_.on, order_.sheets, *home.stationery, measurer());
        home.findings = std::move(printed.findings);
        home.missing_sheets = std::move(printed.missing_sheets);
        if (printed.refused) {
            home.outcome.outcome = Outcome::refused;
            home.outcome.reason = reason_of(home);
            return;
        }
        // Between the two readings of its file it may have become another home, of which nothing is known.
        if (numbers_ != nullptr && printed.record.record_number != home.outcome.record_number)
            throw std::runtime_error{home.outcome.file + ": was changed while it was being printed"};
        const std::size_t pages = printed.pages;
        const PacketRecord record = printed.record;
        const fs::path folder = folder_of(record.record_number);
        write(std::move(printed), home.profile, folder);
        tell(Outcome::printed, record, folder, home);
        home.outcome.pages = pages;
    }

    /// Templates with a fault print nothing, and only for those homes that need them.
    static bool use(const ShelvedStationery& chosen, HomeResult& home) {
        home.stationery = &chosen.stationery;
        if (chosen.faults.empty()) return true;
        home.findings = chosen.faults;
        const Mark& first = chosen.faults.front().marks.front();
        unusable(home,
                 fmt::format("{}:{}: stopped by {}", first.file, first.place.line, rules_that_refuse(home.findings)));
        return false;
    }

    bool leave_current(HomeResult& home) const {
        if (order_.by_record_number && home.outcome.record_number.empty()) return false;
        const fs::path folder = folder_of(home.outcome.record_number);
        const std::optional<PacketFolder> packet = packet_to_replace(folder);
        if (!packet) return false;
        const Profile profile = read_profile(home.profile).profile;
        const ShelvedStationery& same = shelf_.for_home(profile, order_.stationery, &packet->record);
        if (!same.faults.empty() || !is_current(*packet, home.profile, order_.on, order_.sheets, same.stationery))
            return false;
        tell(Outcome::current, packet->record, folder, home);
        for (const RecordedSheet& sheet : packet->record.sheets) home.outcome.pages += sheet.pages;
        return true;
    }

    static void tell(Outcome what, const PacketRecord& record, const fs::path& folder, HomeResult& home) {
        home.outcome.outcome = what;
        home.outcome.record_number = record.record_number;
        home.outcome.revision = record.revision;
        home.outcome.sheets = record.sheets.size();
        home.outcome.folder = folder.string();
    }

    void write(PrintedHome printed, const SourceText& profile, const fs::path& target) const {
        FolderOrder folder;
        folder.target = target;
        folder.record_number = printed.record.record_number;
        folder.revision = printed.record.revision;
        const std::optional<PacketFolder> before = packet_to_replace(target);
        const std::vector<FolderFile> files = folder_files(std::move(printed), profile, before ? &*before : nullptr);
        folder.files = files;
        folder.other_files = order_.sheets.sheets.empty() ? OtherFiles::leave_behind : OtherFiles::carry_over;
        write_folder(folder);
    }

    fs::path folder_of(const std::string& record_number) const {
        return order_.by_record_number ? order_.folder / record_number : order_.folder;
    }

    Measurer& measurer() {
        if (++measured_ % kHomesForOneMeasurer == 0) measurer_ = Measurer{};
        return measurer_;
    }

    const CaseloadOrder& order_;
    const StationeryShelf& shelf_;
    const RecordNumbers* numbers_;
    Measurer measurer_;
    std::size_t measured_ = 0;
};

void tell_unusable(const FoundHomes& homes, const CaseloadListener& listener) {
    for (const UnusableName& one : homes.unusable) {
        HomeResult home;
        home.outcome.file = one.name;
        home.outcome.reason = one.reason;
        home.fault = one.name + ": " + one.reason;
        listener.home(home);
    }
}

}  // namespace

std::string_view name_of(Outcome outcome) {
    constexpr std::array<std::string_view, 4> kNames{"printed", "current", "refused", "unusable"};
    return kNames[static_cast<std::size_t>(outcome)];
}

FoundHomes homes_of(const CaseloadOrder& order) {
    FoundHomes homes;
    for (const std::size_t at : part_of(order)) homes.files.push_back(order.homes.files[at]);
    for (const UnusableName& one : order.homes.unusable)
        if (!order.shard || order.shard->holds(one.name)) homes.unusable.push_back(one);
    return homes;
}

void print_homes(const CaseloadOrder& order, const StationeryShelf& shelf, const CaseloadListener& listener) {
    FileSystem files;
    NewFolders folders{files};
    // Made before there are threads, which would get in each other's way.
    if (order.by_record_number) folders.make(order.folder);
    if (order.shard) folders.keep();  // runs of other parts may be about to write there
    tell_unusable(homes_of(order), listener);
    const std::vector<std::string>& names = order.homes.files;
    std::optional<RecordNumbers> numbers;
    if (order.by_record_number) {
        const auto told = [&](std::size_t done) {
            if (listener.read) listener.read(done, names.size());
        };
        numbers = RecordNumbers::read(names, order.jobs, order.read_file, told);
    }
    const std::vector<std::size_t> part = part_of(order);
    const auto make_printer = [&] {
        return [&part, printer = HomePrinter{order, shelf, numbers ? &*numbers : nullptr}](std::size_t number) mutable {
            return printer.print(part[number]);
        };
    };
    work_in_order(part.size(), order.jobs, make_printer, [&](const HomeResult& home) {
        if (home.outcome.outcome == Outcome::printed) folders.keep();
        listener.home(home);
    });
}

}  // namespace ventfolio
