#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "layout/drawing.hpp"
#include "pdf/write_pdf.hpp"

/// Placed drawings to try the writer with.
namespace ventfolio::trial {

/// A line of text, kerned as the layout kerns it.
PlacedItem line(std::string_view utf8, double x, double y, double size, Face face = Face::regular,
                Ink ink = Ink::black);
PlacedItem without_kerns(PlacedItem text);
PlacedItem box(double x, double y, double width, double height, double stroke, bool filled, Ink ink = Ink::black);
PlacedItem rule(Point from, Point to, double stroke, Ink ink = Ink::black);
PlacedItem path(std::vector<Path::Segment> segments, double stroke, bool filled, Ink ink = Ink::black);

PlacedPage page(double width, double height, std::vector<PlacedItem> items);
PlacedSheet sheet(std::string title, std::vector<PlacedPage> pages);
/// The bytes of a document of one sheet with one page.
std::string one_page(PlacedPage page);
/// Two sheets with every kind of item.
std::string sample();

}  // namespace ventfolio::trial
