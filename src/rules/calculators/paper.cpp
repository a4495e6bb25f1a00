#include "calc/letter_height.hpp"
#include "calc/reading_grade.hpp"
#include "rules/calculators/read.hpp"
#include "rules/tolerances.hpp"

namespace ventfolio::calculators {
namespace {

calc::TextCounts counts(const Inputs& in) {
    return {.words = whole(in, "words"), .sentences = whole(in, "sentences"), .syllables = whole(in, "syllables")};
}

template <Dimension D>
std::optional<Answer> accepted(const Inputs& in, std::string_view argument, const calc::Tolerance<D>& tolerance) {
    const auto band = calc::tolerance_band(in.get<D>(argument), tolerance);
    if (!band) return std::nullopt;
    const std::string result = std::string{argument} + "-band";
    return Answer{}.by(argument).give(result, *band);
}

}  // namespace

std::optional<Answer> reading_grade(const Inputs& in) {
    const auto grade = calc::reading_grade(counts(in));
    if (!grade) return std::nullopt;
    return Answer{}.give("grade", *grade);
}

std::optional<Answer> reading_ease(const Inputs& in) {
    const auto ease = calc::reading_ease(counts(in));
    if (!ease) return std::nullopt;
    return Answer{}.give("ease", *ease);
}

std::optional<Answer> spanish_reading_ease(const Inputs& in) {
    const auto ease = calc::spanish_reading_ease(counts(in));
    if (!ease) return std::nullopt;
    return Answer{}.give("ease", *ease);
}

std::optional<Answer> long_word_grade(const Inputs& in) {
    const auto grade = calc::smog_grade(whole(in, "long-words"), whole(in, "sentences"));
    if (!grade) return std::nullopt;
    return Answer{}.give("grade", *grade);
}

std::optional<Answer> letter_height(const Inputs& in) {
    const auto height = calc::letter_height(length(in, "distance"), in.number("angle"));
    if (!height) return std::nullopt;
    return Answer{}.give("height", *height);
}

std::optional<Answer> type_size(const Inputs& in) {
    const auto size = calc::type_size_for(length(in, "capital"), in.number("cap-height"));
    if (!size) return std::nullopt;
    return Answer{}.give("size", *size);
}

std::optional<Answer> tolerance_band(const Inputs& in) {
    if (in.all().size() != 1) return std::nullopt;
    if (in.has("volume")) return accepted(in, "volume", kVolumeTolerance);
    if (in.has("minute-volume")) return accepted(in, "minute-volume", kMinuteVolumeTolerance);
    if (in.has("pressure")) return accepted(in, "pressure", kPressureTolerance);
    return accepted(in, "rate", kRateTolerance);
}

std::optional<Answer> unit_conversion(const Inputs& in) {
    const Unit& from = in.unit("measure");
    const Unit& to = in.unit("to");
    if (from.dimension != to.dimension) return std::nullopt;
    return Answer{}.give_measure("converted", (in.number("measure") - to.offset) / to.factor, to.symbol);
}

}  // namespace ventfolio::calculators
