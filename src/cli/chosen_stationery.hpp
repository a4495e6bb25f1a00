#pragma once

#include <optional>
#include <string>

#include "packet/stationery_shelf.hpp"

namespace ventfolio {

/// What a command line says of language and templates, as it was typed; empty: not given.
struct StationeryOptions {
    std::string language;
    std::string region;
    std::string templates;  ///< folder of a clinic's own
};

/// The stationery that the program holds, and that of the clinic over it. Throws FolderError.
StationeryShelf open_shelf(const StationeryOptions& options = {});

/// Reads the options. Nothing, after a word on standard error, for a language or region that there is not.
std::optional<StationeryChoice> chosen_stationery(const StationeryOptions& options, const StationeryShelf& shelf);

/// For paper that belongs to no home: what was asked for, else the first region and its language.
const ShelvedStationery& at_choice(const StationeryShelf& shelf, const StationeryChoice& choice);

/// Null, after its faults were printed to standard error, for stationery that may not be used.
const Stationery* without_faults(const ShelvedStationery& shelved, bool quiet);

}  // namespace ventfolio
