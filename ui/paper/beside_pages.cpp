#include "ui/paper/beside_pages.h"

#include "core/base/language.h"
#include "core/cloth/cloth_questions.h"
#include "core/trimmings/reckoned.h"
#include "ui/drawing/colours.h"
#include "ui/paper/pages.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr double mm = unitsPerMillimetre;
constexpr double body = 3.3, small = 2.9;

QString shown(const std::string &text) { return withFractions(fromCore(text)); }

class Beside {
public:
    Beside(const Job &job, const Layout &layout, const QRectF &frame)
        : m_job(job), m_layout(layout), m_frame(frame), m_colours(lightColours()) {}

    QList<PageInk> pages() {
        trimmings();
        for (const Cloth &cloth : m_job.cloths) asked(cloth);
        return m_pages;
    }

private:
    double left() const { return m_frame.left(); }
    double width() const { return m_frame.width(); }
    PageInk &ink() { return m_pages.last(); }

    void need(double height) {
        if (!m_pages.isEmpty() && m_y + height <= m_frame.bottom()) return;
        m_pages << PageInk();
        m_y = m_frame.top();
    }

    void heading(const QString &text, double rest) {
        need(10 * mm + rest);
        if (m_y > m_frame.top()) m_y += 4 * mm;
        m_y += ink().paragraph(text, {left(), m_y}, width(), 4, true, m_colours.accent) + 1.5 * mm;
    }

    void trimmings() {
        bool first = true;
        const std::vector<Reckoned> all = reckonedAll(m_job, m_layout);
        for (std::size_t i = 0; i < all.size(); ++i) {
            const Trimming &trimming = m_job.trimmings[i];
            const Reckoned &figures = all[i];
            QString text = shown(trimmingWords(m_job, trimming, figures));
            if (m_job.panel(trimming.panel)) text += u' ' + onPaper("They are among the panels.");
            const double x = left() + 7 * mm, wide = width() - 7 * mm;
            const double height = PageInk::paragraphHeight(text, wide, body, false);
            if (first) heading(onPaper("Trimmings"), height);
            first = false;
            need(height);
            // A box to tick once it is cut or bought; what is missing is said in words and in bold.
            ink().box(QRectF(left(), m_y + 0.3 * mm, 3.8 * mm, 3.8 * mm), {}, {m_colours.ink, 0.3});
            m_y += ink().paragraph(text, {x, m_y}, wide, body, !figures.enough, m_colours.ink) + 1.6 * mm;
        }
    }

    void asked(const Cloth &cloth) {
        const bool offSquare = cloth.bow != Length{} || cloth.skew != Length{};
        if (cloth.asked.empty() && !offSquare) return;
        const QString name = fromCore(cloth.name.empty() ? cloth.id : cloth.name);
        heading(m_job.cloths.size() > 1 ? onPaper("What the cloth must be: %1").arg(name)
                                        : onPaper("What the cloth must be"),
                20 * mm);
        for (const ClothQuestion &question : clothQuestions()) {
            const ClothAnswer answer = answerTo(cloth, question.about);
            const QString known = fromCore(knownOf(cloth, question.about, m_job.unit));
            row(shown(phrase(question.title)), shown(phrase(nameOf(answer.said))),
                QStringList{withFractions(fromCore(answer.note)), withFractions(known)}, shown(phrase(question.advice)),
                answer.said == ClothAnswer::Said::Doubt);
        }
        const QString last =
            onPaper("A cloth's own label and the law of the place decide what it may be used for; this list "
                    "does not replace them.");
        need(8 * mm);
        m_y += ink().paragraph(last, {left(), m_y + 1 * mm}, width(), small, false, m_colours.quiet) + 2 * mm;
    }

    void row(const QString &title, const QString &said, QStringList details, const QString &advice, bool doubt) {
        details.removeAll(QString());
        const double second = 44 * mm, third = 72 * mm, wide = width() - third;
        const QString detail = details.join(u"; "_s);
        const double detailHigh = detail.isEmpty() ? 0 : PageInk::paragraphHeight(detail, wide, body, false);
        const double height =
            std::max(lineHeight(body, true) * mm, detailHigh + PageInk::paragraphHeight(advice, wide, small, false));
        need(height + 2 * mm);
        ink().line({left(), m_y - 0.4 * mm}, {left() + width(), m_y - 0.4 * mm}, {m_colours.hairline, 0.15});
        ink().paragraph(title, {left(), m_y}, second - 2 * mm, body, true, m_colours.ink);
        ink().paragraph(said, {left() + second, m_y}, third - second - 2 * mm, body, doubt,
                        doubt ? m_colours.broken : m_colours.ink);
        double y = m_y;
        if (!detail.isEmpty()) y += ink().paragraph(detail, {left() + third, y}, wide, body, false, m_colours.ink);
        ink().paragraph(advice, {left() + third, y}, wide, small, false, m_colours.quiet);
        m_y += height + 2 * mm;
    }

    const Job &m_job;
    const Layout &m_layout;
    QRectF m_frame;
    Colours m_colours;
    QList<PageInk> m_pages;
    double m_y = 0;
};

} // namespace

QList<PageInk> besidePages(const Job &job, const Layout &layout, const QRectF &frame) {
    return Beside(job, layout, frame).pages();
}

} // namespace boltwright::ui
