#pragma once

#include <map>

#include "pdf/content.hpp"
#include "pdf/haru.hpp"

namespace ventfolio {

/// The pictures of a document. Each is in the file once, on however many pages it stands (ISO 32000-1, 8.9.5).
class EmbeddedPictures {
  public:
    explicit EmbeddedPictures(HaruDocument& document) : document_{document} {}

    /// Puts the pictures of a page into the file, unless they are there, and makes them known to the page.
    PictureNames names_on(HPDF_Page page, const PlacedPage& placed);

  private:
    HaruDocument& document_;
    std::map<const Picture*, HPDF_Dict> embedded_;
};

}  // namespace ventfolio
