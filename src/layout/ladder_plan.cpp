#include "layout/ladder_plan.hpp"

#include <algorithm>
#include <utility>

#include "layout/blocks.hpp"

namespace ventfolio {
namespace {

using Kind = LadderWords::Kind;

void trim_front(Inlines& inlines) {
    while (!inlines.empty() && inlines.front().kind == Inline::Kind::text) {
        std::string& text = inlines.front().text;
        text.erase(0, std::min(text.find_first_not_of(' '), text.size()));
        if (!text.empty()) return;
        inlines.erase(inlines.begin());
    }
}

/// The kind that a leading figure names; the figure is taken off the words.
void take_kind(LadderWords& what, Kind fallback) {
    what.kind = fallback;
    trim_front(what.words);
    if (what.words.empty() || what.words.front().kind != Inline::Kind::figure) return;
    const Inline figure = what.words.front();
    if (figure.text != "end" && figure.text != "chart") return;
    what.kind = figure.text == "end" ? Kind::end : Kind::chart;
    what.figure = figure.element;
    what.words.erase(what.words.begin());
    trim_front(what.words);
}

/// The words before the first colon, if it comes before any value or bold word.
Inlines take_label(Inlines& inlines) {
    if (inlines.empty() || inlines.front().kind != Inline::Kind::text || inlines.front().strong) return {};
    std::string& text = inlines.front().text;
    const std::size_t colon = text.find(':');
    if (colon == std::string::npos) return {};
    Inline label = inlines.front();
    label.text = text.substr(0, colon);
    text.erase(0, colon + 1);
    return {std::move(label)};
}

const Block* list_in(const Block& item) {
    const auto found = std::ranges::find(item.children, Block::Kind::list, &Block::kind);
    return found == item.children.end() ? nullptr : &*found;
}

class Reader {
  public:
    Reader(bool onward, LayoutContext& context) : onward_{onward}, context_{context} {}

    LadderPlan read(std::span<const Block> blocks) {
        for (const Block& block : blocks) {
            if (block.kind == Block::Kind::paragraph)
                (plan_.steps.empty() ? plan_.before : plan_.remarks).push_back(&block);
            else if (block.kind == Block::Kind::list && block.ordered && plan_.steps.empty())
                read_steps(block);
            else if (block.kind == Block::Kind::list && !block.ordered && plan_.legend == nullptr)
                plan_.legend = &block;
            else
                context_.refuse_unprinted("what is neither steps, words nor a legend in a chart", block.line);
        }
        check_ways();
        return std::move(plan_);
    }

  private:
    void refuse(std::string message, std::size_t line) {
        context_.refuse("chart-leads-nowhere", "On " + context_.document.name + ", " + std::move(message), line);
    }

    void check_item(const Block& item, std::size_t most_children) {
        if (item.children.size() > most_children)
            context_.refuse_unprinted("what follows the words of a step", item.line);
    }

    void read_steps(const Block& list) {
        for (const Block& item : list.children) {
            LadderStep step;
            step.main.words = inlines_of(item);
            step.main.line = item.line;
            const Block* exits = list_in(item);
            step.main.number = item.element;
            take_kind(step.main, exits ? Kind::question : Kind::action);
            check_item(item, exits ? 2 : 1);
            if (exits) step.exit = read_exit(*exits);
            plan_.steps.push_back(std::move(step));
        }
    }

    std::optional<LadderExit> read_exit(const Block& list) {
        if (list.children.size() != 1) {
            refuse("a question has more than one way out to the right.", list.line);
            return std::nullopt;
        }
        const Block& item = list.children.front();
        LadderExit exit;
        exit.to.words = inlines_of(item);
        exit.to.line = item.line;
        exit.label = take_label(exit.to.words);
        if (exit.label.empty()) refuse("the way out of a question has no label with a colon.", item.line);
        exit.steps = list_in(item);
        take_kind(exit.to, exit.steps ? Kind::steps : Kind::action);
        check_item(item, exit.steps ? 2 : 1);
        return exit;
    }

    void check_ways() {
        for (std::size_t at = 0; at < plan_.steps.size(); ++at) {
            const LadderStep& step = plan_.steps[at];
            const bool last = at + 1 == plan_.steps.size();
            if (last && !step.main.ends() && !onward_) refuse("the last step has no end.", step.main.line);
            if (!last && step.main.ends()) refuse("a step stands after the end.", step.main.line);
            if (at > 0 && step.exit && step.exit->steps)
                refuse("only the first question may have a box of steps.", step.main.line);
        }
        if (plan_.steps.empty()) refuse("there are no steps.", 1);
    }

    bool onward_;
    LayoutContext& context_;
    LadderPlan plan_;
};

}  // namespace

LadderPlan ladder_plan(std::span<const Block> blocks, bool onward, LayoutContext& context) {
    return Reader{onward, context}.read(blocks);
}

}  // namespace ventfolio
