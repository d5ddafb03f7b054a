#include "ui/shop/shop.h"

#include "core/files/replace_file.h"
#include "core/forms/form_text.h"
#include "core/forms/forms.h"
#include "core/trimmings/rule_list.h"
#include "ui/text/words.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QString say(const char *text) { return QCoreApplication::translate("Shop", text); }

Unit fileUnit(Unit unit) { return unit == Unit::Millimetre ? Unit::Centimetre : unit; }

std::optional<std::string> textOf(const QString &name) {
    QFile file(name);
    if (!file.open(QIODevice::ReadOnly)) return std::nullopt;
    return file.readAll().toStdString();
}

Result<void> write(const QString &name, const std::string &text) {
    if (!QDir().mkpath(QFileInfo(name).path()))
        return fault(toCore(say("The folder %1 cannot be made.").arg(QFileInfo(name).path())));
    if (auto done = replaceFile(name.toStdString(), text); !done) return fault(done.error().at(toCore(name)));
    return {};
}

} // namespace

Shop::Shop(const QString &folder) : m_folder(folder) {}

QString Shop::rulesFile(Unit unit) const {
    return QDir(m_folder).filePath(u"shop-rules-%1.json"_s.arg(fromCore(std::string(nameOf(fileUnit(unit))))));
}

QString Shop::formsFolder() const { return QDir(m_folder).filePath(u"forms"_s); }

QString Shop::fileOfForm(const std::string &formId) const {
    return QDir(formsFolder()).filePath(fromCore(formId) + u".json"_s);
}

TradeRules Shop::rules(Unit unit) const {
    const auto text = textOf(rulesFile(unit));
    if (!text) return tradeRules(unit);
    const auto rules = readTradeRules(*text, fileUnit(unit));
    return rules ? *rules : tradeRules(unit);
}

Result<void> Shop::keepRules(const TradeRules &rules, Unit unit) {
    return write(rulesFile(unit), writeTradeRules(rules, fileUnit(unit)));
}

std::vector<PieceForm> Shop::forms() const {
    std::vector<PieceForm> all = pieceForms();
    for (const QFileInfo &info : QDir(formsFolder()).entryInfoList({u"*.json"_s}, QDir::Files, QDir::Name)) {
        const auto text = textOf(info.filePath());
        auto form = text ? readForm(*text) : Result<PieceForm>(fault(""));
        // Its file's name is its id, so that it can be replaced and dropped.
        if (!form) continue;
        form->id = toCore(info.completeBaseName());
        all.push_back(std::move(*form));
    }
    return all;
}

bool Shop::isOwn(const std::string &formId) const { return QFileInfo::exists(fileOfForm(formId)); }

Result<std::string> Shop::keepForm(PieceForm form, Unit unit) {
    QString id;
    for (QChar c : fromCore(form.name).toLower())
        id += c.isLetterOrNumber() ? c : id.isEmpty() || id.endsWith(u'-') ? QString() : u"-"_s;
    while (id.endsWith(u'-')) id.chop(1);
    if (id.isEmpty()) return fault(toCore(say("The form needs a name.")));
    form.id = "own-" + toCore(id.left(60));
    form.place = 0;
    if (auto done = write(fileOfForm(form.id), writeForm(form, unit)); !done)
        return tl::unexpected<Fault>(done.error());
    return form.id;
}

void Shop::dropForm(const std::string &formId) { QFile::remove(fileOfForm(formId)); }

QStringList Shop::complaints() const {
    QStringList all;
    for (const QFileInfo &info : QDir(formsFolder()).entryInfoList({u"*.json"_s}, QDir::Files, QDir::Name)) {
        const auto text = textOf(info.filePath());
        const auto form = text ? readForm(*text) : Result<PieceForm>(fault("it cannot be opened"));
        if (!form) all << u"%1: %2"_s.arg(info.fileName(), fromCore(form.error().text));
    }
    for (Unit unit : {Unit::Inch, Unit::Centimetre}) {
        const auto text = textOf(rulesFile(unit));
        const auto rules = text ? readTradeRules(*text, unit) : Result<TradeRules>(TradeRules{});
        if (!rules) all << u"%1: %2"_s.arg(QFileInfo(rulesFile(unit)).fileName(), fromCore(rules.error().text));
    }
    return all;
}

} // namespace boltwright::ui
