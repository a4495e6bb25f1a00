#pragma once

#include <fmt/format.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <filesystem>
#include <initializer_list>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>

namespace bake {

/// A mistake in a book, with file and line, as a compiler would print it.
struct BookError : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// A file of the book and the way it complains.
class Source {
  public:
    explicit Source(const std::filesystem::path& path) : path_{path} {
        try {
            root_ = YAML::LoadFile(path.string());
        } catch (const YAML::ParserException& error) {
            throw BookError{fmt::format("{}:{}: error: {}", path.string(), error.mark.line + 1, error.msg)};
        } catch (const YAML::BadFile&) {
            throw BookError{fmt::format("{}: error: cannot be read", path.string())};
        }
    }
    const YAML::Node& root() const { return root_; }
    std::string stem() const { return path_.stem().string(); }

    [[noreturn]] void fail(const YAML::Node& at, const std::string& message) const {
        const YAML::Mark mark = at.IsDefined() ? at.Mark() : YAML::Mark{};
        throw BookError{fmt::format("{}:{}:{}: error: {}", path_.string(), mark.line + 1, mark.column + 1, message)};
    }
    std::string text(const YAML::Node& map, const char* key) const {
        if (!map[key]) fail(map, fmt::format("'{}' is missing", key));
        if (!map[key].IsScalar() || map[key].Scalar().empty()) fail(map[key], fmt::format("'{}' must be a text", key));
        return map[key].Scalar();
    }
    std::string optional_text(const YAML::Node& map, const char* key) const {
        return map[key] ? text(map, key) : std::string{};
    }
    /// True or false, as YAML 1.2 spells them; `yes` and `no` are words there and would count as false.
    bool flag(const YAML::Node& map, const char* key) const {
        const YAML::Node node = map[key];
        if (!node) return false;
        const std::string word = node.IsScalar() && node.Tag() != "!" ? node.Scalar() : "";
        if (word != "true" && word != "false") fail(node, fmt::format("'{}' is true or false", key));
        return word == "true";
    }
    void only_keys(const YAML::Node& map, std::initializer_list<std::string_view> allowed) const {
        std::set<std::string> seen;
        for (const auto& pair : map) {
            const std::string key = pair.first.Scalar();
            if (std::ranges::find(allowed, key) == allowed.end())
                fail(pair.first, fmt::format("unknown key '{}'", key));
            if (!seen.insert(key).second) fail(pair.first, fmt::format("'{}' stands here twice", key));
        }
    }

  private:
    std::filesystem::path path_;
    YAML::Node root_;
};

}  // namespace bake
