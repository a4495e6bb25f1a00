#include "caseload/homes.hpp"

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <set>
#include <system_error>

#include "packet/packet_folder.hpp"
#include "record/sha256.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

namespace fs = std::filesystem;

std::optional<std::size_t> count_in(std::string_view text) {
    std::size_t count = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    if (error != std::errc{} || end != text.data() + text.size() || count == 0) return std::nullopt;
    return count;
}

std::vector<std::string> names_in(std::string_view list) {
    const bool by_line = list.find('\0') == std::string_view::npos;
    std::vector<std::string> names = split(list, by_line ? '\n' : '\0');
    for (std::string& name : names)
        if (by_line && name.ends_with('\r')) name.pop_back();
    std::erase(names, "");
    return names;
}

class Finder {
  public:
    void add(const std::string& name) {
        std::error_code ignored;  // said when the file is read
        if (!fs::is_directory(name, ignored)) return add_file(name);
        std::vector<std::string> below;
        const std::size_t unusable = found_.unusable.size();
        look_into(name, below);
        if (below.empty() && found_.unusable.size() == unusable)
            found_.unusable.push_back({name, "holds no profile (*.yaml)"});
        std::ranges::sort(below);
        for (const std::string& file : below) add_file(file);
    }

    FoundHomes found() && { return std::move(found_); }

  private:
    void add_file(const std::string& name) {
        if (known_.insert(fs::path{name}.lexically_normal().string()).second) found_.files.push_back(name);
    }

    void look_into(const fs::path& folder, std::vector<std::string>& below) {
        std::error_code error;
        for (fs::directory_iterator entry{folder, error}; !error && entry != fs::directory_iterator{};
             entry.increment(error))
            look_at(*entry, below);
        if (error) cannot_be_read(folder, error);
    }

    void look_at(const fs::directory_entry& entry, std::vector<std::string>& below) {
        if (entry.path().filename().string().starts_with('.')) return;
        std::error_code error;
        const fs::file_status status = entry.symlink_status(error);
        if (status.type() == fs::file_type::none) return cannot_be_read(entry.path(), error);
        if (fs::is_directory(status) && !fs::exists(entry.path() / kRecordFile, error))
            look_into(entry.path(), below);
        else if (fs::is_regular_file(status) && entry.path().extension() == ".yaml")
            below.push_back(entry.path().string());
    }

    void cannot_be_read(const fs::path& path, std::error_code error) {
        found_.unusable.push_back({path.string(), "cannot be read: " + error.message()});
    }

    FoundHomes found_;
    std::set<std::string> known_;
};

}  // namespace

std::string without_name(std::string_view message, std::string_view name) {
    const std::string start = std::string{name} + ": ";
    return std::string{message.substr(message.starts_with(start) ? start.size() : 0)};
}

std::optional<Shard> Shard::parse(std::string_view text) {
    const std::size_t slash = text.find('/');
    if (slash == std::string_view::npos) return std::nullopt;
    const auto number = count_in(text.substr(0, slash));
    const auto of = count_in(text.substr(slash + 1));
    if (!number || !of || *number > *of) return std::nullopt;
    return Shard{*number, *of};
}

bool Shard::holds(std::string_view file) const {
    const Sha256 digest = sha256(file);
    std::size_t value = 0;
    for (std::size_t at = 0; at < 4; ++at) value = value << 8 | digest[at];
    return value % of + 1 == number;
}

FoundHomes find_homes(std::span<const std::string> names, std::string_view listed) {
    Finder finder;
    for (const std::string& name : names) {
        if (name != "-") {
            finder.add(name);
            continue;
        }
        for (const std::string& one : names_in(listed)) finder.add(one);
    }
    return std::move(finder).found();
}

}  // namespace ventfolio
