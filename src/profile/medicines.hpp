#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Why a crew must know about a medicine.
enum class MedicineKind : std::uint8_t {
    blood_thinner,
    steroid,
    seizure_rescue,
    insulin,
    opioid,
    baclofen_pump,
    inhaled_rescue,
    nebulized,
    other
};
template <>
struct Words<MedicineKind> {
    static constexpr std::array<std::string_view, 9> words{"blood_thinner",  "steroid",   "seizure_rescue",
                                                           "insulin",        "opioid",    "baclofen_pump",
                                                           "inhaled_rescue", "nebulized", "other"};
};

/// A medicine that changes what a crew does. The full list stays elsewhere.
struct Medicine {
    Field<std::string> name;
    Field<MedicineKind> kind;
    Field<std::string> note;

    void describe(Visitor& visitor);
};

/// A medicine to avoid, in the prescriber's words.
struct AvoidedMedicine {
    Field<std::string> words;
    Field<std::string> by;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
