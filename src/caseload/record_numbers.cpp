#include "caseload/record_numbers.hpp"

#include <stdexcept>

#include "caseload/ordered_work.hpp"
#include "profile/read_profile.hpp"

namespace ventfolio {
namespace {

std::string number_in(const std::string& file, const ReadProfileFile& read_file) {
    try {
        return read_profile(read_file(file)).profile.record_number.or_else("");
    } catch (const std::runtime_error&) {
        return {};  // told when it is to be printed
    }
}

}  // namespace

RecordNumbers RecordNumbers::read(std::span<const std::string> files, std::size_t jobs,
                                  const ReadProfileFile& read_file, const std::function<void(std::size_t)>& told) {
    RecordNumbers all;
    const auto make_reader = [&] { return [&](std::size_t file) { return number_in(files[file], read_file); }; };
    work_in_order(files.size(), jobs, make_reader, [&](std::string number) {
        const std::size_t file = all.numbers_.size();
        if (!number.empty()) {
            const auto [known, is_new] = all.files_.try_emplace(number, Files{file, {}});
            if (!is_new && !known->second.second) known->second.second = file;
        }
        all.numbers_.push_back(std::move(number));
        if (told) told(all.numbers_.size());
    });
    return all;
}

std::optional<std::size_t> RecordNumbers::other_with_number_of(std::size_t file) const {
    const auto known = files_.find(numbers_[file]);
    if (known == files_.end() || !known->second.second) return std::nullopt;
    return known->second.first == file ? known->second.second : known->second.first;
}

}  // namespace ventfolio
