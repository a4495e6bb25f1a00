#include "layout/measurer.hpp"

namespace ventfolio {

const FontMetrics::Advance& Measurer::advance(Face face, std::u32string_view text) {
    Known& known = face == Face::regular ? regular_ : bold_;
    const auto found = known.find(text);
    if (found != known.end()) return found->second;
    return known.emplace(text, FontMetrics::of(face).advance(text)).first->second;
}

}  // namespace ventfolio
