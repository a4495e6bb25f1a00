#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/furniture.hpp"
#include "layout/ladder.hpp"
#include "layout/lay_out.hpp"
#include "layout/section_rows.hpp"
#include "layout/two_columns.hpp"

namespace ventfolio {

/// What is placed as one: the pieces of a section, or of sections side by side.
struct Row {
    Pieces pieces;
    PageStart start = PageStart::anywhere;
    bool keep_together = false;  ///< on one page if any page can hold it
    double below = 0;            ///< height of what must follow on the same page, if any page can hold both
    double begin_below = 0;      ///< and of how much of it at least, if none can
};

/// Places rows below one another on the pages of a sheet, each with its header and footer.
///
/// What has been placed is never moved to another page, taken back or left out. Everything on a page stands between
/// header and footer; only a part that is taller than a whole page reaches beyond, and that is a finding.
class Pager {
  public:
    Pager(const Document& document, const Furniture& furniture, Paper paper, LayoutContext& context);

    void place(Row row);
    /// Fills two columns; what does not fit goes on in two columns on the next page.
    void place_columns(ColumnItems items, double width, PageStart start);

    /// A section `.ladder`, on as many pages as it takes; `foot` stays free below its last part.
    void place_ladder(const Section& section, double width, double foot);

    /// The pages; nothing may be placed afterwards. A document without blocks gives one page.
    PlacedSheet finish();

    std::size_t page_count() const { return pages_.size(); }
    /// What stands beyond the first `pages`, for the message about the page budget.
    struct Overrun {
        std::string field;  ///< the first one there
        double height = 0;
    };
    Overrun beyond(std::size_t pages) const;

  private:
    struct Placed {
        Frame frame;
        double gap = 0;
        bool row_start = false;  ///< its gap may grow
        std::string field;
    };
    struct Page {
        std::vector<Placed> placed;
        double used = 0;
    };

    bool page_has_content() const { return !current_.placed.empty(); }
    double header_height(std::size_t page);
    double body_top(std::size_t page);
    double body_height(std::size_t page);
    double room_left() { return body_height(pages_.size()) - current_.used; }

    bool fits(const Pieces& pieces, double gap);
    bool room_for_start(const Pieces& pieces, double gap);
    std::size_t columns_that_fit(const ColumnItems& items, double gap);
    void put(Piece piece, double gap, bool row_start);
    void put_all(Pieces pieces, double gap);
    void put_broken(Pieces pieces);
    void report_too_tall(const Piece& piece, double excess);
    void next_page();
    void close_page();

    PlacedPage finished_page(std::size_t number);
    double spread(const Page& page, double room);
    void put_furniture(PlacedPage& placed, std::size_t number);

    const Document& document_;
    const Furniture& furniture_;
    LayoutContext& context_;
    PageBox box_;
    bool poster_;  ///< the name of the first page's header is read across the room
    Frame footer_;
    std::optional<double> first_header_;  ///< height
    std::optional<double> later_header_;  ///< height, of all pages but the first
    std::vector<Page> pages_;
    Page current_;
};

}  // namespace ventfolio
