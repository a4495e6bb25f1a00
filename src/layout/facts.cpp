#include "layout/facts.hpp"

#include <algorithm>
#include <numeric>

namespace ventfolio {
namespace {

constexpr double kRoundingRoom = 1;  // a text set to its own natural width must not wrap

double gap_between(const std::vector<double>& widths, FactSpacing spacing, double width) {
    if (spacing.least_if_spread == 0) return spacing.gap;
    const double total = std::accumulate(widths.begin(), widths.end(), 0.0);
    const auto gaps = static_cast<double>(std::max<std::size_t>(widths.size(), 2) - 1);
    return total + spacing.least_if_spread * gaps <= width ? (width - total) / gaps : spacing.gap;
}

}  // namespace

Frame set_facts(const Block& list, const TextStyle& look, FactSpacing spacing, double width, LayoutContext& context) {
    std::vector<double> widths;
    for (const Block& item : list.children) widths.push_back(natural_width(inlines_of(item), look, context));
    const double gap = gap_between(widths, spacing, width);
    Frame frame;
    frame.width = width;
    double x = 0;
    double y = 0;
    for (std::size_t at = 0; at < widths.size(); ++at) {
        if (x > 0 && x + widths[at] > width + kFitTolerance) {
            x = 0;
            y = frame.height;
        }
        const double room = std::min(widths[at] + kRoundingRoom, width);
        Frame fact = set_text(inlines_of(list.children[at]), look, room, "list item", context);
        ++context.node;
        frame.height = std::max(frame.height, y + fact.height);
        frame.put(std::move(fact), x, y);
        x += widths[at] + gap;
    }
    return frame;
}

}  // namespace ventfolio
