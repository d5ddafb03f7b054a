// A translation put in place is what comes on screen. On paper: tests/paper/translation_in_place.py.

#include "core/base/language.h"
#include "tests/ui/window_fixture.h"
#include "ui/forms/cloth_questions_page.h"
#include "ui/shop/rules_page.h"
#include "ui/text/language.h"
#include "ui/text/words.h"
#include "ui/trimmings/trimmings_page.h"
#include "ui/window/over_sheet.h"

#include <QAction>
#include <QCoreApplication>
#include <QLabel>
#include <QLocale>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QRegularExpression>
#include <QTranslator>

#include <catch2/catch.hpp>

#include <algorithm>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

/// A tongue in which every letter is an x; places for parts stay.
class InXs : public QTranslator {
public:
    InXs() {
        QCoreApplication::installTranslator(this);
        QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
        lendCoreTheLanguage();
    }
    ~InXs() override {
        QCoreApplication::removeTranslator(this);
        QLocale::setDefault(QLocale::c());
        speak({});
    }
    InXs(const InXs &) = delete;
    bool isEmpty() const override { return false; }
    QString translate(const char *, const char *text, const char *, int) const override {
        QString out;
        QChar before;
        for (QChar c : QString::fromUtf8(text)) {
            out += c.isLetter() && before != u'%' ? QChar(u'x') : c;
            before = c;
        }
        return out;
    }
};

bool isTranslated(QString text) {
    text.remove(QRegularExpression(u"<[^>]*>|&\\w+;"_s)); // marks of rich text
    return std::all_of(text.begin(), text.end(), [](QChar c) { return !c.isLetter() || c == u'x' || c == u'X'; });
}

} // namespace

TEST_CASE("menus, buttons and pages are in the reader's language", "[language]") {
    const InXs tongue;
    WindowFixture fixture;
    MainWindow &window = fixture.show({1300, 860});
    int seen = 0;
    for (QMenu *menu : window.menuBar()->findChildren<QMenu *>()) {
        INFO(menu->title().toStdString());
        CHECK(isTranslated(menu->title()));
        ++seen;
    }
    for (const ActionRow &row : actionTable()) {
        const QAction *action = window.actions()[row.id];
        INFO(action->text().toStdString() << " / " << action->toolTip().toStdString());
        CHECK(isTranslated(action->text()));
        ++seen;
    }
    CHECK(seen > 60);
    window.showTrimmings();
    for (QPushButton *button : window.sheet().content()->findChildren<QPushButton *>()) {
        INFO(button->text().toStdString());
        CHECK(isTranslated(button->text()));
    }
    window.sheet().close();
    window.actions()[ActionId::ClothQuestions]->trigger();
    int questions = 0;
    for (QLabel *label : window.sheet().content()->findChildren<QLabel *>()) {
        INFO(label->text().toStdString());
        CHECK(isTranslated(label->text()));
        if (label->text().contains(u"<small>"_s)) ++questions;
    }
    CHECK(questions >= 8);
    window.sheet().close();
    window.actions()[ActionId::ShopRules]->trigger();
    auto *rules = qobject_cast<RulesPage *>(window.sheet().content());
    REQUIRE(rules);
    for (int row = 0; row < rules->model()->rowCount(); ++row)
        for (int column = 0; column < RulesModel::ColumnCount; ++column) {
            const QString text = rules->model()->index(row, column).data().toString();
            if (column == RulesModel::Figure || column == RulesModel::Usual) continue; // lengths, below
            INFO(text.toStdString());
            CHECK(isTranslated(text));
        }
    fixture.leave();
}

TEST_CASE("lengths, shares and sums are written as the reader's locale writes them", "[language]") {
    const InXs tongue;
    CHECK(shownLengthWithUnit(92.5_cm, Unit::Centimetre) == u"92,5 xx"_s);
    CHECK(shownAlongRoll(1234.5_cm, Unit::Centimetre) == u"12,35 x"_s); // metres, to the centimetre
    CHECK(shownAlongRoll(40.5_in, Unit::Inch) == u"1 xx 4 ½ xx"_s);
    CHECK(shownSize(92.5_cm, 10_cm, Unit::Centimetre) == u"92,5 × 10"_s);
    QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
    CHECK(shownSize(92.5_cm, 10_cm, Unit::Centimetre) == u"92.5 × 10"_s);
}
