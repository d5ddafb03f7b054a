#pragma once

#include "ui/document/job_document.h"

#include <QUndoCommand>

namespace boltwright::ui {

/// A command keeps the other value of the part it changes; undo and redo swap. Made by the document alone.
class ExchangeCommand : public QUndoCommand {
public:
    ExchangeCommand(JobDocument &document, const QString &text, const QString &mergeKey)
        : QUndoCommand(text), m_document(document), m_mergeKey(mergeKey) {}
    void undo() override { redo(); }

protected:
    JobDocument &m_document;
    QString m_mergeKey;
};

class ChangeLayout : public ExchangeCommand {
public:
    ChangeLayout(JobDocument &document, int index, Layout layout, const QString &text, const QString &mergeKey);
    void redo() override;
    int id() const override { return m_mergeKey.isEmpty() ? -1 : 1; }
    bool mergeWith(const QUndoCommand *next) override;

private:
    int m_index;
    Layout m_layout;
};

/// Which layouts the job has, and which of them is laid.
class ChangeLayouts : public ExchangeCommand {
public:
    ChangeLayouts(JobDocument &document, std::vector<Layout> layouts, int index, const QString &text);
    void redo() override;

private:
    std::vector<Layout> m_layouts;
    int m_index;
};

class ChangeJob : public ExchangeCommand {
public:
    ChangeJob(JobDocument &document, Job job, const QString &text, const QString &mergeKey);
    void redo() override;
    int id() const override { return m_mergeKey.isEmpty() ? -1 : 2; }
    bool mergeWith(const QUndoCommand *next) override;

private:
    Job m_job;
};

} // namespace boltwright::ui
