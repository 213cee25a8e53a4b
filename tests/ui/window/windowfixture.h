// A main window with answers at hand instead of dialogs, and hands to work it with.
#pragma once

#include "ui/window/boardview.h"
#include "ui/window/dialogs.h"
#include "ui/window/mainwindow.h"

#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace kerfwright {

class Answers : public Dialogs {
public:
    QString open, read, write, folder;
    QStringList several;
    Unsaved unsaved = Unsaved::Cancel;
    bool overwrite = false;
    Lost lost = Lost::Later;
    QStringList told;
    int unsavedAsked = 0;
    int overwriteAsked = 0;
    int lostAsked = 0;

    QString fileToOpen(QWidget*) override { return open; }
    QStringList filesToOpen(QWidget*) override { return several; }
    QString fileToRead(QWidget*, const QString&, const QString&) override { return read; }
    QString fileToWrite(QWidget*, const QString&, const QString&, const QString&) override {
        return write;
    }
    QString folderToWrite(QWidget*, const QString&) override { return folder; }
    Unsaved askUnsaved(QWidget*, const QString&) override {
        ++unsavedAsked;
        return unsaved;
    }
    bool askOverwriteChanged(QWidget*, const QString&) override {
        ++overwriteAsked;
        return overwrite;
    }
    Lost askLostWork(QWidget*, const QString&) override {
        ++lostAsked;
        return lost;
    }
    void tell(QWidget*, const QString& title, const QString& words) override {
        told << title + QStringLiteral(": ") + words;
    }
    bool setUpPrinter(QWidget*, QPrinter&) override { return false; }
};

class WindowTest : public testing::Test {
protected:
    WindowTest();
    ~WindowTest() override;

    std::unique_ptr<MainWindow> makeWindow(const QString& file = QString());
    const Project& project() const { return window->document().project(); }
    const Field& field() const { return project().board.field; }
    bool planned();

    template <class T = QWidget>
    T* find(const char* name) const {
        T* found = window->findChild<T*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
    void click(QWidget* widget);
    void click(const char* name) { click(find(name)); }
    /// Types over what the entry holds, as a person does: focus, select all, keys.
    void type(const char* entry, const QString& text);
    QPoint cellCentre(int column, int row) const;
    int woodAt(int column, int row) const;
    void clickCell(int column, int row, Qt::MouseButton button = Qt::LeftButton);
    void drag(QPoint from, QPoint to);
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier);
    QString inFolder(const char* name) const { return folder.filePath(QString::fromLatin1(name)); }

    QTemporaryDir folder;
    Answers answers;
    std::unique_ptr<MainWindow> window;
};

}  // namespace kerfwright
