#pragma once

#include "core/base/kept.h"
#include "core/geometry/polygon.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

/// What a job says of pictures. They are for the eye alone: nothing is ever decided by what stands in one.
namespace boltwright {

/// A picture file's bytes, base64 as RFC 4648 writes it; shared by all copies of the job that holds it.
class PictureBytes {
public:
    PictureBytes() = default;
    explicit PictureBytes(std::string base64)
        : m_text(base64.empty() ? nullptr : std::make_shared<const std::string>(std::move(base64))) {}
    bool isEmpty() const { return !m_text; }
    const std::string &base64() const {
        static const std::string none;
        return m_text ? *m_text : none;
    }
    friend bool operator==(const PictureBytes &a, const PictureBytes &b) {
        return a.m_text == b.m_text || a.base64() == b.base64();
    }

private:
    std::shared_ptr<const std::string> m_text;
};

/// A picture of its own beside the job, or within it: one of the two is there.
struct PictureSource {
    std::string file;   ///< absolute, or as seen from the job's folder
    PictureBytes data;  ///< the picture itself
    std::string folder; ///< the job's, where `file` begins; not written, and no difference between two jobs

    bool isEmpty() const { return file.empty() && data.isEmpty(); }
    friend bool operator==(const PictureSource &a, const PictureSource &b) {
        return a.file == b.file && a.data == b.data;
    }
};

/// A place in a picture: to the right as a share of its width, downwards as a share of its height. Outside 0 to 1:
/// beyond its edge.
struct PicturePoint {
    double right = 0, down = 0;
    bool operator==(const PicturePoint &) const = default;
};

/// The user's own picture of one repeat.
struct Swatch {
    PictureSource picture;
    /// The repeat's corners as its top points up: upper left, upper right, lower right, lower left.
    std::vector<PicturePoint> corners = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
    PicturePoint motif = {0.5, 0.5}; ///< where the motif's middle is, as shares of the repeat between those corners
    Kept kept;
    bool operator==(const Swatch &) const = default;
};

/// A band of colour in the repeat.
struct Band {
    Length from; ///< from the motif's middle to the band's nearer edge: across from the left, or up the roll
    Length width;
    std::string colour; ///< "#rrggbb"
    Kept kept;
    bool operator==(const Band &) const = default;
};

enum class Figure { Stripes, Spots, Sprig };

/// What a cloth looks like, beyond where its motifs sit.
struct ClothLook {
    std::string ground, colour;   ///< "#rrggbb" of the cloth and of what is on it; empty: one of the program's own
    std::optional<Figure> figure; ///< none: stripes where the pattern has one repeat, a sprig where it has two
    std::vector<Band> bands;      ///< of stripes; none: three in `colour`
    std::optional<Length> size;   ///< how wide spot or sprig is; none: as the repeat has room
    std::optional<Swatch> swatch; ///< drawn in place of all that
    Kept kept;
    bool operator==(const ClothLook &) const = default;
};

/// A length measured with a tape on the cloth itself, between two places that can be found in its photograph.
struct TapedLength {
    ClothPoint from, to;
    Length taped;
    Kept kept;
    bool operator==(const TapedLength &) const = default;
};

/// The photograph that a remnant was measured in: four places of the picture and where they lie in the remnant's own
/// frame, which together say where every other lies.
struct RemnantPhoto {
    PictureSource picture;
    std::vector<PicturePoint> points;
    ClothRing at;
    std::vector<TapedLength> taped; ///< what confirms its scale (see core/rules/photo_scale.h)
    Kept kept;
    bool operator==(const RemnantPhoto &) const = default;
};

} // namespace boltwright
