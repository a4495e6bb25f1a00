#include "sheets/checks/judged_document.hpp"

#include "rules/report.hpp"

namespace ventfolio::sheet_check {

JudgedDocument::JudgedDocument(const Document& finished, Audience readers, const Household& household,
                               const PhraseBook& book)
    : document{finished}, audience{readers}, home{household}, phrases{book}, passages{passages_of(finished)} {
    for (const Passage& passage : passages)
        for (Sentence& sentence : sentences_of(passage, book.abbreviations())) sentences.push_back(std::move(sentence));
}

void DocumentReport::at(std::size_t line, Numbers numbers, std::string field) {
    Finding finding;
    finding.rule = rule_.name;
    finding.severity = rule_.severity;
    finding.numbers = std::move(numbers);
    finding.message = filled(rule_.says, finding);
    Mark mark;
    mark.file = document_.template_file;
    mark.place.line = line;
    mark.place.column = line > 0 ? 1 : 0;
    mark.field = std::move(field);
    finding.marks.push_back(std::move(mark));
    findings_.push_back(std::move(finding));
}

void DocumentReport::at(const Sentence& sentence, std::size_t offset, Numbers numbers) {
    const PrintedValue* value = value_at(sentence.values, offset);
    numbers.emplace_back("sentence", quoted(sentence));
    at(sentence.line, std::move(numbers), value ? value->field : std::string{});
}

}  // namespace ventfolio::sheet_check
