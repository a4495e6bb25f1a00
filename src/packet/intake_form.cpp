#include "packet/intake_form.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>

#include "packet/single_sheet.hpp"
#include "packet/translation_note.hpp"
#include "profile/read_measure.hpp"
#include "record/sheet_code.hpp"
#include "sheets/inline_pieces.hpp"
#include "sheets/printer.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

void add_tick(Inlines& inlines, std::string word) {
    constexpr std::size_t kFitsOnLine = 30;
    if (word.size() <= kFitsOnLine) word = with_replaced(std::move(word), " ", kNoBreakSpace);
    inlines.push_back(box_to_tick());
    inlines.push_back(text_piece(fmt::format(" {} ", word)));
}

/// One field of the form, with the group that it stands in.
struct Entry {
    Grade grade = Grade::optional;  ///< the lowest of the field and of all groups round it: when it is asked for
    Grade own = Grade::optional;
    std::string group;
    Inlines question;
    Inlines answer;
};

/// What is written or ticked for a field.
class Answers {
  public:
    explicit Answers(const Stationery& stationery)
        : words_{stationery.words}, printer_{stationery.words, stationery.region} {}

    Inlines for_field(const FieldInfo& info, const FieldBase& field) const {
        Inlines answer;
        switch (field.kind()) {
            case ValueKind::choice:
                for (const std::string_view choice : field.choices())
                    add_tick(answer, printer_.choice(info.key, choice));
                break;
            case ValueKind::flag:
                for (const char* key : {"flag.true", "flag.false"}) add_tick(answer, std::string{words_.at(key)});
                break;
            case ValueKind::measure:
                answer = {line_to_write_on(6), text_piece(" " + units(info, field) + " ")};
                break;
            case ValueKind::range:
                answer = {line_to_write_on(5), text_piece(fmt::format(" {} ", words_.at("range.to"))),
                          line_to_write_on(5), text_piece(" " + units(info, field) + " ")};
                break;
            case ValueKind::date:
                answer = {line_to_write_on(10), text_piece(fmt::format(" {} ", words_.at("intake.date")))};
                break;
            case ValueKind::moment:
                answer = {line_to_write_on(14), text_piece(fmt::format(" {} ", words_.at("intake.moment")))};
                break;
            case ValueKind::interval:
                answer = {line_to_write_on(5), text_piece(fmt::format(" {} ", words_.at("intake.interval")))};
                break;
            case ValueKind::text:
            case ValueKind::text_list:
            case ValueKind::clock_span:
            case ValueKind::revision:
                answer = {line_to_write_on(24), text_piece(" ")};
                break;
        }
        if (info.none) add_tick(answer, std::string{words_.at("state.none")});
        if (info.off) add_tick(answer, std::string{words_.at("state.off")});
        return answer;
    }

  private:
    std::string units(const FieldInfo& info, const FieldBase& field) const {
        std::vector<std::string> symbols;
        for (const Unit& unit : accepted_units(info, *field.dimension()))
            symbols.emplace_back(words_.at(fmt::format("units.{}", unit.symbol)));
        return listed(symbols, fmt::format(" {} ", words_.at("intake.or")));
    }

    const WordBook& words_;
    Printer printer_;
};

std::string question_of(const FieldInfo& info) {
    // Words of a choice are said as the profile writes them, but for the underscores.
    return with_replaced(sentence_start(std::string{info.help.empty() ? info.key : info.help}), "_", " ");
}

/// Collects the fields of one part of the profile. Of a list, one item: the form says to copy the page for more.
class Collector final : public Visitor {
  public:
    Collector(const Answers& answers, const WordBook& words) : answers_{answers}, words_{words} {}

    void leaf(const FieldInfo& info, FieldBase& field) override {
        Entry entry;
        entry.own = info.grade;
        entry.grade = std::min(grade_, info.grade);
        entry.group = group_;
        entry.question = {text_piece(question_of(info), info.grade == Grade::essential)};
        entry.answer = answers_.for_field(info, field);
        entries.push_back(std::move(entry));
    }
    void group(const FieldInfo& info, GroupBase& group) override {
        below(info, question_of(info), [&] { group.describe(*this); });
    }
    void list(const FieldInfo& info, ListBase& list) override {
        below(info, fmt::format("{} ({})", question_of(info), words_.at("intake.each")),
              [&] { list.describe_element(*this); });
    }

    std::vector<Entry> entries;

  private:
    template <class Describe>
    void below(const FieldInfo& info, const std::string& name, Describe describe) {
        const Grade grade = std::exchange(grade_, std::min(grade_, info.grade));
        const std::string group = std::exchange(group_, group_.empty() ? name : group_ + ": " + name);
        describe();
        grade_ = grade;
        group_ = group;
    }

    const Answers& answers_;
    const WordBook& words_;
    Grade grade_ = Grade::essential;
    std::string group_;
};

Block heading(int level, std::string text, std::vector<std::string> classes) {
    Block block;
    block.kind = Block::Kind::heading;
    block.level = level;
    block.inlines = {text_piece(std::move(text))};
    block.attributes.classes = std::move(classes);
    block.attributes.options = {{"row", "8"}};
    return block;
}

TableRow row_of(Inlines first, Inlines second) { return {{{std::move(first)}, {std::move(second)}}, 0}; }

/// The fields of one grade, group by group, what a group cannot do without first.
Block table_of(std::vector<Entry> entries, const WordBook& words) {
    Block table;
    table.kind = Block::Kind::table;
    table.head = row_of({text_piece(std::string{words.at("intake.question")})},
                        {text_piece(std::string{words.at("intake.answer")})});
    std::string group;
    for (Entry& entry : entries) {
        if (entry.group != group && !entry.group.empty())
            table.rows.push_back(row_of({text_piece(entry.group, true)}, {}));
        group = entry.group;
        table.rows.push_back(row_of(std::move(entry.question), std::move(entry.answer)));
    }
    return table;
}

Furniture furniture_of(const Document& document, const Stationery& stationery) {
    const WordBook& words = stationery.words;
    Furniture furniture;
    furniture.who = {text_piece(std::string{words.at("intake.who")}), line_to_write_on(18)};
    furniture.identifier = {text_piece(std::string{words.at("intake.filled_by")}), line_to_write_on(18)};
    furniture.page_of = words.at("page_of");
    furniture.foot = {{text_piece(std::string{words.at("intake.foot")})},
                      {text_piece(std::string{words.at("limits_with_oxygen")})}};
    add_translation_note(words, furniture);
    furniture.code = sheet_code(document);
    return furniture;
}

}  // namespace

Document intake_document(const std::function<void(Visitor&)>& show, const Stationery& stationery) {
    const WordBook& words = stationery.words;
    const Answers answers{stationery};
    Collector all{answers, words};
    show(all);
    Document document;
    document.name = document.sheet = "intake";
    document.language = words.language();
    document.template_file = "words.yaml";
    document.title = {text_piece(std::string{words.at("intake.title")})};
    Block how;
    how.inlines = {text_piece(std::string{words.at("intake.how")})};
    document.blocks.push_back(std::move(how));
    constexpr std::array kParts{std::pair{Grade::essential, "intake.essential"},
                                std::pair{Grade::expected, "intake.expected"},
                                std::pair{Grade::optional, "intake.optional"}};
    for (const auto& [grade, title] : kParts) {
        std::vector<Entry> part;
        std::ranges::copy_if(all.entries, std::back_inserter(part),
                             [wanted = grade](const Entry& entry) { return entry.grade == wanted; });
        if (part.empty()) continue;
        std::vector<std::string> classes{"form", "tight"};
        if (document.blocks.size() > 1) classes.emplace_back("page");
        document.blocks.push_back(heading(2, std::string{words.at(title)}, std::move(classes)));
        document.blocks.push_back(table_of(std::move(part), words));
    }
    return document;
}

std::string intake_form(const std::function<void(Visitor&)>& show, const Stationery& stationery, Paper paper,
                        Measurer& measurer, std::vector<Finding>& findings) {
    const Document document = intake_document(show, stationery);
    return single_sheet(document, furniture_of(document, stationery), paper, measurer, findings);
}

}  // namespace ventfolio
