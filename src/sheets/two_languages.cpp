#include "sheets/two_languages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string_view>
#include <utility>

#include "units/decimal.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// Where two trees part.
struct Parting {
    std::size_t first_line = 0;
    std::size_t second_line = 0;
};

bool by_hand(const Inline& piece) {
    return piece.kind == Inline::Kind::write_in || piece.kind == Inline::Kind::check_box;
}

Inlines as_second(Inlines inlines) {
    for (Inline& piece : inlines) piece.second = true;
    return inlines;
}

Inline text_piece(std::string text, const Inline& like) {
    Inline piece;
    piece.text = std::move(text);
    piece.strong = like.strong;
    piece.second = like.second;
    piece.line = like.line;
    return piece;
}

Inline break_behind(const Inline& like) {
    Inline piece;
    piece.kind = Inline::Kind::line_break;
    piece.line = like.line;
    return piece;
}

std::string words_of(const Inlines& inlines) { return std::string{trimmed(plain_text(inlines))}; }

/// Words that shall stand behind others, without the blanks around them and the comma or colon before.
Inlines without_outer_blanks(Inlines words) {
    const auto is_text = [](const Inline& piece) { return piece.kind == Inline::Kind::text; };
    if (!words.empty() && is_text(words.front()))
        words.front().text.erase(0, words.front().text.find_first_not_of(" ,;:"));
    if (!words.empty() && is_text(words.back())) words.back().text.erase(words.back().text.find_last_not_of(' ') + 1);
    std::erase_if(words, [&](const Inline& piece) { return is_text(piece) && piece.text.empty(); });
    return words;
}

/// Words and what is drawn for the hand, by turns: one more of the former.
struct Turns {
    std::vector<Inlines> words{1};
    Inlines drawn;
};

Turns turns_of(const Inlines& inlines) {
    Turns turns;
    for (const Inline& piece : inlines) {
        if (by_hand(piece)) {
            turns.drawn.push_back(piece);
            turns.words.emplace_back();
        } else {
            turns.words.back().push_back(piece);
        }
    }
    return turns;
}

bool same_drawn(const Inlines& first, const Inlines& second) {
    return std::ranges::equal(first, second, {}, &Inline::kind, &Inline::kind);
}

/// "Yes / Sí ", with the blanks of the first language around it.
Inlines beside(const Inlines& first, const Inlines& second) {
    const Inlines other = as_second(without_outer_blanks(second));
    if (other.empty() || words_of(first) == words_of(second)) return first;
    if (words_of(first).empty()) return second;
    Inlines both = first;
    std::string tail;
    if (both.back().kind == Inline::Kind::text) {
        std::string& text = both.back().text;
        tail = text.substr(std::min(text.size(), text.find_last_not_of(' ') + 1));
        text.erase(text.size() - tail.size());
    }
    both.push_back(text_piece(" / ", first.back()));
    both.insert(both.end(), other.begin(), other.end());
    if (!tail.empty()) both.push_back(text_piece(std::move(tail), first.back()));
    return both;
}

std::vector<PrintedPart> parts_of(const PrintedValue& value, PrintedPart::Kind kind) {
    std::vector<PrintedPart> parts;
    std::ranges::copy_if(value.parts, std::back_inserter(parts),
                         [&](const PrintedPart& part) { return part.kind == kind; });
    return parts;
}

bool has_numbers(const Inline& piece) {
    return piece.kind == Inline::Kind::value && !parts_of(piece.value, PrintedPart::Kind::number).empty();
}

/// What is said apart from the words between the numbers of a value: "to" of "92 to 97 %".
std::string without_range_words(const Inlines& inlines) {
    std::string text;
    for (const Inline& piece : inlines) {
        if (!has_numbers(piece)) {
            text += plain_text({piece});
            continue;
        }
        for (const PrintedPart& part : piece.value.parts)
            text += part.kind == PrintedPart::Kind::word ? " " : part.text;
    }
    return std::string{trimmed(text)};
}

/// Where both begin with the same numbers and hold no others, what is left to say is what follows them, if that
/// differs: "por minuto" of "14 por minuto".
Inlines without_same_numbers(const Inlines& first, Inlines second) {
    const auto leads = [](const Inlines& inlines) {
        return std::ranges::count_if(inlines, has_numbers) == 1 && has_numbers(inlines.front());
    };
    if (std::ranges::any_of(second, has_numbers) && without_range_words(first) == without_range_words(second))
        return {};
    if (!leads(first) || !leads(second)) return second;
    const PrintedValue& known = first.front().value;
    PrintedValue& value = second.front().value;
    if (parts_of(value, PrintedPart::Kind::number) != parts_of(known, PrintedPart::Kind::number)) return second;
    value.parts = parts_of(value, PrintedPart::Kind::unit);
    if (value.parts.empty() || value.parts == parts_of(known, PrintedPart::Kind::unit)) {
        second.erase(second.begin());
        return second;
    }
    std::string& unit = value.parts.front().text;
    if (unit.starts_with(kNoBreakSpace)) unit.erase(0, kNoBreakSpace.size());
    return second;
}

bool all_strong(const Inlines& inlines) { return std::ranges::all_of(inlines, &Inline::strong); }

Inlines one_under_another(const Inlines& first, const Inlines& second, const Inlines& left_to_say) {
    if (first.empty() || words_of(second).empty() || words_of(first) == words_of(second)) return first;
    if (words_of(first).empty()) return second;
    const Inlines other = as_second(without_outer_blanks(left_to_say));
    if (other.empty()) return first;
    Inlines both = first;
    both.push_back(break_behind(other.front()));
    both.back().strong = all_strong(first) && all_strong(other);  // a bold line stays one
    both.insert(both.end(), other.begin(), other.end());
    return both;
}

Inlines under(const Inlines& first, const Inlines& second) {
    const bool values = first.size() == 1 && second.size() == 1;
    return one_under_another(first, second, values ? without_same_numbers(first, second) : second);
}

bool same_kinds(const Inlines& first, const Inlines& second) {
    return std::ranges::equal(first, second, {}, &Inline::kind, &Inline::kind);
}

/// Each piece beside its twin, so that a name or a number stands once.
Inlines piece_by_piece(const Inlines& first, const Inlines& second) {
    if (!same_kinds(first, second)) return under(first, second);
    Inlines both;
    for (std::size_t at = 0; at < first.size(); ++at) {
        const Inlines pieces = beside({first[at]}, {second[at]});
        both.insert(both.end(), pieces.begin(), pieces.end());
    }
    return both;
}

/// The words of a bar are as high as the bar.
Inlines on_a_line(const Inlines& first, const Inlines& second) {
    return same_kinds(first, second) ? piece_by_piece(first, second) : beside(first, second);
}

/// A cell of a table: a name or numbers that both begin with stand once.
Inlines in_cell(const Inlines& first, const Inlines& second) {
    const auto names = [](const Inlines& inlines) {
        return inlines.size() > 1 && inlines.front().kind == Inline::Kind::value && !has_numbers(inlines.front());
    };
    const bool same_name = names(first) && names(second) && words_of({first.front()}) == words_of({second.front()});
    if (same_name && same_kinds(first, second)) return piece_by_piece(first, second);
    return one_under_another(first, second, without_same_numbers(first, second));
}

/// A call: who, the number, the reasons.
struct Call {
    Inlines who;
    Inline number;
    Inlines reasons;
};

std::optional<Call> call_in(const Inlines& inlines) {
    const auto end = std::ranges::find_if_not(inlines, &Inline::strong);
    const auto number = std::find_if(end, inlines.end(), [](const Inline& p) { return p.kind == Inline::Kind::value; });
    if (number == inlines.end()) return std::nullopt;
    return Call{{inlines.begin(), end}, *number, {number + 1, inlines.end()}};
}

/// What the second says of someone whom the first has named.
Inlines without_known_names(const Inlines& first, Inlines second) {
    std::erase_if(second, [&](const Inline& piece) {
        return piece.kind == Inline::Kind::value && std::ranges::any_of(first, [&](const Inline& known) {
                   return known.kind == Inline::Kind::value && words_of({known}) == words_of({piece});
               });
    });
    if (!second.empty() && second.back().kind == Inline::Kind::text) {
        std::string& text = second.back().text;
        text.erase(text.find_last_not_of(" :,") + 1);
    }
    return second;
}

/// Name, telephone and reasons in both: the number stands once, and so does a name that the label holds.
Inlines call_in_both(const Inlines& first, const Inlines& second) {
    if (same_kinds(first, second)) return piece_by_piece(first, second);
    const auto one = call_in(first);
    const auto other = call_in(second);
    if (!one || !other || words_of({one->number}) != words_of({other->number})) return under(first, second);
    Inlines both = beside(one->who, without_known_names(one->who, other->who));
    const bool blank = !both.empty() && both.back().kind == Inline::Kind::text && both.back().text.ends_with(' ');
    if (!blank) {
        both.push_back(text_piece(" ", one->number));
        both.back().strong = false;
    }
    both.push_back(one->number);
    const Inlines reasons = beside(one->reasons, other->reasons);
    both.insert(both.end(), reasons.begin(), reasons.end());
    return both;
}

/// Words before and behind the first colon.
std::optional<std::pair<Inlines, Inlines>> at_colon(const Inlines& inlines) {
    for (auto piece = inlines.begin(); piece != inlines.end(); ++piece) {
        const std::size_t colon = piece->kind == Inline::Kind::text ? piece->text.find(':') : std::string::npos;
        if (colon == std::string::npos) continue;
        Inlines before{inlines.begin(), piece};
        before.push_back(text_piece(piece->text.substr(0, colon), *piece));
        Inlines behind{text_piece(piece->text.substr(colon + 1), *piece)};
        behind.insert(behind.end(), piece + 1, inlines.end());
        return std::pair{without_outer_blanks(before), without_outer_blanks(behind)};
    }
    return std::nullopt;
}

/// "Hook-up / Conexión: BED", "Alarm chart 2: LOW PRESSURE / PRESIÓN BAJA": place and number stand once.
Inlines title_in_both(const Inlines& first, const Inlines& second) {
    const auto one = at_colon(first);
    const auto other = at_colon(second);
    if (!one || !other) return beside(first, second);
    const bool same_place = words_of(one->second) == words_of(other->second);
    Inlines both = same_place ? beside(one->first, other->first) : one->first;
    both.push_back(text_piece(": ", first.front()));
    const Inlines rest = beside(one->second, other->second);
    both.insert(both.end(), rest.begin(), rest.end());
    return both;
}

/// The tag of a place that both headings open with stands once.
Inlines heading_in_both(const Inlines& first, const Inlines& second) {
    const auto same = [](const Inline& one, const Inline& other) {
        return one.strong && other.strong && one.kind == other.kind && words_of({one}) == words_of({other});
    };
    const auto [one, other] = std::ranges::mismatch(first, second, same);
    Inlines both{first.begin(), one};
    const Inlines rest = under({one, first.end()}, {other, second.end()});
    both.insert(both.end(), rest.begin(), rest.end());
    return both;
}

using Join = Inlines (*)(const Inlines& first, const Inlines& second);

/// Words behind and before figures, each with its twin. A figure stands once; whoever hears it hears both.
Inlines in_both(const Inlines& first, const Inlines& second, Join join = under) {
    const auto one = std::ranges::find_if(first, is_shown);
    const auto other = std::ranges::find_if(second, is_shown);
    if (one != first.end() && other != second.end()) {
        Inlines both = in_both({first.begin(), one}, {second.begin(), other}, join);
        both.push_back(*one);
        if (one->alternative != other->alternative) both.back().alternative += " / " + other->alternative;
        const Inlines rest = in_both({one + 1, first.end()}, {other + 1, second.end()}, join);
        both.insert(both.end(), rest.begin(), rest.end());
        return both;
    }
    const Turns turns = turns_of(first);
    const Turns twins = turns_of(second);
    if ((turns.drawn.empty() && twins.drawn.empty()) || !same_drawn(turns.drawn, twins.drawn))
        return join(first, second);
    Inlines both;
    for (std::size_t at = 0; at < turns.words.size(); ++at) {
        const Inlines words = beside(turns.words[at], twins.words[at]);
        both.insert(both.end(), words.begin(), words.end());
        if (at < turns.drawn.size()) both.push_back(turns.drawn[at]);
    }
    return both;
}

/// Takes the label off the way out of a question: "No".
std::string take_label(Inlines& inlines) {
    if (inlines.empty() || inlines.front().kind != Inline::Kind::text || inlines.front().strong) return {};
    std::string& text = inlines.front().text;
    const auto colon = text.find(':');
    if (colon == std::string::npos) return {};
    std::string label{trimmed(std::string_view{text}.substr(0, colon))};
    text.erase(0, colon + 1);
    return label;
}

/// Takes the bold words at the head off: the name of a box of steps.
Inlines take_name(Inlines& inlines) {
    const auto end = std::ranges::find_if(
        inlines, [](const Inline& piece) { return !piece.strong && !trimmed(plain_text({piece})).empty(); });
    Inlines name{inlines.begin(), end};
    inlines.erase(inlines.begin(), end);
    return name;
}

std::string beside(const std::string& first, const std::string& second) {
    return first == second ? first : first + " / " + second;
}

/// "No: **Rescue steps** Toby cannot breathe alone.": label and name stand beside their twins, so that the label still
/// ends at the first colon and the name at the last bold word; the rest stands under one another.
Inlines way_out(Inlines first, Inlines second, bool to_steps) {
    const Inline like = first.empty() ? Inline{} : first.front();
    const std::string label = beside(take_label(first), take_label(second));
    Inlines both{text_piece(label.empty() ? label : label + ": ", like)};
    const auto add = [&](const Inlines& pieces) { both.insert(both.end(), pieces.begin(), pieces.end()); };
    if (to_steps) {
        first = without_outer_blanks(std::move(first));
        second = without_outer_blanks(std::move(second));
        const Inlines name = without_outer_blanks(take_name(first));
        add(beside(name, take_name(second)));
        add({text_piece(" ", like)});
    }
    add(in_both(first, second));
    return both;
}

/// The words of an item, which may stand in its first paragraph.
const Inlines& words_in(const Block& item) {
    return item.inlines.empty() && !item.children.empty() ? item.children.front().inlines : item.inlines;
}

bool has_list(const Block& item) {
    return std::ranges::any_of(item.children, [](const Block& block) { return block.kind == Block::Kind::list; });
}

/// Joins two trees of one shape. Where their shapes differ, `parting` tells of the first such place.
class Joiner {
  public:
    std::vector<Block> blocks(const std::vector<Block>& first, const std::vector<Block>& second, bool in_item = false) {
        if (first.size() != second.size()) part(line_behind(first, second), line_behind(second, first));
        std::vector<Block> both;
        for (std::size_t at = 0; at < first.size() && at < second.size() && !parting_; ++at) {
            if (first[at].kind == Block::Kind::heading) section_ = &first[at];
            both.push_back(block(first[at], second[at], in_item));
        }
        return both;
    }
    const std::optional<Parting>& parting() const { return parting_; }

  private:
    Block block(const Block& first, const Block& second, bool in_item) {
        const bool alike = first.kind == second.kind && first.level == second.level &&
                           first.ordered == second.ordered && first.task == second.task &&
                           first.rows.size() == second.rows.size() && first.label == second.label;
        if (!alike) part(first.line, second.line);
        Block both = first;
        if (parting_) return both;
        both.inlines = in_both(first.inlines, second.inlines, join_for(first));
        both.attributes.options = options(first.attributes, second.attributes);
        if (both.attributes.has("full-in-two")) std::erase(both.attributes.classes, "half");
        both.aside = beside(first.aside, second.aside);
        both.children = blocks(first.children, second.children, first.kind == Block::Kind::item);
        if (looks("ladder") && in_item && first.kind == Block::Kind::list && !first.ordered)
            join_ways_out(both, first, second);
        both.head = row(first.head, second.head);
        for (std::size_t at = 0; at < first.rows.size(); ++at) both.rows[at] = row(first.rows[at], second.rows[at]);
        return both;
    }

    bool looks(std::string_view name) const { return section_ != nullptr && section_->attributes.has(name); }

    Join join_for(const Block& block) const {
        if (block.kind == Block::Kind::heading) return heading_in_both;
        if (looks("calls")) return call_in_both;
        if (looks("signs")) return piece_by_piece;
        return under;
    }

    static void join_ways_out(Block& both, const Block& first, const Block& second) {
        for (std::size_t at = 0; at < both.children.size() && at < second.children.size(); ++at) {
            Block& item = both.children[at];
            Inlines& words =
                item.inlines.empty() && !item.children.empty() ? item.children.front().inlines : item.inlines;
            words = way_out(words_in(first.children[at]), words_in(second.children[at]), has_list(item));
        }
    }

    /// Options hold words, such as the label of a way, or numbers. Where those differ, the second language has set them
    /// for words that need more room.
    static std::vector<std::pair<std::string, std::string>> options(const Attributes& first, const Attributes& second) {
        auto both = first.options;
        for (auto& [key, value] : both) {
            const auto other = second.option(key);
            if (!other) continue;
            const std::string twin{*other};
            value = Decimal::parse(twin) ? twin : beside(value, twin);
        }
        return both;
    }

    TableRow row(const TableRow& first, const TableRow& second) {
        if (first.cells.size() != second.cells.size()) part(first.line, second.line);
        TableRow both = first;
        const Join join = looks("timeline") ? on_a_line : in_cell;
        for (std::size_t at = 0; at < first.cells.size() && !parting_; ++at)
            both.cells[at].inlines = in_both(first.cells[at].inlines, second.cells[at].inlines, join);
        return both;
    }

    /// The line of the first block that the other has no twin for; else of the last one.
    static std::size_t line_behind(const std::vector<Block>& blocks, const std::vector<Block>& others) {
        if (blocks.empty()) return others.empty() ? 0 : others.front().line;
        return blocks[std::min(blocks.size() - 1, others.size())].line;
    }

    void part(std::size_t first_line, std::size_t second_line) {
        if (!parting_) parting_ = Parting{first_line, second_line};
    }

    std::optional<Parting> parting_;
    const Block* section_ = nullptr;  ///< heading of the section
};

/// Sides that a sheet may take: twice the words, twice the sides.
std::string twice(const std::string& sides) {
    const auto number = Decimal::parse(sides);
    return number ? fmt::format("{}", 2 * static_cast<int>(number->value())) : sides;
}

Mark mark_at(const Document& document, std::size_t line) {
    Mark mark;
    mark.file = document.template_file;
    mark.place.line = line;
    mark.place.column = line > 0 ? 1 : 0;
    return mark;
}

Finding built_differently(const Document& first, const Document& second, const Parting& parting) {
    Finding finding;
    finding.rule = "template-translation-incomplete";
    finding.message = fmt::format(
        "{} cannot be printed in two languages: from here on its text in \"{}\" is built otherwise than in \"{}\".",
        first.name, second.language, first.language);
    finding.marks = {mark_at(second, parting.second_line), mark_at(first, parting.first_line)};
    return finding;
}

}  // namespace

std::optional<Document> in_two_languages(const Document& first, const Document& second,
                                         std::vector<Finding>& findings) {
    Joiner joiner;
    Document both = first;
    both.second_language = second.language;
    both.title = title_in_both(first.title, second.title);
    for (auto& [key, value] : both.front_matter)
        if (key == "pages") value = twice(value);
    both.blocks = joiner.blocks(first.blocks, second.blocks);
    if (joiner.parting()) {
        findings.push_back(built_differently(first, second, *joiner.parting()));
        return std::nullopt;
    }
    return both;
}

}  // namespace ventfolio
