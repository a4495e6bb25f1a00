#include "calc/circuit_loss.hpp"
#include "calc/port_leak.hpp"
#include "rules/calculators/read.hpp"

namespace ventfolio::calculators {
namespace {

calc::PortPoint known_point(const Inputs& in) { return {flow(in, "known-flow"), pressure(in, "known-pressure")}; }

}  // namespace

std::optional<Answer> circuit_loss(const Inputs& in) {
    const auto loss = calc::circuit_loss(volume(in, "volume"), {in.number("compliance")}, pressure(in, "peak"),
                                         pressure(in, "baseline"));
    if (!loss) return std::nullopt;
    return Answer{}.give("lost", loss->lost).give("delivered", loss->delivered);
}

std::optional<Answer> hose_compliance(const Inputs& in) {
    const auto compliance =
        calc::measured_compliance(volume(in, "volume"), pressure(in, "peak"), pressure(in, "baseline"));
    if (!compliance) return std::nullopt;
    return Answer{}.give("compliance", compliance->value);
}

std::optional<Answer> gas_compliance(const Inputs& in) {
    const auto compliance = calc::gas_compliance(volume(in, "gas"), pressure(in, "air-pressure"));
    if (!compliance) return std::nullopt;
    return Answer{}.give("compliance", compliance->value);
}

std::optional<Answer> port_leak(const Inputs& in) {
    const auto leak = calc::port_leak(known_point(in), pressure(in, "pressure"));
    if (!leak) return std::nullopt;
    return Answer{}.give("leak", *leak);
}

std::optional<Answer> mean_port_leak(const Inputs& in) {
    const auto leak =
        calc::mean_port_leak(known_point(in), pressure(in, "peak"), pressure(in, "baseline"), fraction(in, "share-in"));
    if (!leak) return std::nullopt;
    return Answer{}.give("leak", *leak);
}

std::optional<Answer> washout_need(const Inputs& in) {
    const auto leak = calc::washout_need(volume(in, "volume"), duration(in, "time-out"));
    if (!leak) return std::nullopt;
    return Answer{}.give("leak", *leak);
}

}  // namespace ventfolio::calculators
