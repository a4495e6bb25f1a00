#include "value_reader.hpp"

#include <algorithm>
#include <map>

#include "units/text.hpp"

namespace ventfolio::testing {
namespace {

std::map<std::string, std::vector<Place>> places_by_field(const std::vector<TextBox>& boxes) {
    std::map<std::string, std::vector<Place>> places;
    for (std::size_t at = 0; at < boxes.size(); ++at) {
        if (boxes[at].field.empty()) continue;
        const bool goes_on = at > 0 && boxes[at - 1].field == boxes[at].field && boxes[at - 1].page == boxes[at].page;
        std::vector<Place>& of_field = places[boxes[at].field];
        if (goes_on)
            of_field.back().push_back(at);
        else
            of_field.push_back({at});
    }
    return places;
}

/// Whether one look at each box, the boxes one after the other, gives these letters.
bool spells(std::string_view letters, const LetterReader& reader, const Place& place, std::size_t from = 0) {
    if (from == place.size()) return letters.empty();
    for (const std::string& look : reader.looks(place[from])) {
        const std::string read = for_reader(look);
        if (letters.starts_with(read) && spells(letters.substr(read.size()), reader, place, from + 1)) return true;
    }
    return false;
}

/// Whether a place has so many decimal points, each seen as ink.
bool points_are_seen(std::size_t points, const LetterReader& reader, const Place& place) {
    std::size_t drawn = 0;
    for (const std::size_t box : place) {
        drawn += reader.boxes()[box].points.size();
        if (!reader.points_are_seen(box, reader.pages())) return false;
    }
    return drawn == points;
}

/// Letters of a value as it is written, or without its decimal points where they are seen as ink.
bool came_back(const std::string& words, const LetterReader& reader, const Place& place) {
    const std::string letters = for_reader(words);
    if (spells(letters, reader, place)) return true;
    const auto points = static_cast<std::size_t>(std::ranges::count(letters, '.'));
    return points > 0 && spells(with_replaced(letters, ".", ""), reader, place) &&
           points_are_seen(points, reader, place);
}

void judge(const LetterReader& reader, const WrittenValue& value, ReadPlace& place) {
    place.whole =
        std::ranges::any_of(value.whole, [&](const auto& words) { return came_back(words, reader, place.boxes); });
    place.number = place.whole || (!value.number.empty() && came_back(value.number, reader, place.boxes));
}

}  // namespace

std::vector<const PlacedSheet*> sheets_named(const SetHome& home, const std::vector<std::string>& names) {
    std::vector<const PlacedSheet*> sheets;
    for (const SetSheet& sheet : home.sheets)
        if (names.empty() || std::ranges::count(names, sheet.document.sheet) > 0) sheets.push_back(&sheet.placed);
    return sheets;
}

std::vector<ReadValue> read_values(LetterReader& reader, const std::vector<WrittenValue>& values) {
    const auto by_field = places_by_field(reader.boxes());
    std::vector<ReadValue> read;
    for (const WrittenValue& value : values) {
        read.push_back({value, {}});
        if (const auto found = by_field.find(value.field); found != by_field.end())
            for (const Place& place : found->second) read.back().places.push_back({place, {}});
    }
    for (const int closer : {1, 2, 3}) {
        std::vector<std::size_t> boxes;
        for (const ReadValue& value : read)
            for (const ReadPlace& place : value.places)
                if (!place.number) boxes.insert(boxes.end(), place.boxes.begin(), place.boxes.end());
        reader.look_at(boxes, closer);
        for (ReadValue& value : read)
            for (ReadPlace& place : value.places) {
                if (place.number) continue;
                judge(reader, value.value, place);
                place.at_once = place.number && closer == 1;
            }
    }
    for (ReadValue& value : read)
        for (ReadPlace& place : value.places)
            for (const std::size_t box : place.boxes) place.looks += "[" + joined(reader.looks(box), " | ") + "] ";
    return read;
}

}  // namespace ventfolio::testing
