#include "record/packet_record.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

namespace ventfolio {
namespace {

using Json = nlohmann::ordered_json;

const std::string kDigest(64, 'a');

RecordedSheet card() {
    RecordedSheet sheet;
    sheet.name = "bedside-card";
    sheet.place = "bed";
    sheet.title = "Bedside card: BED";
    sheet.code = "K7M-2QD";
    sheet.revision = "R2";
    sheet.effective = "2026-03-16 14:00";
    sheet.printed_on = "2026-03-17";
    sheet.pages = 2;
    sheet.file = "packet.pdf";
    sheet.folder = ".";
    sheet.earlier = {{"J65-7KB", "R1", "2026-01-12 10:00", "2026-03-16 14:00"}};
    return sheet;
}

PacketRecord sample() {
    PacketRecord record;
    record.record_number = "DEMO-1";
    record.revision = "R2";
    record.effective = "2026-03-16 14:00";
    record.printed_on = "2026-03-17";
    record.made = {"0.1.0", kDigest, "en", "us", "letter", true};
    record.follows = PacketRecord::Link{"../R1", "R1", kDigest};
    RecordedSheet index = card();
    index.name = "folder-index";
    index.place = "";
    index.state = RecordedSheet::State::kept;
    record.sheets = {card(), index};
    RecordedSheet gone;
    gone.name = "settings-switch";
    gone.title = "Change of settings \xC2\xB7 \"old\"";
    gone.earlier = card().earlier;
    record.withdrawn = {gone};
    record.findings = {{"oxygen-near-flame", "acknowledge", true, "There is a gas stove.\nIn the kitchen."}};
    record.acceptances = {{"oxygen-near-flame", "Odile Mbanefo", "2026-03-01", "other room"}};
    record.sources = {{"squeeze-interval", "definition"}};
    return record;
}

/// The fault that reading gives after one edit of the text.
std::string fault_of(const char* pointer, const Json& value) {
    Json json = Json::parse(packet_json(sample()));
    json[Json::json_pointer{pointer}] = value;
    const ReadPacket read = read_packet_json(json.dump());
    CHECK(!read.record);
    return read.fault.what;
}

}  // namespace

TEST_CASE("a packet record reads back as what was written, and is the same text again") {
    const ReadPacket read = read_packet_json(packet_json(sample()));
    REQUIRE_MESSAGE(read.record, read.fault.what);
    CHECK((*read.record == sample()));
    CHECK(packet_json(*read.record) == packet_json(sample()));
    PacketRecord first = sample();
    first.follows.reset();
    CHECK((read_packet_json(packet_json(first)).record == first));
}

TEST_CASE("half a record is no record, whichever part is missing") {
    const Json whole = Json::parse(packet_json(sample()));
    std::size_t removed = 0;
    const auto without = [&](const Json::json_pointer& object, const std::string& key) {
        Json json = whole;
        json[object].erase(key);
        const ReadPacket read = read_packet_json(json.dump());
        CAPTURE(key);
        CHECK(!read.record);
        CHECK(read.fault.what.find(key + " is missing") != std::string::npos);
        ++removed;
    };
    for (const char* place : {"", "/made", "/follows", "/sheets/0", "/sheets/1/earlier/0", "/withdrawn/0",
                              "/findings/0", "/acceptances/0", "/sources/0"}) {
        const Json::json_pointer object{place};
        for (const auto& [key, value] : whole[object].items()) without(object, key);
    }
    CHECK(removed > 40);
    const std::string text = packet_json(sample());
    for (std::size_t end = 0; end + 1 < text.size(); ++end) CHECK(!read_packet_json(text.substr(0, end)).record);
}

TEST_CASE("a part of another kind is named with its place") {
    struct Row {
        const char* pointer;
        Json value;
        const char* what;
    };
    const Row rows[] = {
        {"/schema", "urn:ventfolio:packet:2", "schema is not \"urn:ventfolio:packet:1\""},
        {"/record_number", "", "record_number is empty"},
        {"/whole", "yes", "whole is neither true nor false"},
        {"/sheets", "none", "sheets is not a list"},
        {"/sheets/1/code", "K7M2QD", "sheets.1.code is not a sheet code"},
        {"/sheets/1/code", "U7M-2QD", "sheets.1.code is not a sheet code"},
        {"/sheets/0/pages", -1, "sheets.0.pages is not a count"},
        {"/sheets/0/state", "hung", "sheets.0.state is neither printed nor kept"},
        {"/sheets/0/earlier/0", 7, "sheets.0.earlier.0 is not an object"},
        {"/sheets/0/earlier/0/revision", 1, "sheets.0.earlier.0.revision is not a text"},
        {"/follows/checksums", "abc", "follows.checksums is not a SHA-256"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.pointer);
        CHECK(fault_of(row.pointer, row.value) == row.what);
    }
    Json twice = Json::parse(packet_json(sample()));
    twice["sheets"][1] = twice["sheets"][0];
    CHECK(read_packet_json(twice.dump()).fault.what == "sheets has bedside-card/bed twice");
    CHECK(read_packet_json("[]").fault.what == "the text is not an object");
    CHECK(read_packet_json("").fault.what == "it is not JSON");
}

}  // namespace ventfolio
