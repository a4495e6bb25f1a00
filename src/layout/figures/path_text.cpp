#include "layout/figures/path_text.hpp"

#include <charconv>
#include <stdexcept>
#include <string>

namespace ventfolio {
namespace {

class Commands {
  public:
    Commands(std::string_view text, double scale) : text_{text}, scale_{scale} {}

    bool next(char& command) {
        skip_blanks();
        if (text_.empty()) return false;
        command = text_.front();
        text_.remove_prefix(1);
        return true;
    }
    Point point() {
        const double x = number();
        return {x, number()};
    }

  private:
    void skip_blanks() { text_.remove_prefix(std::min(text_.find_first_not_of(' '), text_.size())); }
    double number() {
        skip_blanks();
        double value = 0;
        const auto [end, error] = std::from_chars(text_.data(), text_.data() + text_.size(), value);
        if (error != std::errc{}) throw std::logic_error{"a drawing has a number too few"};
        text_.remove_prefix(static_cast<std::size_t>(end - text_.data()));
        return value * scale_;
    }

    std::string_view text_;
    double scale_;
};

Point between(Point from, Point to, double share) {
    return {from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share};
}

}  // namespace

Path path_from(std::string_view text, double scale) {
    using Kind = Path::Segment::Kind;
    Path path;
    Commands commands{text, scale};
    Point at;
    char command = 0;
    while (commands.next(command)) {
        switch (command) {
            case 'M':
                path.segments.push_back({Kind::move, at = commands.point(), {}, {}});
                break;
            case 'L':
                path.segments.push_back({Kind::line, at = commands.point(), {}, {}});
                break;
            case 'Q': {
                // A quadratic curve as a cubic one, which is all that PDF has.
                const Point control = commands.point();
                const Point end = commands.point();
                path.segments.push_back(
                    {Kind::curve, between(at, control, 2.0 / 3), between(end, control, 2.0 / 3), end});
                at = end;
                break;
            }
            case 'C': {
                const Point a = commands.point();
                const Point b = commands.point();
                const Point end = commands.point();
                path.segments.push_back({Kind::curve, a, b, end});
                at = end;
                break;
            }
            case 'Z':
                path.segments.push_back({Kind::close, {}, {}, {}});
                break;
            default:
                throw std::logic_error{"a drawing has the unknown command " + std::string(1, command)};
        }
    }
    return path;
}

}  // namespace ventfolio
