#include "markup/markdown.hpp"

#include "markup/tree_builder.hpp"

namespace ventfolio {

std::vector<Block> parse_blocks(const Expansion& from, Faults& faults) { return TreeBuilder{from, "", faults}.build(); }

Inlines parse_words(const Expansion& from, Faults& faults) {
    std::vector<Block> blocks = TreeBuilder{from, "# ", faults}.build();
    return blocks.empty() ? Inlines{} : std::move(blocks.front().inlines);
}

}  // namespace ventfolio
