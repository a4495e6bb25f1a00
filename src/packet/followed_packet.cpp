#include "packet/followed_packet.hpp"

#include <algorithm>

#include "record/sheet_code.hpp"

namespace ventfolio {
namespace {

SheetChange change_of(const Document& document, const PacketRecord& record) {
    SheetChange change;
    change.name = document.name;
    change.title = plain_text(document.title);
    change.document = &document;
    change.before = record.find(document.name);
    if (change.before == nullptr)
        change.state = SheetChange::State::added;
    else if (document.front("lists") || sheet_code(document) != change.before->code)
        change.state = SheetChange::State::replaced;
    return change;
}

}  // namespace

std::vector<SheetChange> sheet_changes(const FollowedPacket& followed, const std::vector<const Document*>& documents) {
    std::vector<SheetChange> changes;
    for (const Document* document : documents) changes.push_back(change_of(*document, *followed.record));
    for (const RecordedSheet& before : followed.record->sheets) {
        const std::string name = before.full_name();
        if (std::ranges::find(changes, name, &SheetChange::name) != changes.end()) continue;
        changes.push_back({SheetChange::State::withdrawn, name, before.title, nullptr, &before});
    }
    return changes;
}

}  // namespace ventfolio
