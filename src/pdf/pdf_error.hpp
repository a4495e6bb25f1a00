#pragma once

#include <stdexcept>

namespace ventfolio {

/// A PDF file cannot be written: memory is short, a size lies outside what such a file can hold, or an embedded font is
/// broken.
class PdfError : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

}  // namespace ventfolio
