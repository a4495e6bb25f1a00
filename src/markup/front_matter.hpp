#pragma once

#include <vector>

#include "markup/faults.hpp"

namespace ventfolio {

struct FrontMatter {
    std::vector<FrontMatterLine> lines;
    std::size_t body = 0;  ///< where the text begins
};

/// Reads the block between two lines of `---` at the top of a file: lines of `key: value`, empty lines, and lines that
/// begin with `#`. A value may stand in straight double quotes. A file without such a block has no front matter.
///
/// Keys: title (may hold value names), audience, header (`poster`), paper, orientation, type_size, pages, order,
/// for_each, only_if, lists, sides, reading (how hard to read at most: school grade, in Spanish ease), language,
/// when_replaced (`file`: the old paper has been written on, and is kept), for (`strangers`: in the language of the
/// region), two_languages (`no`: always in one).
FrontMatter read_front_matter(const SourceText& file, Faults& faults);

}  // namespace ventfolio
