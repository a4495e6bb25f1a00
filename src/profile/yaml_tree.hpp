#pragma once

#include <string>
#include <vector>

#include "profile/finding_list.hpp"
#include "profile/place.hpp"

namespace ventfolio {

struct YamlEntry;

/// One node of a YAML document. A scalar is always text: the reader decides what it means, so `010`, `yes` and `.nan`
/// hold no surprise.
struct YamlNode {
    enum class Kind {
        empty,  ///< nothing after the colon, `~` or `null`
        scalar,
        map,
        sequence,
        broken,  ///< already reported; whoever meets it says nothing more
    };
    Kind kind = Kind::empty;
    std::string text;   ///< of a scalar, in normal form C; its line breaks are \n
    bool plain = true;  ///< not quoted and not a block
    Place place;        ///< exactly its text in the source, quotation marks included
    std::vector<YamlEntry> entries;
    std::vector<YamlNode> items;

    const YamlEntry* find(std::string_view key) const;
};

struct YamlEntry {
    std::string key;
    Place key_place;
    YamlNode value;
};

/// Parses one YAML document. Aliases, anchors, tags, merge keys, duplicate keys, keys that are not words, a second
/// document and more than 32 levels are findings; after a syntax fault, which is a finding too, the tree is not
/// complete. Call only after guard_text found nothing.
YamlNode parse_yaml(const SourceText& source, FindingList& findings);

}  // namespace ventfolio
