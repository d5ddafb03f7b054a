#pragma once

#include "ui/document/job_document.h"

#include <QWidget>

namespace boltwright::ui {

/// Title, client, piece, notes, date; the unit of the job and the gap between cuts.
class JobCardForm : public QWidget {
    Q_OBJECT
public:
    explicit JobCardForm(JobDocument &document, QWidget *parent = nullptr);
};

} // namespace boltwright::ui
