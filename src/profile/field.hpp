#pragma once

#include <array>
#include <cassert>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "profile/audience.hpp"
#include "profile/place.hpp"
#include "units/calendar.hpp"
#include "units/measure.hpp"
#include "units/print.hpp"

namespace ventfolio {

/// What the profile says about one field. Absent, unknown, none, off and a value of 0 are five different things.
enum class FieldState : std::uint8_t {
    absent,   ///< the key is not there
    unknown,  ///< written as `unknown`: somebody looked and does not know
    none,     ///< written as `none`: there is none
    off,      ///< written as `off`: an alarm that is switched off
    given,
};

/// How much depends on a field.
enum class Grade : std::uint8_t {
    optional,   ///< missing: the line is left out
    expected,   ///< missing: a warning, and the paper prints NOT RECORDED with whom to ask
    essential,  ///< missing: nothing is printed
};

/// From one measure to another, both as written.
struct MeasureRange {
    Measure from;
    Measure to;
    friend bool operator==(const MeasureRange&, const MeasureRange&) = default;
};

/// One of a fixed list of words.
struct Choice {
    std::size_t index = 0;
    std::string_view word;
    friend bool operator==(const Choice& a, const Choice& b) { return a.word == b.word; }
};

/// "R2", or "R2a" for a correction without a new order.
struct Revision {
    int number = 1;
    std::string letter;
    static std::optional<Revision> parse(std::string_view text);
    std::string text() const;
    friend auto operator<=>(const Revision&, const Revision&) = default;
};

using TextList = std::vector<std::string>;
using Value = std::variant<std::monostate, std::string, bool, Date, Moment, ClockSpan, Interval, Revision, Measure,
                           MeasureRange, Choice, TextList>;

/// What kind of value a field holds; decides how it is read, explained and printed.
enum class ValueKind : std::uint8_t {
    text,
    flag,
    date,
    moment,
    clock_span,
    interval,
    revision,
    measure,
    range,
    choice,
    text_list,
};

/// The words of an enumeration in the order of its values, as they are written in a profile. Specialise beside the
/// enum.
template <class E>
struct Words;

/// A text with a shape of its own.
enum class TextShape : std::uint8_t { free, record_number, phone, identifier };

/// All that is declared about a field, in one place: the `describe` of its struct.
struct FieldInfo {
    std::string_view key = {};
    Grade grade = Grade::optional;
    Audiences on = nobody;
    std::string_view help = {};     ///< one line, for the starter file, the schema and `explain`
    std::string_view units = {};    ///< accepted symbols with blanks between; empty: all of the dimension
    std::optional<double> least{};  ///< in the first accepted unit; outside: refused as a slip of typing
    std::optional<double> most{};
    Zeros zeros = Zeros::drop;
    std::string_view ask = {};  ///< role to ask when it is not recorded: key of `roles` in words.yaml
    bool none = false;          ///< `none` is an answer
    bool off = false;           ///< `off` is an answer
    bool setting = false;       ///< dialled on a machine: printed as written, compared exactly, never converted
    TextShape shape = TextShape::free;
    std::size_t longest = 400;      ///< most letters of a text
    std::string_view example = {};  ///< as it would stand in YAML
};

/// The part of a field that does not depend on its type.
class FieldBase {
  public:
    FieldState state = FieldState::absent;
    Place place;  ///< of the value; of the key while there is no value

    virtual ~FieldBase();
    virtual ValueKind kind() const = 0;
    virtual std::optional<Dimension> dimension() const { return std::nullopt; }
    virtual std::span<const std::string_view> choices() const { return {}; }

    const Value& value() const { return value_; }
    void give(Value value, Place where) {
        value_ = std::move(value);
        state = FieldState::given;
        place = where;
    }
    bool given() const { return state == FieldState::given; }
    explicit operator bool() const { return given(); }
    bool is_none() const { return state == FieldState::none; }
    bool is_off() const { return state == FieldState::off; }
    /// Neither a value nor an answer such as `none` or `off`.
    bool missing() const { return state == FieldState::absent || state == FieldState::unknown; }

  protected:
    // Defined in field.cpp: a profile holds hundreds of fields, and each file that copies one would compile them all.
    FieldBase();
    FieldBase(const FieldBase&);
    FieldBase(FieldBase&&) noexcept;
    FieldBase& operator=(const FieldBase&);
    FieldBase& operator=(FieldBase&&) noexcept;

    template <class T>
    const T& stored() const {
        assert(std::holds_alternative<T>(value_));
        return std::get<T>(value_);
    }

  private:
    Value value_;
};

/// A range field of one dimension: `{from: 6.2 L/min, to: 8 L/min}`.
template <Dimension D>
struct Range {};

namespace detail {
template <class T>
struct KindOf;
template <>
struct KindOf<std::string> {
    static constexpr auto kind = ValueKind::text;
};
template <>
struct KindOf<bool> {
    static constexpr auto kind = ValueKind::flag;
};
template <>
struct KindOf<Date> {
    static constexpr auto kind = ValueKind::date;
};
template <>
struct KindOf<Moment> {
    static constexpr auto kind = ValueKind::moment;
};
template <>
struct KindOf<ClockSpan> {
    static constexpr auto kind = ValueKind::clock_span;
};
template <>
struct KindOf<Interval> {
    static constexpr auto kind = ValueKind::interval;
};
template <>
struct KindOf<Revision> {
    static constexpr auto kind = ValueKind::revision;
};
template <>
struct KindOf<TextList> {
    static constexpr auto kind = ValueKind::text_list;
};
}  // namespace detail

/// A field that holds a text, a flag, a date and the like.
template <class T>
class Field final : public FieldBase {
  public:
    ValueKind kind() const override {
        if constexpr (std::is_enum_v<T>)
            return ValueKind::choice;
        else
            return detail::KindOf<T>::kind;
    }
    std::span<const std::string_view> choices() const override {
        if constexpr (std::is_enum_v<T>)
            return Words<T>::words;
        else
            return {};
    }
    /// Only when given().
    decltype(auto) operator*() const {
        if constexpr (std::is_enum_v<T>)
            return static_cast<T>(stored<Choice>().index);
        else
            return stored<T>();
    }
    const T* operator->() const requires(!std::is_enum_v<T>) { return &stored<T>(); }
    /// The value is given and is this one.
    bool is(const T& other) const { return given() && **this == other; }
    T or_else(T fallback) const { return given() ? T(**this) : fallback; }
};

/// A field that holds a quantity: `high_pressure: 35 cmH2O`.
template <Dimension D>
class Field<Quantity<D>> final : public FieldBase {
  public:
    ValueKind kind() const override { return ValueKind::measure; }
    std::optional<Dimension> dimension() const override { return D; }
    Quantity<D> operator*() const { return measure().template as<D>(); }
    const Measure& measure() const { return stored<Measure>(); }
};

/// A field that holds a range of a quantity.
template <Dimension D>
class Field<Range<D>> final : public FieldBase {
  public:
    ValueKind kind() const override { return ValueKind::range; }
    std::optional<Dimension> dimension() const override { return D; }
    const MeasureRange& range() const { return stored<MeasureRange>(); }
    Quantity<D> low() const { return range().from.template as<D>(); }
    Quantity<D> high() const { return range().to.template as<D>(); }
    Quantity<D> middle() const { return (low() + high()) / 2; }
};

class Visitor;

/// A map below a key: `neck_tube: {…}`. Absent, `none` and `unknown` are told apart as for fields.
class GroupBase {
  public:
    FieldState state = FieldState::absent;
    Place place;

    virtual ~GroupBase() = default;
    virtual void describe(Visitor& visitor) = 0;
    bool given() const { return state == FieldState::given; }
    explicit operator bool() const { return given(); }
    bool is_none() const { return state == FieldState::none; }

  protected:
    GroupBase() = default;
    GroupBase(const GroupBase&) = default;
    GroupBase(GroupBase&&) noexcept = default;
    GroupBase& operator=(const GroupBase&) = default;
    GroupBase& operator=(GroupBase&&) noexcept = default;
};

template <class T>
class Group final : public GroupBase {
  public:
    void describe(Visitor& visitor) override { value_.describe(visitor); }
    const T& operator*() const { return value_; }
    const T* operator->() const { return &value_; }
    T* operator->() { return &value_; }

  private:
    T value_;
};

/// A sequence of maps below a key: `prescriptions: [{…}, {…}]`.
class ListBase {
  public:
    FieldState state = FieldState::absent;
    Place place;

    virtual ~ListBase() = default;
    virtual std::size_t size() const = 0;
    virtual void add(Place where) = 0;
    virtual Place place_of(std::size_t index) const = 0;
    virtual void describe(std::size_t index, Visitor& visitor) = 0;
    /// Describes one empty element, for schema, starter file and field list.
    virtual void describe_element(Visitor& visitor) = 0;
    bool given() const { return state == FieldState::given; }
    bool is_none() const { return state == FieldState::none; }

  protected:
    ListBase() = default;
    ListBase(const ListBase&) = default;
    ListBase(ListBase&&) noexcept = default;
    ListBase& operator=(const ListBase&) = default;
    ListBase& operator=(ListBase&&) noexcept = default;
};

template <class T>
class List final : public ListBase {
  public:
    std::size_t size() const override { return items_.size(); }
    void add(Place where) override {
        items_.emplace_back();
        places_.push_back(where);
    }
    Place place_of(std::size_t index) const override { return places_[index]; }
    void describe(std::size_t index, Visitor& visitor) override { items_[index].describe(visitor); }
    void describe_element(Visitor& visitor) override {
        T empty;
        empty.describe(visitor);
    }
    bool empty() const { return items_.empty(); }
    const T& operator[](std::size_t index) const { return items_[index]; }
    auto begin() const { return items_.begin(); }
    auto end() const { return items_.end(); }

  private:
    std::vector<T> items_;
    std::vector<Place> places_;
};

/// Walks over everything a profile can hold. A struct's `describe` names each of its fields once; reader, schema,
/// starter file, template data and comparison are visitors.
class Visitor {
  public:
    virtual ~Visitor() = default;
    virtual void leaf(const FieldInfo& info, FieldBase& field) = 0;
    virtual void group(const FieldInfo& info, GroupBase& group) = 0;
    virtual void list(const FieldInfo& info, ListBase& list) = 0;
};

/// A visitor that only looks.
class ConstVisitor {
  public:
    virtual ~ConstVisitor() = default;
    virtual void leaf(const FieldInfo& info, const FieldBase& field) = 0;
    virtual void group(const FieldInfo& info, const GroupBase& group) = 0;
    virtual void list(const FieldInfo& info, const ListBase& list) = 0;
};

/// Shows a profile, or part of one, to a visitor that only looks. `describe` serves readers and writers alike, so it is
/// not const; this is the one place that promises on its behalf.
class ConstView final : public Visitor {
  public:
    explicit ConstView(ConstVisitor& visitor) : visitor_{visitor} {}
    void leaf(const FieldInfo& info, FieldBase& field) override { visitor_.leaf(info, field); }
    void group(const FieldInfo& info, GroupBase& group) override { visitor_.group(info, group); }
    void list(const FieldInfo& info, ListBase& list) override { visitor_.list(info, list); }

  private:
    ConstVisitor& visitor_;
};

template <class T>
void visit(const T& described, ConstVisitor& visitor) {
    ConstView view{visitor};
    const_cast<T&>(described).describe(view);
}
inline void visit(const GroupBase& group, ConstVisitor& visitor) {
    ConstView view{visitor};
    const_cast<GroupBase&>(group).describe(view);
}
inline void visit(const ListBase& list, std::size_t index, ConstVisitor& visitor) {
    ConstView view{visitor};
    const_cast<ListBase&>(list).describe(index, view);
}

}  // namespace ventfolio
