#pragma once

#include "profile/place.hpp"

namespace ventfolio {

/// Finds places in a long text in the order in which they stand there, without counting from the top each time.
class PlaceFinder {
  public:
    explicit PlaceFinder(const SourceText& source) : source_{source} {}

    /// The same as SourceText::place.
    Place place(std::size_t begin, std::size_t end);

  private:
    const SourceText& source_;
    Place last_{1, 1, 0, 0};
};

}  // namespace ventfolio
