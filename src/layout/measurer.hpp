#pragma once

#include <string>
#include <string_view>
#include <unordered_map>

#include "layout/fonts.hpp"

namespace ventfolio {

/// Remembers the width of words, since the same ones come again and again. One per thread, for as many sheets and homes
/// as that sets; it is not safe to share. Its memory grows with the different words that it has seen.
class Measurer {
  public:
    /// Valid until the measurer goes: later calls move nothing.
    const FontMetrics::Advance& advance(Face face, std::u32string_view text);

  private:
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(std::u32string_view text) const { return std::hash<std::u32string_view>{}(text); }
    };
    using Known = std::unordered_map<std::u32string, FontMetrics::Advance, Hash, std::equal_to<>>;

    Known regular_;
    Known bold_;
};

}  // namespace ventfolio
