#include "ui/window/pieceinfo.h"

#include "core/bench/origin.h"
#include "ui/document/text.h"

#include <QCoreApplication>

namespace kerfwright {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("PieceInfo", text);
}

}  // namespace

QStringList pieceWords(const Project& project, const Job* job, QPoint cell, Length x, Length y) {
    const Field& field = project.board.field;
    const int index = pieceAt(field, cell.x(), cell.y());
    if (index < 0) {
        return {};
    }
    const Piece& piece = field.pieces[static_cast<std::size_t>(index)];
    Length width;
    Length height;
    for (int i = 0; i < piece.across; ++i) {
        width += field.columns[static_cast<std::size_t>(piece.column + i)];
    }
    for (int i = 0; i < piece.down; ++i) {
        height += field.rows[static_cast<std::size_t>(piece.row + i)];
    }
    const Notation& notation = project.notation;
    QStringList words;
    words << tr("%1 · column %2, row %3")
                 .arg(toQt(project.woods[static_cast<std::size_t>(piece.wood)].name))
                 .arg(cell.x() + 1)
                 .arg(cell.y() + 1);
    words << toQt(formatSize({width, height, project.board.thickness}, notation));
    if (job != nullptr) {
        const Origin origin = originOf(*job, field, x, y);
        if (origin.isKnown()) {
            words << tr("strip %1 · slice %2%3%4")
                         .arg(toQt(origin.strip), toQt(origin.slice),
                              origin.flipped ? tr(", flipped") : QString(),
                              origin.turnedOver ? tr(", turned over") : QString());
        }
    }
    return words;
}

}  // namespace kerfwright
