#include "app/charts.h"
#include "app/main_window.h"
#include "app/papers.h"
#include "app/window_options.h"
#include "app/window_say.h"
#include "engine/base/text_file.h"
#include "widgets/controls/wheel_guard.h"

#include <QApplication>
#include <QIcon>

#include <cstdio>
#include <exception>

namespace {

int openWindow(const app::WindowOptions& options) {
    QApplication::setApplicationDisplayName(QStringLiteral("Dawnline"));
    qApp->installEventFilter(new widgets::WheelGuard(qApp));
    app::MainWindow window;
    if (!options.pond.empty()) {
        window.open(options.pond);
    }
    window.offerLeftBehind();  // last, since opening has words of its own
    window.show();
    return QApplication::exec();
}

int run(int argc, char** argv) {
    if (app::needsNoDisplay(argc, argv)) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    QApplication::setHighDpiScaleFactorRoundingPolicy(Qt::HighDpiScaleFactorRoundingPolicy::PassThrough);
    const QApplication program(argc, argv);
    QApplication::setApplicationName(QStringLiteral("dawnline"));
    QApplication::setApplicationVersion(QStringLiteral(DAWNLINE_VERSION));
    QGuiApplication::setDesktopFileName(QStringLiteral("org.dawnline.Dawnline"));
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/dawnline.svg")));
    const app::WindowParse parse = app::parseWindowOptions(QApplication::arguments());
    std::fputs(engine::forTerminal(parse.said.toStdString()).c_str(), parse.code == 0 ? stdout : stderr);
    if (!parse.options) {
        return parse.code;
    }
    const app::WindowOptions& options = *parse.options;
    if (!options.bundle.empty()) {
        return app::verifyBundle(options.bundle, options.isRecomputed);
    }
    if (!options.papers.empty()) {
        const int code = app::writePapers({options.pond, options.papers, options.profile, options.members,
                                           options.seed, options.ramp, options.isPlanned});
        return code == 0 && !options.charts.empty() ? app::writeCharts(options.pond, options.charts) : code;
    }
    return options.charts.empty() ? openWindow(options) : app::writeCharts(options.pond, options.charts);
}

}  // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const std::exception& fault) {
        app::complain(std::string("A fault of our own: ") + fault.what());
    }
    return 3;
}
