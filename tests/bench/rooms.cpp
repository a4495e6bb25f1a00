#include "bench/rooms.hpp"

#include <functional>

#include "bench/costs.hpp"
#include "packet/documents.hpp"
#include "packet/drawn_sheets.hpp"
#include "packet/file_system.hpp"
#include "packet/print_home.hpp"
#include "packet/record_home.hpp"
#include "profile/read_profile.hpp"
#include "record/sheet_code.hpp"
#include "rules/judge.hpp"

namespace ventfolio::bench {
namespace {

/// The real disk, with a clock on what waits for it.
class TimedFlush : public FileSystem {
  public:
    double waited = 0;
    void flush(const Descriptor& file_or_folder) override {
        waited += cost_of([&] { FileSystem::flush(file_or_folder); }).wall;
    }
};

class Times {
  public:
    void take(const std::string& room, const std::function<void()>& work) { add(room, cost_of(work).cpu); }
    void add(const std::string& room, double seconds) {
        for (auto& [name, time] : all)
            if (name == room) {
                time += seconds;
                return;
            }
        all.emplace_back(room, seconds);
    }
    std::vector<std::pair<std::string, double>> all;
};

}  // namespace

std::vector<std::pair<std::string, double>> time_by_room(const std::vector<SourceText>& homes,
                                                         const std::filesystem::path& folder) {
    std::vector<Finding> faults;
    const Stationery stationery = built_in_stationery("en", "us", faults);
    Measurer measurer;
    const Date on = *Date::parse("2026-02-03");
    Times times;
    TimedFlush disk;
    for (const SourceText& source : homes) {
        ReadResult read;
        std::vector<Finding> findings;
        std::vector<Finding> of_sheets;
        std::vector<Document> documents;
        std::vector<DrawnSheet> sheets;
        std::vector<FolderFile> files;
        times.take("profile", [&] { read = read_profile(source); });
        times.take("rules and calc", [&] { findings = judge(read.profile, source, on); });
        const Household home{read.profile, on};
        times.take("sheets and markup",
                   [&] { documents = make_documents(home, findings, stationery, stationery.in_order(), of_sheets); });
        times.take("record", [&] {
            for (const Document& document : documents) sheet_code(document);
        });
        times.take("layout",
                   [&] { sheets = draw_sheets(std::move(documents), home, stationery, {}, measurer, of_sheets); });
        const Printing printing = printing_for(sheets, true, home, stationery, {}, measurer, of_sheets);
        times.take("pdf", [&] { files = drawn_files("packet", all_of(sheets), printing); });
        PacketRecord record = record_of(home, findings, stationery, {});
        times.take("packet", [&] {
            for (const DrawnSheet& sheet : sheets) record.sheets.push_back(recorded(sheet, "packet.pdf", record));
            add_record(files, record, source);
            write_folder({.target = folder / record.record_number,
                          .record_number = record.record_number,
                          .revision = record.revision,
                          .files = files,
                          .other_files = OtherFiles::leave_behind},
                         disk);
        });
    }
    times.add("waiting for the disk", disk.waited);
    return std::move(times.all);
}

}  // namespace ventfolio::bench
