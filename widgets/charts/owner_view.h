#pragma once

#include "widgets/document/outcome.h"
#include "widgets/document/selection.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QPushButton;

namespace widgets {

struct ChartSheet;
class OwnerChart;

/// What the owner is shown, on the whole screen: one night at a time under the chosen plan and without it, in
/// large type and plain words. Nothing can be changed here.
///
/// Left and right go from night to night, Space plays them, Ctrl+P prints, Escape ends it.
class OwnerView final : public QWidget {
    Q_OBJECT
public:
    /// @param ramp  Place of the plan in the comparison; do-nothing stands beside it.
    OwnerView(const OutcomePtr& outcome, std::size_t ramp, int night, QWidget* parent = nullptr);

    [[nodiscard]] QString headline() const;
    [[nodiscard]] QString chances() const;
    [[nodiscard]] int night() const { return m_selection.night(); }
    [[nodiscard]] bool isPlaying() const { return m_player.isActive(); }
    /// The shown night on one page.
    [[nodiscard]] ChartSheet sheet() const;

signals:
    void printAsked();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void showNight();
    void play(bool isOn);
    void applyStyle();

    OutcomePtr m_outcome;
    Selection m_selection;
    QTimer m_player;
    QLabel *m_headline, *m_chances, *m_which, *m_foot;
    OwnerChart* m_chart;
    QPushButton* m_play;
};

/// Plain words for a night: who is short of oxygen, and when. Left alone stands beside the plan, and a
/// reading of that night that is worse than both has the last word.
[[nodiscard]] QString ownerSentence(const Outcome& outcome, std::size_t ramp, int night);
/// Of 100 ponds like yours; empty while there are no members.
[[nodiscard]] QString ownerChances(const Outcome& outcome, std::size_t ramp);

}  // namespace widgets
