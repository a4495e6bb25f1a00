#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "layout/blocks.hpp"

namespace ventfolio {

/// Bytes that a code of version 12 holds at error correction level M, which bears a loss of about 15 %. Source: ISO/IEC
/// 18004, table of capacities (as quoted), and libqrencode 4.1.1. More would need modules of less than half a
/// millimetre on a card.
inline constexpr std::size_t kCodeBytesMost = 287;
/// Modules of white that must surround a code. Source: ISO/IEC 18004 (as quoted).
inline constexpr int kQuietModules = 4;

/// What a code says for a list: the words of each item on a line of its own, most urgent first as written, with plain
/// blanks. It is text and no address: a phone shows it without a network.
std::string code_text(const Block& list);

/// A QR code (ISO/IEC 18004) of UTF-8 text as one filled path in a square of the given side, quiet zone included. The
/// smallest version that holds the text, level M. Nothing if the text is empty or longer than kCodeBytesMost.
std::optional<Frame> qr_code(const std::string& text, double side, LayoutContext& context);

}  // namespace ventfolio
