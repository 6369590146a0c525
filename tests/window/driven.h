#pragma once

#include "app/main_window.h"
#include "tests/temporary_folder.h"
#include "tests/widgets/typing.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/night_stage.h"
#include "widgets/charts/views_page.h"
#include "widgets/controls/notice.h"
#include "widgets/forms/side_panel.h"

#include <QAction>
#include <QApplication>
#include <QFileDialog>
#include <QLineEdit>
#include <QMessageBox>
#include <QPushButton>
#include <QTimer>

#include <gtest/gtest.h>

#include <functional>

namespace app::test {

inline constexpr int kPatience_ms = 60000;  // only a hanging test waits that long

using engine::test::TemporaryFolder;
using widgets::test::plain;

inline std::filesystem::path scenario(const char* name) {
    return std::filesystem::path(DAWNLINE_SCENARIOS) / name;
}

/// A window on a pond, three nights of it unless said otherwise.
struct Driven {
    struct Writable {
        const char* scenario;
    };
    /// On a copy of a scenario that may be written to.
    explicit Driven(Writable copied, int nights = 3) : Driven(std::filesystem::path(), nights) {
        const auto to = folder.path() / copied.scenario;
        std::filesystem::copy_file(scenario(copied.scenario), to);
        window.open(to);
    }
    explicit Driven(const std::filesystem::path& pond = {}, int nights = 3) {
        window.recomputation().setNights(nights);
        window.recomputation().setMembers(8);
        window.show();
        window.activateWindow();
        if (!pond.empty()) {
            window.open(pond);
        }
    }

    bool waitForCurves() {
        return QTest::qWaitFor(
            [this] { return window.recomputation().outcome() && !window.recomputation().isStale(); },
            kPatience_ms);
    }
    bool waitUntilWhole() {
        return QTest::qWaitFor(
            [this] {
                const auto& outcome = window.recomputation().outcome();
                return outcome && outcome->isWhole && !window.recomputation().isStale();
            },
            kPatience_ms);
    }

    /// Triggers the menu entry with this text (without its mnemonic).
    void trigger(const char* text) {
        for (QAction* action : window.findChildren<QAction*>()) {
            QString shown = action->text();
            if (shown.remove(u'&') == QString::fromUtf8(text)) {
                ASSERT_TRUE(action->isEnabled()) << text;
                action->trigger();
                return;
            }
        }
        FAIL() << "there is no menu entry " << text;
    }

    TemporaryFolder folder;
    MainWindow window;
};

/// Does something with the next dialog, as soon as it is there.
template <class Dialog>
void atNextDialog(std::function<void(Dialog&)> act) {
    auto* timer = new QTimer(qApp);
    timer->setInterval(20);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, act] {
        if (auto* dialog = qobject_cast<Dialog*>(QApplication::activeModalWidget())) {
            timer->stop();
            timer->deleteLater();
            act(*dialog);
        }
    });
    timer->start();
}

/// Presses a button of the next question, and tells whether there was one.
inline std::shared_ptr<bool> answerNext(QMessageBox::StandardButton button) {
    auto asked = std::make_shared<bool>(false);
    atNextDialog<QMessageBox>([asked, button](QMessageBox& box) {
        *asked = true;
        box.button(button)->click();
    });
    return asked;
}

/// Types a name into the next file dialog and accepts it.
inline void nameNext(const std::filesystem::path& path) {
    atNextDialog<QFileDialog>([path](QFileDialog& dialog) {
        auto* name = dialog.findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
        name->setText(QString::fromStdString(path.string()));
        QTest::keyClick(name, Qt::Key_Return);
    });
}

}  // namespace app::test
