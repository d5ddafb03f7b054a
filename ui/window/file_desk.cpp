#include "ui/window/file_desk.h"

#include "core/edit/job_edit.h"
#include "core/files/job_file.h"
#include "ui/text/words.h"

#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>
#include <QTimer>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

std::filesystem::path pathOf(const QString &fileName) {
    return std::filesystem::path(QFile::encodeName(fileName).toStdString());
}

/// What is wrong in the trade's words, and then where that stands in the file, for whoever puts it right there.
QString refusalOf(const QString &fileName, const Fault &fault) {
    const auto why = whyFileRefused(pathOf(fileName));
    if (!why) return withFractions(fromCore(fault.text));
    return QObject::tr("%1 is not opened. %2. (In the file: %3)")
        .arg(QFileInfo(fileName).fileName(), withFractions(fromCore(why->inWords)), fromCore(why->where));
}

QString filter() { return QObject::tr("Jobs (*.boltwright);;All files (*)"); }

} // namespace

FileDesk::FileDesk(JobDocument &document, Preferences &preferences, NoticeBar &notice, QWidget *window)
    : QObject(window), m_document(document), m_preferences(preferences), m_notice(notice), m_window(window),
      m_autosave(document) {
    connect(&m_autosave, &Autosave::failed, this, [this](const QString &sentence) { m_notice.say(sentence); });
    connect(&m_watcher, &QFileSystemWatcher::fileChanged, this, &FileDesk::fileTouched);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        if (changes & (Change::NewJob | Change::File)) watch();
    });
}

bool FileDesk::mayLeave() {
    if (!m_document.isUnsaved()) return true;
    QMessageBox question(QMessageBox::Question, tr("Unsaved changes"),
                         tr("Save the changes to %1?").arg(m_document.displayName()),
                         QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, m_window);
    question.setInformativeText(tr("Otherwise what was done since the last save is lost."));
    question.button(QMessageBox::Discard)->setText(tr("Do not save"));
    question.setDefaultButton(QMessageBox::Save);
    switch (question.exec()) {
    case QMessageBox::Save:
        return save();
    case QMessageBox::Discard:
        Autosave::discard(m_document.fileName());
        return true;
    default:
        return false;
    }
}

bool FileDesk::openFile(const QString &fileName) {
    if (!mayLeave()) return false;
    const auto opened = m_document.open(fileName);
    if (!opened) {
        m_notice.say(refusalOf(fileName, opened.error()));
        m_preferences.forgetFile(QFileInfo(fileName).absoluteFilePath());
        Q_EMIT filesUsedChanged();
        return false;
    }
    m_notice.say({});
    m_preferences.rememberFile(m_document.fileName());
    Q_EMIT filesUsedChanged();
    const QString copy = Autosave::leftBehind(m_document.fileName());
    if (!copy.isEmpty()) offerCopyOf(m_document.fileName(), copy);
    Q_EMIT this->opened();
    return true;
}

bool FileDesk::openSample(const QString &resource) {
    if (!mayLeave()) return false;
    QFile file(resource);
    if (!file.open(QIODevice::ReadOnly)) return false;
    const QByteArray text = file.readAll();
    auto job = readJob(std::string_view(text.constData(), std::size_t(text.size())));
    if (!job) {
        m_notice.say(fromCore(job.error().text));
        return false;
    }
    m_document.startWith(std::move(*job));
    m_notice.say({});
    Q_EMIT opened();
    return true;
}

bool FileDesk::openAsking() {
    const QString folder =
        m_document.fileName().isEmpty() ? QString() : QFileInfo(m_document.fileName()).absolutePath();
    const QString name = QFileDialog::getOpenFileName(m_window, tr("Open a job"), folder, filter());
    return !name.isEmpty() && openFile(name);
}

bool FileDesk::begin() {
    if (!mayLeave()) return false;
    m_document.startWith(newJob(m_document.job().unit));
    m_notice.say({});
    Q_EMIT opened();
    return true;
}

bool FileDesk::save() {
    if (m_document.fileName().isEmpty()) return saveAs();
    if (m_document.fileChangedOutside()) {
        const auto answer =
            QMessageBox::question(m_window, tr("The file has changed"),
                                  tr("%1 was changed by somebody else since it was opened. Write over it?")
                                      .arg(QFileInfo(m_document.fileName()).fileName()),
                                  QMessageBox::Save | QMessageBox::Cancel, QMessageBox::Cancel);
        if (answer != QMessageBox::Save) return false;
    }
    return saveTo(m_document.fileName());
}

bool FileDesk::saveAs() {
    QString proposal = m_document.fileName();
    if (proposal.isEmpty()) proposal = m_document.displayName() + u".boltwright"_s;
    QString name = QFileDialog::getSaveFileName(m_window, tr("Save the job as"), proposal, filter());
    if (name.isEmpty()) return false;
    if (QFileInfo(name).suffix().isEmpty()) name += u".boltwright"_s;
    return saveTo(name);
}

bool FileDesk::saveTo(const QString &fileName) {
    if (m_watcher.files().contains(fileName)) m_watcher.removePath(fileName);
    const auto saved = m_document.saveAs(fileName);
    watch();
    if (!saved) {
        m_notice.say(fromCore(saved.error().text));
        return false;
    }
    m_preferences.rememberFile(m_document.fileName());
    Q_EMIT filesUsedChanged();
    m_notice.say({});
    return true;
}

void FileDesk::offerLeftBehind() {
    const QString copy = Autosave::leftBehind({});
    if (!copy.isEmpty()) offerCopyOf({}, copy);
}

void FileDesk::offerCopyOf(const QString &fileName, const QString &copy) {
    auto job = loadJob(pathOf(copy));
    if (!job) {
        Autosave::discard(fileName);
        return;
    }
    const QString when = QLocale().toString(QFileInfo(copy).lastModified(), QLocale::ShortFormat);
    m_notice.say(tr("There is unsaved work from %1 that was not saved before the window closed.").arg(when),
                 {{tr("Take it up"),
                   [this, fileName, job = std::move(*job)] {
                       m_document.recover(job, fileName);
                       Q_EMIT opened();
                   }},
                  {tr("Throw it away"), [fileName] { Autosave::discard(fileName); }}});
}

void FileDesk::watch() {
    if (!m_watcher.files().isEmpty()) m_watcher.removePaths(m_watcher.files());
    if (!m_document.fileName().isEmpty()) m_watcher.addPath(m_document.fileName());
}

void FileDesk::fileTouched() {
    // Some programs replace a file by another of its name: the watch is then set anew, a moment later.
    QTimer::singleShot(200, this, [this] {
        watch();
        if (!m_document.fileChangedOutside()) return;
        m_notice.say(tr("%1 was changed by another program.").arg(QFileInfo(m_document.fileName()).fileName()),
                     {{tr("Load it again"),
                       [this] {
                           const auto again = m_document.open(QString(m_document.fileName()));
                           if (!again) m_notice.say(refusalOf(m_document.fileName(), again.error()));
                           Q_EMIT opened();
                       }},
                      {tr("Keep what is here"), [] {}}});
    });
}

} // namespace boltwright::ui
