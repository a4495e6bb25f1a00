#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "packet/packet_folder.hpp"
#include "packet/stationery.hpp"
#include "packet/template_folder.hpp"
#include "profile/profile.hpp"

namespace ventfolio {

/// The language in which every sheet exists; others are translations of it.
inline constexpr std::string_view kFirstLanguage = "en";
inline constexpr std::string_view kFirstRegion = "us";

/// A language lacks files that the first one has. The message names them.
class IncompleteLanguage : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// The language and the region that somebody asked for; what is missing follows from the home.
struct StationeryChoice {
    std::optional<std::string> language;  ///< "es"
    std::optional<std::string> region;    ///< "us"
};

/// A region, and what a home wants otherwise.
struct RegionChoice {
    std::string name;
    std::optional<PaperSize> paper{};
    std::optional<DateOrder> date_order{};
    std::optional<DecimalSign> decimal_sign{};
    friend auto operator<=>(const RegionChoice&, const RegionChoice&) = default;
};

/// Stationery with the faults that its files have. With any of them nothing may be printed.
struct ShelvedStationery {
    Stationery stationery;
    std::vector<Finding> faults;
};

/// The stationery of all languages and regions, built in or with a clinic's files over it. Each is read once, when it
/// is first asked for; several threads may ask.
class StationeryShelf {
  public:
    explicit StationeryShelf(TemplateFiles built_in, const TemplateOverlay& clinic = {});

    /// A language is a folder that has words: "en", then the others in the order of the alphabet.
    std::vector<std::string> languages() const;
    std::vector<std::string> regions() const;
    /// The names of all sheets in whatever language, in the order of the alphabet.
    std::vector<std::string> sheets() const;

    /// The language that goes by this name: its folder, or one of the `names` in the head of its file of words.
    /// Capitals and accents do not count. Nothing for a language that there is not.
    ///
    /// Two names with a plus sign between them are two languages, the first above the second.
    ///
    /// Example: find_language("Español") is "es", find_language("English+Spanish") "en+es".
    std::optional<std::string> find_language(std::string_view name) const;

    /// A region where this language is spoken; the first region where there is none.
    std::string region_for(std::string_view language) const;

    /// The first language that those in the home read and that there is; else that of the region. With the language
    /// that the home wants under it (`person.languages.second_on_paper`), if there is that.
    std::string language_for(const Profile& profile, std::string_view region) const;

    /// Throws IncompleteLanguage where the files of words or phrases are missing; std::invalid_argument for a region
    /// that there is not.
    const ShelvedStationery& at(const std::string& language, const RegionChoice& region) const;
    /// For a home: what was asked for, else what its profile says; of a packet that it had before (may be null) what
    /// that was made with; else the first region, and what those in the home read.
    const ShelvedStationery& for_home(const Profile& profile, const StationeryChoice& choice,
                                      const PacketRecord* before = nullptr) const;

    /// A finding at `home.region` of a profile that names a region that there is not.
    std::optional<Finding> fault_of_region(const Profile& profile, const SourceText& source) const;

  private:
    std::string first_language_for(const Profile& profile, std::string_view region) const;
    const ShelvedStationery& read_two(const std::string& languages, const RegionChoice& region) const;
    std::string language_of_region(std::string_view region) const;
    bool names_region(const Home& home) const;
    const ShelvedStationery& read(const std::string& language, const RegionChoice& region) const;

    void compare_with_built_in(ShelvedStationery& clinic, const std::string& language,
                               const RegionChoice& region) const;

    TemplateFiles files_;
    TemplateFiles built_in_;  ///< only where a clinic's files lie over them
    OwnFiles own_;
    mutable std::mutex mutex_;
    mutable std::map<std::pair<std::string, RegionChoice>, std::unique_ptr<ShelvedStationery>> read_;
};

/// Throws IncompleteLanguage, which names the files, if one of these sheets is missing in its language.
void require_translated(const Stationery& stationery, const std::vector<std::string>& sheets);

}  // namespace ventfolio
