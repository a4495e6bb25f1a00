#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace ventfolio {

/// One of the parts of a caseload that several runs share: "2/8" is the second of eight.
///
/// A home belongs to a part by its file's path as it was given, read as bytes: the number that the first eight
/// hexadecimal digits of the path's SHA-256 give, modulo the count of parts, plus one. This stays so in every version,
/// so each run of a caseload, on whatever machine, finds the same homes in the same part.
///
/// Example: sha256("abc") begins with ba7816bf, which is 3128432319, so the file "abc" is in part 16 of 16.
struct Shard {
    std::size_t number = 1;  ///< from 1 to `of`
    std::size_t of = 1;

    /// Reads "2/8"; nothing if that is no part: "0/8", "9/8", "2 of 8".
    static std::optional<Shard> parse(std::string_view text);
    bool holds(std::string_view file) const;
};

/// A name that cannot be used, and why. What is known of its cause never names a person.
struct UnusableName {
    std::string name;
    std::string reason;  ///< "cannot be read: Permission denied"
};

/// A message about a file without its name, which it begins with, for where the name stands beside it.
///
/// Example: without_name("a.yaml: cannot be read", "a.yaml") is "cannot be read".
std::string without_name(std::string_view message, std::string_view name);

/// The profiles of a caseload.
struct FoundHomes {
    std::vector<std::string> files;  ///< each once, in the order in which they were given
    std::vector<UnusableName> unusable;
};

/// Finds the profiles that these names mean:
///   - a folder: every *.yaml below it, sorted by the bytes of the path. What begins with a dot is left out, and so are
///     packets that were printed there, whose profile is a copy. Links below it are not followed: they could lead out
///     of it, or to a home that is there already. A folder without any profile cannot be used;
///   - "-": the names in `listed`, one a line or, if there is a NUL in it, each with a NUL behind it;
///   - anything else: itself. Whether it can be read is seen when it is read.
///
/// Example: {"homes"} with homes/b.yaml and homes/a.yaml is {"homes/a.yaml", "homes/b.yaml"}.
FoundHomes find_homes(std::span<const std::string> names, std::string_view listed = {});

}  // namespace ventfolio
