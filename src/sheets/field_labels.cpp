#include "sheets/field_labels.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <span>

#include "units/text.hpp"

namespace ventfolio {
namespace {

/// The keys of a path, without the numbers of items and the N of a declaration.
std::vector<std::string> keys_of(std::string_view path) {
    std::vector<std::string> keys = split(path, '.');
    std::erase_if(keys, [](const std::string& key) {
        return key == "N" || key.find_first_not_of("0123456789") == std::string::npos;
    });
    return keys;
}

}  // namespace

std::optional<std::string> word_key(const WordBook& words, std::string_view section, std::string_view path) {
    const std::vector<std::string> keys = keys_of(path);
    for (std::size_t from = 0; from < keys.size(); ++from) {
        std::string key = fmt::format("{}.{}", section, joined(std::span{keys}.subspan(from), "."));
        if (words.find(key)) return key;
    }
    return std::nullopt;
}

std::string field_label(const WordBook& words, std::string_view path) {
    const std::vector<std::string> keys = keys_of(path);
    std::string label;
    for (std::size_t length = 1; length < keys.size(); ++length) {
        const auto key = word_key(words, "fields_before", joined(std::span{keys}.first(length), "."));
        if (key) label += fmt::format("{}, ", words.at(*key));
    }
    const auto own = word_key(words, "fields", path);
    label += words.at(own ? *own : fmt::format("fields.{}", joined(keys, ".")));
    return sentence_start(label);
}

std::optional<std::string_view> item_word(const WordBook& words, std::string_view list) {
    const auto key = word_key(words, "fields_item", list);
    return key ? words.find(*key) : std::nullopt;
}

}  // namespace ventfolio
