#include "rules/report.hpp"

#include <fmt/format.h>

#include "units/text.hpp"

namespace ventfolio {
namespace {

struct Writer {
    Zeros zeros;
    std::string operator()(std::monostate) const { return "not recorded"; }
    std::string operator()(const std::string& text) const { return text; }
    std::string operator()(bool flag) const { return flag ? "true" : "false"; }
    std::string operator()(const Date& date) const { return date.iso(); }
    std::string operator()(const Moment& moment) const { return moment.iso(); }
    std::string operator()(const ClockSpan& span) const { return span.from.iso() + " to " + span.to.iso(); }
    std::string operator()(const Interval& interval) const { return interval.text(); }
    std::string operator()(const Revision& revision) const { return revision.text(); }
    std::string operator()(const Measure& measure) const {
        if (zeros == Zeros::drop) return measure.text();
        return measure.number.as_labelled() + " " + std::string{measure.unit.symbol};
    }
    std::string operator()(const MeasureRange& range) const {
        if (range.from.unit.symbol == range.to.unit.symbol) return range.from.number.plain() + " to " + range.to.text();
        return range.from.text() + " to " + range.to.text();
    }
    std::string operator()(const Choice& choice) const { return with_replaced(std::string{choice.word}, "_", " "); }
    std::string operator()(const TextList& texts) const { return joined(texts, ", "); }
};

/// What to write and where, seen from the item of a list that it stands in: "alarms.low_rate", "suction.depth".
std::string_view path_in_item(std::string_view path) {
    for (auto dot = path.rfind('.'); dot != std::string_view::npos && dot > 0; dot = path.rfind('.', dot - 1))
        if (dot + 1 < path.size() && path[dot + 1] >= '0' && path[dot + 1] <= '9')
            return path.substr(path.find('.', dot + 1) + 1);
    return path;
}

}  // namespace

std::string written(const FieldBase& field, Zeros zeros) {
    switch (field.state) {
        case FieldState::absent:
            return "not recorded";
        case FieldState::unknown:
            return "unknown";
        case FieldState::none:
            return "none";
        case FieldState::off:
            return "off";
        case FieldState::given:
            break;
    }
    return std::visit(Writer{zeros}, field.value());
}

std::string filled(std::string_view sentence, const Finding& finding) {
    std::string out{sentence};
    for (const auto& [name, text] : finding.numbers) {
        const std::string slot = "{" + name + "}";
        for (auto at = out.find(slot); at != std::string::npos; at = out.find(slot, at + text.size()))
            out.replace(at, slot.size(), text);
    }
    return out;
}

Draft& Draft::also(Spot spot, std::string label) {
    const FieldRecord& record = index_->of(spot.address);
    if (spot.absent) label += fmt::format("{}: {}", label.empty() ? "not written" : "", path_in_item(record.path));
    finding().marks.push_back({*file_, record.place, record.path, std::move(label)});
    return *this;
}

Draft& Draft::with(std::string name, std::string text) {
    finding().numbers.emplace_back(std::move(name), std::move(text));
    return *this;
}

Draft& Draft::with(std::string name, const FieldBase& field) {
    return with(std::move(name), written(field, index_->of(&field).zeros));
}

Draft& Draft::to_do(std::string text) {
    finding().to_do = std::move(text);
    return *this;
}

Draft Report::at(Spot spot, std::string label) {
    Finding finding;
    finding.rule = rule_.name;
    finding.severity = rule_.severity;
    findings_.push_back(std::move(finding));
    Draft draft{findings_, findings_.size() - 1, index_, file_};
    draft.also(spot, std::move(label));
    return draft;
}

void Report::finish() {
    for (std::size_t at = first_; at < findings_.size(); ++at)
        findings_[at].message = filled(rule_.says, findings_[at]);
}

}  // namespace ventfolio
