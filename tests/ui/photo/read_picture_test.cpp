#include "ui/photo/read_picture.h"

#include <QBuffer>
#include <QDir>
#include <QFile>
#include <QPainter>
#include <QTemporaryDir>

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

QByteArray encoded(const QImage &image, const char *format) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, format);
    return bytes;
}

QImage plain(QSize size) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(QColor(120, 90, 60));
    return image;
}

quint32 crcOf(const QByteArray &bytes) { // as the PNG standard (ISO/IEC 15948, annex D) says
    quint32 crc = 0xFFFFFFFFU;
    for (const char byte : bytes) {
        crc ^= quint8(byte);
        for (int i = 0; i < 8; ++i) crc = crc & 1 ? 0xEDB88320U ^ (crc >> 1) : crc >> 1;
    }
    return ~crc;
}

void putWord(QByteArray &bytes, int at, quint32 word) {
    for (int i = 0; i < 4; ++i) bytes[at + i] = char(word >> (24 - 8 * i));
}

/// A small picture that claims to be another size, with the sum that goes with it.
QByteArray pngClaiming(quint32 width, quint32 height) {
    QByteArray bytes = encoded(plain({8, 8}), "PNG");
    putWord(bytes, 16, width);
    putWord(bytes, 20, height);
    putWord(bytes, 29, crcOf(bytes.mid(12, 17)));
    return bytes;
}

QByteArray jpegClaiming(quint16 width, quint16 height) {
    QByteArray bytes = encoded(plain({8, 8}), "JPEG");
    const qsizetype frame = bytes.indexOf("\xFF\xC0");
    bytes[frame + 5] = char(height >> 8);
    bytes[frame + 6] = char(height & 0xFF);
    bytes[frame + 7] = char(width >> 8);
    bytes[frame + 8] = char(width & 0xFF);
    return bytes;
}

QString put(const QTemporaryDir &folder, const QString &name, const QByteArray &bytes) {
    const QString path = folder.filePath(name);
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write(bytes);
    return path;
}

} // namespace

TEST_CASE("pictures that cannot be shown give one line that names them and says why", "[picture file]") {
    const QTemporaryDir folder;
    struct Case {
        QString name;
        QByteArray bytes;
        std::string why;
    };
    const QByteArray png = encoded(plain({400, 300}), "PNG"), jpeg = encoded(plain({400, 300}), "JPEG");
    for (const Case &bad : {
             Case{u"empty.png"_s, {}, "empty"},
             Case{u"letter.jpg"_s, "Dear customer, here is the photograph.", "no picture that can be read"},
             Case{u"half.png"_s, png.first(png.size() / 2), "damaged"},
             Case{u"header.png"_s, png.first(20), "damaged"},
             Case{u"start.jpg"_s, jpeg.first(30), "damaged"},
             Case{u"huge.png"_s, pngClaiming(20'000, 10'000), "200 million pixels are too many"},
             Case{u"huge.jpg"_s, jpegClaiming(20'000, 10'000), "200 million pixels are too many"},
             Case{u"long.png"_s, pngClaiming(2'000'000'000, 1), ""},
             Case{u"none.png"_s, pngClaiming(0, 0), ""},
             Case{u"flat.jpg"_s, jpegClaiming(0, 10), ""},
             Case{u"drawing.svg"_s, "<svg xmlns='http://www.w3.org/2000/svg' width='0' height='0'/>", ""},
             Case{u"torn.svg"_s, "<svg xmlns='http://www.w3.org/2000/svg' width='10' hei", ""},
         }) {
        INFO(bad.name.toStdString());
        const auto read = readPicture(put(folder, bad.name, bad.bytes), 1000);
        REQUIRE_FALSE(read);
        const std::string said = read.error().text;
        INFO(said);
        CHECK(said.rfind(bad.name.toStdString() + ": ", 0) == 0);
        CHECK(said.find('\n') == std::string::npos);
        CHECK(said.find(bad.why) != std::string::npos);
    }
    CHECK(readPicture(folder.filePath(u"gone.png"_s), 1000).error().text == "gone.png: there is no such picture");
    CHECK(readPicture(folder.path(), 1000).error().text.find("no picture") != std::string::npos);
}

TEST_CASE("a picture is told by its content, not by its name, and read no larger than asked for", "[picture file]") {
    const QTemporaryDir folder;
    const auto wrongly = readPicture(put(folder, u"really-a.jpg"_s, encoded(plain({400, 300}), "PNG")), 1000);
    REQUIRE(wrongly);
    CHECK(wrongly->image.size() == QSize(400, 300));
    const auto large = readPicture(put(folder, u"large.jpg"_s, encoded(plain({4000, 3000}), "JPEG")), 1000);
    REQUIRE(large);
    CHECK(large->image.size() == QSize(1000, 750));
    CHECK(large->full == QSize(4000, 3000));
    const auto drawing = readPicture(
        put(folder, u"tile.svg"_s,
            "<svg xmlns='http://www.w3.org/2000/svg' width='20' height='10'><rect width='10' height='10'/></svg>"),
        800);
    REQUIRE(drawing);
    CHECK(drawing->image.size() == QSize(800, 400)); // sharp, and not twenty pixels made large
    CHECK(drawing->image.pixelColor(100, 200) == QColor(Qt::black));
    CHECK(drawing->image.pixelColor(700, 200) == QColor(Qt::white)); // on paper, not on nothing
}

TEST_CASE("a picture kept within the job comes back", "[picture file]") {
    PictureSource source;
    source.data = bytesToKeep(plain({300, 200}));
    const auto read = readPicture(source, 1000);
    REQUIRE(read);
    CHECK(read->image.size() == QSize(300, 200));
    source.data = PictureBytes("this is no base64!");
    CHECK(readPicture(source, 1000).error().text.find("damaged") != std::string::npos);
    source.data = PictureBytes("aGVsbG8=");
    CHECK(readPicture(source, 1000).error().text.find("no picture") != std::string::npos);
}
