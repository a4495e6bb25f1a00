#include <array>

#include "published.hpp"

namespace ventfolio::testing {
namespace {

constexpr std::array kRows{
    PublishedRow{"catheter-size", "--inner-diameter \"8.0 mm\"", "half", 12, 1e-9,
                 "pub: no greater than half, National Tracheostomy Safety Project (UK)"},
    PublishedRow{"catheter-size", "--inner-diameter \"8.0 mm\"", "two-thirds", 14, 1e-9,
                 "pub: twice the bore, next smaller; US formulary page"},
    PublishedRow{"catheter-fit", "--catheter \"12 Fr\" --inner-diameter \"8.0 mm\"", "ratio", 50, 1e-9,
                 "lib: a UCUM library, 12 Fr are 4 mm"},
    PublishedRow{"catheter-fit", "--catheter \"12 Fr\" --inner-diameter \"8.0 mm\"", "area", 25, 1e-9,
                 "mem: half of the diameter is a quarter of the area"},
    PublishedRow{"suction-depth", "--tube \"75 mm\" --connector \"1.5 cm\" --past-tip \"1 cm\"", "deepest", 10, 1e-9,
                 "none: no published value found; definition"},
    PublishedRow{"suction-pressure", "--age \"10 days\"", "usual.low", 60, 1e-6,
                 "pub: UK paediatric tracheostomy module, newborn 60 to 80"},
    PublishedRow{"suction-pressure", "--age \"6 months\"", "usual.high", 100, 1e-6, "pub: the same, infant 80 to 100"},
    PublishedRow{"suction-pressure", "--age \"14 years\"", "usual.high", 120, 1e-6, "pub: Ireton 2007 (abstract)"},
    PublishedRow{"suction-pressure", "--age \"40 years\"", "never", 200, 1e-6, "pub: AARC 2022, below 200"},
    PublishedRow{"alarm-margins",
                 "--high-limit \"35 cmH2O\" --low-limit \"15 cmH2O\" --peak \"25 cmH2O\" --baseline \"5 cmH2O\"",
                 "above-peak", 10, 1e-9, "pub: textbook extract, 10 above the peak"},
    PublishedRow{"alarm-margins",
                 "--high-limit \"35 cmH2O\" --low-limit \"15 cmH2O\" --peak \"25 cmH2O\" --baseline \"5 cmH2O\"",
                 "below-peak", 10, 1e-9, "pub: the same, 5 to 10 below it"},
    PublishedRow{"no-breath-window", "--backup-rate \"12 breaths/min\"", "delay.low", 5, 1e-9,
                 "pub: textbook extract, longer than one breath of 5 s"},
    PublishedRow{"no-breath-window", "--backup-rate \"12 breaths/min\"", "delay.high", 10, 1e-9,
                 "pub: the same, shorter than two"},
    PublishedRow{"silent-tube", "--inner-diameter \"4.0 mm\" --below-peak \"4 cmH2O\"", "silent", 0, 0,
                 "pub: Kun et al. (abstract), silent below 4.5 mm at 4 below the peak", "yes"},
    PublishedRow{"silent-tube", "--inner-diameter \"5.5 mm\" --below-peak \"10 cmH2O\"", "silent", 0, 0,
                 "pub: the same, silent below 6.0 mm at 10 below", "yes"},
    PublishedRow{"silent-tube", "--inner-diameter \"6.0 mm\" --below-peak \"10 cmH2O\"", "silent", 0, 0,
                 "pub: the same", "no"},
    PublishedRow{"volume-alarm-share", "--limit \"200 mL\" --usual \"400 mL\"", "share", 50, 1e-9,
                 "none: no published value found; definition"},
    PublishedRow{"minute-volume-alarm-share", "--limit \"4 L/min\" --usual \"8 L/min\"", "share", 50, 1e-9,
                 "none: no published value found; definition"},
    PublishedRow{"squeeze-interval", "--group adult --rate \"10 breaths/min\"", "interval", 6, 1e-9,
                 "pub: AHA 2020 (training copies), adult 1 breath every 6 s, 10 a minute"},
    PublishedRow{"squeeze-interval", "--group child --rate \"30 breaths/min\"", "interval", 2, 1e-9,
                 "pub: the same, child every 2 to 3 s, 20 to 30 a minute"},
    PublishedRow{"squeeze-interval", "--group infant --rate \"20 breaths/min\"", "interval", 3, 1e-9, "pub: the same"},
    PublishedRow{"safe-minutes", "--free \"7 min\"", "minutes", 3, 1e-9, "none: common practice, no published value"},
    PublishedRow{"cough-flow", "--peak \"160 L/min\"", "each-second", 2.7, 0.05,
                 "mem: Bach and Saporito 1996, 2.7 L/s"},
    PublishedRow{"cough-flow", "--peak \"270 L/min\"", "each-second", 4.5, 0.05, "mem: the same literature, 4.5 L/s"},
    PublishedRow{"cough-flow", "--peak \"150 L/min\"", "strength", 0, 0, "pub: goal 160 L/min in a Cuban review",
                 "ineffective, it clears nothing without help"},
    PublishedRow{"cough-flow", "--peak \"269 L/min\"", "strength", 0, 0,
                 "pub: cut-off 270 L/min in a Portuguese pulmonology paper", "weak, help with coughing is taught"},
    PublishedRow{"cough-pressures", "--in \"40 cmH2O\" --out \"-40 cmH2O\"", "goal", 0, 0, "pub: common pressures",
                 "yes"},
    PublishedRow{"cough-pressures", "--in \"30 cmH2O\" --out \"-30 cmH2O\"", "goal", 0, 0,
                 "pub: the least that passed 160 L/min in most studies", "yes"},
};

}  // namespace

std::span<const PublishedRow> published_airway_and_alarms() { return kRows; }

}  // namespace ventfolio::testing
