#include "ui/document/autosave.h"

#include "core/files/job_file.h"
#include "ui/text/words.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QStandardPaths>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

Autosave::Autosave(JobDocument &document, QObject *parent) : QObject(parent), m_document(document) {
    m_soon.setSingleShot(true);
    m_soon.setInterval(3000);
    connect(&m_soon, &QTimer::timeout, this, &Autosave::writeNow);
    connect(&document, &JobDocument::changed, this, &Autosave::follow);
}

Autosave::~Autosave() = default;

QString Autosave::copyOf(const QString &fileName) {
    if (fileName.isEmpty()) return fallbackCopyOf(fileName);
    const QFileInfo info(fileName);
    return info.absolutePath() + u"/."_s + info.fileName() + u".unsaved"_s;
}

QString Autosave::fallbackCopyOf(const QString &fileName) {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) + u"/unsaved"_s;
    const QByteArray name = fileName.isEmpty()
                                ? QByteArrayLiteral("new-job")
                                : QCryptographicHash::hash(fileName.toUtf8(), QCryptographicHash::Sha1).toHex();
    return folder + u'/' + QString::fromLatin1(name) + u".boltwright"_s;
}

QString Autosave::leftBehind(const QString &fileName) {
    for (const QString &copy : {copyOf(fileName), fallbackCopyOf(fileName)})
        if (QFileInfo::exists(copy)) return copy;
    return {};
}

void Autosave::discard(const QString &fileName) {
    QFile::remove(copyOf(fileName));
    QFile::remove(fallbackCopyOf(fileName));
}

void Autosave::follow(Changes changes) {
    if (m_written && (changes & (Change::NewJob | Change::File)) &&
        (m_document.fileName() != m_writtenFor || !m_document.isUnsaved())) {
        discard(m_writtenFor);
        m_written = false;
    }
    // What is only shown has nothing to keep, and may come so often that the pause would never end.
    if (!(changes & ~Changes(Change::Preview | Change::Selection))) return;
    if (m_document.isUnsaved())
        m_soon.start();
    else
        m_soon.stop();
}

void Autosave::writeNow() {
    if (!m_document.isUnsaved()) return;
    const QString name = m_document.fileName();
    for (const QString &copy : {copyOf(name), fallbackCopyOf(name)}) {
        if (copy == fallbackCopyOf(name)) QDir().mkpath(QFileInfo(copy).absolutePath());
        if (saveJob(m_document.jobToWrite(), std::filesystem::path(QFile::encodeName(copy).toStdString()))) {
            m_writtenFor = name;
            m_written = true;
            return;
        }
    }
    Q_EMIT failed(tr("Unsaved work cannot be kept beside the file: save it yourself."));
}

} // namespace boltwright::ui
