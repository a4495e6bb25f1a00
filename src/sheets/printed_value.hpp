#pragma once

#include <string>
#include <vector>

#include "profile/audience.hpp"

namespace ventfolio {

/// A stretch of a printed value. Numbers are set bold and units lighter, so they are told apart here.
struct PrintedPart {
    enum class Kind { word, number, unit };
    Kind kind = Kind::word;
    std::string text;
    friend bool operator==(const PrintedPart&, const PrintedPart&) = default;
};

/// A value as it stands on paper, with the field it comes from. `parts` are joined as they are: the no-break space
/// between number and unit is a part's own.
struct PrintedValue {
    std::string field;           ///< path of the profile field, or "calc.NAME" for a calculated value
    Audiences audiences = 0xFF;  ///< where it may stand: of the field, or the narrowest of the fields it is made from
    std::vector<PrintedPart> parts;
    bool not_recorded = false;  ///< stands for a missing value: NOT RECORDED, with whom to ask
    /// Words of the rule book, of a calculator or of a clinician's reason, or a sheet code: cited, and not what the
    /// sheet itself tells anyone, so the checks of wording pass over it. Who may read it is judged all the same.
    bool quoted = false;

    std::string text() const {
        std::string all;
        for (const PrintedPart& part : parts) all += part.text;
        return all;
    }
    friend bool operator==(const PrintedValue&, const PrintedValue&) = default;
};

}  // namespace ventfolio
