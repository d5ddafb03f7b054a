#pragma once

#include "core/job/job.h"

#include <filesystem>

/// Where the pictures of a job are looked for.
namespace boltwright {

/// The picture's file; empty: it is within the job.
std::filesystem::path fileOf(const PictureSource &picture);

/// Names of picture files that are not absolute begin in that folder.
void beginPicturesAt(Job &job, const std::filesystem::path &folder);

/// The same files, named as seen from another folder: as they lie below it, else absolute.
void movePictures(Job &job, const std::filesystem::path &folder);

/// The picture as the job in `folder` names its file (absolute).
PictureSource pictureInFile(const std::filesystem::path &file, const std::filesystem::path &folder);

} // namespace boltwright
