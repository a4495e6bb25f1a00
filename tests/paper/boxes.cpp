#include "boxes.hpp"

#include <algorithm>
#include <cmath>

#include "layout/fonts.hpp"

namespace ventfolio::testing {
namespace {

bool is_blank(char32_t letter) { return letter == U' ' || letter == U'\u00A0'; }

bool is_figure(std::u32string_view text) {
    const auto in_figures = [](char32_t letter) {
        return (letter >= U'0' && letter <= U'9') || letter == U'.' || letter == U',' || letter == U'-' ||
               is_blank(letter);
    };
    return std::ranges::all_of(text, in_figures) &&
           std::ranges::any_of(text, [](char32_t letter) { return letter >= U'0' && letter <= U'9'; });
}

/// Part of a run.
struct Stretch {
    std::size_t first = 0;
    std::size_t end = 0;
    bool figure = false;
};

/// "flow 3 L/min" is a word, a figure and a unit; words that follow each other stay together.
std::vector<Stretch> stretches_of(const std::u32string& text) {
    std::vector<Stretch> stretches;
    for (std::size_t at = 0; at < text.size();) {
        if (is_blank(text[at])) {
            ++at;
            continue;
        }
        std::size_t end = at;
        while (end < text.size() && !is_blank(text[end])) ++end;
        const bool figure = is_figure(std::u32string_view{text}.substr(at, end - at));
        if (!figure && !stretches.empty() && !stretches.back().figure)
            stretches.back().end = end;
        else
            stretches.push_back({at, end, figure});
        at = end;
    }
    return stretches;
}

/// Where each letter of a run begins, and where the last one ends.
std::vector<double> edges_of(const TextRun& run) {
    std::vector<double> edges{run.origin.x};
    for (std::size_t at = 0; at < run.text.size(); ++at) {
        const double width = FontMetrics::of(run.face).advance(run.text.substr(at, 1)).width;
        const double kern = run.kerns.empty() ? 0 : run.kerns[at];
        edges.push_back(edges.back() + (width + kern) * run.size / 1000);
    }
    return edges;
}

TextBox box_of(const PlacedItem& item, const Stretch& stretch, const std::vector<double>& edges, std::size_t page) {
    const TextRun& run = item.text;
    const double foot = run.origin.y;
    TextBox box;
    box.page = page;
    box.white = run.ink == Ink::white;
    box.figure = stretch.figure;
    box.field = item.origin.field;
    // Descenders reach 0.24 below the line, accents on capitals less than 0.9 above it.
    box.area = {edges[stretch.first], foot - 0.82 * run.size, edges[stretch.end], foot + 0.26 * run.size};
    for (std::size_t at = stretch.first; stretch.figure && at + 1 < stretch.end; ++at) {
        if (run.text[at] != U'.') continue;
        const double inset = 0.15 * (edges[at + 1] - edges[at]);
        const double left = edges[at] + inset;
        const double right = edges[at + 1] - inset;
        box.points.push_back(
            {{left, foot - 0.2 * run.size, right, foot}, {left, foot - 0.6 * run.size, right, foot - 0.25 * run.size}});
    }
    return box;
}

/// Whether two runs are one stretch of the template's words.
bool goes_on(const PlacedItem& one, const PlacedItem& next) {
    const TextRun& a = one.text;
    const TextRun& b = next.text;
    return one.origin.field.empty() && next.origin.field.empty() && a.size == b.size && a.face == b.face &&
           a.ink == b.ink && a.origin.y == b.origin.y && std::abs(a.origin.x + a.width - b.origin.x) < 0.02 * a.size;
}

}  // namespace

std::vector<TextBox> boxes_of(const std::vector<const PlacedSheet*>& sheets) {
    std::vector<TextBox> boxes;
    std::size_t page = 0;
    for (const PlacedSheet* sheet : sheets) {
        for (const PlacedPage& placed : sheet->pages) {
            const PlacedItem* before = nullptr;
            for (const PlacedItem& item : placed.items) {
                if (!is_text(item)) continue;
                const std::vector<double> edges = edges_of(item.text);
                bool first = true;
                for (const Stretch& stretch : stretches_of(item.text.text)) {
                    TextBox box = box_of(item, stretch, edges, page);
                    if (first && before && !box.figure && !boxes.back().figure && goes_on(*before, item))
                        boxes.back().area.right = box.area.right;
                    else
                        boxes.push_back(std::move(box));
                    first = false;
                    before = &item;
                }
            }
            ++page;
        }
    }
    return boxes;
}

}  // namespace ventfolio::testing
