#pragma once

#include <string>

#include "profile/field.hpp"

namespace ventfolio {

/// Where a sheet hangs or is kept, so that an old one is found and taken down.
struct PaperCopy {
    Field<std::string> sheet;
    Field<std::string> place;
    Field<Count> number;

    void describe(Visitor& visitor);
};

/// A second language whose printed text somebody qualified has read.
struct Translation {
    Field<std::string> language;
    Field<std::string> reviewed_by;
    Field<Date> reviewed_on;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
