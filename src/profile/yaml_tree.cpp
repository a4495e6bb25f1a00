#include "profile/yaml_tree.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>
#include <algorithm>
#include <optional>
#include <sstream>
#include <unordered_map>

#include "profile/place_finder.hpp"
#include "profile/yaml_extent.hpp"
#include "profile/yaml_fault.hpp"
#include "profile/yaml_guard.hpp"
#include "units/ascii.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

constexpr std::size_t kDeepest = 32;

/// Thrown through the YAML library to end its work; caught below.
struct StopParsing {};

/// "7 Alder Lane #2" and "Apt # 2" are meant as one text, and YAML reads the end as a remark. A remark of words has a
/// blank and a letter behind its #.
bool words_follow_number_sign(std::string_view rest_of_text) {
    const auto sign = rest_of_text.find_first_not_of(' ');
    if (sign == 0 || sign == std::string_view::npos || rest_of_text[sign] != '#') return false;
    const std::string_view remark = rest_of_text.substr(sign + 1, rest_of_text.find_first_of("\r\n") - sign - 1);
    const auto first = remark.find_first_not_of(' ');
    if (first == std::string_view::npos) return false;
    return first == 0 || is_digit(remark[first]);
}

/// Builds the tree from the library's events. Its marks count bytes from 0, a byte-order mark left out.
class TreeBuilder final : public YAML::EventHandler {
  public:
    TreeBuilder(const SourceText& source, std::size_t skipped, FindingList& findings)
        : text_{source.text}, skipped_{skipped}, places_{source}, findings_{findings} {}

    YamlNode take_root() { return std::move(root_); }
    Place place_of(const YAML::Mark& mark) {
        return mark.is_null() ? places_.place(last_end_, last_end_) : places_.place(byte(mark), byte(mark) + 1);
    }
    /// The last quoted text, if it ran over several lines: the usual cause of a fault further down.
    const std::optional<Place>& long_quotation() const { return long_quotation_; }

    void OnDocumentStart(const YAML::Mark& mark) override;
    void OnDocumentEnd() override {}
    void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override;
    void OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) override;
    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  const std::string& value) override;
    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value style) override {
        open(YamlNode::Kind::sequence, mark, tag, anchor, style);
    }
    void OnSequenceEnd() override { close(); }
    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                    YAML::EmitterStyle::value style) override {
        open(YamlNode::Kind::map, mark, tag, anchor, style);
    }
    void OnMapEnd() override { close(); }

  private:
    /// A map or sequence that is not closed yet.
    struct Open {
        YamlNode node;
        bool flow = false;
        bool key_due = true;
        bool key_broken = false;
        std::string key;
        Place key_place;
        std::unordered_map<std::string, std::size_t> lines;  ///< of the keys so far
    };

    std::size_t byte(const YAML::Mark& mark) const { return static_cast<std::size_t>(mark.pos) + skipped_; }
    bool key_due() const {
        return !open_.empty() && open_.back().node.kind == YamlNode::Kind::map && open_.back().key_due;
    }
    int parent_indent() const;
    void open(YamlNode::Kind kind, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
              YAML::EmitterStyle::value style);
    void close();
    void put(YamlNode node);
    void put_key(YamlNode node);
    bool has_property(Place place, const std::string& tag, YAML::anchor_t anchor);

    std::string_view text_;
    std::size_t skipped_;
    PlaceFinder places_;
    FindingList& findings_;
    YamlNode root_;
    std::vector<Open> open_;
    std::size_t last_end_ = 0;
    std::optional<Place> long_quotation_;
    bool begun_ = false;
};

void TreeBuilder::OnDocumentStart(const YAML::Mark& mark) {
    if (!begun_) {
        begun_ = true;
        return;
    }
    Place place = place_of(mark);
    if (text_.substr(place.begin).starts_with("---")) {
        place.end = place.begin + 3;
        findings_.refuse({"second-document-in-file", place, "",
                          "A second document begins here; a profile is one document.", "second document",
                          "Take this line out, or write each person into a file of their own."});
    } else {
        findings_.refuse({"yaml-unreadable", place, "", "This line does not fit under the lines above it.",
                          "does not fit here", "Let all keys of one group begin in the same column."});
    }
    throw StopParsing{};
}

bool TreeBuilder::has_property(Place place, const std::string& tag, YAML::anchor_t anchor) {
    const char first = place.begin < text_.size() ? text_[place.begin] : ' ';
    const bool tagged = first == '!' || (tag != "?" && tag != "!" && !tag.empty());
    if (!tagged && anchor == 0) return false;
    place.end = std::min(text_.find_first_of(" \r\n", place.begin), text_.size());
    if (tagged)
        findings_.refuse({"tag-in-file", place, "", "The file gives a value a type by hand (a tag).", "a tag",
                          "Take the tag out; put a text that begins with ! in quotation marks."});
    else
        findings_.refuse({"anchor-in-file", place, "", "The file gives a part a short name to repeat it (an anchor).",
                          "an anchor", "Take it out; put a text that begins with & in quotation marks."});
    return true;
}

void TreeBuilder::OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) {
    YamlNode node;
    node.place = places_.place(last_end_, last_end_);
    if (anchor != 0) {
        has_property(place_of(mark), "?", anchor);
        node.kind = YamlNode::Kind::broken;
    }
    // The mark of an empty value is that of whatever comes next; only a written null stands at its mark.
    for (const std::string_view written : {"~", "null", "Null", "NULL"}) {
        if (mark.is_null() || byte(mark) < last_end_ || !text_.substr(byte(mark)).starts_with(written)) continue;
        if (text_.substr(byte(mark) + written.size()).find_first_of(" ,]}\r\n") != 0 &&
            byte(mark) + written.size() != text_.size())
            continue;
        node.text = written;
        node.place = places_.place(byte(mark), byte(mark) + written.size());
    }
    put(std::move(node));
}

void TreeBuilder::OnAlias(const YAML::Mark& mark, YAML::anchor_t) {
    YamlNode node;
    node.kind = YamlNode::Kind::broken;
    node.place = place_of(mark);
    node.place.end = std::min(text_.find_first_of(" ,]}\r\n", node.place.begin), text_.size());
    const YamlFault fault = explained("the referenced anchor");
    findings_.refuse({fault.rule, node.place, "", fault.message, fault.label, fault.to_do});
    put(std::move(node));
}

void TreeBuilder::OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                           const std::string& value) {
    YamlNode node;
    node.kind = YamlNode::Kind::scalar;
    node.place = place_of(mark);
    if (has_property(node.place, tag, anchor)) {
        node.kind = YamlNode::Kind::broken;
        node.text = value;
        put(std::move(node));
        return;
    }
    const auto end = end_of_scalar(text_, node.place.begin, value, parent_indent());
    if (!end) {
        findings_.refuse({"quotation-mark-not-closed", node.place, "",
                          "A quotation mark opens here and is never closed.", "opens here",
                          "Close the text with the mark that opened it."});
        throw StopParsing{};
    }
    node.place.end = *end;
    node.plain = tag != "!";
    const std::string_view source = text_.substr(node.place.begin, *end - node.place.begin);
    const bool quoted = source.starts_with('"') || source.starts_with('\'');
    if (quoted && source.find('\n') != std::string_view::npos) long_quotation_ = node.place;
    if (node.plain && words_follow_number_sign(text_.substr(*end))) {
        const std::size_t sign = text_.find('#', *end);
        findings_.refuse({"text-cut-at-number-sign", places_.place(sign, sign + 1), "",
                          "The text ends before this number sign: what follows a blank and # is left out.",
                          "left out from here",
                          "If it belongs to the text, put the whole text in quotation marks. If it is a remark, put a "
                          "blank behind the #, and words."});
        node.kind = YamlNode::Kind::broken;
    }
    node.text = normal_form(value);
    if (const auto bad = first_unprintable(node.text)) {
        findings_.refuse({"control-character-in-text", node.place, "",
                          fmt::format("The text holds {}, a character that does not print.", *bad), *bad,
                          "Take out what follows the backslash, or use single quotation marks."});
        node.kind = YamlNode::Kind::broken;
    }
    put(std::move(node));
}

int TreeBuilder::parent_indent() const {
    if (open_.empty()) return -1;
    const Place& place = open_.back().node.place;
    const auto line_start = place.begin == 0 ? std::string_view::npos : text_.rfind('\n', place.begin - 1);
    const std::size_t first = line_start == std::string_view::npos ? skipped_ : line_start + 1;
    return static_cast<int>(place.begin - first);
}

void TreeBuilder::open(YamlNode::Kind kind, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value style) {
    Open opened;
    opened.node.place = place_of(mark);
    opened.node.kind = kind;
    opened.flow = style == YAML::EmitterStyle::Flow;
    if (open_.size() >= kDeepest) {
        findings_.refuse({"nested-too-deep", opened.node.place, "", "Groups are nested more than 32 deep.", "too deep",
                          "Check the brackets and the indentation here."});
        throw StopParsing{};
    }
    has_property(opened.node.place, tag, anchor);
    if (kind == YamlNode::Kind::map || opened.flow) last_end_ = std::max(last_end_, opened.node.place.begin);
    open_.push_back(std::move(opened));
}

void TreeBuilder::close() {
    Open closed = std::move(open_.back());
    open_.pop_back();
    std::size_t end = std::max(last_end_, closed.node.place.begin);
    if (closed.flow) {
        const auto bracket = text_.find(closed.node.kind == YamlNode::Kind::map ? '}' : ']', end);
        if (text_[closed.node.place.begin] == '{' || text_[closed.node.place.begin] == '[')
            end = std::min(bracket, text_.size() - 1) + 1;
    }
    closed.node.place.end = end;
    put(std::move(closed.node));
}

void TreeBuilder::put(YamlNode node) {
    last_end_ = std::max(last_end_, node.place.end);
    if (open_.empty()) {
        root_ = std::move(node);
        return;
    }
    Open& parent = open_.back();
    if (parent.node.kind == YamlNode::Kind::sequence) {
        parent.node.items.push_back(std::move(node));
        return;
    }
    if (parent.key_due) {
        put_key(std::move(node));
        return;
    }
    parent.key_due = true;
    if (!parent.key_broken) parent.node.entries.push_back({std::move(parent.key), parent.key_place, std::move(node)});
}

void TreeBuilder::put_key(YamlNode node) {
    Open& parent = open_.back();
    parent.key_due = false;
    parent.key_broken = true;
    if (node.kind == YamlNode::Kind::broken) return;
    if (node.kind != YamlNode::Kind::scalar) {
        node.place.end = std::min({node.place.end, text_.find_first_of("\r\n", node.place.begin), text_.size()});
        findings_.refuse({"key-not-a-word", node.place, "", "A key must be one word.", "not a key",
                          "Write a key, a colon and a blank before the value."});
    } else if (node.plain && node.text == "<<") {
        findings_.refuse({"merge-key-in-file", node.place, "", "The file merges one part into another (<<).",
                          "a merge key", "Write the part out."});
    } else if (const auto [earlier, is_new] = parent.lines.try_emplace(node.text, node.place.line); !is_new) {
        findings_.refuse({"duplicate-key", node.place, "",
                          fmt::format("\"{}\" stands twice in this group; which of the two is true?", node.text),
                          fmt::format("already on line {}", earlier->second),
                          "Keep the right one and take the other out."});
    } else {
        parent.key_broken = false;
    }
    parent.key = std::move(node.text);
    parent.key_place = node.place;
}

void report_syntax(const YAML::Exception& fault, TreeBuilder& builder, FindingList& findings) {
    YamlFault words = explained(fault.msg);
    if (builder.long_quotation() && fault.msg == YAML::ErrorMsg::END_OF_MAP)
        words.to_do = fmt::format("A quotation mark opens on line {} and closes on a later line. Is one missing there?",
                                  builder.long_quotation()->line);
    findings.refuse({words.rule, builder.place_of(fault.mark), "", words.message, words.label, words.to_do});
}

}  // namespace

const YamlEntry* YamlNode::find(std::string_view key) const {
    const auto found = std::ranges::find(entries, key, &YamlEntry::key);
    return found == entries.end() ? nullptr : &*found;
}

YamlNode parse_yaml(const SourceText& source, FindingList& findings) {
    const std::size_t skipped = length_of_byte_order_mark(source.text);
    TreeBuilder builder{source, skipped, findings};
    std::istringstream stream{source.text.substr(skipped)};
    try {
        YAML::Parser parser{stream};
        while (parser.HandleNextDocument(builder)) {
        }
    } catch (const StopParsing&) {
        return {};
    } catch (const YAML::Exception& fault) {
        report_syntax(fault, builder, findings);
        return {};
    }
    return builder.take_root();
}

}  // namespace ventfolio
