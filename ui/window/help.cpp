#include "ui/window/help.h"

#include "ui/window/icons.h"

#include <QApplication>
#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <array>

namespace kerfwright {

namespace {

class Help {
    Q_DECLARE_TR_FUNCTIONS(Help)

public:
    using Row = std::array<QString, 2>;
    static std::array<Row, 33> keys() {
        return {
            {{tr("Arrows"), tr("go from piece to piece")},
             {tr("Shift + arrows"), tr("mark more pieces, or fewer")},
             {tr("Ctrl + A"), tr("mark the whole field")},
             {tr("P, L, R, F"), tr("paint pieces, draw lines or rectangles, fill")},
             {tr("K, J"), tr("mark pieces, move joints")},
             {tr("Space"), tr("paint, fill, begin or end a line: what the tool does")},
             {tr("Enter, Shift + Enter"), tr("end a line, with Shift a straight one; of a "
                                             "rectangle the edge only")},
             {tr("1 – 9"), tr("choose the wood that paints")},
             {tr("Enter"), tr("pick up the wood of the marked piece")},
             {tr("M, S"), tr("merge what is marked, split its pieces")},
             {tr("Ctrl + C, X, V"), tr("copy, cut, paste: arrows move it, Enter lays it down")},
             {tr("G"), tr("move what is marked")},
             {tr("H, V, T"), tr("mirror across, mirror down, turn")},
             {tr("Ctrl + D"), tr("repeat what is marked over the board")},
             {tr("Ctrl + Shift + V"), tr("cover what is marked with the copy")},
             {tr("Ctrl + Shift + arrows"), tr("insert as many columns or rows as are marked")},
             {tr("Delete, Shift + Delete"), tr("remove the marked columns, the marked rows")},
             {tr("Alt + arrows"),
              tr("move the joint right of or below the mark; with Shift finer")},
             {tr("N, Shift + N"), tr("take that joint to the next place where sizes agree")},
             {tr("Right button"), tr("pick up the wood under the pointer")},
             {tr("Ctrl + wheel"), tr("zoom; the wheel alone moves the board")},
             {tr("Space + drag"), tr("move the board; so does the middle button")},
             {tr("Ctrl + 0"), tr("see the whole board")},
             {tr("Alt + 1, 2, …"), tr("the tabs of the bench, from the left")},
             {tr("F6, Shift + F6"), tr("go to the next or the previous part of the window")},
             {tr("F7, F8"), tr("fold the wish or the bench away, or open it")},
             {tr("F9, then arrows"), tr("go through the build, stage by stage; Escape ends it")},
             {tr("Space, on a step"), tr("show on the board what it works on, or let go")},
             {tr("Space, in the cut list"), tr("follow its strips to board, steps and planks")},
             {tr("F1"), tr("help on what is in focus")},
             {tr("="), tr("open the working of the step, stage or line that the keys stand on")},
             {tr("F2, on a line of the price"), tr("go to the entry that it comes from")},
             {tr("Escape"), tr("let go; in an entry, take back what was typed")}}};
    }
    static QString keysTitle() { return tr("Keys of the board"); }
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

void showKeys(QWidget* parent) {
    QDialog* made = dialog(parent, Help::keysTitle());
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(24);
    grid->setVerticalSpacing(8);
    int line = 0;
    const auto keys = Help::keys();
    // In two columns, so that a low window has room for it.
    const int half = static_cast<int>(keys.size() + 1) / 2;
    grid->setColumnMinimumWidth(2, 16);
    for (const Help::Row& row : keys) {
        auto* key = new QLabel(row[0], made);
        QFont bold = key->font();
        bold.setBold(true);
        key->setFont(bold);
        const int column = line < half ? 0 : 3;
        grid->addWidget(key, line % half, column);
        grid->addWidget(new QLabel(row[1], made), line++ % half, column + 1);
    }
    qobject_cast<QVBoxLayout*>(made->layout())->addLayout(grid);
    finish(made);
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
