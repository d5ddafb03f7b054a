#include "ui/text/language.h"

#include "core/base/language.h"

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QStandardPaths>
#include <QStringList>
#include <QTranslator>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QStringList wordsFolders() {
    QStringList folders;
    if (const QString own = qEnvironmentVariable("BOLTWRIGHT_WORDS"); !own.isEmpty()) folders << own;
    folders << QStandardPaths::locateAll(QStandardPaths::GenericDataLocation, u"boltwright/words"_s,
                                         QStandardPaths::LocateDirectory);
    folders << QCoreApplication::applicationDirPath() + u"/../share/boltwright/words"_s
            << QCoreApplication::applicationDirPath() + u"/words"_s;
    return folders;
}

/// The first folder that has the reader's language, or the next that they would rather read than English.
void install(const QString &name, const QStringList &folders) {
    auto *translator = new QTranslator(QCoreApplication::instance());
    for (const QString &folder : folders)
        if (translator->load(QLocale(), name, u"_"_s, folder)) {
            QCoreApplication::installTranslator(translator);
            return;
        }
    delete translator;
}

} // namespace

void takeTheReadersLanguage() {
    install(u"qtbase"_s, {QLibraryInfo::path(QLibraryInfo::TranslationsPath)});
    install(u"boltwright"_s, wordsFolders());
    lendCoreTheLanguage();
}

void lendCoreTheLanguage() {
    speak({[](const char *english) { return QCoreApplication::translate("Core", english).toStdString(); },
           [](const std::string &plain) {
               return QString::fromStdString(plain).replace(QLatin1Char('.'), QLocale().decimalPoint()).toStdString();
           }});
}

} // namespace boltwright::ui
