// Everything that the window asks in a window of its own, behind one interface, so that tests
// answer without one.
#pragma once

#include <QString>
#include <QStringList>

QT_BEGIN_NAMESPACE
class QPrinter;
class QWidget;
QT_END_NAMESPACE

namespace kerfwright {

class Dialogs {
public:
    enum class Unsaved { Save, Discard, Cancel };
    enum class Lost { Open, Discard, Later };

    virtual ~Dialogs() = default;
    /// Empty where the maker gave up.
    virtual QString fileToOpen(QWidget* parent) = 0;
    virtual QStringList filesToOpen(QWidget* parent) = 0;
    /// Any other file; `filter` as in "Rack (*.csv)".
    virtual QString fileToRead(QWidget* parent, const QString& title, const QString& filter) = 0;
    /// `filter` as in "PDF (*.pdf)"; `suggested` is a file name.
    virtual QString fileToWrite(QWidget* parent, const QString& title, const QString& suggested,
                                const QString& filter) = 0;
    virtual QString folderToWrite(QWidget* parent, const QString& title) = 0;
    virtual Unsaved askUnsaved(QWidget* parent, const QString& name) = 0;
    /// Something else wrote the file since it was read. True: write over it.
    virtual bool askOverwriteChanged(QWidget* parent, const QString& name) = 0;
    virtual Lost askLostWork(QWidget* parent, const QString& name) = 0;
    virtual void tell(QWidget* parent, const QString& title, const QString& words) = 0;
    /// Sets the printer up; false where the maker gave up.
    virtual bool setUpPrinter(QWidget* parent, QPrinter& printer) = 0;
};

/// Asks in real dialogs.
class WindowDialogs : public Dialogs {
public:
    QString fileToOpen(QWidget* parent) override;
    QStringList filesToOpen(QWidget* parent) override;
    QString fileToRead(QWidget* parent, const QString& title, const QString& filter) override;
    QString fileToWrite(QWidget* parent, const QString& title, const QString& suggested,
                        const QString& filter) override;
    QString folderToWrite(QWidget* parent, const QString& title) override;
    Unsaved askUnsaved(QWidget* parent, const QString& name) override;
    bool askOverwriteChanged(QWidget* parent, const QString& name) override;
    Lost askLostWork(QWidget* parent, const QString& name) override;
    void tell(QWidget* parent, const QString& title, const QString& words) override;
    bool setUpPrinter(QWidget* parent, QPrinter& printer) override;
};

}  // namespace kerfwright
