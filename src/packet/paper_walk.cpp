#include "packet/paper_walk.hpp"

#include <algorithm>
#include <iterator>

#include "packet/paper_values.hpp"
#include "record/sheet_code.hpp"
#include "sheets/printer.hpp"

namespace ventfolio {
namespace {

using State = SheetChange::State;
using Places = std::vector<PaperPlace>;

/// A sheet with what its template says of its paper.
struct Sheet {
    SheetChange change;
    PaperSwap::New arrives = PaperSwap::New::none;
    std::string name;  ///< "bedside-card"
    std::string audience;
    bool filed = false;
};

std::string sheet_of(const SheetChange& change) {
    return change.document != nullptr ? change.document->sheet : change.before->name;
}

std::string front_of(const std::string& sheet, std::string_view key, const Stationery& stationery) {
    const auto parts = stationery.parts_of(sheet);
    if (parts.empty()) return {};
    const FrontMatterLine* line = parts.front().from->front(key);
    return line == nullptr ? std::string{} : line->value;
}

Sheet with_template(SheetChange change, PaperSwap::New arrives, std::string name, const Stationery& stationery) {
    Sheet sheet{std::move(change), arrives, std::move(name), {}, false};
    sheet.audience = front_of(sheet.name, "audience", stationery);
    sheet.filed = front_of(sheet.name, "when_replaced", stationery) == "file";
    return sheet;
}

/// A sheet that has no document yet.
SheetChange later_change(const std::string& name, const FollowedPacket& followed, const Stationery& stationery) {
    SheetChange change;
    change.name = name;
    change.title = stationery.words.at("sheets." + name);
    change.before = followed.record->find(name);
    change.state = change.before == nullptr ? State::added : State::replaced;
    return change;
}

std::vector<Sheet> all_sheets(const FollowedPacket& followed, const std::vector<const Document*>& made,
                              const LaterSheets& later, const Stationery& stationery) {
    std::vector<Sheet> sheets;
    const auto add_later = [&](const std::string& name, PaperSwap::New arrives) {
        sheets.push_back(with_template(later_change(name, followed, stationery), arrives, name, stationery));
    };
    for (const std::string& name : later.after) add_later(name, PaperSwap::New::at_its_foot);
    add_later(later.notice, PaperSwap::New::the_notice);
    for (SheetChange& change : sheet_changes(followed, made)) {
        if (std::ranges::any_of(sheets, [&](const Sheet& known) { return known.change.name == change.name; })) continue;
        const auto arrives = change.state == State::withdrawn ? PaperSwap::New::none : PaperSwap::New::coded;
        std::string name = sheet_of(change);
        sheets.push_back(with_template(std::move(change), arrives, std::move(name), stationery));
    }
    return sheets;
}

bool all_recorded(const Places& places) {
    return std::ranges::all_of(places, [](const PaperPlace& one) { return one.kind == PaperPlace::Kind::recorded; });
}

/// The first paper of an index is in the folder, whatever further copies are recorded.
Places places_of(const Profile& profile, const Sheet& sheet) {
    Places places = places_of_copies(profile, {sheet.change.name, sheet.name}, sheet.audience);
    if (sheet.arrives == PaperSwap::New::at_its_foot && all_recorded(places))
        places.insert(places.begin(), {PaperPlace::Kind::folder, {}});
    return places;
}

class Walk {
  public:
    Walk(const FollowedPacket& followed, const Profile& now) : followed_{followed}, now_{now} {
        // The places of a home in the order of its profile; those that only the old one has come after them.
        for (const Profile* profile : {&now, &followed.home->profile})
            for (const PaperCopy& copy : profile->copies) stop({PaperPlace::Kind::recorded, copy.place.or_else("")});
        stop({PaperPlace::Kind::folder, {}});
        stop({PaperPlace::Kind::unknown, {}});
    }

    void add(const Sheet& sheet) {
        Places old_places = sheet.change.before != nullptr ? places_of(followed_.home->profile, sheet) : Places{};
        Places new_places = sheet.change.state != State::withdrawn ? places_of(now_, sheet) : Places{};
        const bool stays = sheet.change.state == State::kept;
        if (stays) walk_.staying.push_back(sheet.change);
        const bool letter = sheet.audience == "utility" || sheet.audience == "fire";
        const bool says_something_new = sheet.change.state == State::replaced || sheet.change.state == State::added;
        if (letter && says_something_new) walk_.to_others.push_back(sheet.change);
        // Paper whose place was not written down before, or is not any more, has not moved.
        if (stays && !(all_recorded(old_places) && all_recorded(new_places))) return;
        for (auto at = old_places.begin(); at != old_places.end();) {
            const auto same = std::ranges::find(new_places, *at);
            if (same == new_places.end()) {
                ++at;
                continue;
            }
            if (!stays) put(*at, sheet, true, true);
            new_places.erase(same);
            at = old_places.erase(at);
        }
        for (const PaperPlace& place : old_places) put(place, sheet, true, false);
        for (const PaperPlace& place : new_places) put(place, sheet, false, true);
    }

    PaperWalk done() {
        std::erase_if(walk_.stops, [](const PaperStop& stop) { return stop.swaps.empty(); });
        return std::move(walk_);
    }

  private:
    PaperStop& stop(const PaperPlace& place) {
        const auto found = std::ranges::find(walk_.stops, place, &PaperStop::place);
        if (found != walk_.stops.end()) return *found;
        walk_.stops.push_back({place, {}});
        return walk_.stops.back();
    }

    void put(const PaperPlace& place, const Sheet& sheet, bool goes, bool comes) {
        PaperSwap swap;
        swap.title = sheet.change.document != nullptr
                         ? title_value(*sheet.change.document)
                         : calculated("sheet-title", folder, plain_parts(sheet.change.title));
        if (goes) swap.old_code = sheet.change.before->code;
        if (comes) swap.arrives = sheet.arrives;
        if (swap.arrives == PaperSwap::New::coded) swap.new_code = sheet_code(*sheet.change.document);
        swap.filed = goes && sheet.filed;
        walk_.down += goes ? 1 : 0;
        walk_.up += comes ? 1 : 0;
        stop(place).swaps.push_back(std::move(swap));
    }

    const FollowedPacket& followed_;
    const Profile& now_;
    PaperWalk walk_;
};

}  // namespace

PaperWalk paper_walk(const FollowedPacket& followed, const Profile& now, const std::vector<const Document*>& made,
                     const LaterSheets& later, const Stationery& stationery) {
    Walk walk{followed, now};
    for (const Sheet& sheet : all_sheets(followed, made, later, stationery)) walk.add(sheet);
    return walk.done();
}

}  // namespace ventfolio
