#pragma once

#include <array>
#include <string>
#include <string_view>

#include "profile/field.hpp"

namespace ventfolio {

/// Who says how and how often: the product's instructions or the clinic.
enum class CareSource : std::uint8_t { instructions, clinic };
template <>
struct Words<CareSource> {
    static constexpr std::array<std::string_view, 2> words{"instructions", "clinic"};
};

/// Something done again and again. Either an interval with a date, or words such as "every shift".
struct CareTask {
    Field<std::string> task;
    Field<Interval> interval;
    Field<std::string> how_often;
    Field<Date> last_done;
    Field<std::string> who;
    Field<CareSource> source;
    Field<std::string> method;

    void describe(Visitor& visitor);
};

}  // namespace ventfolio
