#include "ui/window/help.h"

#include "ui/window/icons.h"
#include "ui/window/keyfinder.h"

#include <QApplication>
#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QVBoxLayout>

#include <array>
#include <vector>

namespace kerfwright {

namespace {

class Help {
    Q_DECLARE_TR_FUNCTIONS(Help)

public:
    using Row = std::array<QString, 2>;
    /// What no menu holds.
    static std::vector<Row> keys() {
        return {
            {tr("Arrows"), tr("go from piece to piece")},
            {tr("Shift + arrows"), tr("mark more pieces, or fewer")},
            {tr("Space"), tr("paint, fill, begin or end a line: what the tool does")},
            {tr("Enter, Shift + Enter"), tr("end a line, with Shift a straight one; of a "
                                            "rectangle the edge only")},
            {tr("1 – 9"), tr("choose the wood that paints")},
            {tr("Enter"), tr("pick up the wood of the marked piece")},
            {tr("Arrows, Enter, Escape"), tr("move pieces in the hand, lay them down, leave them")},
            {tr("Alt + arrows"), tr("move the joint right of or below the mark; with Shift finer")},
            {tr("N, Shift + N"), tr("take that joint to the next place where sizes agree")},
            {tr("Right button"), tr("pick up the wood under the pointer")},
            {tr("Ctrl + wheel"), tr("zoom; the wheel alone moves the board")},
            {tr("Space + drag"), tr("move the board; so does the middle button")},
            {tr("Arrows, on stages"), tr("go through the build; Escape ends it")},
            {tr("Space, on a step"), tr("show on the board what it works on, or let go")},
            {tr("Ctrl + Enter, on a caution"), tr("tick it as seen to, or open it again")},
            {tr("Space, in the cut list"), tr("follow its strips to board, steps and planks")},
            {tr("="), tr("open the working of the step, stage or line that the keys stand on")},
            {tr("F2, on a line of the price"), tr("go to the entry that it comes from")},
            {tr("Escape"), tr("let go; in an entry, take back what was typed")}};
    }
    static QString aboutTitle() { return tr("About Kerfwright"); }
    static QString about() {
        return tr("Version %1\n\nPlans patterned boards of solid wood: from the wish, through "
                  "every "
                  "glue-up, to sheets for the bench. No plan is shown that the virtual bench has "
                  "not "
                  "carried out.\n\nFree software under the MIT licence.")
            .arg(QCoreApplication::applicationVersion());
    }
};

QDialog* dialog(QWidget* parent, const QString& title) {
    auto* made = new QDialog(parent);
    made->setAttribute(Qt::WA_DeleteOnClose);
    made->setWindowTitle(title);
    auto* column = new QVBoxLayout(made);
    column->setContentsMargins(24, 20, 24, 16);
    column->setSpacing(16);
    return made;
}

void finish(QDialog* made) {
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, made);
    QObject::connect(buttons, &QDialogButtonBox::rejected, made, &QDialog::reject);
    made->layout()->addWidget(buttons);
    made->open();
}

}  // namespace

void showKeys(const QMenuBar& menus, QWidget* parent) {
    std::vector<QMenu*> all;
    for (const QAction* action : menus.actions()) {
        all.push_back(action->menu());
    }
    (new KeyFinder(all, Help::keys(), parent))->open();
}

void showAbout(QWidget* parent) {
    QDialog* made = dialog(parent, Help::aboutTitle());
    auto* icon = new QLabel(made);
    icon->setPixmap(applicationIcon().pixmap(QSize(64, 64), made->devicePixelRatioF()));
    made->layout()->addWidget(icon);
    auto* words = new QLabel(Help::about(), made);
    words->setWordWrap(true);
    words->setMinimumWidth(360);
    made->layout()->addWidget(words);
    finish(made);
}

}  // namespace kerfwright
