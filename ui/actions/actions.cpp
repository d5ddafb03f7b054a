#include "ui/actions/actions.h"

#include <QCoreApplication>
#include <QFile>
#include <QIcon>
#include <QPainter>
#include <QSvgRenderer>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

const QList<ActionRow> &actionTable() {
    static const QList<ActionRow> table = {
        {ActionId::NewJob, "Job", QT_TRANSLATE_NOOP("Actions", "New job"),
         QT_TRANSLATE_NOOP("Actions", "Begin a job with one bolt and no panels yet."), "new", QKeySequence::New},
        {ActionId::Open, "Job", QT_TRANSLATE_NOOP("Actions", "Open…"), QT_TRANSLATE_NOOP("Actions", "Open a job file."),
         "open", QKeySequence::Open},
        {ActionId::OpenSample,
         "Job",
         QT_TRANSLATE_NOOP("Actions", "Open a sample"),
         QT_TRANSLATE_NOOP("Actions", "Open an invented job to look around in."),
         "",
         {}},
        {ActionId::Save, "Job", QT_TRANSLATE_NOOP("Actions", "Save"),
         QT_TRANSLATE_NOOP("Actions", "Write the job to its file."), "save", QKeySequence::Save},
        {ActionId::SaveAs, "Job", QT_TRANSLATE_NOOP("Actions", "Save as…"),
         QT_TRANSLATE_NOOP("Actions", "Write the job to another file."), "",
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S)},
        {ActionId::Print, "Job", QT_TRANSLATE_NOOP("Actions", "Print…"),
         QT_TRANSLATE_NOOP("Actions", "Cutting sheet, labels, true size and the client's page: seen first, then "
                                      "printed or kept as PDF."),
         "print", QKeySequence::Print},
        {ActionId::SavePiece,
         "Job",
         QT_TRANSLATE_NOOP("Actions", "Save the covered piece…"),
         QT_TRANSLATE_NOOP("Actions", "Write the covered piece as a picture or a page, to show the client."),
         "",
         {}},
        {ActionId::PrintPiece, "Job", QT_TRANSLATE_NOOP("Actions", "Print the covered piece…"),
         QT_TRANSLATE_NOOP("Actions", "Print the covered piece, after a look at the page."), "",
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P)},
        {ActionId::Quit, "Job", QT_TRANSLATE_NOOP("Actions", "Quit"), QT_TRANSLATE_NOOP("Actions", "Close the window."),
         "", QKeySequence(Qt::CTRL | Qt::Key_Q)},
        {ActionId::Undo, "Edit", QT_TRANSLATE_NOOP("Actions", "Undo"),
         QT_TRANSLATE_NOOP("Actions", "Take back the last step."), "undo", QKeySequence::Undo},
        {ActionId::Redo, "Edit", QT_TRANSLATE_NOOP("Actions", "Redo"),
         QT_TRANSLATE_NOOP("Actions", "Do again what was taken back."), "redo",
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z)},
        {ActionId::JobCard,
         "Edit",
         QT_TRANSLATE_NOOP("Actions", "Job card…"),
         QT_TRANSLATE_NOOP("Actions", "Title, client, piece, notes and the unit of the job."),
         "card",
         {}},
        {ActionId::Cloths, "Edit", QT_TRANSLATE_NOOP("Actions", "Cloth…"),
         QT_TRANSLATE_NOOP("Actions", "Width, repeat, nap and flaws of the cloth, or the remnants there are."), "cloth",
         QKeySequence(Qt::CTRL | Qt::Key_T)},
        {ActionId::Outlines, "Edit", QT_TRANSLATE_NOOP("Actions", "Remnants and flaws"),
         QT_TRANSLATE_NOOP("Actions", "Draw remnants on the table, change their corners, mark flaws."), "",
         QKeySequence(Qt::CTRL | Qt::Key_R), true},
        {ActionId::RemnantFromPhotograph, "Edit", QT_TRANSLATE_NOOP("Actions", "Remnant from a photograph…"),
         QT_TRANSLATE_NOOP("Actions", "Trace a remnant in a photograph that shows something of known size."), "",
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_R)},
        {ActionId::TapeLengths,
         "Edit",
         QT_TRANSLATE_NOOP("Actions", "Tape two lengths…"),
         QT_TRANSLATE_NOOP("Actions", "Confirm the scale of a photographed remnant by two lengths taped on it."),
         "",
         {}},
        {ActionId::Panels, "Edit", QT_TRANSLATE_NOOP("Actions", "Panels…"),
         QT_TRANSLATE_NOOP("Actions", "The table of panels: measures, allowances and wishes."), "panels",
         QKeySequence(Qt::CTRL | Qt::Key_E)},
        {ActionId::Matches, "Edit", QT_TRANSLATE_NOOP("Actions", "Pattern match…"),
         QT_TRANSLATE_NOOP("Actions", "Where the pattern runs on from one panel to the next, and what is lost there."),
         "", QKeySequence(Qt::CTRL | Qt::Key_J)},
        {ActionId::Measure, "Edit", QT_TRANSLATE_NOOP("Actions", "From measurements…"),
         QT_TRANSLATE_NOOP("Actions", "Choose a piece, fill in what the tape says, and take the panels it makes."), "",
         QKeySequence(Qt::CTRL | Qt::Key_M)},
        {ActionId::Trimmings, "Edit", QT_TRANSLATE_NOOP("Actions", "Trimmings…"),
         QT_TRANSLATE_NOOP("Actions", "Welt, gimp, cord and nails: how much, and whether what is left over is enough."),
         "", QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_T)},
        {ActionId::ClothQuestions,
         "Edit",
         QT_TRANSLATE_NOOP("Actions", "What the cloth must be…"),
         QT_TRANSLATE_NOOP("Actions", "What to go through with the client before their cloth is accepted."),
         "",
         {}},
        {ActionId::ShopRules,
         "Edit",
         QT_TRANSLATE_NOOP("Actions", "The shop's rules…"),
         QT_TRANSLATE_NOOP("Actions",
                           "What the forms add at edges, to cushions, skirts and welt, and where it is from."),
         "",
         {}},
        {ActionId::Plan, "Layout", QT_TRANSLATE_NOOP("Actions", "Plan"),
         QT_TRANSLATE_NOOP("Actions", "Lay all panels as short as can be found; locked ones stay where they are."),
         "plan", QKeySequence(Qt::CTRL | Qt::Key_Return)},
        {ActionId::Stop, "Layout", QT_TRANSLATE_NOOP("Actions", "Stop planning"),
         QT_TRANSLATE_NOOP("Actions", "Keep the best layout found so far."), "stop",
         QKeySequence(Qt::CTRL | Qt::Key_Period)},
        {ActionId::WaysToFit, "Layout", QT_TRANSLATE_NOOP("Actions", "Ways to fit…"),
         QT_TRANSLATE_NOOP("Actions", "When the cloth is short: what could be given up for it to do."), "",
         QKeySequence(Qt::CTRL | Qt::Key_W)},
        {ActionId::HowToRun,
         "Layout",
         QT_TRANSLATE_NOOP("Actions", "How to run it…"),
         QT_TRANSLATE_NOOP("Actions", "The job up the roll, railroaded, and as it falls best, side by side."),
         "",
         {}},
        {ActionId::AskFor, "Layout", QT_TRANSLATE_NOOP("Actions", "How much to ask for…"),
         QT_TRANSLATE_NOOP("Actions",
                           "What the job takes at other widths and repeats, and how much more a short remnant needs."),
         "", QKeySequence(Qt::CTRL | Qt::Key_K)},
        {ActionId::Why, "Layout", QT_TRANSLATE_NOOP("Actions", "Where the yardage goes…"),
         QT_TRANSLATE_NOOP("Actions", "From the bare parts to what must be bought, step by step."), "",
         QKeySequence(Qt::CTRL | Qt::Key_Y)},
        {ActionId::NextPanel, "Layout", QT_TRANSLATE_NOOP("Actions", "Next panel"),
         QT_TRANSLATE_NOOP("Actions", "Select the next panel on the cloth."), "",
         QKeySequence(Qt::CTRL | Qt::Key_Right)},
        {ActionId::PreviousPanel, "Layout", QT_TRANSLATE_NOOP("Actions", "Panel before"),
         QT_TRANSLATE_NOOP("Actions", "Select the panel before this one."), "", QKeySequence(Qt::CTRL | Qt::Key_Left)},
        {ActionId::AlsoNextPanel, "Layout", QT_TRANSLATE_NOOP("Actions", "Take along the next panel"),
         QT_TRANSLATE_NOOP("Actions", "Select the next panel with those selected, to move them together."), "",
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Right)},
        {ActionId::AlsoPreviousPanel, "Layout", QT_TRANSLATE_NOOP("Actions", "Take along the panel before"),
         QT_TRANSLATE_NOOP("Actions", "Select the panel before with those selected, to move them together."), "",
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Left)},
        {ActionId::AllPanels, "Layout", QT_TRANSLATE_NOOP("Actions", "All panels"),
         QT_TRANSLATE_NOOP("Actions", "Select every panel on the cloth."), "", QKeySequence(Qt::CTRL | Qt::Key_A)},
        {ActionId::Turn, "Layout", QT_TRANSLATE_NOOP("Actions", "Turn"),
         QT_TRANSLATE_NOOP("Actions", "Turn the selected panel to the next way it may lie."), "turn",
         QKeySequence(Qt::Key_R)},
        {ActionId::HeadToFoot, "Layout", QT_TRANSLATE_NOOP("Actions", "Lay head to foot"),
         QT_TRANSLATE_NOOP("Actions", "Turn the selected panel half round and lay it close against its pair."),
         "headtofoot", QKeySequence(Qt::Key_F)},
        {ActionId::ChangePlaces, "Layout", QT_TRANSLATE_NOOP("Actions", "Change places"),
         QT_TRANSLATE_NOOP("Actions", "The two selected panels change places, as near as the rules allow."), "places",
         QKeySequence(Qt::Key_X)},
        {ActionId::PushToCutEnd, "Layout", QT_TRANSLATE_NOOP("Actions", "Push towards the cut end"),
         QT_TRANSLATE_NOOP("Actions",
                           "Panels close up towards the cut end as far as the rules allow: those selected, or all."),
         "push", QKeySequence(Qt::Key_P)},
        {ActionId::Lock, "Layout", QT_TRANSLATE_NOOP("Actions", "Lock in place"),
         QT_TRANSLATE_NOOP("Actions", "The selected panel stays where it is, also when planning again."), "lock",
         QKeySequence(Qt::Key_L), true},
        {ActionId::MarkCut, "Layout", QT_TRANSLATE_NOOP("Actions", "Already cut"),
         QT_TRANSLATE_NOOP("Actions", "The selected panel is off the cloth: its place is used."), "scissors",
         QKeySequence(Qt::Key_C), true},
        {ActionId::CutWrong, "Layout", QT_TRANSLATE_NOOP("Actions", "Cut went wrong"),
         QT_TRANSLATE_NOOP("Actions", "The selected panel's cloth is spoiled: it is cut once more from what is left."),
         "", QKeySequence(Qt::SHIFT | Qt::Key_C)},
        {ActionId::FlawFound,
         "Layout",
         QT_TRANSLATE_NOOP("Actions", "Flaw found…"),
         QT_TRANSLATE_NOOP("Actions", "A flaw shows up in the cloth: enter it, and what is left is planned around it."),
         "",
         {}},
        {ActionId::TrimCut, "Layout", QT_TRANSLATE_NOOP("Actions", "Trims and pieces…"),
         QT_TRANSLATE_NOOP("Actions", "What is left at each edge of the selected cut, and how long its pieces are."),
         "", QKeySequence(Qt::SHIFT | Qt::Key_T)},
        {ActionId::PutAside, "Layout", QT_TRANSLATE_NOOP("Actions", "Put aside"),
         QT_TRANSLATE_NOOP("Actions", "Take the selected panel off the cloth and keep it below the table."), "aside",
         QKeySequence(Qt::Key_Delete)},
        {ActionId::LayDown, "Layout", QT_TRANSLATE_NOOP("Actions", "Lay on the cloth"),
         QT_TRANSLATE_NOOP("Actions", "Lay a panel that is put aside where there is room for it."), "lay",
         QKeySequence(Qt::Key_Insert)},
        {ActionId::Hand, "Table", QT_TRANSLATE_NOOP("Actions", "Hand"),
         QT_TRANSLATE_NOOP("Actions", "Take hold of panels and move them."), "hand", QKeySequence(Qt::Key_H), true},
        {ActionId::Tape, "Table", QT_TRANSLATE_NOOP("Actions", "Measuring tape"),
         QT_TRANSLATE_NOOP("Actions", "Measure between two points, corners or edges on the cloth."), "tape",
         QKeySequence(Qt::Key_T), true},
        {ActionId::Chalk, "Table", QT_TRANSLATE_NOOP("Actions", "Chalk line"),
         QT_TRANSLATE_NOOP("Actions", "Draw lines on the cloth that panels come to rest at."), "chalk",
         QKeySequence(Qt::Key_K), true},
        {ActionId::Notes, "Table", QT_TRANSLATE_NOOP("Actions", "Pinned note"),
         QT_TRANSLATE_NOOP("Actions", "Pin a few words to a place on the cloth."), "note", QKeySequence(Qt::Key_N),
         true},
        {ActionId::ZoomIn, "View", QT_TRANSLATE_NOOP("Actions", "Nearer"),
         QT_TRANSLATE_NOOP("Actions", "See the cloth from nearer by."), "nearer", QKeySequence::ZoomIn},
        {ActionId::ZoomOut, "View", QT_TRANSLATE_NOOP("Actions", "Further"),
         QT_TRANSLATE_NOOP("Actions", "See more of the cloth."), "further", QKeySequence::ZoomOut},
        {ActionId::ZoomToFit, "View", QT_TRANSLATE_NOOP("Actions", "See all"),
         QT_TRANSLATE_NOOP("Actions", "See all of the cloth that is used."), "fit", QKeySequence(Qt::CTRL | Qt::Key_0)},
        {ActionId::ShowLeftPane, "View", QT_TRANSLATE_NOOP("Actions", "List of panels"),
         QT_TRANSLATE_NOOP("Actions", "Show or hide the list of what is to cut."), "", QKeySequence(Qt::Key_F7), true},
        {ActionId::ShowRightPane, "View", QT_TRANSLATE_NOOP("Actions", "How it looks and what holds it back"),
         QT_TRANSLATE_NOOP("Actions", "Show or hide the page at the right."), "", QKeySequence(Qt::Key_F8), true},
        {ActionId::ShowKept, "View", QT_TRANSLATE_NOOP("Actions", "Kept layouts"),
         QT_TRANSLATE_NOOP("Actions", "Show or hide the layouts along the bottom."), "", QKeySequence(Qt::Key_F9),
         true},
        {ActionId::ShowStrips,
         "View",
         QT_TRANSLATE_NOOP("Actions", "Welt from what is left over"),
         QT_TRANSLATE_NOOP("Actions", "Show or hide the strips that what is left over yields."),
         "",
         {},
         true},
        {ActionId::LargerText, "View", QT_TRANSLATE_NOOP("Actions", "Larger text"),
         QT_TRANSLATE_NOOP("Actions", "Larger letters everywhere, up to twice the size."), "",
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Up)},
        {ActionId::SmallerText, "View", QT_TRANSLATE_NOOP("Actions", "Smaller text"),
         QT_TRANSLATE_NOOP("Actions", "Smaller letters, down to the system's own size."), "",
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Down)},
        {ActionId::LookAsSystem,
         "View",
         QT_TRANSLATE_NOOP("Actions", "Colours as the system"),
         QT_TRANSLATE_NOOP("Actions", "Light or dark as the system is."),
         "",
         {},
         true},
        {ActionId::LookLight,
         "View",
         QT_TRANSLATE_NOOP("Actions", "Light colours"),
         QT_TRANSLATE_NOOP("Actions", "Light, whatever the system is."),
         "",
         {},
         true},
        {ActionId::LookDark,
         "View",
         QT_TRANSLATE_NOOP("Actions", "Dark colours"),
         QT_TRANSLATE_NOOP("Actions", "Dark, whatever the system is."),
         "",
         {},
         true},
        {ActionId::HowTo, "Help", QT_TRANSLATE_NOOP("Actions", "All help pages…"),
         QT_TRANSLATE_NOOP("Actions", "How things are done, with pictures."), "", QKeySequence(Qt::SHIFT | Qt::Key_F1)},
        {ActionId::Keys, "Help", QT_TRANSLATE_NOOP("Actions", "Keys and gestures"),
         QT_TRANSLATE_NOOP("Actions", "All that can be done, with its key."), "", QKeySequence::HelpContents},
        {ActionId::About,
         "Help",
         QT_TRANSLATE_NOOP("Actions", "About Boltwright"),
         QT_TRANSLATE_NOOP("Actions", "Version and licence."),
         "",
         {}},
    };
    return table;
}

QString Actions::textOf(const ActionRow &row) { return QCoreApplication::translate("Actions", row.text); }
QString Actions::sentenceOf(const ActionRow &row) { return QCoreApplication::translate("Actions", row.sentence); }

Actions::Actions(QObject *parent) : QObject(parent) {
    for (const ActionRow &row : actionTable()) {
        auto *action = new QAction(textOf(row), this);
        const QString key = row.key.toString(QKeySequence::NativeText);
        action->setToolTip(key.isEmpty() ? sentenceOf(row) : tr("%1 (%2)").arg(sentenceOf(row), key));
        action->setStatusTip(sentenceOf(row));
        action->setShortcut(row.key);
        action->setCheckable(row.checkable);
        m_actions.insert(int(row.id), action);
    }
}

QList<QPair<QString, QList<QAction *>>> Actions::menus() const {
    QList<QPair<QString, QList<QAction *>>> menus;
    for (const ActionRow &row : actionTable()) {
        const QString title = QCoreApplication::translate("Actions", row.menu);
        if (menus.isEmpty() || menus.last().first != title) menus.append({title, {}});
        menus.last().second.append((*this)[row.id]);
    }
    return menus;
}

QIcon inkedIcon(const QString &name, const QColor &ink) {
    QFile file(u":/boltwright/icons/%1.svg"_s.arg(name));
    if (!file.open(QIODevice::ReadOnly)) return {};
    QByteArray svg = file.readAll();
    svg.replace("currentColor", ink.name().toLatin1());
    QSvgRenderer renderer(svg);
    QIcon icon;
    for (int side : {18, 36, 54}) {
        QPixmap pixmap(side, side);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        renderer.render(&painter);
        painter.end();
        icon.addPixmap(pixmap);
    }
    return icon;
}

void Actions::paintIcons(const QColor &ink) {
    for (const ActionRow &row : actionTable())
        if (*row.icon) (*this)[row.id]->setIcon(inkedIcon(QString::fromLatin1(row.icon), ink));
}

} // namespace boltwright::ui
