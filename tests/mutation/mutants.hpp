#pragma once

/// What stands in a copy of the source where mutants are planted: every planted place asks whether its mutant is alive.
/// Included before everything else while the copy is compiled; the project itself knows nothing of it.
namespace ventfolio::mutation {

inline constexpr int kMostMutants = 16384;
/// The one mutant that is alive; 0 for none, which is also the number of a mutant that does not exist.
inline int alive = 0;
/// Mutants whose place was passed since this was cleared last.
inline bool reached[kMostMutants];

inline bool is(int mutant) {
    reached[mutant] = true;
    return mutant != 0 && alive == mutant;
}

/// A number that a slip of the pen made another one.
template <typename Number>
Number number(int mutant, Number right, Number slipped) {
    return is(mutant) ? slipped : right;
}

/// A comparison with two mutants: at its limit the other way round, and turned round.
struct Pair {
    int boundary;
    int turned;
};
template <typename A, typename B>
bool less(Pair mutant, const A& a, const B& b) {
    if (is(mutant.boundary)) return a <= b;
    return is(mutant.turned) ? a >= b : a < b;
}
template <typename A, typename B>
bool less_equal(Pair mutant, const A& a, const B& b) {
    if (is(mutant.boundary)) return a < b;
    return is(mutant.turned) ? a > b : a <= b;
}
template <typename A, typename B>
bool greater(Pair mutant, const A& a, const B& b) {
    if (is(mutant.boundary)) return a >= b;
    return is(mutant.turned) ? a <= b : a > b;
}
template <typename A, typename B>
bool greater_equal(Pair mutant, const A& a, const B& b) {
    if (is(mutant.boundary)) return a > b;
    return is(mutant.turned) ? a < b : a >= b;
}
template <typename A, typename B>
bool equal(int mutant, const A& a, const B& b) {
    return is(mutant) ? a != b : a == b;
}
template <typename A, typename B>
bool not_equal(int mutant, const A& a, const B& b) {
    return is(mutant) ? a == b : a != b;
}

/// The project's own comparisons of two numbers, called by name: `right(a, b)`, at its limit the other way round as
/// `!right(b, a)`, turned round as `!right(a, b)`. The arguments follow: `Named{…}(a, b)`.
template <typename Right>
struct Named {
    Pair mutant;
    Right right;

    template <typename A, typename B>
    bool operator()(const A& a, const B& b) const {
        if (is(mutant.boundary)) return !right(b, a);
        return is(mutant.turned) ? !right(a, b) : right(a, b);
    }
};
template <typename Right>
Named(Pair, Right) -> Named<Right>;

/// A constant of a file or a header. A child of the test program has its own mutant, so it makes its constants again;
/// while no mutant is alive they are made at every use, which notes who uses them. References to it stay good.
template <typename Make>
const auto& kept(Make make) {
    static auto value = make();
    static int made_for = alive;
    if (made_for != alive || alive == 0) {
        value = make();
        made_for = alive;
    }
    return value;
}

}  // namespace ventfolio::mutation

#define VENTFOLIO_NAMED(boundary, turned, right)                                                       \
    ::ventfolio::mutation::Named {                                                                     \
        ::ventfolio::mutation::Pair{boundary, turned},                                                 \
            [](const auto& left_side, const auto& right_side) { return right(left_side, right_side); } \
    }
