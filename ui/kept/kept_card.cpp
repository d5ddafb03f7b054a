#include "ui/kept/kept_card.h"

#include "core/rules/cut_already.h"
#include "ui/drawing/colours.h"
#include "ui/text/words.h"

#include <QContextMenuEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr int margin = 10, gap = 4;

/// The picture is as high as the three lines beside it.
QSize pictureSize(const QFontMetrics &bold, const QFontMetrics &fine) {
    const int height = std::max(58, bold.height() + 2 * fine.height() + 2);
    return {height * 2 + 8, height};
}

} // namespace

KeptCard::KeptCard(QWidget *parent)
    : QAbstractButton(parent), m_picture(new LayoutThumbnail(this)), m_more(new QToolButton(this)),
      m_menu(new QMenu(this)), m_field(new QLineEdit(this)) {
    setCheckable(true);
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    m_picture->setMinimumSize(0, 0);
    m_picture->setAttribute(Qt::WA_TransparentForMouseEvents);
    m_more->setText(u"⋯"_s);
    m_more->setToolTip(tr("Name, compare or drop this layout."));
    m_more->setAccessibleName(tr("What can be done with this layout"));
    m_more->setCursor(Qt::ArrowCursor);
    m_compare = m_menu->addAction(tr("Compare with the one on the table"), this, &KeptCard::comparisonWanted);
    m_compare->setShortcut(Qt::Key_C);
    m_menu->addAction(tr("Name…"), this, &KeptCard::beginRename)->setShortcut(Qt::Key_F2);
    m_menu->addAction(tr("Drop"), this, &KeptCard::dropWanted)->setShortcut(Qt::Key_Delete);
    for (QAction *action : m_menu->actions())
        action->setShortcutContext(Qt::WidgetShortcut); // shown; keyPressEvent acts
    connect(m_more, &QToolButton::clicked, this,
            [this] { m_menu->popup(m_more->mapToGlobal(QPoint(0, m_more->height()))); });
    m_field->hide();
    m_field->setAccessibleName(tr("Name of the layout"));
    m_field->installEventFilter(this);
    connect(m_field, &QLineEdit::editingFinished, this, [this] { endRename(true); });
}

QFont KeptCard::strong() const {
    QFont f = font();
    f.setBold(true);
    return f;
}

QFont KeptCard::small() const {
    QFont f = font();
    f.setPixelSize(std::max(11, qRound(fontInfo().pixelSize() * 0.88)));
    return f;
}

QSize KeptCard::sizeHint() const {
    const QFontMetrics bold(strong()), fine(small());
    const int figure =
        std::max(bold.horizontalAdvance(u"88 yd 88 ½ in"_s), fine.horizontalAdvance(tr("✓ on the table")));
    const QSize picture = pictureSize(bold, fine);
    return {std::max(250, picture.width() + figure + 3 * margin),
            2 * margin + picture.height() + 2 * gap + bold.height() + fine.height()};
}

void KeptCard::show(const Job &job, int index, bool current) {
    setChecked(current);
    m_compare->setEnabled(!current);
    Job own = job;
    own.layouts = {job.layouts[std::size_t(index)]};
    const QString name = nameOfLayout(job, index);
    // Other layouts know what is cut, and so whether this one is still possible.
    const auto why = noLongerPossible(job, job.layouts[std::size_t(index)]);
    const bool same = current == m_wasCurrent && index == m_index && name == m_name && own == m_job;
    m_wasCurrent = current;
    if (same && fromCore(why.value_or("")) == m_words.gone) {
        update();
        return;
    }
    m_index = index;
    m_name = name;
    m_words = wordsOf(job, job.layouts[std::size_t(index)]);
    m_picture->show(own, own.layouts.front());
    m_job = std::move(own);
    setAccessibleName(m_name);
    QStringList said;
    for (const QString &part : {m_words.figure, m_words.beside, m_words.givenUp})
        if (!part.isEmpty()) said << part;
    const QString gone = m_words.gone.isEmpty() ? QString() : tr("no longer possible: %1").arg(m_words.gone);
    if (!gone.isEmpty())
        said << gone;
    else if (!m_words.wrong.isEmpty())
        said << tr("not right yet: %1").arg(m_words.wrong);
    setAccessibleDescription(said.join(u", "_s));
    QStringList lines{m_name};
    if (current) lines << tr("On the table: it changes as panels are moved. Keep a copy to hold on to it.");
    if (!gone.isEmpty()) lines << gone;
    if (!m_words.wrong.isEmpty()) lines << tr("Not right yet: %1").arg(m_words.wrong);
    setToolTip((lines << m_words.givenUp << m_words.inFull).join(u'\n').trimmed());
    update();
}

QRectF KeptCard::nameRoom() const {
    const QFontMetrics bold(strong());
    return QRectF(margin, m_picture->geometry().bottom() + 1 + gap, width() - 2 * margin, bold.height());
}

void KeptCard::place() {
    m_picture->setGeometry(QRect(QPoint(margin, margin), pictureSize(QFontMetrics(strong()), QFontMetrics(small()))));
    const QSize more = m_more->sizeHint();
    m_more->setGeometry(width() - more.width() - 5, height() - more.height() - 5, more.width(), more.height());
    m_field->setGeometry(nameRoom().adjusted(-4, -4, 4, 4).toRect());
}

void KeptCard::resizeEvent(QResizeEvent *) { place(); }

void KeptCard::paintEvent(QPaintEvent *) {
    const Colours colours = coloursOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = isChecked() ? 2.5 : 1;
    const QRectF card = QRectF(rect()).adjusted(line / 2, line / 2, -line / 2, -line / 2);
    painter.setPen(QPen(isChecked() ? colours.accent : colours.hairline, line));
    painter.setBrush(underMouse() && !isChecked() ? colours.paper : colours.table);
    painter.drawRoundedRect(card, 8, 8);
    if (hasFocus()) {
        painter.setPen(QPen(colours.accent, 1.5, Qt::DotLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(card.adjusted(3.5, 3.5, -3.5, -3.5), 5, 5);
    }
    const double left = m_picture->geometry().right() + margin, right = width() - margin;
    const QFontMetricsF bold(strong()), fine(small());
    const QRectF figure(left, margin, right - left, bold.height());
    painter.setFont(strong());
    painter.setPen(colours.ink);
    painter.drawText(figure, Qt::AlignRight | Qt::AlignVCenter, m_words.figure);
    painter.setFont(small());
    painter.setPen(colours.quiet);
    QRectF below(left, figure.bottom() + 1, right - left, fine.height());
    if (!m_words.beside.isEmpty()) {
        painter.drawText(below, Qt::AlignRight | Qt::AlignVCenter, m_words.beside);
        below.translate(0, fine.height());
    }
    // Not by frame and colour alone.
    if (isChecked()) {
        painter.setPen(colours.accent);
        painter.drawText(below, Qt::AlignRight | Qt::AlignVCenter, tr("✓ on the table"));
    }
    const QRectF name = nameRoom();
    painter.setFont(strong());
    painter.setPen(colours.ink);
    painter.drawText(name, Qt::AlignLeft | Qt::AlignVCenter, bold.elidedText(m_name, Qt::ElideRight, name.width()));
    const QRectF given(margin, name.bottom() + gap, m_more->x() - margin - 4, fine.height());
    QString words = m_words.givenUp;
    if (!m_words.gone.isEmpty())
        words = tr("no longer possible: %1").arg(m_words.gone);
    else if (!m_words.wrong.isEmpty())
        words = tr("not right yet: %1").arg(m_words.wrong);
    painter.setFont(small());
    painter.setPen(m_words.wrong.isEmpty() && m_words.gone.isEmpty() ? colours.quiet : colours.broken);
    painter.drawText(given, Qt::AlignLeft | Qt::AlignVCenter, fine.elidedText(words, Qt::ElideRight, given.width()));
}

void KeptCard::beginRename() {
    m_field->setText(m_name);
    m_field->selectAll();
    m_field->show();
    m_field->raise();
    m_field->setFocus();
}

void KeptCard::endRename(bool take) {
    if (m_field->isHidden()) return;
    const QString name = m_field->text().trimmed();
    m_field->hide();
    setFocus();
    if (take && !name.isEmpty() && name != m_name) Q_EMIT renamed(name);
}

bool KeptCard::eventFilter(QObject *watched, QEvent *event) {
    if (watched == m_field && (event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride)) {
        const int key = static_cast<QKeyEvent *>(event)->key();
        if (event->type() == QEvent::KeyPress && key == Qt::Key_Escape) {
            endRename(false);
            return true;
        }
        if (event->type() == QEvent::KeyPress && (key == Qt::Key_Return || key == Qt::Key_Enter)) {
            endRename(true);
            return true;
        }
        event->accept();
    }
    return QAbstractButton::eventFilter(watched, event);
}

void KeptCard::keyPressEvent(QKeyEvent *event) {
    switch (event->key()) {
    case Qt::Key_Left:
        Q_EMIT neighbourWanted(-1);
        break;
    case Qt::Key_Right:
        Q_EMIT neighbourWanted(1);
        break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        click();
        break;
    case Qt::Key_F2:
        beginRename();
        break;
    case Qt::Key_C:
        if (m_compare->isEnabled()) Q_EMIT comparisonWanted();
        break;
    case Qt::Key_Delete:
        Q_EMIT dropWanted();
        break;
    default:
        QAbstractButton::keyPressEvent(event);
    }
}

bool KeptCard::event(QEvent *event) {
    // Delete means this card while it has the focus, and not the panel selected on the table.
    if (event->type() == QEvent::ShortcutOverride) {
        const int key = static_cast<QKeyEvent *>(event)->key();
        if (key == Qt::Key_Delete || key == Qt::Key_F2 || key == Qt::Key_C) {
            event->accept();
            return true;
        }
    }
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) {
        updateGeometry();
        place();
    }
    if (event->type() == QEvent::Enter || event->type() == QEvent::Leave) update();
    return QAbstractButton::event(event);
}

void KeptCard::contextMenuEvent(QContextMenuEvent *event) { m_menu->popup(event->globalPos()); }

} // namespace boltwright::ui
