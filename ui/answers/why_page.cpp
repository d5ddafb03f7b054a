#include "ui/answers/why_page.h"

#include "ui/drawing/colours.h"
#include "ui/picture/layout_card.h"
#include "ui/picture/staircase_picture.h"
#include "ui/text/words.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

StaircaseView::StaircaseView(QWidget *parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setMinimumSize(420, 260);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Where the yardage goes, step by step"));
}

void StaircaseView::show(const Staircase &stairs, Unit unit) {
    m_stairs = stairs;
    m_unit = unit;
    m_chosen = -1;
    QStringList said;
    for (const Stair &stair : stairs.stairs)
        if (stair.step > Length{}) said << shownName(stair.kind) + u": "_s + shownStep(stair, unit);
    setAccessibleDescription(said.join(u"; "_s));
    update();
}

void StaircaseView::choose(int step) {
    if (step < 0 || step >= int(m_stairs.stairs.size()) || step == m_chosen) return;
    m_chosen = step;
    update();
    Q_EMIT chosenChanged(step);
}

void StaircaseView::paintEvent(QPaintEvent *) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    // Paper in either look, so that the picture on the screen is the picture that is printed.
    painter.fillRect(rect(), Qt::white);
    PainterSurface surface(painter, 3.6);
    m_rows = paintStaircase(surface, QRectF(rect()).adjusted(16, 12, -16, -12), m_stairs, m_unit);
    if (m_chosen >= 0 && m_chosen < m_rows.size()) {
        painter.setPen(QPen(lightColours().accent, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(m_rows[m_chosen].adjusted(-6, 1, 6, -1), 6, 6);
    }
    if (hasFocus()) {
        painter.setPen(QPen(lightColours().accent, 1, Qt::DotLine));
        painter.drawRect(rect().adjusted(1, 1, -2, -2));
    }
}

void StaircaseView::mousePressEvent(QMouseEvent *event) {
    for (qsizetype i = 0; i < m_rows.size(); ++i)
        if (m_rows[i].contains(event->position())) choose(int(i));
}

void StaircaseView::keyPressEvent(QKeyEvent *event) {
    const int by = event->key() == Qt::Key_Down ? 1 : event->key() == Qt::Key_Up ? -1 : 0;
    if (by == 0) return QWidget::keyPressEvent(event);
    for (int step = m_chosen + by; step >= 0 && step < int(m_stairs.stairs.size()); step += by)
        if (m_stairs.stairs[std::size_t(step)].step > Length{}) return choose(step);
}

WhyPage::WhyPage(JobDocument &document, std::shared_ptr<AnswerBook> book, QWidget *parent)
    : QuestionPage(document, std::move(book),
                   tr("From the bare parts to what must be bought: each step is what one kind of wish adds. Choose a "
                      "step to see what could be done "
                      "about it, and the layout behind it."),
                   tr("Work it out"), parent),
      m_cloth(new QComboBox) {
    for (const Cloth &cloth : document.job().cloths)
        if (cloth.bolt) m_cloth->addItem(fromCore(cloth.name.empty() ? cloth.id : cloth.name), fromCore(cloth.id));
    m_cloth->setAccessibleName(tr("Which cloth"));
    m_cloth->setToolTip(tr("The cloth whose length is explained."));
    if (m_cloth->count() < 2) {
        m_cloth->setParent(this);
        m_cloth->hide();
    } else {
        addAbove(tr("Which cloth"), m_cloth);
    }
    if (const auto before = stillTrue<FoundStairs>()) {
        m_cloth->setCurrentIndex(std::max(0, m_cloth->findData(fromCore(before->found.stairs.cloth))));
        show(before->found.stairs);
    }
}

void WhyPage::ask() {
    StaircaseOptions options;
    options.plan.seconds = m_seconds;
    answering().start(
        [this, options, book = book(), cloth = toCore(m_cloth->currentData().toString())](
            const Job &job, const Layout &laid, const Answering::Stop &stop, const Answering::Report &report) mutable {
            options.plan.stop = stop;
            if (!laid.cuts.empty()) options.plan.from = &laid;
            options.progress = report;
            const auto stairs = staircaseOf(job, cloth, options);
            if (stairs) book->keep(job, FoundStairs{*stairs});
            return [this, stairs] {
                if (stairs)
                    show(*stairs);
                else
                    say(tr("There is nothing to explain: %1.").arg(withFractions(fromCore(stairs.error().text))));
            };
        });
}

void WhyPage::show(const Staircase &stairs) {
    m_stairs = stairs;
    clearAnswers();
    auto *column = new QWidget;
    auto *layout = new QVBoxLayout(column);
    layout->setContentsMargins(0, 0, 0, 0);
    auto *view = new StaircaseView;
    m_view = view;
    view->show(stairs, document().job().unit);
    layout->addWidget(view, 3);
    m_advice = new QLabel(tr("Choose a step, by mouse or with the arrow keys."));
    m_advice->setWordWrap(true);
    layout->addWidget(m_advice);
    auto *thumbnail = new LayoutThumbnail;
    m_behind = thumbnail;
    thumbnail->hide();
    layout->addWidget(thumbnail, 1);
    auto *save = new QPushButton(tr("Save as a picture …"));
    save->setToolTip(tr("Writes these steps as a picture, to show the client what the length is for."));
    layout->addWidget(save, 0, Qt::AlignLeft);
    connect(save, &QPushButton::clicked, this, &WhyPage::save);
    connect(view, &StaircaseView::chosenChanged, this, &WhyPage::explain);
    addAnswer(column, 1);
    view->setFocus();
}

void WhyPage::explain(int step) {
    const Stair &stair = m_stairs.stairs[std::size_t(step)];
    QString text = shownName(stair.kind) + u": "_s + shownStep(stair, document().job().unit) + u". "_s;
    if (!stair.advice.empty()) {
        QString advice = withFractions(fromCore(stair.advice)) + u'.';
        advice.front() = advice.front().toUpper();
        text += advice;
    }
    if (stair.upTo) text += u' ' + tr("The search may still find better here, so it is no more than that.");
    m_advice->setText(text);
    static_cast<LayoutThumbnail *>(m_behind.data())->show(document().job(), stair.layout);
    m_behind->setVisible(!stair.layout.cuts.empty());
}

void WhyPage::save() {
    const QString proposal = tr("%1, where the yardage goes").arg(document().displayName()) + u".svg"_s;
    QString file = QFileDialog::getSaveFileName(this, tr("Save the picture"), proposal, tr("SVG pictures (*.svg)"));
    if (file.isEmpty()) return;
    if (QFileInfo(file).suffix().isEmpty()) file += u".svg"_s;
    const auto saved = writeStaircaseSvg(m_stairs, document().job().unit, std::filesystem::path(file.toStdString()));
    say(saved ? tr("Saved as %1.").arg(QFileInfo(file).fileName()) : fromCore(saved.error().text));
}

} // namespace boltwright::ui
