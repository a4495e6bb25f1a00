#include "markup/tree_builder.hpp"

#include <algorithm>
#include <new>

#include "units/ascii.hpp"

namespace ventfolio {

TreeBuilder::TreeBuilder(const Expansion& from, std::string_view prefix, Faults& faults)
    : from_{from},
      faults_{faults},
      shift_{prefix.size()},
      markdown_{std::string{prefix} + from.markdown()},
      position_{markdown_},
      covered_(markdown_.size(), false) {
    frames_.emplace_back().role = Frame::Role::document;
}

template <typename Call>
int TreeBuilder::guarded(void* self, Call call) {
    TreeBuilder& builder = *static_cast<TreeBuilder*>(self);
    try {
        call(builder);
    } catch (...) {
        builder.error_ = std::current_exception();
    }
    return builder.error_ || builder.too_large_ ? 1 : 0;
}

std::vector<Block> TreeBuilder::build() {
    MD_PARSER parser{};
    // Raw HTML stays on so that it is seen, and can be refused.
    parser.flags = MD_FLAG_TABLES | MD_FLAG_TASKLISTS | MD_FLAG_NOINDENTEDCODEBLOCKS;
    parser.enter_block = [](MD_BLOCKTYPE type, void* detail, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.enter(type, detail); });
    };
    parser.leave_block = [](MD_BLOCKTYPE type, void*, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.leave(type); });
    };
    parser.enter_span = [](MD_SPANTYPE type, void* detail, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.enter(type, detail); });
    };
    parser.leave_span = [](MD_SPANTYPE type, void*, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.leave(type); });
    };
    parser.text = [](MD_TEXTTYPE type, const MD_CHAR* words, MD_SIZE size, void* self) {
        return guarded(self, [&](TreeBuilder& builder) { builder.text(type, words, size); });
    };
    const int status = md_parse(markdown_.data(), static_cast<MD_SIZE>(markdown_.size()), &parser, this);
    if (error_) std::rethrow_exception(error_);
    if (too_large_) {
        const std::size_t at = position_.next_line();
        refuse("template-too-large", at, at + 1,
               "Lists or quotes are nested too deeply, or a table has more than 40 columns.", "too much for a page");
        return {};
    }
    if (status != 0) throw std::bad_alloc{};
    check_next_used(frames_.front());
    if (faults_.empty()) check_nothing_lost();
    return std::move(frames_.front().block.children);
}

void TreeBuilder::refuse(std::string_view rule, std::size_t begin, std::size_t end, std::string message,
                         std::string label) {
    const auto back = [&](std::size_t offset) { return offset < shift_ ? 0 : offset - shift_; };
    faults_.refuse({rule, from_.span(back(begin), back(end)), std::move(message), std::move(label)});
}

void TreeBuilder::not_allowed(std::size_t begin, std::size_t end, std::string message, std::string label) {
    refuse("template-markdown-not-allowed", begin, end, std::move(message), std::move(label));
}

std::size_t TreeBuilder::template_line(std::size_t offset) const {
    return from_.line(offset < shift_ ? 0 : offset - shift_);
}

/// The last guard: every letter, figure and value of the Markdown must have been handed out. Markdown itself drops
/// cells beyond the last column and lines like `[name]: words`.
void TreeBuilder::check_nothing_lost() {
    for (std::size_t at = shift_; at < markdown_.size(); ++at) {
        const char c = markdown_[at];
        const bool prints = static_cast<unsigned char>(c) >= 0x80 || is_letter_or_digit(c);
        if (!prints || covered_[at]) continue;
        const std::size_t begin = position_.line_begin(at);
        const std::string_view before = std::string_view{markdown_}.substr(begin, at - begin);
        const std::size_t number_end = std::min(markdown_.find_first_not_of("0123456789", at), markdown_.size());
        const bool number = before.find_first_not_of(" >-*+.)0123456789") == before.npos && number_end > at &&
                            number_end < markdown_.size() &&
                            (markdown_[number_end] == '.' || markdown_[number_end] == ')');
        if (number) {
            at = number_end;
            continue;
        }
        const std::size_t end = position_.line_end(at);
        refuse("template-words-lost", at, end, "Markdown would leave this out of the paper.",
               "too many cells in this row, or a line like [name]: words");
        at = end;
    }
}

}  // namespace ventfolio
