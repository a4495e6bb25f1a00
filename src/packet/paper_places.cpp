#include "packet/paper_places.hpp"

#include <algorithm>

namespace ventfolio {

std::vector<std::size_t> recorded_copies(const Profile& profile, const std::vector<std::string>& names) {
    std::vector<std::size_t> found;
    for (std::size_t at = 0; at < profile.copies.size(); ++at) {
        const PaperCopy& copy = profile.copies[at];
        if (copy.sheet.given() && std::ranges::find(names, *copy.sheet) != names.end()) found.push_back(at);
    }
    return found;
}

std::size_t number_of_papers(const PaperCopy& copy) {
    return copy.number.given() ? static_cast<std::size_t>((*copy.number).in(unit::pieces)) : 1;
}

PaperPlace usual_place(std::string_view audience) {
    const bool elsewhere = audience == "wall" || audience == "wallet";
    return {elsewhere ? PaperPlace::Kind::unknown : PaperPlace::Kind::folder, {}};
}

std::vector<PaperPlace> places_of_copies(const Profile& profile, const std::vector<std::string>& names,
                                         std::string_view audience) {
    std::vector<PaperPlace> places;
    for (const std::size_t at : recorded_copies(profile, names)) {
        const PaperCopy& copy = profile.copies[at];
        places.insert(places.end(), number_of_papers(copy), {PaperPlace::Kind::recorded, copy.place.or_else("")});
    }
    if (places.empty()) places.push_back(usual_place(audience));
    return places;
}

}  // namespace ventfolio
