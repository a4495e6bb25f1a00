#include "pdf/pictures.hpp"

namespace ventfolio {
namespace {

HPDF_Dict embed(HaruDocument& document, const Picture& picture) {
    const HPDF_Dict image = document.new_stream(picture.grey);
    document.add_name(image, "Type", "XObject");
    document.add_name(image, "Subtype", "Image");
    document.add_number(image, "Width", static_cast<double>(picture.width));
    document.add_number(image, "Height", static_cast<double>(picture.height));
    document.add_name(image, "ColorSpace", "DeviceGray");
    document.add_number(image, "BitsPerComponent", 8);
    return image;
}

}  // namespace

PictureNames EmbeddedPictures::names_on(HPDF_Page page, const PlacedPage& placed) {
    PictureNames names;
    for (const PlacedItem& item : placed.items) {
        if (item.kind != PlacedItem::Kind::picture) continue;
        const Picture* picture = item.picture.picture.get();
        HPDF_Dict& image = embedded_[picture];
        if (image == nullptr) image = embed(document_, *picture);
        if (std::string& name = names[picture]; name.empty()) name = document_.picture_name_on(page, image);
    }
    return names;
}

}  // namespace ventfolio
