#include "sheets/checks/passages.hpp"

#include <algorithm>
#include <span>

#include "sheets/checks/letters.hpp"
#include "units/text.hpp"

namespace ventfolio::sheet_check {
namespace {

constexpr std::size_t kLongestQuote = 160;
/// Stands for a value that is only cited.
constexpr std::string_view kQuoted = "quoted";

/// Walks a document and cuts it into passages.
class Reader {
  public:
    void add(Passage::Kind kind, const Inlines& inlines, std::size_t line) {
        Passage passage;
        passage.kind = kind;
        passage.lines.emplace_back(0, line);
        passage.section = section_;
        passage.group = row_ != 0 ? row_ : ++groups_;
        passage.head = head_;
        for (const Inline& piece : inlines) append(passage, piece);
        if (!trimmed(passage.text).empty()) passages.push_back(std::move(passage));
        for (const Inline& piece : inlines)
            if (is_shown(piece)) add_figure(piece);
    }

    void blocks(const std::vector<Block>& blocks, Passage::Kind kind) {
        for (const Block& block : blocks) {
            if (block.kind == Block::Kind::heading) ++section_;
            const bool heading = block.kind == Block::Kind::heading || block.kind == Block::Kind::call_out;
            add(heading ? Passage::Kind::heading : kind, block.inlines, block.line);
            add(Passage::Kind::heading, block.aside, block.line);
            if (block.kind == Block::Kind::table) table(block);
            this->blocks(block.children, block.kind == Block::Kind::item ? Passage::Kind::item : kind);
        }
    }

    std::vector<Passage> passages;

  private:
    void append(Passage& passage, const Inline& piece) {
        const std::size_t begin = passage.text.size();
        if (piece.line > 0) passage.lines.emplace_back(begin, piece.line);
        switch (piece.kind) {
            case Inline::Kind::text:
                passage.text += piece.text;
                break;
            case Inline::Kind::value:
                passage.text += piece.value.quoted ? std::string{kQuoted} : piece.value.text();
                passage.values.push_back({begin, passage.text.size(), &piece.value, line_at(passage, begin)});
                break;
            case Inline::Kind::line_break:
            case Inline::Kind::figure:
            case Inline::Kind::picture:
            case Inline::Kind::check_box:
            case Inline::Kind::write_in:
                passage.text += ' ';
                break;
        }
    }
    void add_figure(const Inline& piece) {
        Passage passage;
        passage.kind = Passage::Kind::figure;
        passage.text = piece.alternative;
        passage.lines.emplace_back(0, piece.line);
        passage.section = section_;
        passage.group = ++groups_;
        passages.push_back(std::move(passage));
    }
    void table(const Block& block) {
        const std::size_t head = ++groups_;
        row(block.head, head, 0);
        for (const TableRow& one : block.rows) row(one, ++groups_, head);
    }
    void row(const TableRow& row, std::size_t group, std::size_t head) {
        row_ = group;
        head_ = head;
        for (const TableCell& cell : row.cells) add(Passage::Kind::cell, cell.inlines, row.line);
        row_ = head_ = 0;
    }

    std::size_t section_ = 0;
    std::size_t groups_ = 0;
    std::size_t row_ = 0;
    std::size_t head_ = 0;
};

/// Signs beyond ASCII that stand between words; everything else there is taken for letters.
constexpr std::string_view kBlanks[]{"\u00A0", "\u202F", "\u2009"};
constexpr std::string_view kStops[]{"\u2013", "\u2014", "\u2192"};
/// Quotation marks, and the signs that open a Spanish question or call.
constexpr std::string_view kQuotes[]{"\u201C", "\u201D", "\u2018", "\u2019", "\u00AB", "\u00BB", "\u00BF", "\u00A1"};

std::size_t length_of_sign(std::string_view rest, std::span<const std::string_view> signs) {
    for (const std::string_view sign : signs)
        if (rest.starts_with(sign)) return sign.size();
    return 0;
}

/// Whether a word goes on at `at`.
bool inside_word(std::string_view text, std::size_t at, bool number) {
    const char c = text[at];
    if (is_digit(c)) return true;
    const bool digit_follows = at + 1 < text.size() && is_digit(text[at + 1]);
    if ((c == '.' || c == ',') && number && digit_follows) return true;
    const bool letter_follows = at + 1 < text.size() && is_letter(text[at + 1]);
    if (c == '\'' && letter_follows) return true;
    if (!is_letter(c)) return false;
    const std::string_view rest = text.substr(at);
    return length_of_sign(rest, kBlanks) + length_of_sign(rest, kStops) + length_of_sign(rest, kQuotes) == 0;
}

bool is_stop(char c) { return std::string_view{",;:()[]-"}.find(c) != std::string_view::npos; }

/// A sign between two words: is it a stop, and how many bytes does it take.
struct Separator {
    std::size_t length = 1;
    bool stop = false;
};
Separator separator_at(std::string_view text, std::size_t at) {
    const std::string_view rest = text.substr(at);
    for (const auto& signs : {std::span<const std::string_view>{kBlanks}, std::span<const std::string_view>{kQuotes}})
        if (const std::size_t length = length_of_sign(rest, signs)) return {length, false};
    if (const std::size_t length = length_of_sign(rest, kStops)) return {length, true};
    // A hyphen inside a word only joins: "go-bag", "re-insert".
    const bool joins = text[at] == '-' && at > 0 && at + 1 < text.size() && text[at - 1] != ' ' && text[at + 1] != ' ';
    return {1, is_stop(text[at]) && !joins};
}

/// The offset behind the sentence that begins at `from`, and whether a mark closes it.
struct SentenceEnd {
    std::size_t at;
    bool closed;
};

bool ends_here(const Passage& passage, std::size_t from, std::size_t at,
               const std::vector<std::string>& abbreviations) {
    const std::string& text = passage.text;
    if (text[at] != '.' && text[at] != '!' && text[at] != '?') return false;
    const std::string_view rest = std::string_view{text}.substr(at + 1);
    if (!rest.empty() && rest.front() != ' ' && rest.front() != '"' && length_of_sign(rest, kQuotes) == 0 &&
        length_of_sign(rest, kBlanks) == 0)
        return false;
    if (text[at] != '.') return true;
    std::size_t word = at;
    while (word > from && is_letter(text[word - 1])) --word;
    const std::string before = capitals(std::string_view{text}.substr(word, at - word));
    return std::ranges::find(abbreviations, before) == abbreviations.end();
}

SentenceEnd sentence_end(const Passage& passage, std::size_t from, const std::vector<std::string>& abbreviations) {
    for (std::size_t at = from; at < passage.text.size(); ++at)
        if (ends_here(passage, from, at, abbreviations)) return {at + 1, true};
    return {passage.text.size(), false};
}

}  // namespace

void FirstLetters::add(std::string_view folded) {
    constexpr std::uint64_t kBits = 62;
    if (folded.empty()) return;
    const auto letter = [&](std::size_t at) {
        return at < folded.size() ? static_cast<std::uint64_t>(static_cast<unsigned char>(folded[at])) : 0;
    };
    bits_ |= std::uint64_t{1} << ((letter(0) * 31 + letter(1)) % kBits);
    if (std::ranges::any_of(folded, is_digit)) bits_ |= std::uint64_t{1} << kBits;
}

void FirstLetters::add_start(std::string_view pattern) {
    constexpr std::uint64_t kDigits = std::uint64_t{1} << 62;
    if (pattern.find('<') != std::string_view::npos)
        bits_ |= kDigits;
    else if (pattern.ends_with('*') && pattern.size() < 3)
        bits_ = ~std::uint64_t{0};
    else
        add(pattern.substr(0, 2));
}

std::size_t line_at(const Passage& passage, std::size_t offset) {
    std::size_t line = 0;
    for (const auto& [from, number] : passage.lines)
        if (from <= offset) line = number;
    return line;
}

std::vector<Passage> passages_of(const Document& document) {
    Reader reader;
    reader.add(Passage::Kind::title, document.title, 0);
    reader.blocks(document.blocks, Passage::Kind::paragraph);
    return std::move(reader.passages);
}

std::vector<Token> tokens_of(std::string_view text) {
    std::vector<Token> tokens;
    bool after_stop = false;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t begin = at;
        const bool number = is_digit(text[at]);
        while (at < text.size() && inside_word(text, at, number)) ++at;
        if (at > begin) {
            tokens.push_back({capitals(text.substr(begin, at - begin)), begin, at, after_stop});
            after_stop = false;
            continue;
        }
        const Separator separator = separator_at(text, at);
        after_stop = after_stop || separator.stop;
        at += separator.length;
    }
    return tokens;
}

std::vector<Sentence> sentences_of(const Passage& passage, const std::vector<std::string>& abbreviations) {
    std::vector<Sentence> sentences;
    for (std::size_t from = 0; from < passage.text.size();) {
        const SentenceEnd end = sentence_end(passage, from, abbreviations);
        Sentence sentence;
        sentence.passage = &passage;
        sentence.closed = end.closed;
        sentence.text = passage.text.substr(from, end.at - from);
        const std::size_t word = sentence.text.find_first_not_of(' ');
        sentence.line = line_at(passage, from + (word == std::string::npos ? 0 : word));
        for (const ValueSpan& span : passage.values)
            if (span.begin < end.at && span.end > from)
                sentence.values.push_back(
                    {std::max(span.begin, from) - from, std::min(span.end, end.at) - from, span.value, span.line});
        sentence.tokens = tokens_of(sentence.text);
        for (const Token& token : sentence.tokens) sentence.letters.add(token.folded);
        if (!sentence.tokens.empty()) sentences.push_back(std::move(sentence));
        from = end.at;
    }
    return sentences;
}

std::string quoted(const Sentence& sentence) {
    std::string out;
    std::size_t from = 0;
    for (const ValueSpan& span : sentence.values) {
        out += sentence.text.substr(from, span.begin - from);
        const bool open = (span.value->audiences & wall) != 0;
        out += open ? sentence.text.substr(span.begin, span.end - span.begin) : "{" + span.value->field + "}";
        from = span.end;
    }
    out += sentence.text.substr(from);
    out = std::string{trimmed(out)};
    if (out.size() <= kLongestQuote) return out;
    std::size_t cut = kLongestQuote;
    while (cut > 0 && (static_cast<unsigned char>(out[cut]) & 0xC0) == 0x80) --cut;
    return out.substr(0, cut) + "...";
}

const PrintedValue* value_at(const std::vector<ValueSpan>& values, std::size_t offset) {
    for (const ValueSpan& span : values)
        if (offset >= span.begin && offset < span.end) return span.value;
    return nullptr;
}

}  // namespace ventfolio::sheet_check
