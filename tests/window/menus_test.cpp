// Menus, keys and texts of the window: nothing stands twice, has no name, or cannot be translated.

#include "app/window_state.h"
#include "tests/window/driven.h"

#include <QAbstractButton>
#include <QLabel>
#include <QMap>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QTextBlock>
#include <QTextBrowser>
#include <QTextFragment>
#include <QToolButton>
#include <QTranslator>

#include <gtest/gtest.h>

#include <algorithm>

namespace app {
namespace {

using test::Driven;
using test::plain;
using test::scenario;

TEST(Menus, ShortcutsAreListedAndNoTwoActionsShareOne) {
    Driven driven(scenario("new-clay.toml"), 2);
    QMap<QString, QString> seen;
    for (const QAction* action : driven.window.findChildren<QAction*>()) {
        const QString keys = action->shortcut().toString();
        if (!keys.isEmpty()) {
            EXPECT_FALSE(seen.contains(keys))
                << plain(keys) << ": " << plain(seen[keys]) << " and " << plain(action->text());
            seen[keys] = action->text();
        }
    }
    driven.trigger("Keys and Shortcuts");
    auto* text = driven.window.findChild<QPlainTextEdit*>();
    ASSERT_NE(text, nullptr);
    EXPECT_GE(seen.size(), 20);
    EXPECT_TRUE(text->toPlainText().contains(QStringLiteral("Shift+Left")));
}

TEST(Menus, TheHelpShowsItsPagesWithTheirPictures) {
    Driven driven;
    driven.trigger("Tutorial\u2026");
    const auto pages = driven.window.findChildren<QTextBrowser*>();
    const auto found = std::find_if(pages.begin(), pages.end(), [](const QTextBrowser* one) {
        return one->accessibleName() == QLatin1String("Tutorial");
    });
    ASSERT_NE(found, pages.end());
    const QTextBrowser* page = *found;
    EXPECT_TRUE(page->toPlainText().contains(QStringLiteral("An owner calls in June")));
    int pictures = 0;
    for (QTextBlock block = page->document()->begin(); block.isValid(); block = block.next()) {
        for (auto part = block.begin(); !part.atEnd(); ++part) {
            const QTextImageFormat format = part.fragment().charFormat().toImageFormat();
            if (format.isValid()) {
                const auto picture = page->document()
                                         ->resource(QTextDocument::ImageResource, QUrl(format.name()))
                                         .value<QImage>();
                EXPECT_GT(picture.width(), 400) << plain(format.name());
                EXPECT_LT(picture.width(), page->width()) << plain(format.name()) << " is not cut";
                ++pictures;
            }
        }
    }
    EXPECT_GE(pictures, 2);
}

/// A client's ponds stand in one folder.
TEST(Menus, PondsOfTheSameFolderAreAtHandInTheMenuAndOnTheStartPage) {
    WindowState().clearRecentFiles();  // of other tests
    const engine::test::TemporaryFolder folder;
    for (const char* name : {"new-clay.toml", "old-quarry.toml"}) {
        std::filesystem::copy_file(scenario(name), folder.path() / name);
    }
    {
        Driven driven(folder.path() / "new-clay.toml");
        auto* menu = driven.window.findChild<QMenu*>(QStringLiteral("recent"));
        ASSERT_NE(menu, nullptr);
        emit menu->aboutToShow();
        const auto actions = menu->actions();
        const auto beside = std::find_if(actions.begin(), actions.end(), [](const QAction* action) {
            return action->text() == QLatin1String("old-quarry.toml");
        });
        ASSERT_NE(beside, actions.end());
        (*beside)->trigger();
        EXPECT_EQ(driven.window.document().path(), folder.path() / "old-quarry.toml");
    }
    std::filesystem::copy_file(scenario("pea-soup.toml"), folder.path() / "pea-soup.toml");
    const Driven empty;
    const auto buttons = empty.window.findChildren<QAbstractButton*>();
    for (const char* name : {"new-clay.toml", "old-quarry.toml", "pea-soup.toml"}) {
        EXPECT_EQ(std::count_if(buttons.begin(), buttons.end(),
                                [name](const QAbstractButton* button) {
                                    return button->text() == QLatin1String(name);
                                }),
                  1)
            << name;
    }
}

/// A letter that does two things does neither at the first press.
TEST(Menus, NoMnemonicStandsTwiceInAMenuOrOnAPage) {
    Driven driven(scenario("new-clay.toml"), 2);
    ASSERT_TRUE(driven.waitForCurves());
    const auto look = [](const QStringList& texts, const std::string& where) {
        QMap<QChar, QString> seen;
        for (const QString& text : texts) {
            const qsizetype at =
                QString(text).replace(QStringLiteral("&&"), QStringLiteral("__")).indexOf(u'&');
            if (at >= 0 && at + 1 < text.size()) {
                const QChar key = text[at + 1].toLower();
                EXPECT_FALSE(seen.contains(key))
                    << where << ": " << plain(seen[key]) << " and " << plain(text);
                seen[key] = text;
            }
        }
    };
    for (const QMenu* menu : driven.window.findChildren<QMenu*>()) {
        QStringList texts;
        for (const QAction* action : menu->actions()) {
            texts << action->text();
        }
        look(texts, plain(menu->title()));
    }
    driven.window.side().setChanging(true);
    for (int view = 0; view < driven.window.page().viewCount(); ++view) {
        driven.window.page().setView(view);
        QStringList texts;
        for (const QAction* action : driven.window.menuBar()->actions()) {
            texts << action->text();
        }
        for (const QLabel* label : driven.window.findChildren<QLabel*>()) {
            if (label->isVisible() && label->buddy() != nullptr) {
                texts << label->text();
            }
        }
        for (const auto* button : driven.window.findChildren<QAbstractButton*>()) {
            if (button->isVisible() && qobject_cast<const QToolButton*>(button) == nullptr) {
                texts << button->text();
            }
        }
        look(texts, plain(driven.window.page().viewName(view)));
    }
}

TEST(Menus, EveryMenuHasOnlyEntriesThatHaveNames) {
    Driven driven(scenario("new-clay.toml"), 2);
    int entries = 0;
    for (const QMenu* menu : driven.window.findChildren<QMenu*>()) {
        for (const QAction* action : menu->actions()) {
            if (!action->isSeparator()) {
                EXPECT_FALSE(action->text().isEmpty());
                ++entries;
            }
        }
    }
    EXPECT_GE(entries, 45);
}

/// Sets every text that is asked for in brackets, as a translation would replace it; names of fonts stay.
class Brackets final : public QTranslator {
public:
    [[nodiscard]] QString translate(const char* context, const char* source, const char* /*disambiguation*/,
                                    int /*n*/) const override {
        if (context == nullptr || source == nullptr || *source == '\0' || qstrcmp(context, "QFont") == 0 ||
            qstrcmp(context, "QFontDatabase") == 0) {
            return {};
        }
        return QStringLiteral("[%1]").arg(QString::fromUtf8(source));
    }
    [[nodiscard]] bool isEmpty() const override { return false; }
};

TEST(Menus, EveryTextOfTheWindowCanBeTranslated) {
    Brackets brackets;  // taken out of the program when it goes, after the window
    ASSERT_TRUE(QCoreApplication::installTranslator(&brackets));
    Driven driven(scenario("new-clay.toml"), 2);
    ASSERT_TRUE(driven.waitForCurves());
    const auto isReached = [](const QString& text) {
        return text.isEmpty() || text.contains(QLatin1Char('['));
    };
    for (const QAction* action : driven.window.menuBar()->actions()) {
        EXPECT_TRUE(isReached(action->text())) << plain(action->text());
    }
    for (const auto* label : driven.window.findChildren<QLabel*>()) {
        bool isNumber = false;
        label->text().toDouble(&isNumber);
        EXPECT_TRUE(isReached(label->text()) || isNumber) << plain(label->text());
    }
    for (const auto* button : driven.window.findChildren<QPushButton*>()) {
        EXPECT_TRUE(button->isFlat() || isReached(button->text()))
            << plain(button->text());  // flat: a file's name
    }
}

}  // namespace
}  // namespace app
