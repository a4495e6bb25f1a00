#pragma once

#include <string>
#include <vector>

#include "profile/finding.hpp"

namespace ventfolio {

/// What the reader says about one value; the file's name and the severity are added by FindingList.
struct Remark {
    std::string rule;
    Place place;
    std::string field;  ///< path; empty for faults of the file itself
    std::string message;
    std::string label;  ///< the few words under the caret
    std::string to_do;
};

/// The findings of one file. At most `most` are kept, so that a file of a million faults is still answered.
class FindingList {
  public:
    static constexpr std::size_t kMost = 500;

    explicit FindingList(std::string file) : file_{std::move(file)} {}

    void refuse(Remark remark) { add(Severity::refuse, std::move(remark)); }
    void warn(Remark remark) { add(Severity::warn, std::move(remark)); }
    bool empty() const { return findings_.empty(); }
    bool full() const { return findings_.size() >= kMost; }
    /// Counts a fault that nobody spelt out because the list is full.
    void leave_out() { ++left_out_; }
    /// In the order of the file, each once; with `more-faults-than-listed` at the end when the list was full.
    std::vector<Finding> sorted() &&;

  private:
    void add(Severity severity, Remark remark);

    std::string file_;
    std::vector<Finding> findings_;
    std::size_t left_out_ = 0;
};

}  // namespace ventfolio
