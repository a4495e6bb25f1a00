#include "pdf/metadata.hpp"

#include <fmt/format.h>

#include "units/text.hpp"

namespace ventfolio {
namespace {

std::string in_xml(std::string_view text) {
    std::string safe = with_replaced(std::string{text}, "&", "&amp;");
    safe = with_replaced(std::move(safe), "<", "&lt;");
    return with_replaced(std::move(safe), ">", "&gt;");
}

}  // namespace

std::string metadata(std::string_view title, std::string_view language) {
    return fmt::format(
        "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
        "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\" "
        "xmlns:dc=\"http://purl.org/dc/elements/1.1/\">\n"
        "<rdf:Description rdf:about=\"\">\n"
        "<dc:format>application/pdf</dc:format>\n"
        "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{}</rdf:li></rdf:Alt></dc:title>\n"
        "<dc:language><rdf:Bag><rdf:li>{}</rdf:li></rdf:Bag></dc:language>\n"
        "</rdf:Description>\n</rdf:RDF>\n<?xpacket end=\"r\"?>\n",
        in_xml(title), in_xml(language));
}

}  // namespace ventfolio
