#include "widgets/controls/theme.h"

#include "widgets/controls/plot_style.h"

#include <QApplication>
#include <QStyle>
#include <QStyleFactory>
#include <QToolTip>

namespace widgets {
namespace {

/// What the desktop's own palette was before ours took its place.
bool isDesktopDark() {
    static const bool isDark = [] {
        const QPalette palette = QApplication::palette();
        return palette.color(QPalette::Window).lightness() < palette.color(QPalette::WindowText).lightness();
    }();
    return isDark;
}

}  // namespace

QPalette themePalette(bool isDark) {
    const PlotStyle style = isDark ? PlotStyle::dark({}) : PlotStyle::light({});
    const QColor accent = style.lineColour(1);
    QPalette palette;
    palette.setColor(QPalette::Window, style.paper);
    palette.setColor(QPalette::WindowText, style.ink);
    palette.setColor(QPalette::Base, mixed(style.paper, Qt::white, isDark ? 0.06 : 0.7));
    palette.setColor(QPalette::AlternateBase, mixed(style.paper, style.hairline, 0.25));
    palette.setColor(QPalette::Text, style.ink);
    palette.setColor(QPalette::PlaceholderText, mixed(style.paper, style.quietInk, 0.85));
    palette.setColor(QPalette::Button, mixed(style.paper, style.hairline, isDark ? 0.6 : 0.35));
    palette.setColor(QPalette::ButtonText, style.ink);
    palette.setColor(QPalette::BrightText, style.lethalInk);
    palette.setColor(QPalette::ToolTipBase, mixed(style.paper, style.hairline, 0.5));
    palette.setColor(QPalette::ToolTipText, style.ink);
    palette.setColor(QPalette::Highlight, isDark ? mixed(style.paper, accent, 0.55) : accent);
    palette.setColor(QPalette::HighlightedText, Qt::white);
    palette.setColor(QPalette::Link, accent);
    palette.setColor(QPalette::LinkVisited, accent);
    palette.setColor(QPalette::Light, mixed(style.paper, Qt::white, isDark ? 0.12 : 0.6));
    palette.setColor(QPalette::Midlight, mixed(style.paper, style.hairline, 0.5));
    palette.setColor(QPalette::Mid, style.hairline);
    palette.setColor(QPalette::Dark, mixed(style.hairline, style.ink, 0.25));
    palette.setColor(QPalette::Shadow, mixed(style.paper, Qt::black, 0.6));
    const QColor faint = mixed(style.paper, style.ink, 0.4);
    for (const auto role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::HighlightedText}) {
        palette.setColor(QPalette::Disabled, role, faint);
    }
    palette.setColor(QPalette::Disabled, QPalette::Base, style.paper);
    palette.setColor(QPalette::Disabled, QPalette::Highlight, style.hairline);
    return palette;
}

void applyTheme(Theme theme) {
    const bool isDark = theme == Theme::Dark || (theme == Theme::System && isDesktopDark());
    isDesktopDark();  // is asked before the palette is changed
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    const QPalette palette = themePalette(isDark);
    QApplication::setPalette(palette);
    QToolTip::setPalette(palette);
}

}  // namespace widgets
