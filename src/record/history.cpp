#include "record/history.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

const RecordedSheet* find(const std::vector<RecordedSheet>& sheets, const std::string& name) {
    const auto found = std::ranges::find(sheets, name, &RecordedSheet::full_name);
    return found == sheets.end() ? nullptr : &*found;
}

/// All codes of a sheet but the one that counts now.
std::vector<EarlierCode> codes_before(const RecordedSheet& before, const std::string& code, const std::string& until) {
    std::vector<EarlierCode> codes;
    if (!before.code.empty() && before.code != code)
        codes.push_back({before.code, before.revision, before.effective, until});
    codes.insert(codes.end(), before.earlier.begin(), before.earlier.end());
    return codes;
}

}  // namespace

void take_history(PacketRecord& now, const PacketRecord& before) {
    for (RecordedSheet& sheet : now.sheets) {
        const std::string name = sheet.full_name();
        const RecordedSheet* was = before.find(name);
        if (was == nullptr) was = find(before.withdrawn, name);
        if (was != nullptr) sheet.earlier = codes_before(*was, sheet.code, now.effective);
    }
    for (const auto* all : {&before.sheets, &before.withdrawn}) {
        for (const RecordedSheet& was : *all) {
            if (now.find(was.full_name()) != nullptr) continue;
            RecordedSheet gone;
            gone.name = was.name;
            gone.place = was.place;
            gone.title = was.title;
            gone.earlier = codes_before(was, "", now.effective);
            now.withdrawn.push_back(std::move(gone));
        }
    }
}

}  // namespace ventfolio
