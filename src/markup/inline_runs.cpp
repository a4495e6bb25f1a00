#include "markup/inline_runs.hpp"

#include <algorithm>

#include "units/text.hpp"

namespace ventfolio {
namespace {

std::size_t flat_size(const InlineRun& run) { return run.piece.kind == Inline::Kind::text ? run.piece.text.size() : 1; }

bool is_text(const Inline& piece) { return piece.kind == Inline::Kind::text; }

/// Adds words to what is there: joined if they are alike, and with one blank where several come together.
void append_words(Inlines& out, const Inline& words) {
    for (const char c : words.text) {
        const bool joins = !out.empty() && is_text(out.back()) && out.back().strong == words.strong;
        const bool after_blank = out.empty() || out.back().kind == Inline::Kind::line_break ||
                                 (is_text(out.back()) && out.back().text.ends_with(' '));
        if (c == ' ' && after_blank) continue;
        if (!joins) {
            out.push_back(words);
            out.back().text.clear();
        }
        if (c != ' ' && trimmed(out.back().text).empty()) out.back().line = words.line;
        out.back().text += c;
    }
}

void trim_end(Inlines& out) {
    while (!out.empty() && is_text(out.back()) && out.back().text.ends_with(' ')) {
        out.back().text.pop_back();
        if (out.back().text.empty()) out.pop_back();
    }
}

}  // namespace

std::string InlineRuns::flat() const {
    std::string text;
    for (const InlineRun& run : runs_) {
        if (!is_text(run.piece)) {
            text += kObject;
            continue;
        }
        text += run.piece.text;
        if (run.escaped && !run.piece.text.empty()) text[text.size() - run.piece.text.size()] = kEscaped;
    }
    return text;
}

InlineRuns InlineRuns::part(std::size_t begin, std::size_t end) const {
    InlineRuns taken;
    std::size_t at = 0;
    for (const InlineRun& run : runs_) {
        const std::size_t size = flat_size(run);
        const std::size_t from = std::clamp(begin, at, at + size) - at;
        const std::size_t to = std::clamp(end, at, at + size) - at;
        at += size;
        if (from >= to) continue;
        InlineRun piece = run;
        if (is_text(run.piece)) piece.piece.text = run.piece.text.substr(from, to - from);
        if (run.follows) piece.offset += from;
        piece.escaped = run.escaped && from == 0;
        taken.add(std::move(piece));
    }
    return taken;
}

std::size_t InlineRuns::offset(std::size_t at) const {
    std::size_t passed = 0;
    for (const InlineRun& run : runs_) {
        const std::size_t size = flat_size(run);
        if (at < passed + size) return run.offset + (run.follows ? at - passed : 0);
        passed += size;
    }
    return runs_.empty() ? 0 : runs_.back().offset;
}

Inlines InlineRuns::joined() const {
    Inlines out;
    for (const InlineRun& run : runs_) {
        if (run.piece.kind == Inline::Kind::line_break) trim_end(out);
        if (is_text(run.piece))
            append_words(out, run.piece);
        else
            out.push_back(run.piece);
    }
    trim_end(out);
    return out;
}

}  // namespace ventfolio
