#pragma once

#include <map>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "sheets/printed_value.hpp"

namespace ventfolio {

/// What a template can name. A name that is declared but has nothing to say for this home is `Missing`: it may guard a
/// section (`{{#x}}…{{/x}}`), but may not be printed.
class TemplateData {
  public:
    struct Missing {};
    using Object = std::map<std::string, TemplateData, std::less<>>;
    using Items = std::vector<TemplateData>;

    TemplateData() : content_{Missing{}} {}
    TemplateData(bool flag) : content_{flag} {}
    TemplateData(PrintedValue value) : content_{std::move(value)} {}
    TemplateData(Object object) : content_{std::move(object)} {}
    TemplateData(Items items) : content_{std::move(items)} {}
    /// A group that this home does not have: missing, but its names are known, so that a template can be judged.
    static TemplateData absent(Object shape) {
        TemplateData data{std::move(shape)};
        data.absent_ = true;
        return data;
    }

    bool missing() const { return absent_ || std::holds_alternative<Missing>(content_); }
    const bool* flag() const { return std::get_if<bool>(&content_); }
    const PrintedValue* value() const { return std::get_if<PrintedValue>(&content_); }
    const Object* object() const { return std::get_if<Object>(&content_); }
    Object* object() { return std::get_if<Object>(&content_); }
    const Items* items() const { return std::get_if<Items>(&content_); }

  private:
    std::variant<Missing, bool, PrintedValue, Object, Items> content_;
    bool absent_ = false;
};

}  // namespace ventfolio
