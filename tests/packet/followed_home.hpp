#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include "packet/followed_packet.hpp"
#include "print_home_sheets.hpp"

namespace ventfolio::testing {

/// The day on which the second revision of a demo home is printed.
Date update_day();

/// A home whose papers follow those of its revision before, by the steps that an update takes.
class FollowedHome {
  public:
    FollowedHome(const SourceText& was, const SourceText& now, const Stationery& language = stationery());
    FollowedHome(const FollowedHome&) = delete;
    FollowedHome& operator=(const FollowedHome&) = delete;

    const Profile& profile_was() const { return was_.profile; }
    const Profile& profile_now() const { return now_.profile; }
    const PacketRecord& record() const { return record_; }
    const FollowedPacket& followed() const { return followed_; }
    /// The sheets as they are after another record of the packet before.
    std::vector<Document> documents_after(const PacketRecord& record);
    const std::vector<Document>& documents_was() const { return documents_was_; }
    const std::vector<Document>& documents() const { return documents_; }
    /// What refuses the profiles or the sheets: "rule: message".
    std::string refusals() const;
    const Document& named(std::string_view name) const;
    bool has(std::string_view name) const;
    /// The sheets placed on pages; what does not fit is appended to what `refusals` says.
    SetSheet placed(std::string_view name, const PageSetup& setup = {});

  private:
    const Stationery& language_;
    CheckedHome was_;
    CheckedHome now_;
    std::unique_ptr<Household> home_was_;
    std::unique_ptr<Household> home_now_;
    std::vector<Finding> of_sheets_;
    std::vector<Document> documents_was_;
    PacketRecord record_;
    FollowedPacket followed_;
    std::vector<Document> documents_;
};

}  // namespace ventfolio::testing
