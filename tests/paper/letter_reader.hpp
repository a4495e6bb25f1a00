#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "boxes.hpp"
#include "copies.hpp"

namespace ventfolio::testing {

/// Reads boxes of copied pages with tesseract, one by one. Figures are read as figures: a reader who looks at a number
/// does not take its 5 for an S.
class LetterReader {
  public:
    LetterReader(const std::vector<const PlacedSheet*>& sheets, const Copy& copy)
        : copy_{copy}, pages_{copied(sheets, copy)}, boxes_{boxes_of(sheets)}, looks_(boxes_.size()) {}

    const std::vector<TextBox>& boxes() const { return boxes_; }
    const std::vector<trial::DrawnPage>& pages() const { return pages_; }

    /// Looks at boxes `closer` times as large. Small type of one dot a stroke can need that.
    void look_at(const std::vector<std::size_t>& boxes, int closer);
    /// What was read of a box so far, a look each.
    const std::vector<std::string>& looks(std::size_t box) const { return looks_.at(box); }
    /// Whether each decimal point of a box stands alone in its ink, on these pages.
    bool points_are_seen(std::size_t box, const std::vector<trial::DrawnPage>& pages) const;

  private:
    struct Dots {
        std::size_t left, top, width, height;
    };
    Dots dots_of(const Area& area, std::size_t page) const;
    std::string grey_map(const TextBox& box, int closer) const;
    void read(const std::vector<std::size_t>& boxes, int closer, bool figures);

    Copy copy_;
    std::vector<trial::DrawnPage> pages_;
    std::vector<TextBox> boxes_;
    std::vector<std::vector<std::string>> looks_;
};

}  // namespace ventfolio::testing
