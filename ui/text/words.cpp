#include "ui/text/words.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"

#include <QHash>
#include <QLocale>
#include <QRegularExpression>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QString raised(const QString &digits) {
    static const QString forms = u"⁰¹²³⁴⁵⁶⁷⁸⁹"_s;
    QString out;
    for (QChar c : digits) out += forms[c.digitValue()];
    return out;
}

QString lowered(const QString &digits) {
    static const QString forms = u"₀₁₂₃₄₅₆₇₈₉"_s;
    QString out;
    for (QChar c : digits) out += forms[c.digitValue()];
    return out;
}

QString fractionCharacter(const QString &numerator, const QString &denominator) {
    static const QHash<QString, QString> ready = {{u"1/2"_s, u"½"_s}, {u"1/4"_s, u"¼"_s}, {u"3/4"_s, u"¾"_s},
                                                  {u"1/8"_s, u"⅛"_s}, {u"3/8"_s, u"⅜"_s}, {u"5/8"_s, u"⅝"_s},
                                                  {u"7/8"_s, u"⅞"_s}};
    const auto found = ready.constFind(numerator + u'/' + denominator);
    return found != ready.constEnd() ? *found : raised(numerator) + u'⁄' + lowered(denominator);
}

} // namespace

QString fromCore(const std::string &text) { return QString::fromStdString(text); }
std::string toCore(const QString &text) { return text.toStdString(); }

QString withFractions(const QString &text) {
    static const QRegularExpression fraction(u"\\b(\\d{1,2})/(\\d{1,2})\\b"_s);
    QString out;
    qsizetype done = 0;
    for (auto hits = fraction.globalMatch(text); hits.hasNext();) {
        const auto hit = hits.next();
        out += text.mid(done, hit.capturedStart() - done);
        out += fractionCharacter(hit.captured(1), hit.captured(2));
        done = hit.capturedEnd();
    }
    return out + text.mid(done);
}

namespace {

/// What core wrote plainly, as the reader writes it: decimal mark and the names of units.
QString localised(const std::string &plain) { return withFractions(fromCore(boltwright::localised(plain))); }

} // namespace

QString shownLength(Length length, Unit unit) { return localised(spoken(length, unit)); }
QString shownLengthWithUnit(Length length, Unit unit) { return localised(spokenWithUnit(length, unit)); }
QString shownAlongRoll(Length length, Unit unit) { return localised(spokenAlongRoll(length, unit)); }
QString shownPurchase(Length length, Unit unit) { return localised(spokenPurchase(length, unit)); }

QString shownSize(Length across, Length up, Unit unit) {
    return shownLength(across, unit) + u" × "_s + shownLength(up, unit);
}

QString shownPercent(double share) { return QLocale().toString(share * 100, 'f', 0) + u" %"_s; }

} // namespace boltwright::ui
