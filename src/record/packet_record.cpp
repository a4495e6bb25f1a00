#include "record/packet_record.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "record/sheet_code.hpp"

namespace ventfolio {
namespace {

using Json = nlohmann::ordered_json;

// Raise the number when the form changes in a way that an older program would misread.
constexpr std::string_view kSchema = "urn:ventfolio:packet:1";
constexpr std::size_t kDigestDigits = 64;

std::string_view name_of(RecordedSheet::State state) {
    return state == RecordedSheet::State::kept ? "kept" : "printed";
}

Json json_of(const EarlierCode& code) {
    return {{"code", code.code}, {"revision", code.revision}, {"effective", code.effective}, {"until", code.until}};
}

Json earlier_of(const RecordedSheet& sheet) {
    Json all = Json::array();
    for (const EarlierCode& code : sheet.earlier) all.push_back(json_of(code));
    return all;
}

Json json_of(const RecordedSheet& sheet) {
    return {{"name", sheet.name},
            {"place", sheet.place},
            {"title", sheet.title},
            {"code", sheet.code},
            {"revision", sheet.revision},
            {"effective", sheet.effective},
            {"printed_on", sheet.printed_on},
            {"pages", sheet.pages},
            {"state", name_of(sheet.state)},
            {"file", sheet.file},
            {"folder", sheet.folder},
            {"earlier", earlier_of(sheet)}};
}

Json withdrawn_json(const RecordedSheet& sheet) {
    return {{"name", sheet.name}, {"place", sheet.place}, {"title", sheet.title}, {"earlier", earlier_of(sheet)}};
}

Json json_of(const PacketRecord::Made& made) {
    return {{"version", made.version}, {"templates", made.templates}, {"language", made.language},
            {"region", made.region},   {"paper", made.paper},         {"large_print", made.large_print}};
}

Json json_of(const PacketRecord::Found& found) {
    return {
        {"rule", found.rule}, {"severity", found.severity}, {"accepted", found.accepted}, {"message", found.message}};
}

Json json_of(const PacketRecord::Accepted& accepted) {
    return {{"rule", accepted.rule}, {"by", accepted.by}, {"date", accepted.date}, {"reason", accepted.reason}};
}

Json json_of(const PacketRecord::Source& source) { return {{"about", source.about}, {"source", source.source}}; }

template <class T>
Json list_of(const std::vector<T>& items) {
    Json all = Json::array();
    for (const T& item : items) all.push_back(json_of(item));
    return all;
}

/// Why reading ends; caught at its start.
struct Unreadable : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// A part of the text that knows where it stands, so that each message can say it.
class Node {
  public:
    Node(const Json& json, std::string path) : json_{json}, path_{std::move(path)} {}

    Node at(const char* key) const {
        if (!json_.is_object()) fail("is not an object");
        const auto found = json_.find(key);
        if (found == json_.end()) throw Unreadable{fmt::format("{} is missing", below(key))};
        return {*found, below(key)};
    }

    std::string text() const {
        if (!json_.is_string()) fail("is not a text");
        return json_.get<std::string>();
    }
    std::string text(const char* key) const { return at(key).text(); }

    std::string text_with(const char* key) const {
        const Node node = at(key);
        std::string value = node.text();
        if (value.empty()) node.fail("is empty");
        return value;
    }

    bool flag(const char* key) const {
        const Node node = at(key);
        if (!node.json_.is_boolean()) node.fail("is neither true nor false");
        return node.json_.get<bool>();
    }

    std::size_t count(const char* key) const {
        const Node node = at(key);
        if (!node.json_.is_number_unsigned()) node.fail("is not a count");
        return node.json_.get<std::size_t>();
    }

    std::string code(const char* key) const {
        const Node node = at(key);
        std::string value = node.text();
        if (read_sheet_code(value) != value) node.fail("is not a sheet code");
        return value;
    }

    std::string digest(const char* key) const {
        const Node node = at(key);
        std::string value = node.text();
        if (value.size() != kDigestDigits || value.find_first_not_of("0123456789abcdef") != std::string::npos)
            node.fail("is not a SHA-256");
        return value;
    }

    template <class Read>
    auto list(const char* key, Read read) const {
        const Node node = at(key);
        if (!node.json_.is_array()) node.fail("is not a list");
        std::vector<decltype(read(node))> items;
        for (std::size_t index = 0; index < node.json_.size(); ++index)
            items.push_back(read(Node{node.json_[index], fmt::format("{}.{}", node.path_, index)}));
        return items;
    }

    bool is_null(const char* key) const { return at(key).json_.is_null(); }

    [[noreturn]] void fail(std::string_view what) const {
        throw Unreadable{fmt::format("{} {}", path_.empty() ? "the text" : path_, what)};
    }

  private:
    std::string below(const char* key) const { return path_.empty() ? key : fmt::format("{}.{}", path_, key); }

    const Json& json_;
    std::string path_;
};

EarlierCode earlier_from(const Node& node) {
    return {node.code("code"), node.text("revision"), node.text("effective"), node.text("until")};
}

RecordedSheet sheet_from(const Node& node) {
    RecordedSheet sheet;
    sheet.name = node.text_with("name");
    sheet.place = node.text("place");
    sheet.title = node.text("title");
    sheet.code = node.code("code");
    sheet.revision = node.text_with("revision");
    sheet.effective = node.text("effective");
    sheet.printed_on = node.text_with("printed_on");
    sheet.pages = node.count("pages");
    const std::string state = node.text("state");
    if (state != "printed" && state != "kept") node.at("state").fail("is neither printed nor kept");
    sheet.state = state == "kept" ? RecordedSheet::State::kept : RecordedSheet::State::printed;
    sheet.file = node.text_with("file");
    sheet.folder = node.text_with("folder");
    sheet.earlier = node.list("earlier", earlier_from);
    return sheet;
}

RecordedSheet withdrawn_from(const Node& node) {
    RecordedSheet sheet;
    sheet.name = node.text_with("name");
    sheet.place = node.text("place");
    sheet.title = node.text("title");
    sheet.earlier = node.list("earlier", earlier_from);
    return sheet;
}

PacketRecord::Made made_from(const Node& node) {
    return {node.text_with("version"), node.digest("templates"), node.text_with("language"),
            node.text_with("region"),  node.text_with("paper"),  node.flag("large_print")};
}

void require_one_of_each(const PacketRecord& record) {
    for (auto sheet = record.sheets.begin(); sheet != record.sheets.end(); ++sheet) {
        const std::string name = sheet->full_name();
        if (record.find(name) != &*sheet) throw Unreadable{fmt::format("sheets has {} twice", name)};
    }
}

PacketRecord record_from(const Node& root) {
    if (root.text("schema") != kSchema) root.at("schema").fail(fmt::format("is not \"{}\"", kSchema));
    PacketRecord record;
    record.record_number = root.text_with("record_number");
    record.revision = root.text_with("revision");
    record.effective = root.text("effective");
    record.printed_on = root.text_with("printed_on");
    record.whole = root.flag("whole");
    record.made = made_from(root.at("made"));
    if (!root.is_null("follows")) {
        const Node link = root.at("follows");
        record.follows = {link.text_with("folder"), link.text_with("revision"), link.digest("checksums")};
    }
    record.sheets = root.list("sheets", sheet_from);
    record.withdrawn = root.list("withdrawn", withdrawn_from);
    record.findings = root.list("findings", [](const Node& node) {
        return PacketRecord::Found{node.text("rule"), node.text("severity"), node.flag("accepted"),
                                   node.text("message")};
    });
    record.acceptances = root.list("acceptances", [](const Node& node) {
        return PacketRecord::Accepted{node.text("rule"), node.text("by"), node.text("date"), node.text("reason")};
    });
    record.sources = root.list("sources", [](const Node& node) {
        return PacketRecord::Source{node.text("about"), node.text("source")};
    });
    require_one_of_each(record);
    return record;
}

Json withdrawn_list(const std::vector<RecordedSheet>& sheets) {
    Json all = Json::array();
    for (const RecordedSheet& sheet : sheets) all.push_back(withdrawn_json(sheet));
    return all;
}

}  // namespace

const RecordedSheet* PacketRecord::find(std::string_view full_name) const {
    const auto found = std::ranges::find(sheets, full_name, &RecordedSheet::full_name);
    return found == sheets.end() ? nullptr : &*found;
}

std::string packet_json(const PacketRecord& record) {
    Json follows;
    if (record.follows)
        follows = {{"folder", record.follows->folder},
                   {"revision", record.follows->revision},
                   {"checksums", record.follows->checksums}};
    const Json root{{"schema", kSchema},
                    {"record_number", record.record_number},
                    {"revision", record.revision},
                    {"effective", record.effective},
                    {"printed_on", record.printed_on},
                    {"whole", record.whole},
                    {"made", json_of(record.made)},
                    {"follows", std::move(follows)},
                    {"sheets", list_of(record.sheets)},
                    {"withdrawn", withdrawn_list(record.withdrawn)},
                    {"findings", list_of(record.findings)},
                    {"acceptances", list_of(record.acceptances)},
                    {"sources", list_of(record.sources)}};
    return root.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

ReadPacket read_packet_json(std::string_view text) {
    const Json json = Json::parse(text, nullptr, false);
    if (json.is_discarded()) return {std::nullopt, {"it is not JSON"}};
    try {
        return {record_from(Node{json, ""}), {}};
    } catch (const Unreadable& fault) {
        return {std::nullopt, {fault.what()}};
    }
}

}  // namespace ventfolio
