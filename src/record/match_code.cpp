#include "record/match_code.hpp"

#include <algorithm>

namespace ventfolio {
namespace {

using Answer = CodeMatch::Answer;

/// A time that cannot be read is one that has come: then the newer paper counts.
bool is_before(const Moment& at, std::string_view time) {
    const auto moment = Moment::parse(time);
    return moment && at < *moment;
}

CodeMatch current(const RecordedSheet& sheet, const Moment& at) {
    CodeMatch match{Answer::current, &sheet, nullptr, {}, nullptr};
    if (is_before(at, sheet.effective)) {
        match.answer = Answer::not_yet;
        match.until = sheet.effective;
    }
    return match;
}

CodeMatch earlier(const RecordedSheet& sheet, const EarlierCode& code, Answer otherwise, const Moment& at) {
    CodeMatch match{otherwise, &sheet, &code, {}, nullptr};
    if (is_before(at, code.until) && !is_before(at, code.effective)) {
        match.answer = Answer::until;
        match.until = code.until;
    }
    return match;
}

const EarlierCode* find(const RecordedSheet& sheet, std::string_view code) {
    const auto found = std::ranges::find(sheet.earlier, code, &EarlierCode::code);
    return found == sheet.earlier.end() ? nullptr : &*found;
}

const RecordedSheet* nearest(const PacketRecord& record, std::string_view code) {
    for (const RecordedSheet& sheet : record.sheets) {
        if (sheet.code.size() != code.size()) continue;
        std::size_t differ = 0;
        for (std::size_t at = 0; at < code.size(); ++at) differ += sheet.code[at] != code[at] ? 1U : 0U;
        if (differ == 1) return &sheet;
    }
    return nullptr;
}

}  // namespace

CodeMatch match_code(const PacketRecord& record, std::string_view code, const Moment& at) {
    const auto now = std::ranges::find(record.sheets, code, &RecordedSheet::code);
    if (now != record.sheets.end()) return current(*now, at);
    for (const RecordedSheet& sheet : record.sheets)
        if (const EarlierCode* was = find(sheet, code)) return earlier(sheet, *was, Answer::replaced, at);
    for (const RecordedSheet& sheet : record.withdrawn)
        if (const EarlierCode* was = find(sheet, code)) return earlier(sheet, *was, Answer::withdrawn, at);
    return {Answer::unknown, nullptr, nullptr, {}, nearest(record, code)};
}

}  // namespace ventfolio
