#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "markup/template.hpp"

namespace ventfolio {

/// What is wrong at one place of a template.
struct Fault {
    std::string_view rule;
    TemplateSpan span;
    std::string message;
    std::string label;
    std::string to_do = {};
    std::string field = {};  ///< of the value that it is about
};

/// Collects findings of a template. A fault that comes again at the same place (in each turn of a list) counts once.
/// At most `kMost` are kept; then `more-faults-than-listed` stands at the end.
class Faults {
  public:
    static constexpr std::size_t kMost = 200;

    explicit Faults(const std::vector<SourceText>& files) : files_{files} {}

    void refuse(Fault fault);
    bool empty() const { return findings_.empty(); }
    std::vector<Finding> take();

  private:
    const std::vector<SourceText>& files_;
    std::vector<Finding> findings_;
    bool more_ = false;
};

}  // namespace ventfolio
