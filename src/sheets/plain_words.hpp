#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "profile/finding.hpp"
#include "profile/place.hpp"

namespace ventfolio {

/// Hard words of one language with plain ones in their place. From `templates/<language>/plain.yaml`.
class PlainWords {
  public:
    /// Faults of the file are appended to `findings`, with their place.
    static PlainWords read(const SourceText& source, std::vector<Finding>& findings);

    struct Hard {
        std::string_view word;
        std::string_view better;
        std::size_t at = 0;  ///< byte of the text
    };
    /// The first hard word in a text, capitals or not. A word inside another one is none.
    ///
    /// Example: "Utilize the bag" holds "utilize", better "use", at 0.
    std::optional<Hard> first_in(std::string_view text) const;
    std::size_t count() const { return words_.size(); }

  private:
    std::map<std::string, std::string, std::less<>> words_;
};

}  // namespace ventfolio
