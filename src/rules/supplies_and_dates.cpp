#include "calc/next_due_date.hpp"
#include "rules/checks.hpp"
#include "rules/report.hpp"
#include "rules/shown.hpp"

namespace ventfolio {
namespace {

void overdue(Report& report, const Household& home, const Field<Date>& last, const Field<Interval>& interval,
             std::string task) {
    if (!last || !interval) return;
    const auto due = calc::next_due_date(*last, *interval);
    if (due && *due < home.on)
        report.at(last, "due " + due->iso()).also(interval).with("task", std::move(task)).with("date", due->iso());
}

void expires_early(Report& report, const Field<Date>& expires, std::string item, Date needed) {
    if (!expires || *expires >= needed) return;
    report.at(expires).with("item", std::move(item)).with("expiry", expires).with("due", needed.iso());
}

}  // namespace

namespace check {

void care_task_overdue(const Household& home, Report& report) {
    if (home.neck_tube != nullptr)
        overdue(report, home, home.neck_tube->last_changed, home.neck_tube->change_interval,
                "The change of the neck tube");
    for (const CareTask& task : home.profile.care_tasks)
        overdue(report, home, task.last_done, task.interval, "\"" + written(task.task) + "\"");
    for (const Device& unit : home.profile.devices)
        if (unit.service_due && *unit.service_due < home.on)
            report.at(unit.service_due, "past")
                .with("task", "The service of " + written(unit.label))
                .with("date", unit.service_due);
}

void item_expires_before_due(const Household& home, Report& report) {
    if (home.neck_tube != nullptr) {
        const NeckTube& tube = *home.neck_tube;
        Date needed = home.on;
        if (tube.last_changed && tube.change_interval)
            needed = std::max(needed, calc::next_due_date(*tube.last_changed, *tube.change_interval).value_or(home.on));
        expires_early(report, tube.spare_same->expires, "The same-size spare tube", needed);
        expires_early(report, tube.spare_smaller->expires, "The smaller spare tube", needed);
    }
    for (const Supply& supply : home.profile.supplies)
        expires_early(report, supply.expires, "The " + written(supply.item), home.on);
    for (const GoBagItem& item : home.profile.go_bag)
        expires_early(report, item.expires, "The " + written(item.item) + " of the go-bag", home.on);
}

void single_use_item_reused(const Household& home, Report& report) {
    for (const Supply& supply : home.profile.supplies)
        if (supply.single_use.is(true) && supply.reuse_interval)
            report.at(supply.reuse_interval, "single use")
                .also(supply.single_use)
                .with("item", "The " + written(supply.item))
                .with("interval", supply.reuse_interval);
}

}  // namespace check
}  // namespace ventfolio
