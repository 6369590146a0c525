#pragma once

#include <QObject>

#include <cstddef>

namespace widgets {

/// What all views look at: a night, a ramp, and whether the night or the ramp is held while the other varies.
class Selection final : public QObject {
    Q_OBJECT
public:
    enum class Mode { AllRamps, AllNights };  ///< All ramps in one night; all nights of one ramp

    explicit Selection(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] int night() const { return m_night; }
    [[nodiscard]] std::size_t ramp() const { return m_ramp; }  ///< 0 is do-nothing
    [[nodiscard]] Mode mode() const { return m_mode; }
    [[nodiscard]] int nights() const { return m_nights; }

    /// How far night and ramp may go; what lies beyond moves to the end.
    void setExtent(int nights, std::size_t ramps);
    void setNight(int night);
    void setRamp(std::size_t ramp);
    void setMode(Mode mode);

signals:
    void changed();

private:
    int m_night = 1;
    int m_nights = 1;
    std::size_t m_ramp = 0, m_ramps = 1;
    Mode m_mode = Mode::AllRamps;
};

}  // namespace widgets
