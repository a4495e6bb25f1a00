#include "caseload/due_list.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <tuple>

#include "calc/next_due_date.hpp"
#include "profile/compare.hpp"
#include "profile/read_profile.hpp"
#include "rules/thresholds.hpp"

namespace ventfolio {
namespace {

/// A family may think again about what is told to others. Common practice, no source.
constexpr int kPermissionMonths = 12;

Interval months(int count) { return {count, Interval::Step::months}; }

class Dues {
  public:
    explicit Dues(const Household& home) : home_{home}, profile_{home.profile} {}

    std::vector<Due> all() {
        add_order();
        add_letters();
        add_equipment();
        add_people();
        add_care();
        add_stock();
        return std::move(dues_);
    }

    Due one(DueKind kind, std::string what, std::optional<Date> by) const {
        Due due;
        due.record_number = profile_.record_number.or_else("");
        due.person = profile_.person->legal_name.or_else("");
        due.kind = kind;
        due.what = std::move(what);
        due.by = by;
        return due;
    }

  private:
    void add(DueKind kind, std::string what, std::optional<Date> by) {
        dues_.push_back(one(kind, std::move(what), by));
    }
    void add_on(DueKind kind, std::string what, const Field<Date>& day) {
        if (day) add(kind, std::move(what), *day);
    }
    void add_after(DueKind kind, std::string what, const Field<Date>& last, const Interval& interval) {
        if (last) add(kind, std::move(what), calc::next_due_date(*last, interval));
    }

    void add_order() {
        const Orders& orders = *profile_.orders;
        add_on(DueKind::review, "the order", orders.review_due);
        add_on(DueKind::follow_up, orders.follow_up.or_else("after the change"), orders.follow_up_due);
    }

    void add_permission(std::string letter, const Group<Permission>& permission) {
        if (permission.given() && permission->answer.is(PermissionAnswer::agreed))
            add_after(DueKind::permission, std::move(letter), permission->date, months(kPermissionMonths));
    }

    void add_letters() {
        const UtilityCompany& company = *profile_.utility_company;
        add_on(DueKind::registration, "the priority list of the power company", company.registered_until);
        add_on(DueKind::certificate, "the need, for the power company", company.certifier->expires);
        add_permission("letter to the power company", profile_.consent->utility_letter);
        add_permission("letter to the fire and ambulance service", profile_.consent->fire_letter);
        if (profile_.directive->status.is(DirectiveStatus::order_on_file))
            add_after(DueKind::directive, "the signed order", profile_.directive->confirmed_on,
                      months(threshold::kDirectiveConfirmInterval));
    }

    void add_battery(const BatteryFacts& facts) {
        const Battery& battery = *facts.battery;
        const std::string label = battery.label.or_else("a battery");
        if (!battery.tested_time || !battery.tested_on)
            return add(DueKind::battery_test, label + ", never timed", std::nullopt);
        std::optional<Date> by = calc::next_due_date(*battery.tested_on, months(threshold::kBatteryTestInterval));
        if (facts.lowered && facts.retest_by && (!by || *facts.retest_by < *by)) by = facts.retest_by;
        add(DueKind::battery_test, label, by);
    }

    void add_equipment() {
        for (const BatteryFacts& facts : home_.outage.batteries) add_battery(facts);
        for (const Device& device : profile_.devices)
            add_on(DueKind::service, device.label.or_else("a unit"), device.service_due);
        if (profile_.remote_alarm.given())
            add_after(DueKind::remote_alarm_test, "the second alarm", profile_.remote_alarm->tested_on,
                      months(threshold::kRemoteAlarmTestInterval));
    }

    void add_people() {
        std::size_t number = 0;
        for (const Caregiver& person : profile_.caregivers) {
            const std::string who = fmt::format("caregiver {}", ++number);
            const std::size_t first = dues_.size();
            add_after(DueKind::sign_off, who, person.last_signed_off, months(threshold::kSignoffValid));
            add_on(DueKind::resuscitation_card, who, person.resuscitation_card_until);
            for (std::size_t at = first; at < dues_.size(); ++at) dues_[at].named = person.name.or_else("");
        }
    }

    static bool is_daily(const Interval& interval) {
        return interval.step == Interval::Step::days && interval.count <= 1;
    }

    void add_repeated(DueKind kind, const std::string& what, const Field<Date>& last, const Interval& interval) {
        if (last)
            add_after(kind, what, last, interval);
        else
            add(kind, what + ", never recorded", std::nullopt);
    }

    void add_care() {
        if (home_.neck_tube != nullptr && home_.neck_tube->change_interval)
            add_repeated(DueKind::tube_change, "the neck tube", home_.neck_tube->last_changed,
                         *home_.neck_tube->change_interval);
        for (const CareTask& task : profile_.care_tasks)
            if (task.source.is(CareSource::clinic) && task.interval && !is_daily(*task.interval))
                add_repeated(DueKind::care_task, task.task.or_else("a task"), task.last_done, *task.interval);
    }

    void add_stock() {
        for (const Supply& supply : profile_.supplies) {
            const std::string item = supply.item.or_else("a supply");
            add_on(DueKind::expiry, item, supply.expires);
            if (supply.on_hand && supply.reorder_at && *supply.on_hand <= *supply.reorder_at)
                add(DueKind::reorder, item, std::nullopt);
        }
        for (const GoBagItem& item : profile_.go_bag)
            add_on(DueKind::expiry, item.item.or_else("an item") + ", go-bag", item.expires);
        if (home_.neck_tube == nullptr) return;
        add_on(DueKind::expiry, "spare tube, same size", home_.neck_tube->spare_same->expires);
        add_on(DueKind::expiry, "spare tube, smaller", home_.neck_tube->spare_smaller->expires);
    }

    const Household& home_;
    const Profile& profile_;
    std::vector<Due> dues_;
};

}  // namespace

std::string_view name_of(DueKind kind) {
    constexpr std::array<std::string_view, 16> kNames{"packet",      "review",
                                                      "follow-up",   "registration",
                                                      "certificate", "permission",
                                                      "directive",   "battery-test",
                                                      "service",     "remote-alarm-test",
                                                      "sign-off",    "resuscitation-card",
                                                      "tube-change", "care-task",
                                                      "reorder",     "expiry"};
    return kNames[static_cast<std::size_t>(kind)];
}

std::vector<Due> dues_of(const Household& home) { return Dues{home}.all(); }

std::optional<Due> stale_packet(const Household& home, const PacketFolder& packet) {
    const auto& revision = home.profile.orders->revision;
    const std::string now = revision ? revision->text() : "no revision";
    if (packet.record.revision != now)
        return packet_due(home, fmt::format("the papers are {}, the profile is {}", packet.record.revision, now));
    const ReadResult printed = read_profile(packet.profile);
    const std::size_t changed = compare(printed.profile, home.profile).size();
    if (changed == 0) return std::nullopt;
    return packet_due(home, fmt::format("{} {} changed since the papers were printed", changed,
                                        changed == 1 ? "field has" : "fields have"));
}

Due packet_due(const Household& home, std::string why) {
    return Dues{home}.one(DueKind::packet, std::move(why), std::nullopt);
}

void keep_due_by(std::vector<Due>& dues, Date last) {
    std::erase_if(dues, [&](const Due& due) { return due.by && *due.by > last; });
    std::ranges::stable_sort(dues, {}, [](const Due& due) {
        return std::tuple{due.by, std::string_view{due.record_number}, due.kind, std::string_view{due.what}};
    });
}

}  // namespace ventfolio
