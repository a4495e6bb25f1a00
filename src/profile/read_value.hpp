#pragma once

#include "profile/value_remark.hpp"

namespace ventfolio {

/// Reads the text of a scalar as the kind of value that a field holds. `plain`: it stands without quotation marks.
/// Ranges and lists of texts are not scalars: read their parts one by one.
ValueOrRemark read_value(std::string_view text, bool plain, const FieldInfo& info, const FieldBase& field);

/// A text of a field or of one item of its list: length, characters and shape.
ValueOrRemark read_text(std::string_view text, bool plain, const FieldInfo& info);

}  // namespace ventfolio
