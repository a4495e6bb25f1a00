#include "bench/homes.hpp"

#include <fmt/format.h>

#include <array>
#include <random>

#include "rules/edited_home.hpp"

namespace ventfolio::bench {
namespace {

constexpr std::array kHomes{"adult-tracheostomy", "child-tracheostomy", "adult-mask"};
constexpr std::array kFirstNames{"Ilvo",  "Marisel", "Tamsin", "Oderic",  "Pellan", "Ruveni", "Sabelle", "Torvald",
                                 "Ulani", "Wendry",  "Xanthe", "Yorrick", "Zelda",  "Anneke", "Brannoc", "Cosima"};
constexpr std::array kLastNames{"Aldermoor",   "Brackwater", "Coldharbor", "Dunmeadow", "Elverstone", "Fennimore-Oake",
                                "Greythwaite", "Hollinbeck", "Inkpenny",   "Jessamyre", "Kittiwell",  "Larkendale"};
constexpr std::array kStreets{"Alder Ford Road", "Brickkiln Lane", "Cinder Path", "Dovecote Street", "Elm Hollow"};

/// Draws that depend on nothing but the seed and the number of the home.
class Draw {
  public:
    Draw(std::uint64_t seed, std::size_t at) : random_{seed * 1'000'003 + at} {}
    // Not std::uniform_int_distribution, which each library fills in its own way.
    std::size_t below(std::size_t end) { return static_cast<std::size_t>(random_() % end); }
    int between(int least, int most) {
        return least + static_cast<int>(below(static_cast<std::size_t>(most - least + 1)));
    }
    template <class List>
    const char* one_of(const List& list) {
        return list.at(below(list.size()));
    }

  private:
    std::mt19937_64 random_;
};

std::string edits_for(const std::string& home, Draw& draw, std::size_t at) {
    const std::string first = draw.one_of(kFirstNames);
    const std::string last = draw.one_of(kLastNames);
    std::string edits = fmt::format("record_number: {}\nperson.legal_name: {} {}\nperson.preferred_name: {}\n",
                                    record_number_of(at), first, last, first);
    edits += fmt::format("home.address: {} {}, Larkmoor Falls 00000\n", draw.between(1, 999), draw.one_of(kStreets));
    edits += fmt::format("evacuation.travel_time: {} min\n", draw.between(5, 55));
    edits += fmt::format("contacts.equipment_provider.phone: 555-01{:02}\n", draw.between(10, 99));
    if (home == "adult-tracheostomy")
        for (int battery = 0; battery < 5; ++battery)
            edits += fmt::format("batteries.{}.tested_time: {} min\n", battery, draw.between(150, 480));
    return edits;
}

}  // namespace

std::string record_number_of(std::size_t at) { return fmt::format("B-{:06}", at); }

std::string invented_home(std::uint64_t seed, std::size_t at) {
    Draw draw{seed, at};
    const std::string home = kHomes.at(at % kHomes.size());
    return testing::edited(testing::demo_home(home), edits_for(home, draw, at));
}

}  // namespace ventfolio::bench
