#pragma once

#include "widgets/forms/first_pond.h"

#include <QDialog>

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace widgets {

class LineEntry;
class NumberBox;

/// Twelve questions about a pond, all on one sheet, from which a pond is made that can be computed at once.
class FirstPondDialog final : public QDialog {
    Q_OBJECT
public:
    explicit FirstPondDialog(QWidget* parent = nullptr);

    /// @pre The dialog was accepted: the answers pass the checks of pond files.
    [[nodiscard]] const engine::Pond& pond() const { return m_pond; }

private:
    void askAboutPlace(QWidget& sheet);
    void askAboutWater();
    void askAboutFish();
    void ask(const QString& question, const QString& help, const QList<QWidget*>& fields);
    NumberBox* number(const char* key, double value, const QString& name);
    QComboBox* choice(const QStringList& answers, int index, const QString& name);
    [[nodiscard]] FirstAnswers answers() const;
    void take();

    QGridLayout* m_grid = nullptr;
    QLabel* m_fault;
    int m_count = 0;
    QLineEdit* m_name;
    LineEntry* m_firstDay;
    NumberBox *m_latitude, *m_longitude, *m_elevation, *m_area, *m_depth, *m_age, *m_feed, *m_cold, *m_warm;
    QComboBox *m_muck, *m_smell, *m_colour, *m_weeds, *m_fish, *m_stock, *m_sky, *m_wind;
    engine::Pond m_pond;
};

}  // namespace widgets
