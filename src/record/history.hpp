#pragma once

#include "record/packet_record.hpp"

namespace ventfolio {

/// Gives the sheets of a new record the codes that they had in the record before, the last one first, so that old paper
/// is still known. What the home had and has no more goes to `withdrawn`. `now` counts from its `effective`: until then
/// the old codes were right.
void take_history(PacketRecord& now, const PacketRecord& before);

}  // namespace ventfolio
