#include "ui/forms/cloth_questions_page.h"

#include "core/base/language.h"
#include "core/cloth/cloth_questions.h"
#include "ui/text/words.h"
#include "ui/widgets/scaled.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QScrollArea>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {
QString plain(std::string_view text) { return withFractions(fromCore(phrase(text))); }
} // namespace

ClothQuestionsPage::ClothQuestionsPage(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_which(new QComboBox(this)), m_scroll(new QScrollArea(this)),
      m_sum(new QLabel(this)) {
    m_which->setAccessibleName(tr("Which cloth"));
    m_which->setToolTip(tr("The cloth that is gone through below."));
    m_which->setMinimumWidth(scaled(240));
    for (const Cloth &c : document.job().cloths) m_which->addItem(fromCore(c.name.empty() ? c.id : c.name));
    m_which->setVisible(document.job().cloths.size() > 1);
    m_sum->setWordWrap(true);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    auto *advice = new QLabel(
        tr("A cloth's own label and the law of the place decide what it may be used for; this list does not. "
           "Whoever certifies fire safety where the piece is sold or used has the last word."),
        this);
    advice->setObjectName(u"quiet"_s);
    advice->setWordWrap(true);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_which, 0, Qt::AlignLeft);
    column->addWidget(m_sum);
    column->addWidget(m_scroll, 1);
    column->addWidget(advice);
    connect(m_which, &QComboBox::currentIndexChanged, this, &ClothQuestionsPage::fill);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        if (changes & Change::Cloths) sum();
    });
    fill();
}

const Cloth &ClothQuestionsPage::cloth() const {
    const auto &cloths = m_document.job().cloths;
    return cloths[std::size_t(std::clamp(m_which->currentIndex(), 0, int(cloths.size()) - 1))];
}

void ClothQuestionsPage::answer(const std::string &about, const std::function<void(ClothAnswer &)> &how,
                                const QString &text) {
    ClothAnswer changed = answerTo(cloth(), about);
    how(changed);
    Job job = m_document.job();
    for (Cloth &c : job.cloths)
        if (c.id == cloth().id) {
            c = withAnswer(c, changed);
            break;
        }
    m_document.changeJob(std::move(job), text, u"asked %1 %2"_s.arg(fromCore(about), text));
}

void ClothQuestionsPage::sum() {
    int good = 0, doubt = 0;
    for (const ClothQuestion &q : clothQuestions()) {
        const auto said = answerTo(cloth(), q.about).said;
        good += said == ClothAnswer::Said::Good;
        doubt += said == ClothAnswer::Said::Doubt;
    }
    const int open = int(clothQuestions().size()) - good - doubt;
    m_sum->setText(open == 0 && doubt == 0
                       ? tr("All gone through, nothing in doubt.")
                       : tr("%1 good, %2 in doubt, %3 not asked yet.").arg(good).arg(doubt).arg(open));
}

void ClothQuestionsPage::fill() {
    auto *page = new QWidget;
    auto *grid = new QGridLayout(page);
    grid->setContentsMargins(0, 4, 12, 8);
    grid->setHorizontalSpacing(16);
    grid->setVerticalSpacing(10);
    grid->setColumnStretch(0, 5);
    grid->setColumnStretch(2, 3);
    int row = 0;
    QWidget *first = nullptr;
    for (const ClothQuestion &q : clothQuestions()) {
        const std::string about(q.about);
        const ClothAnswer now = answerTo(cloth(), about);
        const QString known = withFractions(fromCore(knownOf(cloth(), about, m_document.job().unit)));
        QString words = u"<b>%1</b>  %2<br><small>%3</small>"_s.arg(
            plain(q.title).toHtmlEscaped(), plain(q.asks).toHtmlEscaped(), plain(q.advice).toHtmlEscaped());
        if (!known.isEmpty()) words += u"<br><small><b>%1</b></small>"_s.arg(known.toHtmlEscaped());
        auto *question = new QLabel(words, page);
        question->setWordWrap(true);
        question->setToolTip(plain(q.source));
        auto *said = new QComboBox(page);
        for (auto s : {ClothAnswer::Said::Open, ClothAnswer::Said::Good, ClothAnswer::Said::Doubt})
            said->addItem(plain(nameOf(s)));
        said->setCurrentIndex(int(now.said));
        said->setAccessibleName(plain(q.asks));
        said->setToolTip(tr("What came of it. The answer stands on the client's page."));
        said->setObjectName(u"said "_s + fromCore(about));
        auto *note = new QLineEdit(fromCore(now.note), page);
        note->setPlaceholderText(tr("note"));
        note->setAccessibleName(tr("Note on %1").arg(plain(q.title)));
        note->setToolTip(tr("What was said or agreed on; it stands beside the answer on the client's page."));
        connect(said, &QComboBox::activated, this, [this, about](int index) {
            answer(
                about, [=](ClothAnswer &a) { a.said = ClothAnswer::Said(index); }, tr("Answer about the cloth"));
        });
        connect(note, &QLineEdit::textEdited, this, [this, about](const QString &text) {
            answer(
                about, [&](ClothAnswer &a) { a.note = toCore(text); }, tr("Note on the cloth"));
        });
        grid->addWidget(question, row, 0);
        grid->addWidget(said, row, 1, Qt::AlignVCenter);
        grid->addWidget(note, row, 2, Qt::AlignVCenter);
        if (!first) first = said;
        ++row;
    }
    grid->setRowStretch(row, 1);
    m_scroll->setWidget(page);
    setFocusProxy(first);
    sum();
}

} // namespace boltwright::ui
