#pragma once

#include <QObject>

#include <cstddef>
#include <optional>
#include <set>
#include <string>

namespace widgets {

/// What all views look at: a night, a ramp, and whether the night or the ramp is held while the other varies;
/// the cursor of the time, the stretch of the run that is shown, and which ramps are hidden.
class Selection final : public QObject {
    Q_OBJECT
public:
    enum class Mode { AllRamps, AllNights };  ///< All ramps in one night; all nights of one ramp

    /// A stretch of the run [days after midnight of day 1], or of a night [hours after noon].
    struct Span {
        double from = 0.0, to = 0.0;
        bool operator==(const Span&) const = default;
    };

    explicit Selection(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] int night() const { return m_night; }
    [[nodiscard]] std::size_t ramp() const { return m_ramp; }  ///< 0 is do-nothing
    [[nodiscard]] Mode mode() const { return m_mode; }
    [[nodiscard]] int nights() const { return m_nights; }
    /// Where the cursor stands [s after midnight of day 1]; nothing if it is put away.
    [[nodiscard]] std::optional<double> cursor() const { return m_cursor; }
    /// The stretch that the views over days show; nothing: all of it.
    [[nodiscard]] std::optional<Span> span() const { return m_span; }
    /// The hours after noon that the night shows; nothing: all 24.
    [[nodiscard]] std::optional<Span> hours() const { return m_hours; }
    [[nodiscard]] bool isHidden(const std::string& ramp) const { return m_hidden.count(ramp) > 0; }
    [[nodiscard]] const std::set<std::string>& hidden() const { return m_hidden; }

    /// How far night and ramp may go; what lies beyond moves to the end.
    void setExtent(int nights, std::size_t ramps);
    void setNight(int night);
    void setRamp(std::size_t ramp);
    void setMode(Mode mode);
    void setCursor(std::optional<double> time);
    /// Cut to the run; at least half a day stays.
    void setSpan(std::optional<Span> span);
    /// Cut to the night; at least three hours stay.
    void setHours(std::optional<Span> hours);
    void setHidden(const std::string& ramp, bool isHidden);
    /// Takes over all that another one looks at.
    void copy(const Selection& other);

signals:
    void changed();

private:
    int m_night = 1;
    int m_nights = 1;
    std::size_t m_ramp = 0, m_ramps = 1;
    Mode m_mode = Mode::AllRamps;
    std::optional<double> m_cursor;
    std::optional<Span> m_span, m_hours;
    std::set<std::string> m_hidden;
};

}  // namespace widgets
