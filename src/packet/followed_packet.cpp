#include "packet/followed_packet.hpp"

#include <algorithm>

#include "record/sheet_code.hpp"

namespace ventfolio {
namespace {

Paper paper_of(const Document& document, const PacketRecord& record) {
    Paper paper;
    paper.name = document.name;
    paper.title = plain_text(document.title);
    paper.document = &document;
    paper.before = record.find(document.name);
    if (paper.before == nullptr)
        paper.state = Paper::State::added;
    else if (document.front("lists") || sheet_code(document) != paper.before->code)
        paper.state = Paper::State::replaced;
    return paper;
}

}  // namespace

std::vector<Paper> papers_of(const FollowedPacket& followed, const std::vector<const Document*>& documents) {
    std::vector<Paper> papers;
    for (const Document* document : documents) papers.push_back(paper_of(*document, *followed.record));
    for (const RecordedSheet& before : followed.record->sheets) {
        const std::string name = before.full_name();
        if (std::ranges::find(papers, name, &Paper::name) != papers.end()) continue;
        papers.push_back({Paper::State::withdrawn, name, before.title, nullptr, &before});
    }
    return papers;
}

}  // namespace ventfolio
