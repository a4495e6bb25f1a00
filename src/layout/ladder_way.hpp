#pragma once

#include <string_view>

#include "layout/ladder_rungs.hpp"

namespace ventfolio {

/// Puts the symbols of a ladder below one another in a frame and draws the way between them: an arrow from each to the
/// next, its label where it leaves a question, and what comes back from an exit.
class LadderWay {
  public:
    /// `yes` is the label; `gap` stands between two symbols. The frame must outlive it.
    LadderWay(Frame& frame, const LadderColumns& columns, std::string_view yes, double gap, LayoutContext& context)
        : frame_{frame}, columns_{columns}, yes_{yes}, gap_{gap}, context_{context} {}

    void add(Rung rung);
    /// Ends the way in a symbol that nothing leads on from.
    void end_in(Frame symbol);

  private:
    void place(Frame next, double main_top);
    void put_way(double main_top);
    void put_return(double below);

    Frame& frame_;
    LadderColumns columns_;
    std::string_view yes_;
    double gap_;
    LayoutContext& context_;
    Rung above_;
    double above_top_ = 0;
    double above_height_ = 0;
    bool begun_ = false;
};

}  // namespace ventfolio
