#include "project/documents.hpp"

#include <algorithm>
#include <optional>
#include <regex>
#include <utility>

#include "project/files.hpp"

namespace ventfolio::project {
namespace {

constexpr std::string_view kFence = "```";

std::string_view without_indent(std::string_view line) {
    return line.substr(std::min(line.find_first_not_of(' '), line.size()));
}

/// The lines outside of fences, and an empty one for each other.
std::vector<std::string> running_text(std::string_view markdown) {
    std::vector<std::string> lines = lines_of(markdown);
    bool open = false;
    for (std::string& line : lines) {
        const bool fence = without_indent(line).starts_with(kFence);
        if (fence || open) line.clear();
        if (fence) open = !open;
    }
    return lines;
}

std::string trimmed(std::string text) {
    text.erase(0, std::min(text.find_first_not_of(' '), text.size()));
    text.erase(text.find_last_not_of(' ') + 1);
    return text;
}

}  // namespace

std::vector<Fence> fences(std::string_view markdown) {
    std::vector<Fence> blocks;
    std::optional<Fence> open;
    std::size_t indent = 0;
    for (const std::string& line : lines_of(markdown)) {
        const std::string_view bare = without_indent(line);
        if (open && bare == kFence) {
            blocks.push_back(*std::exchange(open, std::nullopt));
        } else if (open) {
            open->text += (line.size() > indent ? line.substr(indent) : "") + "\n";
        } else if (bare.starts_with(kFence)) {
            open = Fence{std::string{bare.substr(kFence.size())}, ""};
            indent = line.size() - bare.size();
        }
    }
    return blocks;
}

std::vector<std::string> fenced_blocks(std::string_view markdown, std::string_view language) {
    std::vector<std::string> blocks;
    for (Fence& fence : fences(markdown))
        if (fence.language == language) blocks.push_back(std::move(fence.text));
    return blocks;
}

std::string section(std::string_view markdown, std::string_view heading) {
    const std::string_view level = heading.substr(0, heading.find(' '));
    std::string text;
    for (const std::string& line : lines_of(markdown)) {
        const bool is_heading = line.starts_with('#') && line.find("# ") <= level.size() - 1;
        if (is_heading && !text.empty()) break;
        if (line == heading || !text.empty()) text += line + "\n";
    }
    return text;
}

std::vector<std::string> indented_code(std::string_view markdown) {
    std::vector<std::string> code;
    for (const std::string& line : running_text(markdown))
        if (line.starts_with("    ") && !trimmed(line).empty()) code.push_back(trimmed(line));
    return code;
}

std::vector<std::string> inline_code(std::string_view markdown) {
    std::string text;
    for (const std::string& line : running_text(markdown))
        text += line.starts_with("    ") ? std::string{"\n"} : trimmed(line) + "\n";
    const std::regex code{"`([^`]+)`"};
    std::vector<std::string> found;
    for (std::sregex_iterator at{text.begin(), text.end(), code}; at != std::sregex_iterator{}; ++at)
        found.push_back(std::regex_replace((*at)[1].str(), std::regex{"\n"}, " "));
    return found;
}

std::vector<std::string> shell_commands(std::string_view block) {
    std::vector<std::string> commands;
    std::string command;
    for (const std::string& line : lines_of(block)) {
        std::string words = trimmed(std::regex_replace(line, std::regex{" +# .*"}, ""));
        const bool goes_on = words.ends_with('\\');
        if (goes_on) words = trimmed(words.substr(0, words.size() - 1));
        command += (command.empty() ? "" : " ") + words;
        if (goes_on) continue;
        const std::regex joint{" *&& *"};
        for (std::sregex_token_iterator at{command.begin(), command.end(), joint, -1};
             at != std::sregex_token_iterator{}; ++at)
            if (at->length() > 0) commands.push_back(at->str());
        command.clear();
    }
    return commands;
}

}  // namespace ventfolio::project
