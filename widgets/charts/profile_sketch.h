#pragma once

#include "widgets/document/document.h"

#include <QWidget>

namespace widgets {

/// The profile of the document as it stands, drawn while it is typed: oxygen and temperature by depth.
class ProfileSketch final : public QWidget {
    Q_OBJECT
public:
    explicit ProfileSketch(Document& document, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override { return {300, 260}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {200, 180}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void describe();

    Document& m_document;
};

}  // namespace widgets
