#include <doctest/doctest.h>

#include <random>

#include "profile/place_finder.hpp"
#include "profile/yaml_tree.hpp"

using namespace ventfolio;

namespace {

YamlNode parsed(const SourceText& source) {
    FindingList findings{source.name};
    YamlNode root = parse_yaml(source, findings);
    const auto sorted = std::move(findings).sorted();
    CAPTURE(source.text);
    REQUIRE(sorted.empty());
    return root;
}

}  // namespace

TEST_CASE("the place of a scalar covers exactly its text in the source") {
    struct Row {
        const char* yaml;
        const char* covered;
        const char* value;
    };
    constexpr Row rows[] = {
        {"a: 35 cmH2O\nb: 1\n", "35 cmH2O", "35 cmH2O"},
        {"a: 35 cmH2O   # remark\nb: 1\n", "35 cmH2O", "35 cmH2O"},
        {"a:    x#y # remark\nb: 1\n", "x#y", "x#y"},
        {"a: 'it''s'  # remark\nb: 1\n", "'it''s'", "it's"},
        {"a: \"x \\\" y\" # remark\nb: 1\n", "\"x \\\" y\"", "x \" y"},
        {"a: \"\"\nb: 1\n", "\"\"", ""},
        {"a: one\n  two\n   three\nb: 1\n", "one\n  two\n   three", "one two three"},
        {"a: one  \r\n  two # remark\r\nb: 1\r\n", "one  \r\n  two", "one two"},
        {"a: one\n\n  two\nb: 1\n", "one\n\n  two", "one\ntwo"},
        {"a: \"one\n  two\"\nb: 1\n", "\"one\n  two\"", "one two"},
        {"a: 'one\n\n  two'\nb: 1\n", "'one\n\n  two'", "one\ntwo"},
        {"a: |\n  one\n   two\n\nb: 1\n", "|\n  one\n   two", "one\n two\n"},
        {"a: |-   # remark\n  one\nb: 1\n", "|-   # remark\n  one", "one"},
        {"a: >\n  one\n  two\n\n  three\nb: 1\n", ">\n  one\n  two\n\n  three", "one two\nthree\n"},
        {"a: |2\n    one\n  two\nb: 1\n", "|2\n    one\n  two", "  one\ntwo\n"},
        {"a: |\r\n  one\r\n  two\r\nb: 1\r\n", "|\r\n  one\r\n  two", "one\ntwo\n"},
        {"a: |\n  # no remark\n# remark\nb: 1\n", "|\n  # no remark", "# no remark\n"},
        {"a: |\nb: 1\n", "|", ""},
        {"a: |\n  last", "|\n  last", "last"},
        {"a: 東京 Việt\nb: 1\n", "東京 Việt", "東京 Việt"},
        {"{a: x, b: 1}\n", "x", "x"},
        {"\xEF\xBB\xBF{a: x y , b: 1}\n", "x y", "x y"},
    };
    for (const Row& row : rows) {
        const SourceText source{"home.yaml", row.yaml};
        CAPTURE(std::string{row.yaml});
        const YamlNode root = parsed(source);
        REQUIRE(root.kind == YamlNode::Kind::map);
        const YamlNode& node = root.entries.front().value;
        CHECK(node.text == std::string{row.value});
        CHECK(source.text.substr(node.place.begin, node.place.end - node.place.begin) == std::string{row.covered});
        const Place& key = root.entries.front().key_place;
        CHECK(source.text.substr(key.begin, key.end - key.begin) == "a");
    }
}

TEST_CASE("blocks below nested keys and dashes end where their indentation ends") {
    const SourceText source{"home.yaml",
                            "a:\n  b:\n    - |2\n       one\n      two\n    - x\n  c: |\n    three\n  d: 1\n"};
    const YamlNode root = parsed(source);
    const YamlNode& b = root.entries[0].value.entries[0].value;
    const YamlNode& c = root.entries[0].value.entries[1].value;
    CHECK(source.text.substr(b.items[0].place.begin, b.items[0].place.end - b.items[0].place.begin) ==
          "|2\n       one\n      two");
    CHECK(source.text.substr(c.place.begin, c.place.end - c.place.begin) == "|\n    three");
}

TEST_CASE("maps and lists cover all that they hold") {
    const SourceText source{"home.yaml", "a: {b: [x, y], c: 'z'} # end\nd:\n  - e: 1\n    f: 2\n  - g\nh: 3\n"};
    const YamlNode root = parsed(source);
    const auto covered = [&](const YamlNode& node) {
        return source.text.substr(node.place.begin, node.place.end - node.place.begin);
    };
    CHECK(covered(root.entries[0].value) == "{b: [x, y], c: 'z'}");
    CHECK(covered(root.entries[0].value.entries[0].value) == "[x, y]");
    CHECK(covered(root.entries[1].value) == "- e: 1\n    f: 2\n  - g");
    CHECK(covered(root.entries[1].value.items[0]) == "e: 1\n    f: 2");
}

TEST_CASE("quoted and plain scalars are told apart") {
    const SourceText source{"home.yaml", "[none, 'none', \"none\", >-\n none\n]\n"};
    const SourceText lines{"home.yaml", "- none\n- 'none'\n- \"none\"\n- |-\n  none\n"};
    const YamlNode root = parsed(lines);
    REQUIRE(root.items.size() == 4);
    CHECK(root.items[0].plain);
    for (std::size_t item = 1; item < 4; ++item) CHECK(!root.items[item].plain);
    for (const YamlNode& item : root.items) CHECK(item.text == "none");
}

TEST_CASE("the place finder agrees with counting from the top") {
    const SourceText source{"home.yaml",
                            "\xEF\xBB\xBF"
                            "a: é\r\n\n東京: x\ne\u0323\u0302\n\nlast"};
    PlaceFinder finder{source};
    std::vector<std::size_t> starts;  // of characters: a place never begins inside one
    for (std::size_t at = 0; at <= source.text.size(); ++at)
        if (at == source.text.size() || (static_cast<unsigned char>(source.text[at]) & 0xC0U) != 0x80U)
            starts.push_back(at);
    std::mt19937 random{20260112};
    for (const std::size_t at : starts) CHECK(finder.place(at, at + 1) == source.place(at, at + 1));
    for (int time = 0; time < 200; ++time) {
        const std::size_t at = starts[random() % starts.size()];
        CHECK(finder.place(at, at) == source.place(at, at));
    }
}
