#include "rules/revisions.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>

#include "profile/compare.hpp"
#include "profile/field_paths.hpp"
#include "rules/household.hpp"
#include "rules/judge.hpp"
#include "rules/report.hpp"
#include "rules/rule_book.hpp"
#include "units/text.hpp"

namespace ventfolio {
namespace {

/// An update, with all that its checks ask for.
struct Update {
    const Profile& was;
    const Profile& now;
    std::vector<Difference> differences;
    Household home;  ///< the new one
};

void another_record_number(const Update& update, Report& report) {
    const auto& number = update.now.record_number;
    if (!number || !update.was.record_number || *number == *update.was.record_number) return;
    report.at(number, "another person's").with("record_number", number).with("was", update.was.record_number);
}

/// "R2, or R1b for a correction without a new order" after R1a.
std::string next_revisions(const Revision& revision) {
    Revision corrected = revision;
    if (corrected.letter.empty())
        corrected.letter = "a";
    else
        ++corrected.letter.back();
    const Revision next{revision.number + 1, ""};
    return fmt::format("Write {}, or {} for a correction without a new order.", next.text(), corrected.text());
}

void revision_not_raised(const Update& update, Report& report) {
    const auto& revision = update.now.orders->revision;
    const auto& was = update.was.orders->revision;
    if (!revision || !was || *revision > *was) return;
    report.at(revision, "not above the packet's")
        .with("revision", revision)
        .with("was", was)
        .to_do(next_revisions(*was));
}

void effective_before_packet(const Update& update, Report& report) {
    const auto& start = update.now.orders->effective_at;
    const auto& was = update.was.orders->effective_at;
    if (!start || !was || *start >= *was) return;
    report.at(start, "before the packet's").with("effective_at", start).with("was", was);
}

void supersedes_another_revision(const Update& update, Report& report) {
    const auto& supersedes = update.now.orders->supersedes;
    const auto& was = update.was.orders->revision;
    if (!supersedes || !was || *supersedes == *was) return;
    report.at(supersedes, "not the packet's").with("supersedes", supersedes).with("was", was);
}

/// What only names a prescription or speaks about it: a machine that was set before it changed is still set right.
constexpr std::array<std::string_view, 6> kNaming{"changed_in", "place", "label", "note", "when_note", "sick_plan"};

/// "alarms.high_pressure" for "prescriptions.0.alarms.high_pressure".
std::string within_item(std::string_view path) {
    const std::vector<std::string> steps = split(path, '.');
    return joined(std::span{steps}.subspan(2), ".");
}

/// What differs of the new prescription at an index: paths within it. A field that is gone stands under the place that
/// the prescription had before.
std::vector<std::string> changed_parts(const Update& update, std::size_t index) {
    const auto& id = update.now.prescriptions[index].id;
    std::vector<std::string> parts;
    for (const Difference& difference : update.differences) {
        const Profile& profile = difference.gone ? update.was : update.now;
        for (std::size_t at = 0; at < profile.prescriptions.size(); ++at) {
            const bool same = difference.gone ? id && profile.prescriptions[at].id.is(*id) : at == index;
            if (same && difference.path.starts_with(fmt::format("prescriptions.{}.", at)))
                parts.push_back(within_item(difference.path));
        }
    }
    std::erase(parts, "changed_in");
    return parts;
}

/// "rate, alarms high pressure and 3 more".
std::string listed(const std::vector<std::string>& paths) {
    constexpr std::size_t kMostNamed = 3;
    std::vector<std::string> names;
    for (const std::string& path : std::span{paths}.first(std::min(paths.size(), kMostNamed)))
        names.push_back(with_replaced(with_replaced(path, ".", " "), "_", " "));
    const std::string all = joined(names, ", ");
    return paths.size() > kMostNamed ? fmt::format("{} and {} more", all, paths.size() - kMostNamed) : all;
}

bool marked(const Update& update, const Prescription& order) {
    const auto& revision = update.now.orders->revision;
    return order.changed_in && revision && *order.changed_in == *revision;
}

void changed_prescription_not_marked(const Update& update, Report& report) {
    for (std::size_t at = 0; at < update.now.prescriptions.size(); ++at) {
        const Prescription& order = update.now.prescriptions[at];
        std::vector<std::string> parts = changed_parts(update, at);
        std::erase_if(parts, [](const std::string& part) { return std::ranges::find(kNaming, part) != kNaming.end(); });
        if (parts.empty() || !order.changed_in || !update.now.orders->revision || marked(update, order)) continue;
        report.at(order.changed_in, "not the revision of this order")
            .also(update.now.orders->revision)
            .with("rx", update.home.prescriptions[at].name)
            .with("what", listed(parts))
            .with("changed_in", order.changed_in);
    }
}

void marked_prescription_unchanged(const Update& update, Report& report) {
    const auto& revision = update.now.orders->revision;
    const auto& was = update.was.orders->revision;
    // Under a revision that is not raised the mark is one that the packet had already.
    if (!revision || !was || *revision <= *was) return;
    for (std::size_t at = 0; at < update.now.prescriptions.size(); ++at) {
        const Prescription& order = update.now.prescriptions[at];
        if (!marked(update, order) || !changed_parts(update, at).empty()) continue;
        report.at(order.changed_in, "nothing differs")
            .with("rx", update.home.prescriptions[at].name)
            .with("changed_in", order.changed_in);
    }
}

void setting_changed_without_order(const Update& update, Report& report) {
    const auto& date = update.now.orders->order_date;
    const auto& was = update.was.orders->order_date;
    if (!date || !was || *date != *was) return;
    std::vector<std::string> settings;
    const FieldBase* first = nullptr;
    for (const Difference& difference : update.differences) {
        const ComparedPart& part = difference.now ? *difference.now : *difference.was;
        if (!part.is_field || !part.info.setting) continue;
        const bool of_item = declared_path(difference.path) != difference.path;
        settings.push_back(of_item ? within_item(difference.path) : difference.path);
        if (first == nullptr && difference.now) first = difference.now->field;
    }
    if (settings.empty()) return;
    auto finding = report.at(date, "the packet's order");
    if (first != nullptr) finding.also(*first, "differs");
    finding.with("what", listed(settings)).with("order_date", date);
}

struct UpdateCheck {
    std::string_view rule;
    void (*check)(const Update&, Report&);
};
constexpr std::array kChecks{
    UpdateCheck{"another-record-number", another_record_number},
    UpdateCheck{"revision-not-raised", revision_not_raised},
    UpdateCheck{"effective-before-packet", effective_before_packet},
    UpdateCheck{"supersedes-another-revision", supersedes_another_revision},
    UpdateCheck{"changed-prescription-not-marked", changed_prescription_not_marked},
    UpdateCheck{"marked-prescription-unchanged", marked_prescription_unchanged},
    UpdateCheck{"setting-changed-without-order", setting_changed_without_order},
};

}  // namespace

std::vector<Finding> judge_update(const Profile& was, const Profile& now, const SourceText& source, Date on) {
    const Update update{was, now, compare(was, now), Household{now, on}};
    const FieldIndex index{now};
    std::vector<Finding> findings;
    for (const auto& [rule, check] : kChecks) {
        Report report{*find_rule(rule), index, source.name, findings};
        check(update, report);
        report.finish();
    }
    sort_by_place(findings);
    return findings;
}

}  // namespace ventfolio
