#pragma once

#include "engine/pond/pond.h"
#include "widgets/controls/line_entry.h"

#include <optional>

namespace widgets {

/// When something was seen or done. Proposed by the program until it is typed; what is typed stays through
/// every edit of the pond, until it has been used.
class VisitTime final : public LineEntry {
    Q_OBJECT
public:
    explicit VisitTime(QWidget* parent = nullptr) : LineEntry(Kind::Time, parent) {}

    void propose(std::optional<engine::LocalTime> at);
    /// Puts a time in as given, from now on a proposal.
    void set(std::optional<engine::LocalTime> at);
    /// Back to what was proposed last.
    void forget();
    /// Nothing if none is given. Text that was typed counts once it is committed.
    [[nodiscard]] std::optional<engine::LocalTime> time() const;

private:
    std::string m_proposed;
};

}  // namespace widgets
