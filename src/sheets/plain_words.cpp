#include "sheets/plain_words.hpp"

#include <yaml-cpp/yaml.h>

#include "sheets/word_fault.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// Bytes of letters with accents belong to words, too.
bool in_a_word(char letter) {
    const bool latin = (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
    return latin || static_cast<unsigned char>(letter) >= 0x80;
}

bool stands_alone(std::string_view text, std::size_t at, std::size_t size) {
    const std::size_t end = at + size;
    return (at == 0 || !in_a_word(text[at - 1])) && (end == text.size() || !in_a_word(text[end]));
}

}  // namespace

PlainWords PlainWords::read(const SourceText& source, std::vector<Finding>& findings) {
    PlainWords plain;
    try {
        const YAML::Node words = YAML::Load(source.text)["words"];
        if (!words || !words.IsMap())
            findings.push_back(word_fault(source, {}, "The file of plain words has no list `words` of `hard: plain`."));
        else
            for (const auto& entry : words) plain.words_[lower_ascii(entry.first.Scalar())] = entry.second.Scalar();
    } catch (const YAML::Exception& fault) {
        findings.push_back(
            word_fault(source, fault.mark, "The file of plain words cannot be read: " + fault.msg + "."));
    }
    return plain;
}

std::optional<PlainWords::Hard> PlainWords::first_in(std::string_view text) const {
    const std::string folded = lower_ascii(text);
    std::optional<Hard> first;
    for (const auto& [word, better] : words_)
        for (std::size_t at = folded.find(word); at != folded.npos; at = folded.find(word, at + 1)) {
            if (!stands_alone(folded, at, word.size())) continue;
            if (!first || at < first->at) first = Hard{word, better, at};
            break;
        }
    return first;
}

}  // namespace ventfolio
