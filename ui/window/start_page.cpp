#include "ui/window/start_page.h"

#include "ui/widgets/scaled.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>

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

constexpr int sheetMargin = 36, samplesApart = 12;

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

StartPage::StartPage(QWidget *parent)
    : QWidget(parent), m_sheet(new QFrame(this)), m_scroll(new QScrollArea(this)), m_recent(new QWidget(this)) {
    setObjectName(u"startPage"_s);
    setAttribute(Qt::WA_StyledBackground);
    QFrame *sheet = m_sheet;
    sheet->setObjectName(u"sheet"_s);
    auto *column = new QVBoxLayout(sheet);
    column->setContentsMargins(sheetMargin, 30, sheetMargin, 28);
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
    m_samples = new QGridLayout;
    m_samples->setHorizontalSpacing(samplesApart);
    m_samples->setVerticalSpacing(2);
    for (const auto &[file, name] : samples()) {
        auto *button = new QPushButton(name, sheet);
        button->setObjectName(u"linkButton"_s);
        button->setToolTip(tr("Opens this invented job; nothing of yours is touched."));
        connect(button, &QPushButton::clicked, this, [this, file = file] { Q_EMIT sampleWanted(file); });
        m_sampleButtons << button;
    }
    column->addLayout(m_samples);
    m_recent->setLayout(new QVBoxLayout);
    m_recent->layout()->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_recent);

    // With large letters or in a small window it is scrolled, and the window need not grow.
    auto *whole = new QWidget;
    whole->setObjectName(u"startPage"_s);
    QScrollArea *scroll = m_scroll;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto *all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(scroll);
    auto *row = new QHBoxLayout(whole);
    row->setContentsMargins(8, 8, 8, 8);
    row->addStretch(1);
    auto *middle = new QVBoxLayout;
    middle->addStretch(2);
    middle->addWidget(sheet);
    middle->addStretch(3);
    row->addLayout(middle);
    row->addStretch(1);
    scroll->setWidget(whole);
    fit();
}

/// As wide as its lines are read well, and no wider than there is room; the samples in two columns where both fit.
void StartPage::fit() {
    const int room = std::min(scaled(680), m_scroll->width() - m_scroll->verticalScrollBar()->sizeHint().width() - 24);
    m_sheet->setFixedWidth(std::max(scaled(320), room));
    int widest = 0;
    for (const QPushButton *button : m_sampleButtons) widest = std::max(widest, button->sizeHint().width());
    const int columns = 2 * widest + samplesApart + 2 * sheetMargin <= m_sheet->maximumWidth() ? 2 : 1;
    if (columns == m_columns) return;
    m_columns = columns;
    for (int i = 0; i < m_sampleButtons.size(); ++i)
        m_samples->addWidget(m_sampleButtons[i], i / columns, i % columns, Qt::AlignLeft);
}

void StartPage::resizeEvent(QResizeEvent *event) {
    QWidget::resizeEvent(event);
    fit();
}

void StartPage::changeEvent(QEvent *event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange && m_samples) fit();
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
