#pragma once

#include <optional>

#include "calc/band.hpp"

namespace ventfolio::calc {

/// The part of a breath that only fills the airways, without lung disease, with the upper airway in use.
///
/// Formula  adult 2.2 mL x weight (predicted); child (3.28 - 0.56 x ln(1 + years)) mL x weight
/// Units    kg and years, result in mL
/// Range    weight 0.5 to 350 kg; years 0 to 120, a child is under 18
/// Source   Numa and Newth, J Appl Physiol 1996;80:1485 (abstract)
/// Example  adult, 70 kg: 154 mL. 1 year, 10 kg: 28.9 mL
/// Nothing  is returned outside the range.
std::optional<Volume> airway_dead_space(int age_years, Mass weight);

/// The same with a tracheostomy: only the part inside the chest; the bore of the tube comes extra.
///
/// Formula  1.03 mL x weight
/// Units    kg, result in mL
/// Range    0.5 to 350 kg
/// Source   the same abstract
/// Example  70 kg: 72.1 mL
/// Nothing  is returned outside the range.
std::optional<Volume> chest_dead_space(Mass weight);

/// The gas inside a piece of tubing.
///
/// Formula  pi / 4 x bore squared x length
/// Units    mm and cm, result in mL
/// Range    bore 2 to 40 mm, length 0 to 300 cm
/// Source   geometry
/// Example  15 mm bore, 15 cm: 26.5 mL
/// Nothing  is returned outside the range.
std::optional<Volume> tube_volume(Length bore, Length length);

struct DeadSpaceShares {
    double equipment = 0;  ///< of the breath, 0 to 1
    double total = 0;      ///< 0 to 1
    Flow alveolar;         ///< what reaches the lung each minute
};

/// What is left of a breath after the body's own dead space and the equipment's.
///
/// Formula  (volume - body - equipment) x rate; shares of the volume
/// Units    mL and breaths/min, result in L/min
/// Range    volume 10 to 2500 mL, rate 2 to 80 breaths/min, body 0 to 800 mL, equipment 0 to 200 mL
/// Source   Guyton and Hall; West (both from memory)
/// Example  500 mL, 150 mL of the body, 12 breaths/min: 4.2 L/min
/// Nothing  is returned outside the range, or when nothing of the breath reaches the lung.
std::optional<DeadSpaceShares> dead_space(Volume breath, Volume body, Volume equipment, BreathRate rate);

}  // namespace ventfolio::calc
