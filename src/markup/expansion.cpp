#include "markup/expansion.hpp"

#include <algorithm>
#include <deque>
#include <kainjow/mustache.hpp>
#include <sstream>
#include <unordered_map>

#include "markup/bold_marks.hpp"
#include "markup/markdown_source.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

namespace mustache = kainjow::mustache;

/// Gives Mustache our data: it sees only what it decides on (is a section shown, how often) and tokens.
class Context : public mustache::basic_context<std::string> {
  public:
    Context(const std::vector<const TemplateData*>& data, std::vector<const PrintedValue*>& values) : values_{values} {
        for (const TemplateData* level : data) scope_.push(*level);
    }

    void push(const mustache::data* handle) override {
        const auto known = meaning_.find(handle);
        if (known == meaning_.end()) return scope_.push_nothing();
        const Meaning& meaning = known->second;
        if (meaning.item)
            scope_.push_item(*meaning.data, meaning.first, meaning.last);
        else
            scope_.push(*meaning.data);
    }
    void pop() override { scope_.pop(); }
    const mustache::data* get(const std::string& name) const override {
        const Scope::Found found = scope_.find(name);
        return found.answer == Scope::Answer::found ? handle(*found.data) : nullptr;
    }
    const mustache::data* get_partial(const std::string&) const override { return nullptr; }

  private:
    struct Meaning {
        const TemplateData* data;
        bool item = false;
        bool first = false;
        bool last = false;
    };

    const mustache::data* handle(const TemplateData& data) const {
        const auto known = handles_.find(&data);
        if (known != handles_.end()) return known->second;
        const mustache::data* made = &store_.emplace_back(made_handle(data));
        handles_.emplace(&data, made);
        note_meaning(data, *made);
        return made;
    }

    mustache::data made_handle(const TemplateData& data) const {
        if (const PrintedValue* value = data.value()) {
            values_.push_back(value);
            return utf8(kFirstValueToken + static_cast<char32_t>(std::min(values_.size(), kMostValues) - 1));
        }
        if (const bool* flag = data.flag()) return *flag;
        if (data.items() == nullptr) return !data.missing();
        mustache::data list{mustache::data::type::list};
        for (std::size_t n = 0; n < data.items()->size(); ++n) list.push_back(true);
        return list;
    }

    /// What a handle means once Mustache has opened its section. Those not noted (inverted sections) have no data.
    void note_meaning(const TemplateData& data, const mustache::data& made) const {
        if (made.is_list()) {
            const TemplateData::Items& items = *data.items();
            for (std::size_t n = 0; n < items.size(); ++n)
                meaning_[&made.list_value()[n]] = {&items[n], true, n == 0, n + 1 == items.size()};
        } else if (!made.is_false()) {
            meaning_[&made] = {&data};
        }
    }

    Scope scope_;
    std::vector<const PrintedValue*>& values_;
    mutable std::deque<mustache::data> store_;
    mutable std::unordered_map<const TemplateData*, const mustache::data*> handles_;
    mutable std::unordered_map<const mustache::data*, Meaning> meaning_;
};

/// The template for Mustache: every piece is one token, so that Mustache has no say in blanks and line ends. (It would
/// leave an empty line for a section that is not shown, and swallow one at the start of a section that is.)
void add_skeleton(const std::vector<TemplateNode>& nodes, std::string& out) {
    using Kind = TemplateNode::Kind;
    for (const TemplateNode& node : nodes) {
        if (node.kind == Kind::piece) {
            out += utf8(kFirstPieceToken + static_cast<char32_t>(node.piece));
        } else if (node.kind == Kind::value) {
            out.append("{{").append(node.name).append("}}");
        } else {
            out.append(node.kind == Kind::section ? "{{#" : "{{^").append(node.name).append("}}");
            add_skeleton(node.children, out);
            out.append("{{/").append(node.name).append("}}");
        }
    }
}

}  // namespace

Expansion::Expansion(const Template& from, const std::vector<TemplateNode>& nodes,
                     std::vector<const TemplateData*> data, Faults& faults)
    : pictures_{from.pictures} {
    std::string skeleton;
    add_skeleton(nodes, skeleton);
    mustache::mustache engine{skeleton};
    engine.set_custom_escape([](const std::string& token) { return token; });
    Context context{data, values_};
    std::ostringstream tokens;
    engine.render(context, tokens);
    for (const char32_t token : code_points(tokens.view())) {
        if (token < kFirstValueToken)
            add(from, from.pieces[token - kFirstPieceToken]);
        else
            markdown_ += utf8(token);
    }
    settle_bold_marks(markdown_);
    if (values_.size() > kMostValues)
        faults.refuse({"template-too-large", {0, 0, 0}, "The sheet has too many values.", "too many values"});
}

void Expansion::add(const Template& from, const TemplatePiece& piece) {
    using Kind = TemplatePiece::Kind;
    markdown_ += piece.indent;
    segments_.push_back({markdown_.size(), piece.span, piece.line, piece.kind == Kind::words});
    const std::size_t size = piece.span.end - piece.span.begin;
    if (piece.kind == Kind::words) markdown_.append(from.files[piece.span.file].text, piece.span.begin, size);
    if (piece.kind == Kind::check_box) markdown_ += utf8(kCheckBoxToken);
    if (piece.kind == Kind::write_in)
        markdown_ += utf8(kCheckBoxToken + static_cast<char32_t>(std::min(size, kMostTemplatePieces)));
}

const Expansion::Segment& Expansion::segment(std::size_t offset) const {
    static constexpr Segment kNowhere{0, {}, 1, false};
    const auto after = std::ranges::upper_bound(segments_, offset, {}, &Segment::begin);
    return after == segments_.begin() ? kNowhere : *(after - 1);
}

TemplateSpan Expansion::span(std::size_t begin, std::size_t end) const {
    const Segment& first = segment(begin);
    if (!first.words) return first.span;
    TemplateSpan span = first.span;
    span.begin = std::min(first.span.begin + (begin - first.begin), first.span.end);
    span.end = std::clamp(first.span.begin + (end - first.begin), span.begin, first.span.end);
    return span;
}

std::size_t Expansion::line(std::size_t offset) const { return segment(offset).line; }

}  // namespace ventfolio
