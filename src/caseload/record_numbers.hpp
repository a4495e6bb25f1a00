#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

#include "profile/place.hpp"

namespace ventfolio {

/// Reads a profile under the name that it was given by. Throws std::runtime_error if it cannot be read; is called by
/// several threads at once.
using ReadProfileFile = std::function<SourceText(const std::string&)>;

/// The record numbers of a caseload. Two profiles with one number would be printed into one folder, and one person's
/// papers would stand where the other's are looked for.
class RecordNumbers {
  public:
    /// Reads the number of every file on `jobs` threads. `told` gets the count of those that were read, now and then.
    static RecordNumbers read(std::span<const std::string> files, std::size_t jobs, const ReadProfileFile& read_file,
                              const std::function<void(std::size_t)>& told = {});

    /// Empty where a profile cannot be read or has none.
    const std::string& of(std::size_t file) const { return numbers_[file]; }
    /// Another file with the same number: the first one that has it, or the second one of the first.
    std::optional<std::size_t> other_with_number_of(std::size_t file) const;

  private:
    struct Files {
        std::size_t first;
        std::optional<std::size_t> second;
    };
    std::vector<std::string> numbers_;
    std::unordered_map<std::string, Files> files_;
};

}  // namespace ventfolio
