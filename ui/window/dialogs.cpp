#include "ui/window/dialogs.h"

#include "ui/window/icons.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QSettings>
#include <QStandardPaths>

namespace kerfwright {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Dialogs", text);
}

/// A question or a message with the program's own picture.
void dress(QMessageBox& box) {
    box.setIconPixmap(applicationIcon().pixmap(QSize(48, 48), box.devicePixelRatioF()));
    box.setTextFormat(Qt::PlainText);
}

QString projectFilter() {
    return tr("Kerfwright projects (*.kerfwright);;All files (*)");
}

QString lastFolder() {
    const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    return QSettings().value(QStringLiteral("lastFolder"), documents).toString();
}

QString remembered(const QString& path) {
    if (!path.isEmpty()) {
        const QFileInfo info(path);
        QSettings().setValue(QStringLiteral("lastFolder"),
                             info.isDir() ? info.absoluteFilePath() : info.absolutePath());
    }
    return path;
}

}  // namespace

QString WindowDialogs::fileToOpen(QWidget* parent) {
    return remembered(
        QFileDialog::getOpenFileName(parent, tr("Open a project"), lastFolder(), projectFilter()));
}

QStringList WindowDialogs::filesToOpen(QWidget* parent) {
    const QStringList paths = QFileDialog::getOpenFileNames(
        parent, tr("Boards to be made together"), lastFolder(), projectFilter());
    remembered(paths.value(0));
    return paths;
}

QString WindowDialogs::fileToRead(QWidget* parent, const QString& title, const QString& filter) {
    return remembered(QFileDialog::getOpenFileName(parent, title, lastFolder(), filter));
}

QString WindowDialogs::fileToWrite(QWidget* parent, const QString& title, const QString& suggested,
                                   const QString& filter) {
    return remembered(QFileDialog::getSaveFileName(
        parent, title, lastFolder() + QStringLiteral("/") + suggested, filter));
}

QString WindowDialogs::folderToWrite(QWidget* parent, const QString& title) {
    return remembered(QFileDialog::getExistingDirectory(parent, title, lastFolder()));
}

Dialogs::Unsaved WindowDialogs::askUnsaved(QWidget* parent, const QString& name) {
    QMessageBox box(QMessageBox::NoIcon, tr("Unsaved work"),
                    tr("“%1” has changes that are not saved.").arg(name), QMessageBox::NoButton,
                    parent);
    QPushButton* save = box.addButton(tr("Save"), QMessageBox::AcceptRole);
    QPushButton* discard = box.addButton(tr("Throw away"), QMessageBox::DestructiveRole);
    box.addButton(tr("Go back"), QMessageBox::RejectRole);
    box.setDefaultButton(save);
    dress(box);
    box.exec();
    return box.clickedButton() == save      ? Unsaved::Save
           : box.clickedButton() == discard ? Unsaved::Discard
                                            : Unsaved::Cancel;
}

bool WindowDialogs::askOverwriteChanged(QWidget* parent, const QString& name) {
    QMessageBox box(QMessageBox::NoIcon, tr("The file has changed"),
                    tr("“%1” was written by something else since it was opened here.").arg(name),
                    QMessageBox::NoButton, parent);
    QPushButton* write = box.addButton(tr("Write over it"), QMessageBox::DestructiveRole);
    box.setDefaultButton(box.addButton(tr("Go back"), QMessageBox::RejectRole));
    dress(box);
    box.exec();
    return box.clickedButton() == write;
}

Dialogs::Lost WindowDialogs::askLostWork(QWidget* parent, const QString& name) {
    QMessageBox box(QMessageBox::NoIcon, tr("Work that was not saved"),
                    tr("“%1” was open when the program ended without warning. A copy of the work "
                       "was kept.")
                        .arg(name),
                    QMessageBox::NoButton, parent);
    QPushButton* open = box.addButton(tr("Open the copy"), QMessageBox::AcceptRole);
    QPushButton* discard = box.addButton(tr("Throw it away"), QMessageBox::DestructiveRole);
    box.addButton(tr("Later"), QMessageBox::RejectRole);
    box.setDefaultButton(open);
    dress(box);
    box.exec();
    return box.clickedButton() == open      ? Lost::Open
           : box.clickedButton() == discard ? Lost::Discard
                                            : Lost::Later;
}

void WindowDialogs::tell(QWidget* parent, const QString& title, const QString& words) {
    QMessageBox box(QMessageBox::NoIcon, title, words, QMessageBox::Ok, parent);
    dress(box);
    box.exec();
}

bool WindowDialogs::setUpPrinter(QWidget* parent, QPrinter& printer) {
    QPrintDialog dialog(&printer, parent);
    return dialog.exec() == QDialog::Accepted;
}

}  // namespace kerfwright
