#pragma once

#include "packet/stationery.hpp"
#include "sheets/template_data.hpp"
#include "units/calendar.hpp"

/// What the fuzz programs share: the built-in stationery and a home to fill templates with. Made once.
namespace ventfolio::fuzz {

Date demo_day();
const Stationery& stationery();
/// All that templates can name for a demo home.
const TemplateData& demo_data();
/// One of its prescriptions, for sheets that are made for each.
const TemplateData& demo_prescription();

}  // namespace ventfolio::fuzz
