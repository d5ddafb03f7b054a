#include "ui/text/language.h"

#include "core/base/language.h"

#include <QCoreApplication>
#include <QLocale>

namespace boltwright::ui {

void lendCoreTheLanguage() {
    speak({[](const char *english) { return QCoreApplication::translate("Core", english).toStdString(); },
           [](const std::string &plain) {
               return QString::fromStdString(plain).replace(QLatin1Char('.'), QLocale().decimalPoint()).toStdString();
           }});
}

} // namespace boltwright::ui
