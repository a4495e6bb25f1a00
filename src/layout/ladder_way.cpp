#include "layout/ladder_way.hpp"

#include <utility>

#include "layout/ladder_symbols.hpp"

namespace ventfolio {
namespace {

/// How far below a step the line from its exit runs back: above the head of the arrow that it joins.
constexpr double kReturnDrop = mm(1.9);

}  // namespace

void LadderWay::add(Rung rung) {
    Frame frame = std::exchange(rung.frame, {});
    const double height = frame.height;
    place(std::move(frame), rung.main_top);
    above_ = std::move(rung);
    above_height_ = height;
}

void LadderWay::end_in(Frame symbol) { place(std::move(symbol), 0); }

void LadderWay::place(Frame next, double main_top) {
    if (begun_) {
        put_way(main_top);
        frame_.height += gap_;
    }
    begun_ = true;
    above_top_ = frame_.height;
    frame_.append(std::move(next));
}

void LadderWay::put_way(double main_top) {
    const double below = above_top_ + above_height_;
    const double length = gap_ + main_top;
    if (above_.question) put_way_label(frame_, yes_, above_.node, columns_.way, below, length, context_);
    put_arrow(frame_, {columns_.way, above_top_ + above_.main_bottom}, {columns_.way, below + length}, kArrowLine,
              {above_.node, "arrow", {}});
    if (above_.return_from > 0) put_return(below);
}

void LadderWay::put_return(double below) {
    const Origin origin{above_.node, "arrow", {}};
    const double level = below + kReturnDrop;
    const Point from{above_.return_x, above_top_ + above_.return_from};
    frame_.put_rule({from, {from.x, level + kReturnLine / 2}, kReturnLine, Ink::black}, origin);
    put_arrow(frame_, {from.x, level}, {columns_.way + kArrowLine / 2, level}, kReturnLine, origin);
}

}  // namespace ventfolio
