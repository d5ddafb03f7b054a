#pragma once

#include <QAction>
#include <QHash>
#include <QKeySequence>
#include <QList>
#include <QObject>

namespace boltwright::ui {

/// Everything a person can ask for, by name.
enum class ActionId {
    NewJob,
    Open,
    OpenSample,
    Save,
    SaveAs,
    Print,
    SavePiece,
    PrintPiece,
    Quit,
    Undo,
    Redo,
    Plan,
    Stop,
    WaysToFit,
    HowToRun,
    AskFor,
    Why,
    LayDown,
    Turn,
    Lock,
    MarkCut,
    CutWrong,
    FlawFound,
    TrimCut,
    PutAside,
    NextPanel,
    PreviousPanel,
    Measure,
    AlsoNextPanel,
    AlsoPreviousPanel,
    AllPanels,
    ChangePlaces,
    HeadToFoot,
    PushToCutEnd,
    Hand,
    Tape,
    Chalk,
    Notes,
    Panels,
    Matches,
    Cloths,
    ClothQuestions,
    Trimmings,
    ShopRules,
    Outlines,
    RemnantFromPhotograph,
    TapeLengths,
    JobCard,
    ZoomIn,
    ZoomOut,
    ZoomToFit,
    ShowLeftPane,
    ShowRightPane,
    ShowKept,
    ShowStrips,
    LargerText,
    SmallerText,
    LookAsSystem,
    LookLight,
    LookDark,
    HowTo,
    Keys,
    About,
};

/// One row of the table of all actions. Menus, header, shortcuts and the page of keys come from it.
struct ActionRow {
    ActionId id;
    const char *menu; ///< untranslated, of context "Actions"; empty: in none
    const char *text;
    const char *sentence; ///< for tooltips and the page of keys
    const char *icon;     ///< resource name without folder and ending; empty: none
    QKeySequence key;
    bool checkable = false;
};

const QList<ActionRow> &actionTable();

/// The actions made from the table, owned by the window.
class Actions : public QObject {
    Q_OBJECT
public:
    explicit Actions(QObject *parent);
    QAction *operator[](ActionId id) const { return m_actions.value(int(id)); }
    /// The menus in the table's order, each with its actions.
    QList<QPair<QString, QList<QAction *>>> menus() const;
    /// Icons drawn anew in the colour of the text.
    void paintIcons(const QColor &ink);
    static QString textOf(const ActionRow &row);
    static QString sentenceOf(const ActionRow &row);

private:
    QHash<int, QAction *> m_actions;
};

/// An icon of ours from the resources, in one colour.
QIcon inkedIcon(const QString &name, const QColor &ink);

} // namespace boltwright::ui
