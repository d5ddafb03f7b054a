#include "ui/window/start_page.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

QList<QPair<QString, QString>> samples() {
    QList<QPair<QString, QString>> out;
    const QDir folder(u":/boltwright/samples"_s);
    for (const QString &name : folder.entryList({u"*.boltwright"_s}, QDir::Files, QDir::Name)) {
        QFile file(folder.filePath(name));
        if (!file.open(QIODevice::ReadOnly)) continue;
        const auto card = QJsonDocument::fromJson(file.readAll()).object()[u"job"_s].toObject();
        const QString title = card[u"title"_s].toString();
        out.append({folder.filePath(name), title.isEmpty() ? QFileInfo(name).completeBaseName() : title});
    }
    return out;
}

namespace {

QLabel *step(const QString &number, const QString &title, const QString &text, QWidget *parent) {
    auto *label =
        new QLabel(u"<table><tr><td style='padding-right:14px'><span style='font-size:x-large'><b>%1</b></span></td>"
                   "<td><b>%2</b><br>%3</td></tr></table>"_s.arg(number, title.toHtmlEscaped(), text.toHtmlEscaped()),
                   parent);
    label->setTextFormat(Qt::RichText);
    label->setWordWrap(true);
    return label;
}

} // namespace

StartPage::StartPage(QWidget *parent) : QWidget(parent), m_recent(new QWidget(this)) {
    setObjectName(u"startPage"_s);
    setAttribute(Qt::WA_StyledBackground);
    auto *sheet = new QFrame(this);
    sheet->setObjectName(u"sheet"_s);
    sheet->setMaximumWidth(680);
    auto *column = new QVBoxLayout(sheet);
    column->setContentsMargins(36, 30, 36, 28);
    column->setSpacing(14);
    auto *title = new QLabel(tr("A layout in three steps"), sheet);
    title->setObjectName(u"bigTitle"_s);
    column->addWidget(title);

    const auto made = [&](const QString &text, const QString &tip, auto signal) {
        auto *b = new QPushButton(text, sheet);
        b->setToolTip(tip);
        b->setMinimumWidth(130);
        connect(b, &QPushButton::clicked, this, signal);
        return b;
    };
    const auto withButton = [&](QLabel *words, const QString &text, const QString &tip, auto signal, auto... more) {
        auto *row = new QHBoxLayout;
        row->addWidget(words, 1);
        auto *stack = new QVBoxLayout;
        stack->addWidget(made(text, tip, signal));
        if constexpr (sizeof...(more) > 0) stack->addWidget(made(more...));
        stack->setAlignment(Qt::AlignVCenter);
        row->addLayout(stack);
        column->addLayout(row);
    };
    withButton(
        step(u"1"_s, tr("Say what cloth there is"), tr("Width, repeat, nap; or the remnants on the shelf."), sheet),
        tr("Cloth…"), tr("Width, selvage, nap and repeat of the bolt, or the remnants there are."),
        &StartPage::clothWanted);
    withButton(
        step(u"2"_s, tr("List what is to cut"),
             tr("From measurements: choose a piece, fill in what the tape says, and its panels are made. Or list "
                "each panel yourself, side to side × up, with its allowances."),
             sheet),
        tr("Measure…"), tr("Choose a piece of furniture and type what the tape says; its panels are made from that."),
        &StartPage::measureWanted, tr("Panels…"), tr("Type the panels yourself, one a line."),
        &StartPage::panelsWanted);
    column->addWidget(step(u"3"_s, tr("Press Plan, then move what you like"),
                           tr("Length, waste and what to buy follow your hand."), sheet));

    auto *lines = new QHBoxLayout;
    auto *open = new QPushButton(tr("Open a job…"), sheet);
    open->setToolTip(tr("Open a job that was saved before."));
    connect(open, &QPushButton::clicked, this, &StartPage::openWanted);
    lines->addWidget(open);
    lines->addStretch();
    column->addSpacing(6);
    column->addLayout(lines);
    auto *orSample = new QLabel(tr("Or look around in a sample:"), sheet);
    orSample->setObjectName(u"quiet"_s);
    column->addWidget(orSample);
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(12);
    grid->setVerticalSpacing(2);
    int number = 0;
    for (const auto &[file, name] : samples()) {
        auto *button = new QPushButton(name, sheet);
        button->setObjectName(u"linkButton"_s);
        button->setToolTip(tr("Opens this invented job; nothing of yours is touched."));
        connect(button, &QPushButton::clicked, this, [this, file = file] { Q_EMIT sampleWanted(file); });
        grid->addWidget(button, number / 2, number % 2, Qt::AlignLeft);
        ++number;
    }
    column->addLayout(grid);
    m_recent->setLayout(new QVBoxLayout);
    m_recent->layout()->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_recent);

    // With large letters or in a small window it is scrolled, and the window need not grow.
    auto *whole = new QWidget;
    whole->setObjectName(u"startPage"_s);
    auto *scroll = new QScrollArea(this);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto *all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(scroll);
    auto *row = new QHBoxLayout(whole);
    row->addStretch(1);
    auto *middle = new QVBoxLayout;
    middle->addStretch(2);
    middle->addWidget(sheet);
    middle->addStretch(3);
    row->addLayout(middle, 12);
    row->addStretch(1);
    scroll->setWidget(whole);
}

void StartPage::setRecent(const QStringList &files) {
    delete m_recent->layout();
    // One of them may be what was just clicked.
    for (QWidget *old : m_recent->findChildren<QWidget *>()) {
        old->hide();
        old->deleteLater();
    }
    auto *column = new QVBoxLayout(m_recent);
    column->setContentsMargins(0, 4, 0, 0);
    column->setSpacing(2);
    if (files.isEmpty()) return;
    auto *label = new QLabel(tr("Used before:"), m_recent);
    label->setObjectName(u"quiet"_s);
    column->addWidget(label);
    for (const QString &file : files.mid(0, 4)) {
        auto *button = new QPushButton(QFileInfo(file).completeBaseName(), m_recent);
        button->setObjectName(u"linkButton"_s);
        button->setToolTip(file);
        connect(button, &QPushButton::clicked, this, [this, file] { Q_EMIT fileWanted(file); });
        column->addWidget(button, 0, Qt::AlignLeft);
    }
}

} // namespace boltwright::ui
