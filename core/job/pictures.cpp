#include "core/job/pictures.h"

namespace boltwright {

namespace {

template <class Use>
void forEachPicture(Job &job, const Use &use) {
    for (Cloth &cloth : job.cloths) {
        if (cloth.look && cloth.look->swatch) use(cloth.look->swatch->picture);
        for (Remnant &remnant : cloth.remnants)
            if (remnant.photo) use(remnant.photo->picture);
    }
}

/// What leads up and out of the folder is named whole: beside a job that moves, it would soon lead elsewhere.
std::string namedFrom(const std::filesystem::path &folder, const std::filesystem::path &file) {
    if (folder.empty()) return file.string();
    const auto relative = file.lexically_normal().lexically_relative(folder.lexically_normal());
    return relative.empty() || *relative.begin() == ".." ? file.string() : relative.generic_string();
}

} // namespace

std::filesystem::path fileOf(const PictureSource &picture) {
    if (picture.file.empty()) return {};
    const std::filesystem::path file(picture.file);
    return file.is_absolute() || picture.folder.empty() ? file : std::filesystem::path(picture.folder) / file;
}

void beginPicturesAt(Job &job, const std::filesystem::path &folder) {
    forEachPicture(job, [&](PictureSource &picture) { picture.folder = folder.string(); });
}

void movePictures(Job &job, const std::filesystem::path &folder) {
    forEachPicture(job, [&](PictureSource &picture) {
        // As it stands where nothing moves, so that what was read is written back the same.
        if (!picture.file.empty() && !picture.folder.empty() && std::filesystem::path(picture.folder) != folder)
            picture.file = namedFrom(folder, fileOf(picture));
        picture.folder = folder.string();
    });
}

PictureSource pictureInFile(const std::filesystem::path &file, const std::filesystem::path &folder) {
    PictureSource picture;
    picture.file = namedFrom(folder, file);
    picture.folder = folder.string();
    return picture;
}

} // namespace boltwright
