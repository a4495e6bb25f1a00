#include "layout/pictures.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "layout/measures.hpp"

namespace ventfolio {
namespace {

constexpr double kMostHeight = mm(16);
constexpr double kMostWidth = mm(58);  // a third of 176 mm
constexpr double kLeastSide = mm(4);   // letters in it are 2 mm high at most; common practice, no source
constexpr double kLargestDot = 72.0 / 150;

}  // namespace

bool is_picture(const Block& block) {
    return block.kind == Block::Kind::paragraph && block.inlines.size() == 1 &&
           block.inlines.front().kind == Inline::Kind::picture;
}

Frame set_picture(const Block& block, double width, LayoutContext& context) {
    const Inline& shown = block.inlines.front();
    const auto across = static_cast<double>(shown.picture->width);
    const auto down = static_cast<double>(shown.picture->height);
    const double dot = std::min({kLargestDot, kMostHeight / down, std::min(kMostWidth, width) / across});
    Frame frame;
    frame.width = dot * across;
    frame.height = dot * down;
    if (std::min(frame.width, frame.height) < kLeastSide)
        context.refuse("picture-not-printable",
                       fmt::format("The picture {} of {} x {} dots would be {:.1f} x {:.1f} mm on paper, too small to "
                                   "read.",
                                   shown.text, shown.picture->width, shown.picture->height, frame.width / mm(1),
                                   frame.height / mm(1)),
                       shown.line);
    frame.put_picture({{0, 0}, frame.width, frame.height, shown.picture}, {context.node, "figure", {}, shown.element});
    return frame;
}

}  // namespace ventfolio
