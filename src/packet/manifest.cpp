#include "packet/manifest.hpp"

#include <nlohmann/json.hpp>

namespace ventfolio {

std::string manifest_json(const Manifest& manifest) {
    using Json = nlohmann::ordered_json;
    Json sheets = Json::array();
    for (const Manifest::Sheet& sheet : manifest.sheets) {
        sheets.push_back({{"name", sheet.name},
                          {"place", sheet.place},
                          {"code", sheet.code},
                          {"revision", manifest.revision},
                          {"effective", manifest.effective},
                          {"pages", sheet.pages},
                          {"state", "printed"},
                          {"file", sheet.file}});
    }
    const Json root{{"record_number", manifest.record_number},
                    {"revision", manifest.revision},
                    {"effective", manifest.effective},
                    {"printed_on", manifest.printed_on},
                    {"sheets", std::move(sheets)}};
    return root.dump(2) + "\n";
}

}  // namespace ventfolio
